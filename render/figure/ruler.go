package figure

import (
	"cmp"
	"math"
	"slices"

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
	Brief         string // in its place where the tags would stretch the scale too far; empty: the tag
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

func (s *scaled) at(um float64) float64      { return s.x0 + (s.x1-s.x0)*(um-s.lo)/(s.hi-s.lo) }
func (s *scaled) within(um float64) float64  { return clamp(um, s.lo, s.hi) }
func (s *scaled) width(text string) float64  { return s.c.TextWidth(text, s.plain) }
func (s *scaled) middle(row float64) float64 { return s.r.Y + (row+0.5)*s.pitch }

// write writes a text of a row, its left end at x.
func (s *scaled) write(x, row float64, text string, f canvas.Font) {
	s.c.Text(x, s.r.Y+row*s.pitch+(s.pitch+capEM*em(f))/2, text, f, canvas.Black, 0)
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
	ground, scale := canvas.Gray(222), r.Y+rulerScale*p.pitch
	low, high, x, wide := p.at(s.Target.Low), p.at(s.Target.High), p.at(s.Set), p.width(s.TargetLabel)
	c.Draw(rectPath(low, r.Y+p.pitch, high-low, s.Height()-p.pitch), &ground, canvas.Pen{})
	p.write(clamp((low+high-wide)/2, r.X+p.width(s.Unit)+3*p.gap, r.Right()-wide), 0, s.TargetLabel, p.plain)
	p.write(r.X, 0, s.Unit, p.plain)
	p.drawScale(scale)
	c.Draw(segment(x, scale, x, r.Y+s.Height()-0.1), nil, ink(0.2, 0.8, 0.8))
	p.write(r.X, rulerHead-1, s.SetLabel, p.plain)
	whisker(c, p.at(s.Band.Low), p.at(s.Band.High), scale, 0.9, 0.7, 0.5)
	dot(c, canvas.Point{X: x, Y: scale}, 1.1, canvas.Black)
	for i, w := range p.Rows { // measure may have shortened their tags
		p.drawRow(float64(i)+rulerHead, w)
	}
	return nil
}

// measure finds the columns and the scale.
func (s *scaled) measure() error {
	s.pitch, s.gap = rulerPitchEM*em(s.plain), 0.5*em(s.plain)
	alone := s.width(s.SetLabel)
	for _, w := range s.Rows {
		if label := s.c.TextWidth(w.Label, s.face(w)); w.Effect == "" {
			alone = math.Max(alone, label)
		} else {
			s.names, s.effects = math.Max(s.names, label+s.gap), math.Max(s.effects, s.c.TextWidth(w.Effect, s.bold))
		}
	}
	s.names = math.Min(math.Max(s.names, alone-s.effects-s.gap), 0.42*s.r.W-s.effects) // what has no effect behind it takes its room
	room := func() float64 { return s.r.W - s.effects - 4*s.gap - s.widestTag() - leastScaleMM }
	if s.names > room() { // long names and long tags at once
		s.brief()
		s.names = math.Min(s.names, math.Max(room(), 0.2*s.r.W))
	}
	s.x0, s.x1 = s.r.X+s.names+s.effects+3*s.gap, s.r.Right()-s.gap
	lo, hi := s.ends()
	if !finite(lo, hi) || s.x1-s.x0 < s.widestTag()+leastScaleMM-1e-9 || s.Height() > s.r.H+0.01 {
		return noRoom("ruler", s.r, "the names and the tags leave no scale")
	}
	s.lo, s.hi = lo-0.04*(hi-lo), hi+0.04*(hi-lo)
	lo, hi = s.lo, s.hi
	if s.lo, s.hi = s.room(lo, hi); s.hi-s.lo > mostStretch*(hi-lo) {
		s.brief()
		s.lo, s.hi = s.room(lo, hi)
	}
	return nil
}

// leastScaleMM is what a tag leaves of the scale at least.
const leastScaleMM = 8.0

// brief says the tags in fewer words.
func (s *scaled) brief() {
	s.Rows = slices.Clone(s.Rows)
	for i := range s.Rows {
		s.Rows[i].Tag = cmp.Or(s.Rows[i].Brief, s.Rows[i].Tag)
	}
}

// mostStretch is how much longer a scale may get by the tags before they are said in fewer words.
const mostStretch = 1.3

// room stretches a scale so that every tag has its room, at the end where that takes less; no film is below 0.
func (s *scaled) room(lo, hi float64) (float64, float64) {
	upLo, upHi := s.roomFor(lo, hi, false)
	if downLo, downHi := s.roomFor(lo, hi, true); downLo >= 0 && downHi-downLo < upHi-upLo {
		return downLo, downHi
	}
	return upLo, upHi
}

// roomFor stretches a scale at its low end or at its high one until every tag fits before the left end of its arrow
// or behind the right one. A row that has got its room keeps it while others get theirs.
func (s *scaled) roomFor(lo, hi float64, down bool) (float64, float64) {
	wide := s.x1 - s.x0
	for range s.Rows {
		for _, w := range s.Rows {
			tag, left, right := s.tagWidth(w)+2*s.gap, math.Min(s.Set, w.To), math.Max(s.Set, w.To)
			if w.Span != nil {
				left, right = clamp(w.Span.Low, lo, hi), clamp(w.Span.High, lo, hi)
			}
			switch mmPerUM := wide / (hi - lo); {
			case (right-lo)*mmPerUM+tag <= wide+1e-9 || (left-lo)*mmPerUM >= tag-1e-9:
			case down:
				lo = (left*wide - hi*tag) / (wide - tag)
			default:
				hi = lo + (right-lo)*wide/(wide-tag)
			}
		}
	}
	return lo, hi
}

// drawRow draws a change: its label and effect, its arrow or bar, its tag.
func (s *scaled) drawRow(row float64, w RulerRow) {
	face, room := s.face(w), s.names
	if w.Effect == "" {
		room += s.effects + s.gap
	}
	label, _ := canvas.Cut(w.Label, face, room+0.01)
	s.write(s.r.X, row, label, face)
	s.write(s.r.X+s.names+s.gap+s.effects-s.c.TextWidth(w.Effect, s.bold), row, w.Effect, s.bold)
	left, right, y := s.at(s.Set), s.at(w.To), s.middle(row)
	if w.Span != nil {
		left, right = s.at(s.within(w.Span.Low)), s.at(s.within(w.Span.High))
		right = math.Max(right, left+0.6)
		fill, pen := &canvas.Black, canvas.Pen{}
		if w.NoHelp {
			fill, pen = &canvas.White, ink(0.2)
		}
		s.c.Draw(rectPath(left, y-0.9, right-left, 1.8), fill, pen)
	} else {
		arrow(s.c, canvas.Point{X: left, Y: y}, canvas.Point{X: right, Y: y}, 0.7, math.Min(2.2, math.Abs(right-left)), false)
	}
	left, right = math.Min(left, right), math.Max(left, right)
	wide := s.tagWidth(w)
	start, before := right+s.gap, left-s.gap-wide // beyond the head; where that leaves the ruler, behind the tail
	if downward := w.Span == nil && w.To < s.Set; before >= s.x0 && (downward || start+wide > s.r.Right()) {
		start = before
	}
	start = math.Min(start, s.r.Right()-wide)
	if w.NoHelp {
		cross(s.c, start+crossMM, y)
	}
	s.write(start+wide-s.width(w.Tag), row, w.Tag, s.plain)
}

// drawScale draws the scale at y with numbers over it.
func (s *scaled) drawScale(y float64) {
	s.c.Draw(segment(s.at(s.lo), y, s.at(s.hi), y), nil, ink(0.25))
	step := roundStep((s.hi - s.lo) / 7)
	for v := math.Ceil(s.lo/step) * step; v <= s.hi; v += step {
		x := s.at(v)
		s.c.Draw(segment(x, y, x, y-0.8), nil, ink(0.25))
		label := s.Format(v+0, digits(step))
		if w := s.width(label); x+w/2 <= s.r.Right() && x-w/2 > s.r.X+s.width(s.SetLabel) {
			s.write(x-w/2, 1, label, s.plain)
		}
	}
}

// crossMM is half the side of a cross.
const crossMM = 0.8

// face is that of a label: a change is bold.
func (s *scaled) face(w RulerRow) canvas.Font {
	if w.Span == nil {
		return s.bold
	}
	return s.plain
}

// widestTag is the width of the widest tag.
func (s *scaled) widestTag() (w float64) {
	for _, row := range s.Rows {
		w = math.Max(w, s.tagWidth(row))
	}
	return w
}

// tagWidth is that of a tag with the cross before it.
func (s *scaled) tagWidth(w RulerRow) float64 {
	if w.NoHelp {
		return 4*crossMM + s.width(w.Tag)
	}
	return s.width(w.Tag)
}

// cross draws a cross around x, y.
func cross(c canvas.Canvas, x, y float64) {
	for _, d := range []float64{crossMM, -crossMM} {
		c.Draw(segment(x-crossMM, y-d, x+crossMM, y+d), nil, ink(0.5))
	}
}
