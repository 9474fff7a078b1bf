package figure

import (
	"math"

	"bladecard/render/canvas"
)

// Ruler lays films on one scale: the target as a ground, the set point with its own band, and below it a row for
// each change, an arrow that ends where the film would then be. A row with a Span has a bar in place of an arrow.
type Ruler struct {
	Target, Band Interval // Band is that of the set point
	Set          float64
	SetLabel     string
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
}

// rulerPitchEM is the pitch of a ruler's rows, in em.
const rulerPitchEM = 1.2

// Height is what the ruler takes, mm: the scale, the set point, the rows.
func (s Ruler) Height() float64 {
	return float64(len(s.Rows)+2) * rulerPitchEM * em(canvas.Font{SizePT: typeSize(s.SizePT)})
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

// scaled is a ruler with its places on paper.
type scaled struct {
	Ruler
	c              canvas.Canvas
	r              Rect
	plain, bold    canvas.Font
	pitch, gap     float64
	names, effects float64 // width of these columns
	x0, x1         float64 // of the scale
	lo, hi         float64 // on it
}

func (s *scaled) at(um float64) float64     { return s.x0 + (s.x1-s.x0)*(um-s.lo)/(s.hi-s.lo) }
func (s *scaled) within(um float64) float64 { return clamp(um, s.lo, s.hi) }
func (s *scaled) width(text string) float64 { return s.c.TextWidth(text, s.plain) }
func (s *scaled) middle(row int) float64    { return s.r.Y + (float64(row)+0.5)*s.pitch }
func (s *scaled) base(row int) float64 {
	return s.r.Y + float64(row)*s.pitch + (s.pitch+capEM*em(s.plain))/2
}

// Draw draws the ruler at the top of r.
func (s Ruler) Draw(c canvas.Canvas, r Rect) error {
	if err := r.check("ruler"); err != nil {
		return err
	}
	p := &scaled{Ruler: s, c: c, r: r, plain: canvas.Font{SizePT: typeSize(s.SizePT)}}
	p.bold = bold(p.plain)
	if err := p.measure(); err != nil {
		return err
	}
	ground, low, x, bottom := canvas.Gray(222), p.at(s.Target.Low), p.at(s.Set), r.Y+s.Height()
	c.Draw(rectPath(low, r.Y+p.pitch, p.at(s.Target.High)-low, s.Height()-p.pitch), &ground, canvas.Pen{})
	p.drawScale(r.Y + p.pitch)
	c.Draw(segment(x, r.Y+p.pitch, x, bottom-0.1), nil, ink(0.2, 0.8, 0.8))
	c.Text(r.X, p.base(1), s.SetLabel, p.plain, canvas.Black, 0)
	whisker(c, p.at(s.Band.Low), p.at(s.Band.High), p.middle(1), 0.9, 0.5)
	dot(c, canvas.Point{X: x, Y: p.middle(1)}, 1.1, canvas.Black)
	for i, w := range s.Rows {
		p.drawRow(i+2, w)
	}
	return nil
}

// measure finds the columns and the scale.
func (s *scaled) measure() error {
	tags := 0.0
	s.pitch, s.gap, s.names = rulerPitchEM*em(s.plain), 0.5*em(s.plain), s.width(s.SetLabel)
	for _, w := range s.Rows {
		s.names = math.Max(s.names, s.c.TextWidth(w.Label, s.bold))
		s.effects, tags = math.Max(s.effects, s.c.TextWidth(w.Effect, s.bold)), math.Max(tags, s.width(w.Tag))
	}
	s.names = math.Min(s.names, 0.42*s.r.W-s.effects)
	s.x0, s.x1 = s.r.X+s.names+s.effects+3*s.gap, s.r.Right()-s.gap
	lo, hi := s.ends()
	if !finite(lo, hi) || s.x1-s.x0 < tags+8 || s.Height() > s.r.H+0.01 {
		return noRoom("ruler", s.r, "the names and the tags leave no scale")
	}
	s.lo, s.hi = lo-0.04*(hi-lo), hi+0.04*(hi-lo)
	for _, w := range s.Rows { // a tag that fits neither behind the tail nor beyond the head gets its room there
		tag, tail, head := s.width(w.Tag)+2*s.gap, s.Set, w.To
		if w.Span != nil {
			tail, head = s.within(w.Span.Low), s.within(w.Span.High)
		}
		if mmPerUM := (s.x1 - s.x0) / (s.hi - s.lo); (head-s.lo)*mmPerUM+tag > s.x1-s.x0 && (tail-s.lo)*mmPerUM < tag {
			s.hi = s.lo + (head-s.lo)*(s.x1-s.x0)/(s.x1-s.x0-tag)
		}
	}
	return nil
}

// drawRow draws a change: its label and effect, its arrow or bar, its tag.
func (s *scaled) drawRow(row int, w RulerRow) {
	face, room := s.bold, s.names
	if w.Span != nil {
		face = s.plain
	}
	if w.Effect == "" {
		room += s.effects + s.gap
	}
	label, _ := canvas.Cut(w.Label, face, room)
	s.c.Text(s.r.X, s.base(row), label, face, canvas.Black, 0)
	s.c.Text(s.r.X+s.names+s.gap+s.effects-s.c.TextWidth(w.Effect, s.bold), s.base(row), w.Effect, s.bold, canvas.Black, 0)
	left, right, y := s.at(s.Set), s.at(w.To), s.middle(row)
	if w.Span != nil {
		left, right = s.at(s.within(w.Span.Low)), s.at(s.within(w.Span.High))
		s.c.Draw(rectPath(left, y-0.9, math.Max(right-left, 0.6), 1.8), &canvas.Black, canvas.Pen{})
	} else {
		arrow(s.c, canvas.Point{X: left, Y: y}, canvas.Point{X: right, Y: y}, 0.7, math.Min(2.2, math.Abs(right-left)), false)
	}
	left, right = math.Min(left, right), math.Max(left, right)
	wide := s.width(w.Tag)
	start, before := right+s.gap, left-s.gap-wide // beyond the head; where that leaves the ruler, behind the tail
	if downward := w.Span == nil && w.To < s.Set; before >= s.x0 && (downward || start+wide > s.r.Right()) {
		start = before
	}
	s.c.Text(math.Min(start, s.r.Right()-wide), s.base(row), w.Tag, s.plain, canvas.Black, 0)
}

// drawScale draws the scale at y with its unit and numbers over it.
func (s *scaled) drawScale(y float64) {
	s.c.Text(s.r.X, s.base(0), s.Unit, s.plain, canvas.Black, 0)
	s.c.Draw(segment(s.at(s.lo), y, s.at(s.hi), y), nil, ink(0.25))
	step := roundStep((s.hi - s.lo) / 7)
	for v := math.Ceil(s.lo/step) * step; v <= s.hi; v += step {
		x := s.at(v)
		s.c.Draw(segment(x, y, x, y+0.9), nil, ink(0.25))
		label := s.Format(v+0, digits(step))
		if w := s.width(label); x+w/2 <= s.r.Right() && x-w/2 > s.r.X+s.width(s.Unit) {
			s.c.Text(x-w/2, s.base(0), label, s.plain, canvas.Black, 0)
		}
	}
}
