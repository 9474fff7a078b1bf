package figure

import (
	"fmt"
	"math"

	"bladecard/render/canvas"
)

// Section is the blade in its holder, cut across its length: layers, free height, edge. It shows
// the layup and is not to scale: the blade is drawn as thick as the place and the numbers ask for,
// and a free height that is then too long is broken.
type Section struct {
	Layers     []Layer // front to back, drawn from left to right
	Aspect     float64 // free height / thickness
	EdgeRadius float64 // of the corners, as a share of the thickness: 0 sharp, up to 0.5
	SizePT     float64 // of the hardness numbers; 0: SmallestPT
}

// Layer is one layer of the rubber.
type Layer struct {
	Share    float64 // of the thickness
	Hardness string  // as it is to be printed; empty on all layers: no numbers
	Hatch    float64 // 0 softest, widest hatch, to 1 hardest, closest
}

// Hatch and tint for the softest and the hardest rubber: a printer that loses one keeps the other.
const (
	softPitchMM = 2.6
	hardPitchMM = 0.7
	hatchMM     = 0.16 // width of the lines
	softGray    = 250
	hardGray    = 195
)

// check refuses a blade that is none.
func (s Section) check() error {
	if len(s.Layers) == 0 {
		return fmt.Errorf("section: %w: no layers", ErrNoData)
	}
	sum := 0.0
	for i, l := range s.Layers {
		if !(l.Share > 0 && l.Share <= 1) || !(l.Hatch >= 0 && l.Hatch <= 1) {
			return fmt.Errorf("section: layer %d: share %v, hatch %v; accepted are a share over 0 to 1 and a hatch of 0 to 1", i+1, l.Share, l.Hatch)
		}
		sum += l.Share
	}
	if !(math.Abs(sum-1) < 1e-3) {
		return fmt.Errorf("section: the shares of the layers add up to %.4g; accepted is 1", sum)
	}
	if !(s.Aspect >= 0.2 && s.Aspect <= 20) {
		return fmt.Errorf("section: free height is %v times the thickness; accepted is 0.2 to 20", s.Aspect)
	}
	if !(s.EdgeRadius >= 0 && s.EdgeRadius <= 0.5) {
		return fmt.Errorf("section: edge radius is %v of the thickness; accepted is 0 to 0.5", s.EdgeRadius)
	}
	return nil
}

// Shapes of the blade.
const (
	shortAspect = 1.25 // free height / thickness that is aimed at
	leastAspect = 0.62 // that the numbers may bring it down to
	gripOfW     = 0.28 // height in the holder / thickness
	jawOfW      = 0.1  // a jaw of the holder / thickness
	breakMM     = 1.6  // height of the break
)

// rubber is where the blade lies: free from the holder's lip down to the edge.
type rubber struct {
	x, lip, edge, w float64
	broken          bool // the free height is shortened
}

// Draw draws the section inside r: with numbers in the layers where they fit, else in a row
// below, else with none, for the layup is printed beside it.
func (s Section) Draw(c canvas.Canvas, r Rect) error {
	if err := r.check("section"); err != nil {
		return err
	}
	if err := s.check(); err != nil {
		return err
	}
	f := canvas.Font{Face: canvas.Bold, SizePT: typeSize(s.SizePT)}
	if b, ok := s.place(r, 0, s.widthInside(c, f)); ok && s.numbersFit(c, b, f) {
		s.drawBlade(c, b)
		s.numbersInside(c, b, f)
		return nil
	}
	if b, ok := s.place(r, rowMM+lineEM*em(f), 0); ok {
		if at, ok := s.row(c, b, f, r); ok {
			s.drawBlade(c, b)
			s.numbersBelow(c, b, f, at)
			return nil
		}
	}
	b, ok := s.place(r, 0, 0)
	if !ok {
		return noRoom("section", r, "a blade would be thinner than 2.5 mm")
	}
	s.drawBlade(c, b)
	return nil
}

// place finds the blade that takes the whole height but for what is left free below it, and is
// at least least thick. ok is false where it would be too thin to show its layers.
func (s Section) place(r Rect, below, least float64) (b rubber, ok bool) {
	const rim = 0.4
	w, h := r.W-2*rim, r.H-below-2*rim
	aspect := math.Min(s.Aspect, shortAspect)
	most := math.Min(w/(1+2*jawOfW), h/(math.Min(aspect, leastAspect)+gripOfW))
	t := math.Min(math.Max(h/(aspect+gripOfW), least), most)
	if !(t >= 2.5) {
		return rubber{}, false
	}
	free := math.Min(h-gripOfW*t, s.Aspect*t)
	lip := r.Y + rim + (h-free-gripOfW*t)/2 + gripOfW*t
	return rubber{x: r.X + (r.W-t)/2, lip: lip, edge: lip + free, w: t, broken: free < s.Aspect*t-1e-6 && free > 3*breakMM}, true
}

// middle of a layer, x.
func (s Section) middle(b rubber, layer int) float64 {
	x := b.x
	for _, l := range s.Layers[:layer] {
		x += l.Share * b.w
	}
	return x + s.Layers[layer].Share*b.w/2
}

// drawBlade draws the holder and in it the rubber: tint, hatch, the lines between the layers,
// the outline, the break.
func (s Section) drawBlade(c canvas.Canvas, b rubber) {
	b.drawHolder(c)
	top := b.lip - 0.8*gripOfW*b.w
	radius := math.Min(s.EdgeRadius*b.w, b.edge-b.lip) // no further up than the holder
	body := roundedEnd(b.x, top, b.w, b.edge-top, radius)
	s.drawLayers(c, b, body)
	s.drawJoints(c, b, top, radius)
	c.Draw(polygon(body...), nil, ink(0.4))
	if b.broken {
		b.drawBreak(c)
	}
}

// drawHolder draws the two jaws and the back of the holder, as metal: gray and outlined.
func (b rubber) drawHolder(c canvas.Canvas) {
	metal := canvas.Gray(200)
	j, grip := jawOfW*b.w, gripOfW*b.w
	top, back := b.lip-grip, b.lip-0.8*grip
	left, right := b.x, b.x+b.w
	c.Draw(polygon(
		canvas.Point{X: left - j, Y: top}, canvas.Point{X: right + j, Y: top},
		canvas.Point{X: right + j, Y: b.lip}, canvas.Point{X: right, Y: b.lip},
		canvas.Point{X: right, Y: back}, canvas.Point{X: left, Y: back},
		canvas.Point{X: left, Y: b.lip}, canvas.Point{X: left - j, Y: b.lip}), &metal, ink(0.35))
}

// drawLayers tints and hatches each layer of the body, the harder the darker and the closer.
func (s Section) drawLayers(c canvas.Canvas, b rubber, body []canvas.Point) {
	x := b.x
	for i, l := range s.Layers {
		angle := 45.0
		if i%2 == 1 {
			angle = -45
		}
		tint := canvas.Gray(uint8(softGray + (hardGray-softGray)*l.Hatch))
		part := stripe(body, x, x+l.Share*b.w)
		if len(part) > 2 {
			c.Draw(polygon(part...), &tint, canvas.Pen{})
		}
		hatch(c, part, angle, softPitchMM+(hardPitchMM-softPitchMM)*l.Hatch, ink(hatchMM))
		x += l.Share * b.w
	}
}

// drawJoints draws the lines between the layers, each down to the edge or to its rounded corner.
func (s Section) drawJoints(c canvas.Canvas, b rubber, top, radius float64) {
	x := b.x
	for _, l := range s.Layers[:len(s.Layers)-1] {
		x += l.Share * b.w
		end := b.edge
		if d := radius - math.Min(x-b.x, b.x+b.w-x); d > 0 {
			end += math.Sqrt(radius*radius-d*d) - radius
		}
		c.Draw(polyline(canvas.Point{X: x, Y: top}, canvas.Point{X: x, Y: end}), nil, ink(0.3))
	}
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

// roundedEnd is a rectangle whose two lower corners are rounded, clockwise on paper.
func roundedEnd(x, y, w, h, radius float64) []canvas.Point {
	ps := []canvas.Point{{X: x, Y: y}, {X: x + w, Y: y}}
	const n = 8
	corner := func(cx, from float64) {
		for i := range n + 1 {
			s, c := math.Sincos((from + 90*float64(i)/n) * math.Pi / 180)
			ps = append(ps, canvas.Point{X: cx + radius*c, Y: y + h - radius + radius*s})
		}
	}
	if radius > 0 {
		corner(x+w-radius, 0)
		corner(x+radius, 90)
	} else {
		ps = append(ps, canvas.Point{X: x + w, Y: y + h}, canvas.Point{X: x, Y: y + h})
	}
	return ps
}

// stripe cuts the part of a convex polygon between two uprights (Sutherland and Hodgman 1974).
func stripe(poly []canvas.Point, x0, x1 float64) []canvas.Point {
	keep := func(ps []canvas.Point, in func(canvas.Point) bool, x float64) (out []canvas.Point) {
		for i, p := range ps {
			q := ps[(i+1)%len(ps)]
			if in(p) {
				out = append(out, p)
			}
			if in(p) != in(q) {
				t := (x - p.X) / (q.X - p.X)
				out = append(out, canvas.Point{X: x, Y: p.Y + t*(q.Y-p.Y)})
			}
		}
		return out
	}
	left := keep(poly, func(p canvas.Point) bool { return p.X >= x0 }, x0)
	return keep(left, func(p canvas.Point) bool { return p.X <= x1 }, x1)
}
