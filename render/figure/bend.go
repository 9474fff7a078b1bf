package figure

import (
	"cmp"
	"fmt"
	"math"

	"bladecard/render/canvas"
)

// Bend is a blade pressed on the screen, seen along its edge: the holder at the angle that was set, the
// rubber bent until its edge leans at another. Several beside each other show what hardness does.
type Bend struct {
	SetDeg, EdgeDeg float64 // from vertical; the edge leans at least as far as the holder, up to 80
	Share           float64 // of hard rubber, 0 softest to 1 hardest: how dark it is
	SetLabel        string  // over the holder
	EdgeLabel       string  // beside the edge
	Label           string  // below the screen: which blade
	SizePT          float64 // of the labels; 0: SmallestPT
}

func (b Bend) check() error {
	if !(b.SetDeg >= 0 && b.SetDeg <= b.EdgeDeg && b.EdgeDeg <= 80) || !(b.Share >= 0 && b.Share <= 1) {
		return fmt.Errorf("bend: set %v, edge %v, share %v; accepted are 0 to 80 degrees, the edge no more upright than the holder, and a share of 0 to 1",
			b.SetDeg, b.EdgeDeg, b.Share)
	}
	return nil
}

// The blade in shares of its free height.
const (
	bendThick  = 0.34
	bendGrip   = 0.34 // of the holder along the blade
	bendJaw    = 0.08 // of the holder beside the rubber
	bendSteps  = 24
	bendArrow  = -0.1 // how high the arrow of the stroke stands
	bendRay    = 0.9  // of the line that carries the edge's lean on
	leastBendH = 8.0  // mm of free height
)

// Tints of the softest and the hardest rubber.
const (
	softGray = 250
	hardGray = 195
)

// face is the printing face of a blade of free height 1, from the edge up to the holder, with the lean there. A
// blade that is held at one end and pushed at the other leans along its length as the square of the distance.
func (b Bend) face() (ps []canvas.Point, deg []float64) {
	at := canvas.Point{}
	for i := range bendSteps + 1 {
		share := float64(i) / bendSteps
		d := b.EdgeDeg - (b.EdgeDeg-b.SetDeg)*share*share
		ps, deg = append(ps, at), append(deg, d)
		at = behind(at, d, 0, 1.0/bendSteps)
	}
	return ps, deg
}

// parts are the rubber, the holder and the end of the line of the edge, for a free height of 1 and the edge at 0, 0.
func (b Bend) parts() (rubber, holder []canvas.Point, ray canvas.Point) {
	face, deg := b.face()
	rubber = append(rubber, face...)
	for i := len(face) - 1; i >= 0; i-- {
		rubber = append(rubber, behind(face[i], deg[i], bendThick, 0))
	}
	top := face[bendSteps]
	for _, v := range [][2]float64{{-bendJaw, 0}, {-bendJaw, bendGrip}, {bendThick + bendJaw, bendGrip}, {bendThick + bendJaw, 0}} {
		holder = append(holder, behind(top, b.SetDeg, v[0], v[1]))
	}
	return rubber, holder, behind(canvas.Point{}, b.EdgeDeg, 0, bendRay)
}

// bendPlan is a blade with its measured labels.
type bendPlan struct {
	Bend
	set, edge, label block
	rubber, holder   []canvas.Point // for a free height of 1 and the edge at 0, 0
	ray              canvas.Point   // end of the line of the edge
	w                Interval       // of all, without the label of the edge
	h                float64
}

// Gaps between the parts and around them, mm.
const (
	bendGapMM = 1.0
	bendRimMM = 0.4
)

// plan measures the labels and finds the largest free height in mm that has room.
func (b Bend) plan(c canvas.Canvas, r Rect) (p bendPlan, k float64, err error) {
	if err = cmp.Or(r.check("bend"), b.check()); err != nil {
		return p, 0, err
	}
	f := bold(canvas.Font{SizePT: typeSize(b.SizePT)})
	p = bendPlan{Bend: b, set: newBlock(c, b.SetLabel, f, r.W, 0), edge: newBlock(c, b.EdgeLabel, f, r.W/2, 0), label: newBlock(c, b.Label, f, r.W, 0), w: Interval{-0.15, 0.95}}
	p.rubber, p.holder, p.ray = b.parts()
	for _, q := range append(append([]canvas.Point{p.ray}, p.rubber...), p.holder...) {
		p.w.grow(q.X)
		p.h = math.Max(p.h, -q.Y)
	}
	k = math.Min((r.W-2*bendRimMM)/(p.w.High-p.w.Low), (r.H-p.set.h-p.label.h-2*bendGapMM-bendRimMM)/p.h)
	k = math.Min(k, (r.W-2*bendRimMM-p.edge.w-bendGapMM)/math.Max(0.1, p.ray.X-p.w.Low)) // its label stands beside the line of the edge
	if !(k >= leastBendH) || math.Max(p.set.w, p.label.w) > r.W {
		return p, 0, noRoom("bend", r, fmt.Sprintf("the labels leave a blade %.1f mm high, least is %g", k, leastBendH))
	}
	return p, k, nil
}

// draw draws the blade with a free height of k mm.
func (b bendPlan) draw(c canvas.Canvas, r Rect, k float64) {
	right := math.Max(k*b.w.High, k*b.ray.X+bendGapMM+b.edge.w)
	origin := canvas.Point{X: r.X + bendRimMM + (r.W-2*bendRimMM-right+k*b.w.Low)/2 - k*b.w.Low, Y: r.Bottom() - b.label.h - bendGapMM}
	at := func(ps ...canvas.Point) (out []canvas.Point) {
		for _, p := range ps {
			out = append(out, canvas.Point{X: origin.X + k*p.X, Y: origin.Y + k*p.Y})
		}
		return out
	}
	face := behind(canvas.Point{}, b.EdgeDeg, 0, 0.2)
	wedge := []canvas.Point{{}, face}
	for i := 1; i <= 6; i++ { // the ink before the edge rolls down to the screen
		turn, fall := math.Sincos(float64(i) * math.Pi / 12)
		wedge = append(wedge, canvas.Point{X: face.X + (0.3-face.X)*turn, Y: face.Y * fall})
	}
	bead, tint, metal := canvas.Gray(90), canvas.Gray(uint8(softGray+(hardGray-softGray)*b.Share)), canvas.Gray(150)
	c.Draw(polygon(at(wedge...)...), &bead, canvas.Pen{})
	holder := at(b.holder...)
	c.Draw(polygon(at(b.rubber...)...), &tint, ink(0.35))
	c.Draw(polygon(holder...), &metal, ink(0.35))
	ends := at(b.ray, canvas.Point{Y: -b.h}, canvas.Point{X: b.w.Low}, canvas.Point{X: b.w.High})
	tip, top, left, far := ends[0], ends[1], ends[2], ends[3]
	c.Draw(polyline(origin, top), nil, ink(0.2, 1.2, 0.8))
	c.Draw(polyline(origin, tip), nil, ink(0.3))
	arcLine(c, origin, 0.55*k, -math.Pi/2, b.EdgeDeg*math.Pi/180)
	c.Draw(polyline(left, far), nil, ink(0.7))
	stroke := at(xy(0.4, bendArrow, 0.8, bendArrow, 0.78, bendArrow-0.05, 0.94, bendArrow, 0.78, bendArrow+0.05)...)
	c.Draw(polyline(stroke[:2]...), nil, ink(0.8))
	c.Draw(polygon(stroke[2:]...), &canvas.Black, canvas.Pen{})
	low := r.Y + b.set.h // the label of the edge stands below the holder
	for _, q := range holder {
		low = math.Max(low, q.Y)
	}
	middle := func(l block, x, y float64) { l.draw(c, clamp(x-l.w/2, r.X, r.Right()-l.w), y, l.w, 0.5) }
	b.edge.draw(c, math.Min(tip.X+bendGapMM, r.Right()-b.edge.w), math.Max(low, tip.Y-b.edge.h/2), b.edge.w, 0)
	middle(b.set, (holder[1].X+holder[2].X)/2, top.Y-b.set.h-bendGapMM/2)
	middle(b.label, (left.X+far.X)/2, r.Bottom()-b.label.h)
}

// Bends draws blades beside each other, all to one scale.
type Bends []Bend

// Draw draws each in an equal part of r, as large as the labels let them.
func (bs Bends) Draw(c canvas.Canvas, r Rect) error {
	if len(bs) == 0 {
		return fmt.Errorf("bends: %w: no blade", ErrNoData)
	}
	r.W /= float64(len(bs))
	plans, least := make([]bendPlan, len(bs)), math.Inf(1)
	for i, b := range bs {
		p, k, err := b.plan(c, r)
		if err != nil {
			return err
		}
		plans[i], least = p, math.Min(least, k)
	}
	for _, p := range plans {
		p.draw(c, r, least)
		r.X += r.W
	}
	return nil
}
