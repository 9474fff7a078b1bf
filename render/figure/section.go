package figure

import (
	"errors"
	"fmt"
	"math"

	"bladecard/render/canvas"
)

// Section is the blade in its holder, cut across its length: layers, free height, edge. With a
// dimension it is drawn to scale. Without one it shows the layup: the blade is drawn as thick as
// the place and the numbers ask for, and a free height that is then too long is broken.
type Section struct {
	Layers          []Layer // front to back, drawn from left to right
	Aspect          float64 // free height / thickness
	EdgeRadius      float64 // of the corners, as a share of the thickness: 0 sharp, up to 0.5
	FreeHeightLabel string
	ThicknessLabel  string
	SizePT          float64 // of the dimensions; 0: SmallestPT
	HardnessPT      float64 // of the hardness numbers; 0: SizePT
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

// rubber is where the blade lies: free from the holder's lip down to the edge.
type rubber struct {
	x, lip, edge, w, grip float64 // grip: height inside the holder
	jaw                   float64 // thickness of a jaw of the holder
	broken                bool    // the free height is shortened
}

// Draw draws the section inside r: numbers in the layers where they fit, else in a row below.
func (s Section) Draw(c canvas.Canvas, r Rect) error {
	if err := r.check("section"); err != nil {
		return err
	}
	if err := s.check(); err != nil {
		return err
	}
	small := canvas.Font{SizePT: typeSize(s.SizePT)}
	big := canvas.Font{Face: canvas.Bold, SizePT: small.SizePT}
	if s.HardnessPT > 0 {
		big.SizePT = typeSize(s.HardnessPT)
	}
	height, ok1 := newBlock(c, s.FreeHeightLabel, small, 0.42*r.W)
	thick, ok2 := newBlock(c, s.ThicknessLabel, small, r.W)
	if !ok1 || !ok2 {
		return noRoom("section", r, "a letter is wider than its place")
	}
	const dimMM, rimMM = 2.6, 0.3
	right := 0.0 // room for the free height
	if len(height.lines) > 0 {
		right = dimMM + 1.2 + height.w
	}
	for _, inside := range []bool{true, false} {
		below := 0.0
		if len(thick.lines) > 0 {
			below = dimMM + thick.h
		}
		row := 0.0
		if !inside {
			below += 1.6 + lineEM*em(big)
			row = s.rowWidth(c, big)
		}
		b, ok := s.place(r, right, below, row)
		if len(height.lines)+len(thick.lines) == 0 {
			b, ok = s.placeShort(c, r, below, big, inside)
		}
		if !ok {
			return noRoom("section", r, "the labels leave no room for the blade")
		}
		if height.h > b.edge-r.Y {
			return noRoom("section", r, fmt.Sprintf("the free height's label is %.1f mm high", height.h))
		}
		if inside && !s.numbersFit(c, b, big) {
			continue
		}
		var numbers []place
		if !inside {
			if numbers = s.row(c, b, big, r); numbers == nil {
				return noRoom("section", r, fmt.Sprintf("the hardness numbers are %.1f mm wide together", row))
			}
		}
		s.drawHolder(c, b)
		s.drawRubber(c, b, rimMM)
		y := b.edge
		if inside {
			s.numbersInside(c, b, big)
		} else {
			for i, n := range numbers {
				if n.text == "" {
					continue
				}
				c.Draw(polyline(canvas.Point{X: s.middle(b, i), Y: b.edge - 0.8}, canvas.Point{X: s.middle(b, i), Y: b.edge + 0.3},
					canvas.Point{X: n.x + n.w/2, Y: b.edge + 1.6}), nil, ink(0.18))
				c.Text(n.x, b.edge+1.6+canvas.Ascent*em(big), n.text, big, canvas.Black, 0)
			}
			y += 1.6 + lineEM*em(big)
		}
		if len(thick.lines) > 0 {
			dimension(c, canvas.Point{X: b.x, Y: y + 1.6}, canvas.Point{X: b.x + b.w, Y: y + 1.6})
			thick.draw(c, clamp(b.x+(b.w-thick.w)/2, r.X, r.Right()-thick.w), y+dimMM, thick.w, 0.5)
		}
		if len(height.lines) > 0 {
			x := b.x + b.w + b.jaw + dimMM - 1
			dimension(c, canvas.Point{X: x, Y: b.lip}, canvas.Point{X: x, Y: b.edge})
			height.draw(c, x+1.2, clamp((b.lip+b.edge-height.h)/2, r.Y, b.edge-height.h), height.w, 0)
		}
		return nil
	}
	return nil
}

// Fit is the section without the numbers of its layers where these have no room in r: for a
// place beside which the layup is printed anyway.
func (s Section) Fit(c canvas.Canvas, r Rect) Section {
	if !errors.Is(s.Draw(nowhere{c}, r), ErrNoRoom) {
		return s
	}
	bare := s
	bare.Layers = append([]Layer(nil), s.Layers...)
	for i := range bare.Layers {
		bare.Layers[i].Hardness = ""
	}
	return bare
}

// nowhere measures like its canvas and draws nothing.
type nowhere struct{ canvas.Canvas }

func (nowhere) Draw(canvas.Path, *canvas.Color, canvas.Pen)                       {}
func (nowhere) Text(float64, float64, string, canvas.Font, canvas.Color, float64) {}

// place finds the largest blade, to scale, that leaves the stated room to the right and below,
// over the middle of a row of numbers where it can.
func (s Section) place(r Rect, right, below, row float64) (rubber, bool) {
	const rim = 0.4
	w, h := r.W-right-2*rim, r.H-below-2*rim
	// The grip is as long as the thickness; each jaw takes 0.28 of it on either side.
	t := math.Min(w/1.56, h/(s.Aspect+1))
	if !(t >= 2.5) {
		return rubber{}, false
	}
	spare := (w - 1.56*t) / 2
	left := r.X + rim + spare
	left += clamp(r.X+row/2-(left+0.78*t), 0, spare)
	return rubber{x: left + 0.28*t, lip: r.Y + rim + (h-(s.Aspect+1)*t)/2 + t,
		edge: r.Y + rim + (h-(s.Aspect+1)*t)/2 + t + s.Aspect*t, w: t, grip: t, jaw: 0.28 * t}, true
}

// middle of a layer, x.
func (s Section) middle(b rubber, layer int) float64 {
	x := b.x
	for i, l := range s.Layers {
		if i == layer {
			return x + l.Share*b.w/2
		}
		x += l.Share * b.w
	}
	return x
}

// drawHolder draws the two jaws and the back of the holder, as metal: grey and outlined.
func (s Section) drawHolder(c canvas.Canvas, b rubber) {
	metal := canvas.Gray(200)
	j, back := b.jaw, 0.2*b.grip
	top := b.lip - b.grip
	c.Draw(polygon(
		canvas.Point{X: b.x - j, Y: top}, canvas.Point{X: b.x + b.w + j, Y: top},
		canvas.Point{X: b.x + b.w + j, Y: b.lip}, canvas.Point{X: b.x + b.w, Y: b.lip},
		canvas.Point{X: b.x + b.w, Y: top + back}, canvas.Point{X: b.x, Y: top + back},
		canvas.Point{X: b.x, Y: b.lip}, canvas.Point{X: b.x - j, Y: b.lip}), &metal, ink(0.35))
}

// drawRubber draws the layers with their hatch and the outline with its corners.
func (s Section) drawRubber(c canvas.Canvas, b rubber, rimMM float64) {
	top := b.lip - 0.8*b.grip
	rad := math.Min(s.EdgeRadius*b.w, b.edge-b.lip) // no further up than the holder
	body := roundedEnd(b.x, top, b.w, b.edge-top, rad)
	c.Draw(polygon(body...), &canvas.White, canvas.Pen{})
	x := b.x
	for i, l := range s.Layers {
		w := l.Share * b.w
		angle := 45.0
		if i%2 == 1 {
			angle = -45
		}
		tint := canvas.Gray(uint8(softGray + (hardGray-softGray)*l.Hatch))
		part := stripe(body, x, x+w)
		if len(part) > 2 {
			c.Draw(polygon(part...), &tint, canvas.Pen{})
		}
		hatch(c, part, angle, softPitchMM+(hardPitchMM-softPitchMM)*l.Hatch, ink(hatchMM))
		if x += w; i < len(s.Layers)-1 {
			end := b.edge
			for _, d := range []float64{x - b.x, b.x + b.w - x} { // short of a rounded corner
				if d < rad {
					end = math.Min(end, b.edge-rad+math.Sqrt(rad*rad-(rad-d)*(rad-d)))
				}
			}
			c.Draw(polyline(canvas.Point{X: x, Y: top}, canvas.Point{X: x, Y: end}), nil, ink(0.3))
		}
	}
	c.Draw(polygon(body...), nil, ink(rimMM+0.1))
	if b.broken {
		b.drawBreak(c)
	}
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

// dimension is a line with a head at both ends and short bars across them.
func dimension(c canvas.Canvas, a, b canvas.Point) {
	length := math.Hypot(b.X-a.X, b.Y-a.Y)
	nx, ny := (b.Y-a.Y)/length*0.9, (a.X-b.X)/length*0.9
	for _, p := range []canvas.Point{a, b} {
		c.Draw(polyline(canvas.Point{X: p.X - nx, Y: p.Y - ny}, canvas.Point{X: p.X + nx, Y: p.Y + ny}), nil, ink(0.18))
	}
	arrow(c, a, b, 0.18, math.Min(1.4, length/3), true)
}
