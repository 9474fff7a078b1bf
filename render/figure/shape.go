package figure

import (
	"math"

	"bladecard/render/canvas"
)

// rectPath is the outline of a rectangle.
func rectPath(x, y, w, h float64) canvas.Path {
	return polygon(corners(x, y, w, h)...)
}

// corners are those of a rectangle, clockwise on paper.
func corners(x, y, w, h float64) []canvas.Point {
	return []canvas.Point{{X: x, Y: y}, {X: x + w, Y: y}, {X: x + w, Y: y + h}, {X: x, Y: y + h}}
}

// xy makes points of pairs.
func xy(v ...float64) []canvas.Point {
	out := make([]canvas.Point, 0, len(v)/2+1)
	for i := 0; i+1 < len(v); i += 2 {
		out = append(out, canvas.Point{X: v[i], Y: v[i+1]})
	}
	return out
}

// polygon is the closed outline through the points.
func polygon(ps ...canvas.Point) canvas.Path {
	p := polyline(ps...)
	p.Close()
	return p
}

// polyline is the open run through the points.
func polyline(ps ...canvas.Point) canvas.Path {
	p := canvas.Path{Pieces: make([]canvas.Piece, 0, len(ps)+1)} // and the one that closes it
	for i, q := range ps {
		if i == 0 {
			p.Move(q.X, q.Y)
		} else {
			p.Line(q.X, q.Y)
		}
	}
	return p
}

// segment is the straight line between two points.
func segment(x0, y0, x1, y1 float64) canvas.Path {
	return polyline(canvas.Point{X: x0, Y: y0}, canvas.Point{X: x1, Y: y1})
}

// whisker draws a level line with strokes across both ends, which reach halfMM up and down.
func whisker(c canvas.Canvas, from, to, y, halfMM, lineMM, endMM float64) {
	c.Draw(segment(from, y, to, y), nil, ink(lineMM))
	for _, x := range []float64{from, to} {
		c.Draw(segment(x, y-halfMM, x, y+halfMM), nil, ink(endMM))
	}
}

// ink is a black pen.
func ink(widthMM float64, dash ...float64) canvas.Pen {
	return canvas.Pen{Color: canvas.Black, WidthMM: widthMM, DashMM: dash}
}

// circle is a whole circle.
func circle(m canvas.Point, radius float64) (p canvas.Path) {
	p.Move(m.X+radius, m.Y)
	arc(&p, m, radius, radius, 0, 2*math.Pi)
	p.Close()
	return p
}

// dot is a filled circle.
func dot(c canvas.Canvas, m canvas.Point, radius float64, fill canvas.Color) {
	c.Draw(circle(m, radius), &fill, canvas.Pen{})
}

// arcLine draws a thin arc about m, as arc does.
func arcLine(c canvas.Canvas, m canvas.Point, radius, start, delta float64) {
	s, co := math.Sincos(start)
	p := polyline(canvas.Point{X: m.X + radius*co, Y: m.Y + radius*s})
	arc(&p, m, radius, radius, start, delta)
	c.Draw(p, nil, ink(0.25))
}

// arc adds an elliptic arc about m as cubic curves of at most a right angle; the path must
// already stand at its start. Angles in radians, clockwise on paper from the right.
func arc(p *canvas.Path, m canvas.Point, a, b, start, delta float64) {
	n := int(math.Ceil(math.Abs(delta)/(math.Pi/2) - 1e-9))
	if n < 1 {
		return
	}
	d := delta / float64(n)
	k := 4.0 / 3 * math.Tan(d/4)
	for i := range n {
		s0, c0 := math.Sincos(start + float64(i)*d)
		s1, c1 := math.Sincos(start + float64(i+1)*d)
		p.Curve(m.X+a*(c0-k*s0), m.Y+b*(s0+k*c0), m.X+a*(c1+k*s1), m.Y+b*(s1-k*c1), m.X+a*c1, m.Y+b*s1)
	}
}

// behind is the point so far behind the printing face of a blade, which leans by deg from vertical, and so far up along it from p.
func behind(p canvas.Point, deg, back, up float64) canvas.Point {
	s, c := math.Sincos(deg * math.Pi / 180)
	return canvas.Point{X: p.X - c*back + s*up, Y: p.Y - s*back - c*up}
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
