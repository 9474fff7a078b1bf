package figure

import (
	"math"

	"bladecard/render/canvas"
)

// Stripes draws two slanted bars on a dark ground, as on the tape that keeps people out: yellow, and light where
// a printer has no color.
func Stripes(c canvas.Canvas, r Rect) error {
	if err := r.check("stripes"); err != nil {
		return err
	}
	yellow := canvas.Color{R: 255, G: 205, B: 0}
	lean, pitch := r.W/4, 3*r.W/8
	for i := range 2 {
		x := r.X + r.W/16 + float64(i)*pitch
		bar := polygon(canvas.Point{X: x + lean, Y: r.Y}, canvas.Point{X: x + lean + pitch/2, Y: r.Y},
			canvas.Point{X: x + pitch/2, Y: r.Bottom()}, canvas.Point{X: x, Y: r.Bottom()})
		c.Draw(bar, &yellow, canvas.Pen{})
	}
	return nil
}

// hatch fills a convex polygon (clockwise on paper) with parallel lines at the angle, in
// degrees counterclockwise from the right, pitchMM apart.
func hatch(c canvas.Canvas, poly []canvas.Point, angleDeg, pitchMM float64, pen canvas.Pen) {
	if !(pitchMM > 0.05) || len(poly) < 3 {
		return
	}
	s, co := math.Sincos(angleDeg * math.Pi / 180)
	dir := canvas.Point{X: co, Y: -s}
	nor := canvas.Point{X: s, Y: co}
	lo, hi := math.Inf(1), math.Inf(-1)
	far := 0.0
	for _, p := range poly {
		d := p.X*nor.X + p.Y*nor.Y
		lo, hi = math.Min(lo, d), math.Max(hi, d)
		far = math.Max(far, math.Abs(p.X*dir.X+p.Y*dir.Y))
	}
	var path canvas.Path
	for d := lo + pitchMM/2; d < hi; d += pitchMM {
		a := canvas.Point{X: d*nor.X - (far+1)*dir.X, Y: d*nor.Y - (far+1)*dir.Y}
		b := canvas.Point{X: d*nor.X + (far+1)*dir.X, Y: d*nor.Y + (far+1)*dir.Y}
		if p, q, ok := clipConvex(a, b, poly); ok && math.Hypot(p.X-q.X, p.Y-q.Y) > 0.05 {
			path.Move(p.X, p.Y)
			path.Line(q.X, q.Y)
		}
	}
	if len(path.Pieces) > 0 {
		c.Draw(path, nil, pen)
	}
}

// clipConvex cuts the piece from a to b at a convex polygon given clockwise on paper (y
// downward). ok is false when nothing is left (Cyrus and Beck 1978).
func clipConvex(a, b canvas.Point, poly []canvas.Point) (p, q canvas.Point, ok bool) {
	t0, t1 := 0.0, 1.0
	dx, dy := b.X-a.X, b.Y-a.Y
	for i, u := range poly {
		v := poly[(i+1)%len(poly)]
		nx, ny := v.Y-u.Y, u.X-v.X // outward
		den := nx*dx + ny*dy
		num := nx*(u.X-a.X) + ny*(u.Y-a.Y)
		switch {
		case den == 0 && num < 0:
			return p, q, false
		case den < 0:
			t0 = max(t0, num/den)
		case den > 0:
			t1 = min(t1, num/den)
		}
	}
	if t0 > t1 {
		return p, q, false
	}
	at := func(t float64) canvas.Point { return canvas.Point{X: a.X + t*dx, Y: a.Y + t*dy} }
	return at(t0), at(t1), true
}
