package main

import (
	"math"

	"bladecard/render/canvas"
)

// bounds is what a path covers, its pen left out; of a curve the curve itself, not its controls.
func bounds(p canvas.Path) (x0, y0, x1, y1 float64) {
	x0, y0, x1, y1 = math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)
	add := func(q canvas.Point) { x0, y0, x1, y1 = min(x0, q.X), min(y0, q.Y), max(x1, q.X), max(y1, q.Y) }
	var last canvas.Point
	for _, q := range p.Pieces {
		if q.Op == 'Z' {
			continue
		}
		if q.Op == 'C' {
			for _, t := range append(turns(last.X, q.A.X, q.B.X, q.P.X), turns(last.Y, q.A.Y, q.B.Y, q.P.Y)...) {
				u := 1 - t
				at := func(a, b, c, d float64) float64 { return u*u*u*a + 3*u*u*t*b + 3*u*t*t*c + t*t*t*d }
				add(canvas.Point{X: at(last.X, q.A.X, q.B.X, q.P.X), Y: at(last.Y, q.A.Y, q.B.Y, q.P.Y)})
			}
		}
		add(q.P)
		last = q.P
	}
	return x0, y0, x1, y1
}

// turns lists where between 0 and 1 a cubic turns back: the roots of its slope.
func turns(a, b, c, d float64) []float64 {
	p, q, r := -a+3*b-3*c+d, 2*(a-2*b+c), b-a // slope/3 = p t^2 + q t + r
	var out []float64
	keep := func(t float64) {
		if t > 0 && t < 1 {
			out = append(out, t)
		}
	}
	if math.Abs(p) < 1e-9 {
		if q != 0 {
			keep(-r / q)
		}
		return out
	}
	if under := q*q - 4*p*r; under >= 0 {
		keep((-q + math.Sqrt(under)) / (2 * p))
		keep((-q - math.Sqrt(under)) / (2 * p))
	}
	return out
}
