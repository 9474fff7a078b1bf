package figure

import "bladecard/render/canvas"

// clipRect cuts the piece from a to b at the rectangle (Liang and Barsky 1984). ok is false
// when nothing is left.
func clipRect(a, b canvas.Point, r Rect) (p, q canvas.Point, ok bool) {
	t0, t1 := 0.0, 1.0
	dx, dy := b.X-a.X, b.Y-a.Y
	for _, e := range [4][2]float64{
		{-dx, a.X - r.X}, {dx, r.Right() - a.X}, {-dy, a.Y - r.Y}, {dy, r.Bottom() - a.Y},
	} {
		switch {
		case e[0] == 0 && e[1] < 0:
			return p, q, false
		case e[0] < 0:
			t0 = max(t0, e[1]/e[0])
		case e[0] > 0:
			t1 = min(t1, e[1]/e[0])
		}
	}
	if t0 > t1 {
		return p, q, false
	}
	at := func(t float64) canvas.Point { return canvas.Point{X: a.X + t*dx, Y: a.Y + t*dy} }
	return at(t0), at(t1), true
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
