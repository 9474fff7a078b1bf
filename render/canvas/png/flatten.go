package png

import (
	"math"

	"bladecard/render/canvas"
)

// curveSteps is how many straight pieces stand for a curve.
const curveSteps = 16

// run is a row of points without a gap.
type run struct {
	points []canvas.Point
	closed bool
}

// flatten turns a path into straight runs.
func flatten(p canvas.Path) []run {
	var out []run
	var now run
	end := func() {
		if len(now.points) > 1 {
			out = append(out, now)
		}
		now = run{}
	}
	for _, q := range p.Pieces {
		switch q.Op {
		case 'M':
			end()
			now.points = []canvas.Point{q.P}
		case 'L':
			now.points = append(now.points, q.P)
		case 'C':
			from := now.points[len(now.points)-1]
			for i := 1; i <= curveSteps; i++ {
				now.points = append(now.points, bezier(from, q.A, q.B, q.P, float64(i)/curveSteps))
			}
		case 'Z':
			now.closed = true
			end()
		}
	}
	end()
	return out
}

func bezier(p0, a, b, p1 canvas.Point, t float64) canvas.Point {
	u := 1 - t
	w0, w1, w2, w3 := u*u*u, 3*u*u*t, 3*u*t*t, t*t*t
	return canvas.Point{X: w0*p0.X + w1*a.X + w2*b.X + w3*p1.X, Y: w0*p0.Y + w1*a.Y + w2*b.Y + w3*p1.Y}
}

// dashes cuts a run into the pieces that a dash pattern draws; the whole run without one.
func dashes(points []canvas.Point, pattern []float64) [][]canvas.Point {
	var sum float64
	for _, d := range pattern {
		sum += d
	}
	if !(sum > 0) {
		return [][]canvas.Point{points}
	}
	var out [][]canvas.Point
	i, left, on := 0, pattern[0], true
	piece := []canvas.Point{points[0]}
	next := func() {
		i = (i + 1) % len(pattern)
		left, on = pattern[i], !on
	}
	for k := 1; k < len(points); k++ {
		from, to := points[k-1], points[k]
		length := math.Hypot(to.X-from.X, to.Y-from.Y)
		for at := 0.0; at < length; {
			step := math.Min(left, length-at)
			at += step
			left -= step
			q := canvas.Point{X: from.X + (to.X-from.X)*at/length, Y: from.Y + (to.Y-from.Y)*at/length}
			if on {
				piece = append(piece, q)
			}
			if left <= 1e-9 {
				if on && len(piece) > 1 {
					out = append(out, piece)
				}
				next()
				piece = []canvas.Point{q}
			}
		}
	}
	if on && len(piece) > 1 {
		out = append(out, piece)
	}
	return out
}
