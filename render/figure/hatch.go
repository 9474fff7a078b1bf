package figure

import (
	"math"

	"bladecard/render/canvas"
)

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

// arrow draws a line from a to b with a filled head at b, and one at a when both is set.
func arrow(c canvas.Canvas, a, b canvas.Point, widthMM, headMM float64, both bool) {
	length := math.Hypot(b.X-a.X, b.Y-a.Y)
	if length == 0 {
		return
	}
	ux, uy := (b.X-a.X)/length, (b.Y-a.Y)/length
	head := func(tip canvas.Point, ux, uy float64) canvas.Point {
		at := canvas.Point{X: tip.X - ux*headMM, Y: tip.Y - uy*headMM}
		half := headMM * 0.35
		c.Draw(polygon(tip, canvas.Point{X: at.X - uy*half, Y: at.Y + ux*half},
			canvas.Point{X: at.X + uy*half, Y: at.Y - ux*half}), &canvas.Black, canvas.Pen{})
		return at
	}
	to, from := head(b, ux, uy), a
	if both {
		from = head(a, -ux, -uy)
	}
	c.Draw(polyline(from, to), nil, ink(widthMM))
}
