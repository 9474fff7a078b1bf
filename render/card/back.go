package card

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"

	"bladecard/calc/plan"
	"bladecard/render/canvas"
	"bladecard/render/page"
)

// back lays out the side for setting up: what film to expect, how to tell and what to change,
// on the left; how the film moves with angle and hardness, on the right; cautions and the log
// strip at the foot.
func (m *maker) back(r page.Rect) {
	m.words = m.newText()
	const gapMM = 2.0
	row := canvas.LineHeight(canvas.Font{SizePT: m.grid.notePT})
	log := 2.4 * row
	m.note("screen", page.Rect{X: r.X, Y: r.Y, W: r.W, H: row}, m.backHead(), canvas.Bold)
	m.rule("under the head", r.X, r.Y+row+0.4, r.W, 0)
	top := r.Y + row + 1.2
	foot := m.cautions(r, r.Bottom()-log-0.5)
	m.log(page.Rect{X: r.X, Y: r.Bottom() - log, W: r.W, H: log})
	body := page.Rect{X: r.X, Y: top, W: r.W, H: foot - 1 - top}
	left := page.Rect{X: body.X, Y: body.Y, H: body.H}
	for _, share := range []float64{0.5, 0.53, 0.56, 0.6} { // the charts give way to a long text
		if left.W = share * (body.W - 2*gapMM); m.takes(left, fewest, len(m.screen.Warnings)) {
			break
		}
	}
	m.text(left)
	m.rule("between text and charts", left.Right()+gapMM, body.Y, 0, body.H)
	right := page.Rect{X: left.Right() + 2*gapMM, Y: body.Y, W: body.Right() - left.Right() - 2*gapMM, H: body.H}
	const share = 0.54 // of the height for the chart over the angle: it has a scale more
	m.chartAngle(page.Rect{X: right.X, Y: right.Y, W: right.W, H: share*right.H - 0.5})
	m.chartHardness(page.Rect{X: right.X, Y: right.Y + share*right.H + 0.5, W: right.W, H: (1-share)*right.H - 0.5})
}

func (m *maker) backHead() string {
	return fmt.Sprintf("%s · %s · %s", m.say.T("card.screen", "n", fmt.Sprint(m.screen.Number), "of", fmt.Sprint(m.screen.Of)), m.color(), m.jobLine())
}

// cautions sets what can hurt across the card, above bottom, and returns its upper edge.
func (m *maker) cautions(r page.Rect, bottom float64) float64 {
	if len(m.screen.Cautions) == 0 {
		return bottom
	}
	var parts []string
	for _, c := range m.screen.Cautions {
		parts = append(parts, m.say.T("caution."+c))
	}
	text := strings.Join(parts, " ") + " " + m.say.T("caution.defer")
	set := func(y float64) page.Fitted { return page.Paragraph("cautions", r.X, y, r.W, text, m.plain(), 0) }
	y := bottom - set(0).Bottom
	m.boxes = append(m.boxes, set(y).Boxes...)
	m.rule("above the cautions", r.X, y-0.5, r.W, 0)
	return y - 0.5
}

// plain is the type of the notes.
func (m *maker) plain() page.Style {
	return page.Style{Font: canvas.Font{SizePT: m.grid.notePT}, Color: canvas.Black}
}

// line is a line of the back's text column, over as many rows as needed.
type line struct {
	name  string
	text  string
	bold  bool
	fact  bool    // at the size of facts' lines
	space float64 // above, mm
}

// How many corrections are printed each way.
const (
	mostCorrections = 4
	fewest          = 2
	onePair         = 0 // one each way under one head
	none            = -1
)

// text sets the text column. Where the room is short, fewer corrections are printed, then one each
// way under one head, then none, then fewer warnings, with a line that says how many more there are.
func (m *maker) text(r page.Rect) {
	n, w := mostCorrections, len(m.screen.Warnings)
	for {
		boxes, bottom := m.set(r, m.lines(n, w))
		if bottom <= r.Bottom() {
			m.boxes = append(m.boxes, boxes...)
			return
		}
		switch {
		case n > none:
			n--
		case w > 0:
			w--
		default:
			m.err = fmt.Errorf("the text of the back needs %.0f mm more than the %.0f mm there are", bottom-r.Bottom(), r.H)
			return
		}
	}
}

// takes tells whether r holds the text with n corrections each way and w warnings.
func (m *maker) takes(r page.Rect, n, w int) bool {
	y := r.Y
	for _, l := range m.lines(n, w) {
		y += l.space + m.rows(l, r.W).Bottom
	}
	return y <= r.Bottom()
}

// set places the lines from the top of r downward and returns where they end.
func (m *maker) set(r page.Rect, lines []line) ([]page.Box, float64) {
	out := make([]page.Box, 0, 2*len(lines))
	y := r.Y
	for _, l := range lines {
		p := m.rows(l, r.W)
		for _, b := range p.Boxes {
			b.X += r.X
			b.Y += y + l.space
			out = append(out, b)
		}
		y += l.space + p.Bottom
	}
	return out, y
}

// rowsKey is what the rows of a line depend on.
type rowsKey struct {
	name, text string
	bold, fact bool
	w          float64
}

// rows are the rows of a line from 0, 0. The same lines are set at several widths and lengths of
// the whole until it fits.
func (m *maker) rows(l line, w float64) page.Fitted {
	key := rowsKey{l.name, l.text, l.bold, l.fact, w}
	p, known := m.known[key]
	if !known {
		st := m.plain()
		st.Font.Face = canvas.Face(l.bold)
		if l.fact {
			st.Font.SizePT = m.grid.linePT
		}
		p = page.Paragraph(l.name, 0, 0, w, l.text, st, 0)
		m.known[key] = p
	}
	return p
}

// backText is the text of the back in the order of its lines; what may be left out stands apart.
type backText struct {
	film     []line // what to expect
	warnings []line
	setup    []line // load, wipe test, flash, cure
	heavy    []line // what to do when the film is too heavy, and too thin
	thin     []line
}

// newText words all that the back may say.
func (m *maker) newText() backText {
	s, v := m.screen, m.say
	t := backText{film: []line{
		{name: "cured film", text: v.T("card.cured", "value", v.FilmBoth(s.CuredUM.Value)), bold: true, fact: true},
		{name: "cured band", text: v.T("card.band", "band", v.FilmRange(s.CuredUM.Low, s.CuredUM.High))},
		{name: "wet film", text: v.T("card.wet", "value", v.FilmUM(s.WetUM.Value), "band", v.FilmRange(s.WetUM.Low, s.WetUM.High))},
	}}
	if g := s.WeighG; g != nil {
		t.film = append(t.film, line{name: "weight", text: v.T("card.weigh", "value", v.Grams(g.Value), "band", v.GramRange(g.Low, g.High))})
	}
	t.film = append(t.film, line{name: "target", text: v.T("card.target", "range", v.FilmRange(s.TargetUM.Low, s.TargetUM.High), "from", v.T("from."+s.TargetUM.From))})
	if text := v.Measured(m.plan.Calibration, s.Measured); text != "" {
		t.film = append(t.film, line{name: "measured", text: text})
	}
	for i, warning := range s.Warnings {
		t.warnings = append(t.warnings, line{name: fmt.Sprintf("warning %d", i+1), text: v.T("show.warning", "text", warning.Text), bold: true, space: 0.6})
	}
	t.setup = []line{
		{name: "load", text: v.T("card.load", "load", v.Load(s.LoadNPerCM), "pressure", v.Pressure(s)), space: 0.6},
		{name: "wipe test", text: v.T("card.wipe")},
	}
	if f := s.Flash; f.Needed && f.StartS != nil {
		t.setup = append(t.setup, line{name: "flash", text: v.CardFlash(f)})
	}
	t.setup = append(t.setup, line{name: "cure", text: m.cure()})
	t.heavy = m.corrections("card.too-heavy", -1, mostCorrections)
	t.thin = m.corrections("card.too-thin", 1, mostCorrections)
	return t
}

// lines is the text of the back, with at most n corrections each way and the first w warnings.
func (m *maker) lines(n, w int) []line {
	t, v := m.words, m.say
	out := append(make([]line, 0, 32), t.film...)
	out = append(out, t.warnings[:w]...)
	if more := len(t.warnings) - w; more > 0 {
		out = append(out, line{name: "more warnings", text: v.Many("card.more-warnings", more), bold: true, space: 0.6})
	}
	out = append(out, t.setup...)
	heavy, thin := t.heavy[:max(0, min(n, len(t.heavy)))], t.thin[:max(0, min(n, len(t.thin)))]
	if n == onePair {
		heavy, thin = t.heavy[:min(1, len(t.heavy))], t.thin[:min(1, len(t.thin))]
		if len(heavy)+len(thin) > 0 {
			out = append(out, line{name: "one change", text: v.T("card.one-change"), bold: true, space: 0.6})
		}
		return append(append(out, heavy...), thin...)
	}
	if len(heavy) > 0 {
		out = append(out, line{name: "card.too-heavy", text: v.T("card.too-heavy"), bold: true, space: 0.6})
		out = append(out, heavy...)
	}
	if len(thin) > 0 {
		out = append(out, line{name: "card.too-thin", text: v.T("card.too-thin"), bold: true, space: 0.6})
		out = append(out, thin...)
	}
	return out
}

// cure is the cure in the fewest words.
func (m *maker) cure() string {
	c, v := m.screen.Cure, m.say
	if c.TemperatureC == nil {
		return sentence(v.Cure(c))
	}
	text := v.T("card.cure", "temperature", v.TemperatureRange(c.TemperatureC.Low, c.TemperatureC.High))
	if c.DwellS != nil {
		text += v.T("card.cure-dwell", "dwell", v.SecondsRange(c.DwellS.Low, c.DwellS.High))
	}
	if c.BeltMPerMin != nil {
		text += v.T("card.cure-belt", "belt", v.BeltSpeed(c.BeltMPerMin.Low, c.BeltMPerMin.High))
	}
	return text + "."
}

// corrections lists the first n changes that thin (sign -1) or thicken (sign 1) the film; where
// some are large enough to be seen, only those.
func (m *maker) corrections(key string, sign float64, n int) []line {
	var fit []plan.Correction
	for _, c := range m.screen.Corrections {
		if c.DeltaUM*sign > 0 && c.Seen {
			fit = append(fit, c)
		}
	}
	if fit == nil {
		for _, c := range m.screen.Corrections {
			if c.DeltaUM*sign > 0 {
				fit = append(fit, c)
			}
		}
	}
	var out []line
	for i, c := range fit[:max(0, min(n, len(fit)))] {
		text := m.say.T("card.correction", "change", c.Change, "effect", m.say.Effect(c)) + m.say.Disturbs(c, "screen") // a mesh and an EOM say so
		out = append(out, line{name: fmt.Sprintf("%s %d", key, i+1), text: text})
	}
	return out
}

// log is the strip to write the measured film on.
func (m *maker) log(r page.Rect) {
	m.rule("above the log", r.X, r.Y, r.W, 0)
	words := []string{"card.log-date", "card.log-comb", "card.log-cured", "card.log-angle", "card.log-strokes", "card.log-name"}
	w := r.W / float64(len(words))
	for i, key := range words {
		x := r.X + float64(i)*w
		m.note(key, page.Rect{X: x + 0.5, Y: r.Y + 0.3, W: w - 1, H: canvas.LineHeight(m.plain().Font)}, m.say.T(key), canvas.Regular)
		if i > 0 {
			m.rule(key+" edge", x, r.Y+0.5, 0, r.H-1)
		}
	}
	m.rule("under the log", r.X, r.Bottom(), r.W, 0)
}

// sentence is s with a capital and a full stop.
func sentence(s string) string {
	r, n := utf8.DecodeRuneInString(s)
	return string(unicode.ToUpper(r)) + strings.TrimSuffix(s[n:], ".") + "."
}
