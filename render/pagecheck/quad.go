package pagecheck

import (
	"math"

	"bladecard/render/canvas"
	"bladecard/render/page"
)

// quad is a rectangle that may stand at an angle, corners in order.
type quad [4]canvas.Point

// textQuad is the ink of a placed text.
func textQuad(t canvas.PlacedText) quad {
	above, below := canvas.Ink(t.Text, t.Font)
	w := canvas.Width(t.Text, t.Font)
	sin, cos := math.Sincos(t.AngleDeg * math.Pi / 180)
	at := func(along, up float64) canvas.Point { // y points down on paper
		return canvas.Point{X: t.At.X + along*cos - up*sin, Y: t.At.Y - along*sin - up*cos}
	}
	return quad{at(0, above), at(w, above), at(w, -below), at(0, -below)}
}

func rectQuad(r page.Rect) quad {
	return quad{{X: r.X, Y: r.Y}, {X: r.Right(), Y: r.Y}, {X: r.Right(), Y: r.Bottom()}, {X: r.X, Y: r.Bottom()}}
}

// overlap tells by how much two quads overlap at least, in mm: the smallest shift that parts
// them along one of their sides' normals, 0 or less if they are apart.
func (q quad) overlap(o quad) float64 {
	least := math.Inf(1)
	for _, s := range []quad{q, o} {
		for i := range 2 {
			dx, dy := s[i+1].X-s[i].X, s[i+1].Y-s[i].Y
			n := math.Hypot(dx, dy)
			if n == 0 {
				return 0
			}
			a0, a1 := q.span(-dy/n, dx/n)
			b0, b1 := o.span(-dy/n, dx/n)
			least = min(least, min(a1-b0, b1-a0))
		}
	}
	return least
}

func (q quad) span(nx, ny float64) (lo, hi float64) {
	lo, hi = math.Inf(1), math.Inf(-1)
	for _, p := range q {
		d := p.X*nx + p.Y*ny
		lo, hi = min(lo, d), max(hi, d)
	}
	return lo, hi
}

// bounds is the upright rectangle around the quad.
func (q quad) bounds() page.Rect {
	x0, x1 := q.span(1, 0)
	y0, y1 := q.span(0, 1)
	return page.Rect{X: x0, Y: y0, W: x1 - x0, H: y1 - y0}
}

// PathBounds is the upright rectangle around a path with its pen; curves are sampled. ok is
// false for an empty path.
func PathBounds(p canvas.Path, pen canvas.Pen) (r page.Rect, ok bool) {
	x0, y0, x1, y1 := math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)
	add := func(x, y float64) {
		x0, y0, x1, y1 = min(x0, x), min(y0, y), max(x1, x), max(y1, y)
	}
	var last canvas.Point
	for _, q := range p.Pieces {
		switch q.Op {
		case 'Z':
			continue
		case 'C':
			const steps = 16
			for i := 1; i < steps; i++ {
				t := float64(i) / steps
				u := 1 - t
				a, b, c, d := u*u*u, 3*u*u*t, 3*u*t*t, t*t*t
				add(a*last.X+b*q.A.X+c*q.B.X+d*q.P.X, a*last.Y+b*q.A.Y+c*q.B.Y+d*q.P.Y)
			}
		}
		add(q.P.X, q.P.Y)
		last = q.P
	}
	if x1 < x0 {
		return page.Rect{}, false
	}
	h := pen.WidthMM / 2
	return page.Rect{X: x0 - h, Y: y0 - h, W: x1 - x0 + 2*h, H: y1 - y0 + 2*h}, true
}

// overlap tells by how much two rectangles overlap, as quad.overlap does for those at an angle. A rectangle
// without width or height covers nothing.
func overlap(r, o page.Rect) float64 {
	if r.W == 0 || r.H == 0 || o.W == 0 || o.H == 0 {
		return 0
	}
	return min(r.Right()-o.X, o.Right()-r.X, r.Bottom()-o.Y, o.Bottom()-r.Y)
}

// beyond is how far r reaches out of outer, in mm; 0 or less if it does not.
func beyond(r, outer page.Rect) float64 {
	return max(outer.X-r.X, outer.Y-r.Y, r.Right()-outer.Right(), r.Bottom()-outer.Bottom())
}

// finite tells whether all numbers are.
func finite(vs ...float64) bool {
	for _, v := range vs {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			return false
		}
	}
	return true
}
