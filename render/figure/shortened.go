package figure

import (
	"math"

	"bladecard/render/canvas"
)

// Shapes of a blade that is not to scale.
const (
	shortAspect = 1.25 // free height / thickness that is aimed at
	leastAspect = 0.62 // that the numbers may bring it down to
	shortGrip   = 0.28 // height in the holder / thickness
	shortJaw    = 0.1  // a jaw of the holder / thickness
	breakMM     = 1.6  // height of the break
)

// placeShort places a blade that need not be to scale, below left free under it: over the whole
// height, as thick as shortAspect makes it, or thicker where the numbers are to stand inside.
func (s Section) placeShort(c canvas.Canvas, r Rect, below float64, f canvas.Font, inside bool) (rubber, bool) {
	const rim = 0.4
	w, h := r.W-2*rim, r.H-below-2*rim
	aspect := math.Min(s.Aspect, shortAspect)
	most := math.Min(w/(1+2*shortJaw), h/(math.Min(aspect, leastAspect)+shortGrip))
	t := h / (aspect + shortGrip)
	if inside {
		for _, l := range s.Layers {
			t = math.Max(t, (c.TextWidth(l.Hardness, f)+numberPadMM)/l.Share+1e-9)
		}
	}
	t = math.Min(t, most)
	if !(t >= 2.5) {
		return rubber{}, false
	}
	free := math.Min(h-shortGrip*t, s.Aspect*t)
	top := r.Y + rim + (h-free-shortGrip*t)/2
	lip := top + shortGrip*t
	return rubber{x: r.X + (r.W-t)/2, lip: lip, edge: lip + free, w: t, grip: shortGrip * t,
		jaw: shortJaw * t, broken: free < s.Aspect*t-1e-6 && free > 3*breakMM}, true
}

// drawBreak cuts the rubber across, a little below the holder, with two wavy lines.
func (b rubber) drawBreak(c canvas.Canvas) {
	const over = 0.3 // the white covers the outline
	y := b.lip + breakMM
	wave := func(p *canvas.Path, from, to, y float64) { // up on the left, down on the right
		d := (to - from) / 3
		high := math.Copysign(breakMM, d)
		p.Curve(from+d, y-high, from+2*d, y+high, to, y)
	}
	gap := 0.35 * breakMM
	var white, lines canvas.Path
	x0, x1 := b.x-over, b.x+b.w+over
	white.Move(x0, y-gap)
	wave(&white, x0, x1, y-gap)
	white.Line(x1, y+gap)
	wave(&white, x1, x0, y+gap)
	white.Close()
	for _, at := range []float64{y - gap, y + gap} {
		lines.Move(x0, at)
		wave(&lines, x0, x1, at)
	}
	c.Draw(white, &canvas.White, canvas.Pen{})
	c.Draw(lines, nil, ink(0.3))
}
