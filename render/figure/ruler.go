package figure

import (
	"math"

	"bladecard/render/canvas"
)

// Ruler lays films on one scale: the target as a ground with its label over it, the set point with its own band, and
// below it a row for each change, an arrow that ends where the film would then be. A row with a Span has a bar in
// place of an arrow; one that is no help is hollow and crossed out.
type Ruler struct {
	Target, Band Interval // Band is that of the set point
	Set          float64
	SetLabel     string
	TargetLabel  string // over the ground
	Unit         string // before the scale
	Rows         []RulerRow
	Format       func(x float64, decimals int) string
	SizePT       float64
}

// RulerRow is one change on a ruler.
type RulerRow struct {
	Label, Effect string // on the left; the effect stands to the right of the label
	Tag           string // at the end of the arrow, or of the bar
	To            float64
	Span          *Interval
	NoHelp        bool // with a Span: nobody can tell it from the set point
}

// rulerPitchEM is the pitch of a ruler's rows, in em: a tilde on a capital stays clear of what hangs down from the row above.
const rulerPitchEM = 1.17

// Over the changes stand, in rows: the label of the target, the numbers of the scale, and the scale with the set point on it.
const (
	rulerScale = 2.3 // from the top to the scale
	rulerHead  = 2.5 // from the top to the first change
)

// Height is what the ruler takes, mm.
func (s Ruler) Height() float64 {
	return (float64(len(s.Rows)) + rulerHead) * rulerPitchEM * em(canvas.Font{SizePT: typeSize(s.SizePT)})
}

// ends are the lowest and the highest film on the ruler.
func (s Ruler) ends() (lo, hi float64) {
	lo, hi = math.Min(s.Target.Low, s.Band.Low), math.Max(s.Target.High, s.Band.High)
	for _, w := range s.Rows {
		if w.Span == nil {
			lo, hi = math.Min(lo, w.To), math.Max(hi, w.To)
		}
	}
	return lo, hi
}

// Draw draws the ruler at the top of r.
func (s Ruler) Draw(c canvas.Canvas, r Rect) error {
	if err := r.check("ruler"); err != nil {
		return err
	}
	f := canvas.Font{SizePT: typeSize(s.SizePT)}
	bold := canvas.Font{Face: canvas.Bold, SizePT: f.SizePT}
	pitch, gap := rulerPitchEM*em(f), 0.5*em(f)
	names, alone, effects, tags := 0.0, c.TextWidth(s.SetLabel, f), 0.0, 0.0
	for _, w := range s.Rows {
		if w.Effect == "" {
			alone = math.Max(alone, c.TextWidth(w.Label, w.face(f)))
		} else {
			names, effects = math.Max(names, c.TextWidth(w.Label, bold)+gap), math.Max(effects, c.TextWidth(w.Effect, bold))
		}
		tags = math.Max(tags, w.tagWidth(c, f))
	}
	names = math.Min(math.Max(names, alone-effects-gap), 0.42*r.W-effects) // what has no effect behind it takes its room
	x0, x1 := r.X+names+effects+3*gap, r.Right()-gap
	lo, hi := s.ends()
	if !finite(lo, hi) || x1-x0 < tags+8 || s.Height() > r.H+0.01 {
		return noRoom("ruler", r, "the names and the tags leave no scale")
	}
	lo, hi = lo-0.04*(hi-lo), hi+0.04*(hi-lo)
	for _, w := range s.Rows { // a tag that fits neither behind the tail nor beyond the head gets its room there
		tag, tail, head := w.tagWidth(c, f)+2*gap, s.Set, w.To
		if w.Span != nil {
			tail, head = clamp(w.Span.Low, lo, hi), clamp(w.Span.High, lo, hi)
		}
		if mmPerUM := (x1 - x0) / (hi - lo); (head-lo)*mmPerUM+tag > x1-x0 && (tail-lo)*mmPerUM < tag {
			hi = lo + (head-lo)*(x1-x0)/(x1-x0-tag)
		}
	}
	at := func(um float64) float64 { return x0 + (x1-x0)*(um-lo)/(hi-lo) }
	base := func(row float64) float64 { return r.Y + row*pitch + (pitch+capEM*em(f))/2 }
	middle := func(row float64) float64 { return r.Y + (row+0.5)*pitch }

	ground, scale := canvas.Gray(222), r.Y+rulerScale*pitch
	low, high := at(s.Target.Low), at(s.Target.High)
	c.Draw(rectPath(low, r.Y+pitch, high-low, s.Height()-pitch), &ground, canvas.Pen{})
	wide := c.TextWidth(s.TargetLabel, f)
	c.Text(clamp((low+high-wide)/2, r.X+c.TextWidth(s.Unit, f)+3*gap, r.Right()-wide), base(0), s.TargetLabel, f, canvas.Black, 0)
	c.Text(r.X, base(0), s.Unit, f, canvas.Black, 0)
	s.drawScale(c, r, lo, hi, at, f, base(1), scale)
	x := at(s.Set)
	c.Draw(polyline(canvas.Point{X: x, Y: scale}, canvas.Point{X: x, Y: r.Y + s.Height() - 0.1}), nil, ink(0.2, 0.8, 0.8))
	c.Text(r.X, base(rulerHead-1), s.SetLabel, f, canvas.Black, 0)
	from, to := at(s.Band.Low), at(s.Band.High)
	c.Draw(polyline(canvas.Point{X: from, Y: scale}, canvas.Point{X: to, Y: scale}), nil, ink(0.7))
	for _, end := range []float64{from, to} {
		c.Draw(polyline(canvas.Point{X: end, Y: scale - 0.9}, canvas.Point{X: end, Y: scale + 0.9}), nil, ink(0.5))
	}
	dot(c, canvas.Point{X: x, Y: scale}, 1.1, canvas.Black)
	for i, w := range s.Rows {
		row := float64(i) + rulerHead
		face, room := w.face(f), names
		if w.Effect == "" {
			room += effects + gap
		}
		label, _ := canvas.Cut(w.Label, face, room+0.01)
		c.Text(r.X, base(row), label, face, canvas.Black, 0)
		c.Text(r.X+names+gap+effects-c.TextWidth(w.Effect, bold), base(row), w.Effect, bold, canvas.Black, 0)
		left, right := x, at(w.To)
		if w.Span != nil {
			left, right = at(clamp(w.Span.Low, lo, hi)), at(clamp(w.Span.High, lo, hi))
			right = math.Max(right, left+0.6)
			fill, pen := &canvas.Black, canvas.Pen{}
			if w.NoHelp {
				fill, pen = &canvas.White, ink(0.2)
			}
			c.Draw(rectPath(left, middle(row)-0.9, right-left, 1.8), fill, pen)
		} else {
			arrow(c, canvas.Point{X: left, Y: middle(row)}, canvas.Point{X: right, Y: middle(row)}, 0.7, math.Min(2.2, math.Abs(right-left)), false)
		}
		left, right = math.Min(left, right), math.Max(left, right)
		wide := w.tagWidth(c, f)
		start, before := right+gap, left-gap-wide // beyond the head; where that leaves the ruler, behind the tail
		if downward := w.Span == nil && w.To < s.Set; before >= x0 && (downward || start+wide > r.Right()) {
			start = before
		}
		start = math.Min(start, r.Right()-wide)
		if w.NoHelp {
			cross(c, canvas.Point{X: start + crossMM, Y: middle(row)})
		}
		c.Text(start+wide-c.TextWidth(w.Tag, f), base(row), w.Tag, f, canvas.Black, 0)
	}
	return nil
}

// drawScale draws the scale at y with numbers over it.
func (s Ruler) drawScale(c canvas.Canvas, r Rect, lo, hi float64, at func(float64) float64, f canvas.Font, base, y float64) {
	c.Draw(polyline(canvas.Point{X: at(lo), Y: y}, canvas.Point{X: at(hi), Y: y}), nil, ink(0.25))
	step := roundStep((hi - lo) / 7)
	for v := math.Ceil(lo/step) * step; v <= hi; v += step {
		c.Draw(polyline(canvas.Point{X: at(v), Y: y}, canvas.Point{X: at(v), Y: y - 0.8}), nil, ink(0.25))
		label := s.Format(v+0, digits(step))
		if w := c.TextWidth(label, f); at(v)+w/2 <= r.Right() && at(v)-w/2 > r.X+c.TextWidth(s.SetLabel, f) {
			c.Text(at(v)-w/2, base, label, f, canvas.Black, 0)
		}
	}
}

// crossMM is half the side of a cross.
const crossMM = 0.8

// face is that of a label: a change is bold.
func (w RulerRow) face(f canvas.Font) canvas.Font {
	if w.Span == nil {
		f.Face = canvas.Bold
	}
	return f
}

// tagWidth is that of a tag with the cross before it.
func (w RulerRow) tagWidth(c canvas.Canvas, f canvas.Font) float64 {
	if w.NoHelp {
		return 4*crossMM + c.TextWidth(w.Tag, f)
	}
	return c.TextWidth(w.Tag, f)
}

// cross draws a cross around p.
func cross(c canvas.Canvas, p canvas.Point) {
	for _, d := range []float64{crossMM, -crossMM} {
		c.Draw(polyline(canvas.Point{X: p.X - crossMM, Y: p.Y - d}, canvas.Point{X: p.X + crossMM, Y: p.Y + d}), nil, ink(0.5))
	}
}
