package figure

import (
	"fmt"
	"math"

	"bladecard/render/canvas"
)

// Dial shows the blade at its angle, seen along its edge: the screen level, the stroke to the
// right, the blade leaning into the stroke, so that its printing face and the mesh ahead of it
// close on the ink. The ring is a protractor about the edge with the allowed range on it.
type Dial struct {
	LowDeg, SetDeg, HighDeg float64 // from vertical, 0 to 80

	Label       string // the set angle, large
	RangeLabel  string // what may be held
	ScreenLabel string // the angle to the screen
	StrokeLabel string // beside the arrow of the stroke; may be empty

	LabelPT float64 // of Label; 0: SizePT
	SizePT  float64 // of the other texts; 0: SmallestPT
}

func (d Dial) check() error {
	if !(d.LowDeg >= 0 && d.LowDeg <= d.SetDeg && d.SetDeg <= d.HighDeg && d.HighDeg <= 80) {
		return fmt.Errorf("dial: angle %v in the range %v to %v; accepted are 0 to 80 degrees, the angle within its range",
			d.SetDeg, d.LowDeg, d.HighDeg)
	}
	return nil
}

// Sizes of the dial, mm or shares of its radius.
const (
	ringMM    = 3.0  // width of the ring
	pointerMM = 2.2  // of the set mark outside the ring
	strokeMM  = 3.2  // row of the stroke arrow
	bladeOfR  = 0.17 // thickness of the rubber
	jawOfR    = 0.05 // of the holder, on each side
	leastRMM  = 9

	leastArrowMM = 5
)

// dialPlace is where the parts of a dial stand.
type dialPlace struct {
	edge canvas.Point // the blade's edge on the screen
	r    float64      // outside of the ring
	area Rect         // of the drawing without the texts
}

// most is the end of the ring, degrees from vertical.
func (d Dial) most() float64 { return math.Max(45, d.HighDeg+8) }

// Draw draws the dial inside r, the texts beside or above it, whichever leaves it larger.
func (d Dial) Draw(c canvas.Canvas, r Rect) error {
	if err := r.check("dial"); err != nil {
		return err
	}
	if err := d.check(); err != nil {
		return err
	}
	f := canvas.Font{SizePT: typeSize(d.SizePT)}
	big := canvas.Font{Face: canvas.Bold, SizePT: f.SizePT}
	if d.LabelPT > 0 {
		big.SizePT = typeSize(d.LabelPT)
	}
	label, ok1 := newBlock(c, d.Label, big, r.W)
	rang, ok2 := newBlock(c, d.RangeLabel, f, r.W)
	screen, ok3 := newBlock(c, d.ScreenLabel, f, r.W)
	stroke, ok4 := newBlock(c, d.StrokeLabel, f, 0.6*r.W)
	if !ok1 || !ok2 || !ok3 || !ok4 {
		return noRoom("dial", r, "a letter is wider than its place")
	}
	row := math.Max(strokeMM, stroke.h)
	left := r
	left.H -= row + screen.h
	above := left

	gap := 0.4 * em(f)
	col := math.Max(label.w, rang.w) + gap
	left.X, left.W = r.X+col, r.W-col
	oneRow := label.w+rang.w+2*gap <= r.W
	head := label.h + rang.h
	if oneRow {
		head = math.Max(label.h, rang.h)
	}
	above.Y, above.H = r.Y+head, above.H-head

	beside := d.radius(left) >= d.radius(above) && label.h+rang.h <= left.H
	area := above
	if beside {
		area = left
	}
	radius := d.radius(area)
	if !(radius >= leastRMM) {
		return noRoom("dial", r, fmt.Sprintf("the texts leave a radius of %.1f mm, least is %d", radius, leastRMM))
	}

	switch {
	case beside:
		label.draw(c, r.X, r.Y, label.w, 0)
		rang.draw(c, r.X, r.Y+label.h, rang.w, 0)
	case oneRow: // on one baseline
		label.draw(c, r.X, r.Y+head-label.h, label.w, 0)
		rang.draw(c, r.Right()-rang.w, r.Y+head-rang.h, rang.w, 1)
	default:
		label.draw(c, r.X, r.Y, label.w, 0)
		rang.draw(c, r.X, r.Y+label.h, rang.w, 0)
	}
	p := d.place(area, radius)
	d.drawRing(c, p)
	d.drawScreen(c, p)
	d.drawBlade(c, p)

	// The stroke goes to the right; its arrow starts below the edge.
	y := area.Bottom() + row/2
	start, end := p.edge.X, math.Min(p.edge.X+0.75*p.r, area.Right())
	if len(stroke.lines) > 0 {
		start = math.Max(start, r.X+stroke.w+gap)
		stroke.draw(c, start-gap-stroke.w, y-stroke.h/2, stroke.w, 0)
	}
	if start+leastArrowMM > end {
		end = math.Min(start+leastArrowMM, r.Right())
	}
	if start+leastArrowMM > end {
		return noRoom("dial", r, "no place for the stroke's arrow beside its label")
	}
	arrow(c, canvas.Point{X: start, Y: y}, canvas.Point{X: end, Y: y}, 0.6, 2.2, false)
	screen.draw(c, r.X, r.Bottom()-screen.h, r.W, 0.5)
	return nil
}

// reach is how far the drawing reaches left and right of the edge, for a radius of 1.
func (d Dial) reach() (left, right float64) {
	return bladeOfR + 2*jawOfR, math.Max(0.62, math.Sin(d.most()*math.Pi/180))
}

// radius is the largest that the area takes.
func (d Dial) radius(area Rect) float64 {
	l, r := d.reach()
	const rim = 0.5
	byW := (area.W - pointerMM - 2*rim) / (l + r)
	byH := area.H - pointerMM - 2*rim
	return math.Min(byW, byH)
}

// place stands the dial in the middle of the area, on its lower side.
func (d Dial) place(area Rect, radius float64) dialPlace {
	l, r := d.reach()
	w := (l+r)*radius + pointerMM
	x := area.X + (area.W-w)/2 + l*radius
	return dialPlace{edge: canvas.Point{X: x, Y: area.Bottom() - 0.5}, r: radius, area: area}
}

// at is the point at an angle from vertical and a distance from the edge.
func (p dialPlace) at(deg, dist float64) canvas.Point {
	s, c := math.Sincos(deg * math.Pi / 180)
	return canvas.Point{X: p.edge.X + s*dist, Y: p.edge.Y - c*dist}
}

// sector is the piece of the ring between two angles.
func (p dialPlace) sector(from, to, inner, outer float64) canvas.Path {
	var path canvas.Path
	a := p.at(from, outer)
	path.Move(a.X, a.Y)
	turn := (to - from) * math.Pi / 180
	arc(&path, p.edge, outer, outer, (from-90)*math.Pi/180, turn)
	b := p.at(to, inner)
	path.Line(b.X, b.Y)
	arc(&path, p.edge, inner, inner, (to-90)*math.Pi/180, -turn)
	path.Close()
	return path
}

// drawRing draws the protractor: a tick every 5 degrees, the allowed range tinted and hatched,
// a pointer at the set angle.
func (d Dial) drawRing(c canvas.Canvas, p dialPlace) {
	inner := p.r - ringMM
	c.Draw(p.sector(0, d.most(), inner, p.r), &canvas.White, canvas.Pen{})
	if d.HighDeg > d.LowDeg {
		tint := canvas.Gray(205)
		c.Draw(p.sector(d.LowDeg, d.HighDeg, inner, p.r), &tint, canvas.Pen{})
		var lines canvas.Path
		step := 1.0 / p.r * 180 / math.Pi // a line every millimetre
		for a := d.LowDeg + step/2; a < d.HighDeg; a += step {
			u, v := p.at(a, inner), p.at(a, p.r)
			lines.Move(u.X, u.Y)
			lines.Line(v.X, v.Y)
		}
		if len(lines.Pieces) > 0 {
			c.Draw(lines, nil, ink(0.2))
		}
		c.Draw(p.sector(d.LowDeg, d.HighDeg, inner, p.r), nil, ink(0.6))
	}
	var ticks canvas.Path
	for a := 0.0; a <= d.most(); a += 5 {
		length := ringMM * 0.35
		if math.Mod(a, 15) == 0 {
			length = ringMM * 0.7
		}
		u, v := p.at(a, p.r-length), p.at(a, p.r)
		ticks.Move(u.X, u.Y)
		ticks.Line(v.X, v.Y)
	}
	c.Draw(ticks, nil, ink(0.25))
	c.Draw(p.sector(0, d.most(), inner, p.r), nil, ink(0.25))
	c.Draw(polyline(p.at(0, 0), p.at(0, p.r)), nil, ink(0.2, 1.2, 0.8))

	half := 1.1 / p.r * 180 / math.Pi
	c.Draw(polyline(p.at(d.SetDeg, inner), p.at(d.SetDeg, p.r)), nil, ink(0.9))
	c.Draw(polygon(p.at(d.SetDeg, p.r), p.at(d.SetDeg+half, p.r+pointerMM), p.at(d.SetDeg-half, p.r+pointerMM)),
		&canvas.Black, canvas.Pen{})
}

// drawScreen draws the screen, the ink in the wedge ahead of the blade, and the arc of the
// angle to the screen.
func (d Dial) drawScreen(c canvas.Canvas, p dialPlace) {
	var bead canvas.Path
	size := 0.26 * p.r
	face, front := p.at(d.SetDeg, size*0.85), canvas.Point{X: p.edge.X + size, Y: p.edge.Y}
	bead.Move(p.edge.X, p.edge.Y)
	bead.Line(face.X, face.Y)
	// Round to the front: the controls carry on along the two faces' normals.
	s, co := math.Sincos(d.SetDeg * math.Pi / 180)
	k := 0.45 * size * (1 - d.SetDeg/110)
	bead.Curve(face.X+co*k, face.Y+s*k, front.X+0.1*size, front.Y-k, front.X, front.Y)
	bead.Close()
	dark := canvas.Gray(90)
	c.Draw(bead, &dark, canvas.Pen{})

	radius := 0.44 * p.r
	arcPath := canvas.Path{}
	start := p.at(90, radius)
	arcPath.Move(start.X, start.Y)
	arc(&arcPath, p.edge, radius, radius, 0, -(90-d.SetDeg)*math.Pi/180)
	c.Draw(arcPath, nil, ink(0.25))

	l, r := d.reach()
	c.Draw(polyline(canvas.Point{X: p.edge.X - l*p.r, Y: p.edge.Y}, canvas.Point{X: p.edge.X + r*p.r, Y: p.edge.Y}), nil, ink(0.7))
}

// drawBlade draws rubber and holder leaning to the right, the leading corner on the screen.
func (d Dial) drawBlade(c canvas.Canvas, p dialPlace) {
	t, j := bladeOfR*p.r, jawOfR*p.r
	reach := p.r - ringMM - 0.8
	length := math.Sqrt(reach*reach - (t+j)*(t+j))
	s, co := math.Sincos(d.SetDeg * math.Pi / 180)
	// along: up the printing face from the edge; back: away from the stroke.
	at := func(along, back float64) canvas.Point {
		return canvas.Point{X: p.edge.X + s*along - co*back, Y: p.edge.Y - co*along - s*back}
	}
	rubber := []canvas.Point{at(0, t), at(length*0.6, t), at(length*0.6, 0), at(0, 0)}
	c.Draw(polygon(rubber...), &canvas.White, canvas.Pen{})
	hatch(c, rubber, 45-d.SetDeg, 1.1, ink(0.13))
	c.Draw(polygon(rubber...), nil, ink(0.4))
	metal := canvas.Gray(200)
	c.Draw(polygon(at(length*0.5, t+j), at(length, t+j), at(length, -j), at(length*0.5, -j)), &metal, ink(0.4))
}
