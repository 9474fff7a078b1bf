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

// Heights of the front of the smallest card, mm: a row of 14 pt, one without accents on capitals, one of 26 pt,
// and a figure.
const (
	rowMM, subMM     = 5.8, 5.4
	factMM, figureMM = 10.7, 10.4
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
		m.boxes = append(m.boxes, page.Rule("under the head", r.X, y, r.W, 0, canvas.Pen{Color: canvas.Black, WidthMM: mm(0.5)}))
		y += mm(0.6)
	}
	m.figures(next(mm(rowMM+figureMM+subMM), mm(0.6)))
	m.rule("under the figures", r.X, y, r.W, 0)
	y += mm(0.8)
	foot := mm(subMM + rowMM)
	m.lean(next(r.Bottom()-foot-mm(1.2)-y, mm(0.8)))
	m.rule("above the foot", r.X, y, r.W, 0)
	m.foot(page.Rect{X: r.X, Y: r.Bottom() - foot, W: r.W, H: foot})
}

// head shows head, color, ink and job.
func (m *maker) head(r page.Rect) {
	g, s := m.grid, m.screen
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
	label := m.say.T(word)
	tile := page.Rect{X: r.X, Y: r.Y, W: math.Max(g.mm(25), m.wide(label, strong)+g.mm(1.8)), H: r.H}
	m.fill("head tile", tile, canvas.Black, 0)
	m.line("head label", page.Rect{X: tile.X, Y: tile.Y + g.mm(0.8), W: tile.W, H: g.mm(rowMM)}, white(strong), label)
	m.row("head", page.Rect{X: tile.X + g.mm(0.5), Y: tile.Y + g.mm(rowMM+0.8), W: tile.W - g.mm(1), H: tile.H - g.mm(rowMM+0.8)}, white(strong), g.headPT, strings.Join(heads, "+"))
	patch := page.Rect{X: tile.Right() + g.mm(2), Y: r.Y, W: g.mm(10), H: r.H}
	m.draw("swatch", patch, func(c canvas.Canvas) error {
		return m.swatch().Draw(c, figure.Rect{W: patch.W, H: patch.H})
	})
	at := page.Rect{X: patch.Right() + g.mm(2.5), Y: r.Y, H: g.mm(factMM)}
	at.W = r.Right() - at.X
	m.name("color", at, bold, g.factPT, m.color())
	at.Y, at.H = at.Bottom(), g.mm(rowMM)
	if m.wide(m.plan.Job, bold) > at.W { // it is never cut: it takes the row of the ink too
		rows := canvas.Wrap(m.plan.Job, canvas.Font{Face: canvas.Bold, SizePT: g.linePT}, at.W)
		m.line("job number", at, bold, rows[0])
		at.Y = at.Bottom()
		m.where(at, m.short(strings.TrimSpace(strings.TrimPrefix(m.plan.Job, rows[0])), canvas.Bold, g.linePT, at.W))
		return
	}
	if ink := m.say.InkName(s.Ink); ink != m.color() {
		m.name("ink", at, plain, []float64{g.linePT}, ink)
	}
	at.Y = at.Bottom()
	m.where(at, m.plan.Job)
}

// where is the row of job, or of what the row above leaves of its number, location and screen. A job without a
// number is named by its title, which leaves the location half of the row.
func (m *maker) where(r page.Rect, job string) {
	s, name := m.screen, "job number"
	dot := " · "
	switch {
	case m.plan.Job == "":
		job, name = m.plan.Title, "job title"
	case job == "": // all of it stands in the row above
		dot = ""
	}
	place := dot + m.loc.Name
	need := m.wide(job, bold) + m.wide(place, plain)
	if s.Of > 1 {
		which := m.say.T("card.screen", "n", fmt.Sprint(s.Number), "of", fmt.Sprint(s.Of))
		left, rest := r.Aside(m.wide(which, plain), m.grid.mm(2))
		if need > left.W {
			which = fmt.Sprintf("%d/%d", s.Number, s.Of)
			left, rest = r.Aside(m.wide(which, plain), m.grid.mm(2))
		}
		if m.plan.Job == "" || m.wide(job, bold) <= left.W {
			m.line("screen number", rest, right, which)
			r = left
		}
	}
	if m.plan.Job == "" {
		job = m.short(job, bold.Font.Face, m.grid.linePT, math.Max(r.W-m.wide(place, plain), r.W/2))
	}
	wide := m.wide(job, bold)
	if job != "" {
		m.line(name, page.Rect{X: r.X, Y: r.Y, W: wide, H: r.H}, bold, job)
	}
	if r.X, r.W = r.X+wide, r.W-wide; r.W > m.grid.mm(15) {
		m.line("location", r, plain, dot+m.short(m.loc.Name, plain.Font.Face, m.grid.linePT, r.W-m.wide(dot, plain)))
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

// warned is the band across a front whose screen has warnings, between stripes that no other front has: the first
// one in a few words, and how many more there are on the back.
func (m *maker) warned(r page.Rect) {
	mm := m.grid.mm
	m.fill("warning band", r, canvas.Black, 0)
	for _, x := range []float64{r.X, r.Right() - mm(stripesMM)} {
		m.draw("warning stripes", page.Rect{X: x, Y: r.Y, W: mm(stripesMM), H: r.H}, func(c canvas.Canvas) error {
			return figure.Stripes(c, figure.Rect{W: mm(stripesMM), H: r.H})
		})
	}
	list, see := m.screen.Warnings, m.say.T("card.see-back")
	in := page.Rect{X: r.X + mm(stripesMM+1), Y: r.Y, W: r.W - 2*mm(stripesMM+1), H: r.H}
	left, rest := in.Aside(m.wide(see, plain), mm(2))
	first := max(0, slices.IndexFunc(list, func(w plan.Warning) bool { return !strings.HasPrefix(w.Code, "mend-") }))
	word, more, few := m.say.BriefWarning(list[first]), "", ""
	if n := len(list) - 1; n > 0 {
		more, few = " · "+m.say.T("card.more-warnings", "n", fmt.Sprint(n)), fmt.Sprintf(", +%d", n)
	}
	m.line("warning", left, white(bold), word+more, word+few, m.say.T("front-warning.other")+more)
	m.line("see back", rest, white(right), see)
}

// figures shows blade, angle, strokes and air side by side.
func (m *maker) figures(r page.Rect) {
	s, v := m.screen, m.say
	blade := []string{v.T("card.blade")}
	if b := s.Blade; b.Name != b.Layup {
		blade = []string{b.Name, blade[0]}
	}
	hold := v.AngleRange(s.AngleDeg.Low, s.AngleDeg.High)
	flood := v.T("card.no-flood")
	if s.Flood {
		flood = v.T("card.flood")
	}
	word, strokes := v.Strokes(s)
	unit, air, also := v.Air(s)
	load := v.T("card.by-hand")
	if unit != "" {
		load = v.T("card.air", "unit", unit)
	}
	list := []column{
		{36.2, "blade", s.Blade.Layup, blade, v.BladeFact(s.Blade)},
		{29.2, "angle", v.Angle(s.AngleDeg.Set), []string{v.T("card.angle")}, []string{v.T("card.hold", "range", hold), hold}},
		{24.95, "strokes", strokes, []string{word}, []string{flood}},
		{27.15, "air", air, []string{load}, []string{also}},
	}
	gap := r.W * columnGapMM / safeArea(page.Card132).W
	at := page.Rect{X: r.X, Y: r.Y, H: r.H}
	for i, w := range m.widths(list, r.W-gap*float64(len(list)-1)) {
		at.W = w
		m.column(at, list[i])
		if at.X = at.Right() + gap; i < len(list)-1 {
			m.rule("after the "+list[i].name, at.X-gap/2, r.Y+1, 0, r.H-2)
		}
	}
}

// column is a figure with a label above and a fact below, each the first of its texts that fits.
type column struct {
	mm           float64 // usual width on the smallest card
	name, value  string
	labels, subs []string
}

// columnGapMM is between two columns; clearMM is what words keep from the sides of theirs, so as not to touch the
// line in the gap.
const columnGapMM, clearMM = 1.5, 0.5

// widths shares a width out to columns: in their usual shares or, where those are too narrow for a label or a fact,
// by what each needs, with the shorter facts of the last columns if they must. No figure gets smaller by that.
func (m *maker) widths(list []column, room float64) []float64 {
	usual, need := make([]float64, len(list)), make([]float64, len(list))
	var all, sum float64
	for _, c := range list {
		all += c.mm
	}
	narrow := false
	for i, c := range list {
		usual[i] = room * c.mm / all
		words := math.Max(m.wide(c.labels[len(c.labels)-1], middle), m.wide(c.subs[0], middle)) + 2*m.grid.mm(clearMM)
		narrow = narrow || words > usual[i]
		_, wide := m.figure(c.value, usual[i])
		need[i] = math.Max(words, wide)
		sum += need[i]
	}
	if !narrow {
		return usual
	}
	if sum > room {
		for i, c := range slices.Backward(list) {
			if len(c.subs) > 1 {
				list[i].subs = c.subs[1:]
				return m.widths(list, room)
			}
		}
		return usual
	}
	for i := range need {
		need[i] += (room - sum) / float64(len(need))
	}
	return need
}

// figure is the sizes of a figure from the first that fits a column, and how wide it then is; the least size and all
// there is where none fits.
func (m *maker) figure(value string, w float64) (sizesPT []float64, wide float64) {
	sizes := m.grid.bigPT
	for i, pt := range sizes {
		wide := m.width(value, strong, pt)
		if i == 0 { // it would stand close to the lines between the columns
			wide += m.grid.mm(1.6)
		}
		if wide <= w {
			return sizes[i:], wide
		}
	}
	return sizes[len(sizes)-1:], w
}

// column draws a column. A layup of many layers takes the row of the fact.
func (m *maker) column(r page.Rect, c column) {
	mm := m.grid.mm
	fits := func(texts []string) string {
		for _, text := range texts {
			if m.wide(text, middle) <= r.W-2*mm(clearMM) {
				return text
			}
		}
		return texts[len(texts)-1]
	}
	m.line(c.name+" label", page.Rect{X: r.X, Y: r.Y, W: r.W, H: mm(rowMM)}, middle, fits(c.labels))
	at := page.Rect{X: r.X, Y: r.Y + mm(rowMM), W: r.W, H: mm(figureMM)}
	if m.wide(c.value, bold) > r.W {
		at.H = r.Bottom() - at.Y
		st := page.Style{Font: canvas.Font{Face: canvas.Bold}, Color: canvas.Black, Align: page.Center}
		m.boxes = append(m.boxes, page.FitSizes(c.name, at, strings.ReplaceAll(c.value, "/", "/ "), st, m.grid.linePT).Boxes...)
		return
	}
	sizes, _ := m.figure(c.value, r.W)
	m.digits(c.name, at, strong, sizes, c.value)
	m.line(c.name+" fact", page.Rect{X: r.X, Y: at.Bottom(), W: r.W, H: mm(subMM)}, middle, fits(c.subs))
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

// clearlyLarger is how much larger seconds are worth a smaller word beside them (judgement).
const clearlyLarger = 1.15

// flash is the tile that says what sets the film before the next color: black for a flash, framed for a lamp;
// none stands beside a line.
func (m *maker) flash(r page.Rect) {
	word, time, sub := m.say.FlashTile(m.screen.Flash)
	l, sl, frame := middle, middle, 0.0
	switch f := m.screen.Flash; {
	case f.Does == "lamp":
		l, frame = strong, m.grid.mm(1.2)
		m.fill("flash tile", r, canvas.White, frame)
	case !f.Needed:
		m.rule("before the flash", r.X, r.Y+1, 0, r.H-2)
		if n := m.screen.Next; n != nil && n.Wet {
			sub = m.say.T("card.on-wet")
		}
	default:
		m.fill("flash tile", r, canvas.Black, 0)
		l, sl = white(strong), white(sl)
	}
	in := page.Rect{X: r.X + m.grid.mm(1.6), Y: r.Y + frame, W: r.W - m.grid.mm(3.2), H: r.H - 2*frame}
	const wordMM = 6.4 // of 18 pt
	pt, gap, row := m.grid.factPT, m.grid.mm(2), m.grid.mm(subMM)
	both := m.grid.mm(wordMM) + row
	if time != "" {
		beside := func(wordPT float64) (left, rest page.Rect, size float64) {
			wide := math.Max(m.width(word, l, wordPT), m.wide(sub, sl))
			left, rest = in.Aside(in.W-gap-wide, gap)
			return left, rest, m.largest(time, l, rest.W, rest.H)
		}
		left, rest, size := beside(pt[2])
		if l3, r3, more := beside(pt[3]); size < pt[0] || more > clearlyLarger*size { // beside a smaller word, or below it, whichever is larger
			left, rest, size = l3, r3, more
			top := page.Rect{X: in.X, Y: in.Y + m.grid.mm(0.3), W: in.W, H: row}
			below := page.Rect{X: in.X, Y: top.Bottom(), W: in.W, H: in.Bottom() - top.Bottom()}
			if size <= m.largest(time, l, below.W, below.H) {
				head := m.wide(word, l)
				if left, rest := top.Aside(in.W-gap-head, gap); m.wide(sub, sl) <= rest.W && sub != "" {
					m.line("flash", left, l, word)
					m.line("flash word", rest, sl, sub)
				} else {
					m.line("flash", top, l, word)
				}
				m.time(below, l, time)
				return
			}
		}
		defer m.time(rest, l, time)
		in = left
	}
	if sub == "" || in.H < both {
		m.row("flash", in, l, pt[1:], word)
		return
	}
	in.Y += (in.H-both)/2 + m.grid.mm(0.3) // capitals have no tails
	in.H = both - row
	m.row("flash", in, l, pt[2:], word)
	in.Y, in.H = in.Bottom(), row
	m.line("flash word", in, sl, sub)
}

// tileMM is what the seconds keep from the edges of their tile, the tail of a comma too.
const tileMM = 0.7

// time sets the seconds of a flash as large as they fit.
func (m *maker) time(r page.Rect, st page.Style, text string) {
	size := m.largest(text, st, r.W, r.H)
	r.Y, r.H = r.Y+tileMM, r.H-2*tileMM
	m.digits("flash time", r, st, []float64{size}, text)
}

// largest is the largest of the sizes of a head at which digits fit a place; the least of them where none does.
func (m *maker) largest(text string, st page.Style, w, h float64) float64 {
	sizes := m.grid.headPT[1:]
	for _, pt := range sizes {
		if above, below := canvas.Ink("0,", canvas.Font{Face: st.Font.Face, SizePT: pt}); above+below+2*tileMM <= h && m.width(text, st, pt) <= w {
			return pt
		}
	}
	return sizes[len(sizes)-1]
}

// foot is what to check of the screen before the run, and where the garment goes next.
func (m *maker) foot(r page.Rect) {
	v, s := m.say, m.screen
	top := m.grid.mm(subMM)
	check := v.T("card.check")
	w := m.wide(check, plain) + m.grid.mm(1.5)
	m.line("check", page.Rect{X: r.X, Y: r.Y, W: w, H: top}, plain, check)
	m.line("mesh", page.Rect{X: r.X + w, Y: r.Y, W: r.W - w, H: top}, bold, v.Cloth(s)...)
	r.Y, r.H = r.Y+top, r.H-top
	gap := v.T("card.off-contact", "gap", v.Gap(s.OffContact.Low, s.OffContact.High))
	w = m.wide(gap, plain)
	m.line("off contact", page.Rect{X: r.X, Y: r.Y, W: w, H: r.H}, plain, gap)
	w += m.grid.mm(3)
	m.line("next", page.Rect{X: r.X + w, Y: r.Y, W: r.W - w, H: r.H}, right, v.Next(m.plan, s)...)
}
