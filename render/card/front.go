package card

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"bladecard/calc/plan"
	"bladecard/render/canvas"
	"bladecard/render/figure"
	"bladecard/render/page"
)

// Heights of the front of the smallest card, mm: a row of 14 pt, one of 26 pt; a figure, and a row of
// words without accents on capitals.
const (
	rowMM, factMM   = 5.8, 10.7
	figureMM, subMM = 9.6, 5.4
)

// front lays out the side that the operator reads from 1 m: which head and color, a warning, the four figures
// that hands set, the lean and the flash, and what to check of the screen.
func (m *maker) front(r page.Rect) {
	mm := m.grid.mm
	y := r.Y
	next := func(h, gap float64) page.Rect {
		at := page.Rect{X: r.X, Y: y, W: r.W, H: h}
		y += h + gap
		return at
	}
	m.head(next(mm(factMM+2*rowMM), mm(0.9)))
	if len(m.screen.Warnings) > 0 {
		m.warned(next(mm(6), mm(0.6)))
	} else {
		m.rule("under the head", r.X, y, r.W, 0)
		y += mm(0.6)
	}
	m.figures(next(mm(rowMM+figureMM+subMM), mm(0.6)))
	m.rule("under the figures", r.X, y, r.W, 0)
	y += mm(0.8)
	foot := mm(2 * rowMM)
	m.lean(next(r.Bottom()-foot-mm(1.1)-y, mm(0.7)))
	m.rule("above the foot", r.X, y, r.W, 0)
	m.foot(page.Rect{X: r.X, Y: r.Bottom() - foot, W: r.W, H: foot})
}

// head shows head, color, ink and job.
func (m *maker) head(r page.Rect) {
	g, s := m.grid, m.screen
	tile := page.Rect{X: r.X, Y: r.Y, W: g.mm(24), H: r.H}
	word, heads := "card.head", []string{}
	for _, n := range s.Heads {
		heads = append(heads, fmt.Sprint(n))
	}
	switch {
	case m.plan.Press.Kind == "flatbed" || len(heads) == 0:
		word, heads = "card.pass", []string{fmt.Sprint(s.Number)}
	case len(heads) > 1:
		word = "card.heads"
	}
	m.fill("head tile", tile, canvas.Black, 0)
	m.line("head label", page.Rect{X: tile.X, Y: tile.Y + g.mm(0.8), W: tile.W, H: g.mm(rowMM)}, white(strong), m.say.T(word))
	m.row("head", page.Rect{X: tile.X + g.mm(0.5), Y: tile.Y + g.mm(rowMM+0.8), W: tile.W - g.mm(1), H: tile.H - g.mm(rowMM+0.8)}, white(strong), g.headPT, strings.Join(heads, "+"))
	patch := page.Rect{X: tile.Right() + g.mm(2), Y: r.Y, W: g.mm(11), H: r.H}
	m.draw("swatch", patch, func(c canvas.Canvas) error {
		return m.swatch().Draw(c, figure.Rect{W: patch.W, H: patch.H})
	})
	at := page.Rect{X: patch.Right() + g.mm(2.5), Y: r.Y, H: g.mm(factMM)}
	at.W = r.Right() - at.X
	m.fact("color", at, bold, m.color())
	at.Y, at.H = at.Bottom(), g.mm(rowMM)
	number := m.wide(m.plan.Job, bold)
	if number > at.W { // it is never cut: it takes the row of the ink too
		st := page.Style{Font: canvas.Font{Face: canvas.Bold, SizePT: g.linePT}, Color: canvas.Black}
		m.boxes = append(m.boxes, page.Paragraph("job number", at.X, at.Y, at.W, m.plan.Job, st, 2).Boxes...)
		return
	}
	which := ""
	if s.Of > 1 {
		which = m.say.T("card.screen", "n", fmt.Sprint(s.Number), "of", fmt.Sprint(s.Of))
	}
	if ink := m.say.InkName(s.Ink); ink != m.color() {
		m.line("ink", at, plain, ink)
	}
	at.Y = at.Bottom()
	if left, rest := at.Aside(m.wide(which, plain), g.mm(2)); number <= left.W {
		m.line("screen number", rest, right, which)
		at = left
	}
	if m.plan.Job == "" {
		m.line("location", at, plain, m.loc.Name)
		return
	}
	m.line("job number", page.Rect{X: at.X, Y: at.Y, W: number, H: at.H}, bold, m.plan.Job)
	if at.X, at.W = at.X+number, at.W-number; at.W > g.mm(15) {
		m.line("location", at, plain, " · "+m.loc.Name)
	}
}

// color is the color of the ink in words, or its class where the job names no color.
func (m *maker) color() string {
	if m.screen.Color != "" {
		return m.screen.Color
	}
	return m.say.InkName(m.screen.Ink)
}

func (m *maker) swatch() figure.Swatch {
	if c, err := figure.ParseColor(m.screen.Swatch); err == nil {
		return figure.Swatch{Color: &c}
	}
	return figure.Swatch{}
}

// warned is the band across a front whose screen has warnings: the first one in a few words, and how many more
// stand on the back.
func (m *maker) warned(r page.Rect) {
	m.fill("warning band", r, canvas.Black, 0)
	list, see := m.screen.Warnings, m.say.T("card.see-back")
	in := page.Rect{X: r.X + m.grid.mm(1.5), Y: r.Y, W: r.W - m.grid.mm(3), H: r.H}
	left, rest := in.Aside(m.wide(see, plain), m.grid.mm(2))
	first := max(0, slices.IndexFunc(list, func(w plan.Warning) bool { return !strings.HasPrefix(w.Code, "mend-") }))
	word, more := m.say.BriefWarning(list[first]), ""
	if n := len(list) - 1; n > 0 {
		more = " · " + m.say.T("card.more-warnings", "n", fmt.Sprint(n))
	}
	m.line("warning", left, white(bold), "! "+word+more, "! "+m.say.T("front-warning.other")+more)
	m.line("see back", rest, white(right), see)
}

// figures shows blade, angle, strokes and air side by side.
func (m *maker) figures(r page.Rect) {
	s, v := m.screen, m.say
	share := r.W / safeArea(page.Card132).W
	const gap = 1.6
	at := page.Rect{X: r.X, Y: r.Y, H: r.H}
	column := func(w float64, name, value string, labels []string, subs ...string) {
		at.W = share * w
		m.column(at, name, value, labels, subs...)
		if at.X = at.Right() + share*gap; at.X < r.Right() {
			m.rule("after the "+name, at.X-share*gap/2, r.Y+1, 0, r.H-2)
		}
	}
	label := v.T("card.blade")
	labels := []string{label}
	if b := s.Blade; b.Name != b.Layup {
		labels = []string{b.Name, label}
	}
	column(36.8, "blade", s.Blade.Layup, labels, v.BladeFact(s.Blade)...)
	hold := v.AngleRange(s.AngleDeg.Low, s.AngleDeg.High)
	column(29, "angle", v.Angle(s.AngleDeg.Set), []string{v.T("card.angle")}, v.T("card.hold", "range", hold), hold)
	n, word := s.Strokes, v.Many("card.strokes", s.Strokes)
	if s.Hits > 1 {
		n, word = s.Hits, v.Many("card.hits", s.Strokes)
	}
	flood := v.T("card.no-flood")
	if s.Flood {
		flood = v.T("card.flood")
	}
	column(25, "strokes", fmt.Sprint(n), []string{word}, flood)
	unit, value, also := v.Air(s)
	label = v.T("card.by-hand")
	if unit != "" {
		label = v.T("card.air", "unit", unit)
	}
	column(26.4, "air", value, []string{label}, also)
}

// column sets a figure with its label above and a fact below. A layup of many layers takes the row of the fact.
func (m *maker) column(r page.Rect, name, value string, labels []string, subs ...string) {
	mm := m.grid.mm
	m.line(name+" label", page.Rect{X: r.X, Y: r.Y, W: r.W, H: mm(rowMM)}, middle, labels...)
	at := page.Rect{X: r.X, Y: r.Y + mm(rowMM), W: r.W, H: mm(figureMM)}
	if m.wide(value, bold) > r.W {
		at.H = r.Bottom() - at.Y
		st := page.Style{Font: canvas.Font{Face: canvas.Bold}, Color: canvas.Black, Align: page.Center}
		m.boxes = append(m.boxes, page.FitSizes(name, at, strings.ReplaceAll(value, "/", "/ "), st, m.grid.linePT).Boxes...)
		return
	}
	m.fact(name, at, strong, value)
	m.line(name+" fact", page.Rect{X: r.X, Y: at.Bottom(), W: r.W, H: mm(subMM)}, middle, subs...)
}

// lean draws the blade at its angle, beside the tile of the flash.
func (m *maker) lean(r page.Rect) {
	a, gap := m.screen.AngleDeg, m.grid.mm(2)
	dial := page.Rect{X: r.X, Y: r.Y, W: 0.51*r.W - gap/2, H: r.H}
	m.draw("angle dial", dial, func(c canvas.Canvas) error {
		return figure.Dial{
			LowDeg: a.Low, SetDeg: a.Set, HighDeg: a.High, SizePT: m.grid.linePT, Scale: m.say.Angle,
			ScreenLabel: m.say.T("card.to-screen", "angle", m.say.Angle(a.ToScreen)),
		}.Draw(c, figure.Rect{W: dial.W, H: dial.H})
	})
	m.flash(page.Rect{X: dial.Right() + gap, Y: r.Y, W: r.Right() - dial.Right() - gap, H: r.H})
}

// flash is the tile that says what sets the film before the next color: black for a flash, framed for a lamp, a
// thin line for none.
func (m *maker) flash(r page.Rect) {
	word, time, sub := m.say.FlashTile(m.screen.Flash)
	l, sl := middle, middle
	switch f := m.screen.Flash; {
	case f.Does == "lamp":
		m.fill("flash tile", r, canvas.White, m.grid.mm(1.2))
		l = strong
	case !f.Needed:
		m.fill("flash tile", r, canvas.White, 0.25)
		if n := m.screen.Next; n != nil && n.Wet {
			sub = m.say.T("card.on-wet")
		}
	default:
		m.fill("flash tile", r, canvas.Black, 0)
		l, sl = white(strong), white(sl)
	}
	in := page.Rect{X: r.X + m.grid.mm(1.6), Y: r.Y, W: r.W - m.grid.mm(3.2), H: r.H}
	pt, gap := m.grid.factPT, m.grid.mm(2)
	const wordMM = 7.4 // of 18 pt
	switch word0, most := m.wide(word, l), in.W-gap; {
	case time == "" && sub == "":
		m.row("flash", in, l, pt[1:], word)
		return
	case time != "" && word0+m.wide(time, l) > most: // one under the other
		in.Y += (r.H - m.grid.mm(wordMM+rowMM)) / 2
		m.line("flash", page.Rect{X: in.X, Y: in.Y, W: in.W, H: m.grid.mm(rowMM)}, l, word)
		m.row("flash time", page.Rect{X: in.X, Y: in.Y + m.grid.mm(rowMM), W: in.W, H: m.grid.mm(wordMM)}, l, pt[1:], time)
		return
	case time != "":
		wide := math.Max(0.47*most, math.Min(most-m.wide(time, l), math.Max(word0, m.wide(sub, sl))))
		left, rest := in.Aside(most-wide, gap)
		defer m.row("flash time", rest, l, m.grid.headPT[1:], time)
		if in = left; sub == "" {
			m.row("flash", in, l, pt[2:], word)
			return
		}
	}
	in.Y += (r.H - m.grid.mm(wordMM+rowMM)) / 2
	in.H = m.grid.mm(wordMM)
	m.row("flash", in, l, pt[2:], word)
	in.Y, in.H = in.Bottom(), m.grid.mm(rowMM)
	m.line("flash word", in, sl, sub)
}

// foot is what to check of the screen before the run, and where the garment goes next.
func (m *maker) foot(r page.Rect) {
	v, s := m.say, m.screen
	h := r.H / 2
	check := v.T("card.check")
	w := m.wide(check, plain) + m.grid.mm(1.5)
	m.line("check", page.Rect{X: r.X, Y: r.Y, W: w, H: h}, plain, check)
	m.line("mesh", page.Rect{X: r.X + w, Y: r.Y, W: r.W - w, H: h}, bold, v.Cloth(s)...)
	gap := v.T("card.off-contact", "gap", v.Gap(s.OffContact.Low, s.OffContact.High))
	w = m.wide(gap, plain)
	m.line("off contact", page.Rect{X: r.X, Y: r.Y + h, W: w, H: h}, plain, gap)
	w += m.grid.mm(3)
	m.line("next", page.Rect{X: r.X + w, Y: r.Y + h, W: r.W - w, H: h}, right, v.Next(m.plan, s)...)
}
