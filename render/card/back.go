package card

import (
	"cmp"
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"

	"bladecard/calc/plan"
	"bladecard/calc/seen"
	"bladecard/render/canvas"
	"bladecard/render/figure"
	"bladecard/render/page"
	"bladecard/render/say"
)

// block is a piece of the back over its whole width, laid out and not yet placed.
type block struct {
	h    float64
	draw func(r page.Rect)
}

// amount is how much of what may be left out stands on the back.
type amount struct {
	chartsMM       float64 // height of the two charts; 0: none
	arrows, faults int     // rows of the ruler and of what it looks like; arrows < 0: no ruler
	leans, setup   bool
	code           bool    // that a phone reads
	last           lastRun // of the last run of the screen
	warnings       int     // a row each, one after the other, in a few words
	rows           int     // to write on
}

// helpsOf are the rows of the ruler and of the faults, from the most.
var helpsOf = []amount{{arrows: 6, faults: 5}, {arrows: 5, faults: 5}, {arrows: 5, faults: 4}, {arrows: 4, faults: 4}, {arrows: 4, faults: 3}, {arrows: 3, faults: 3}, {arrows: 2, faults: 3}, {arrows: 2, faults: 2}}

// amounts are tried from the fullest: the charts, which only the largest card has room for, give way to the text,
// the code to a second row to write on, and all else to the warnings.
var amounts = func() (out []amount) {
	add := func(from []amount, a amount) {
		for _, b := range from {
			a.arrows, a.faults, a.leans, a.setup = b.arrows, b.faults, true, true
			if a.last == lastNone {
				a.last = lastWhole
			}
			out = append(out, a)
		}
	}
	for _, mm := range []float64{96, 88, 80, leastChartsMM} {
		add(helpsOf[:6], amount{chartsMM: mm, code: true, rows: 3})
	}
	add(helpsOf[:6], amount{chartsMM: leastChartsMM, code: true, rows: 2})
	add(helpsOf[:6], amount{chartsMM: leastChartsMM, rows: 2})
	add(helpsOf[:7], amount{code: true, rows: 2}) // with fewer than three faults the code gives way
	add(helpsOf, amount{rows: 2})
	add(helpsOf, amount{rows: 1})
	add(helpsOf[5:], amount{last: lastLine, rows: 1})
	out = append(out, amount{arrows: 2, setup: true, last: lastWhole}, amount{arrows: 2, setup: true, last: lastLine}, amount{setup: true, last: lastLine},
		amount{arrows: -1, setup: true, last: lastLine}, amount{arrows: -1, last: lastLine}, amount{arrows: -1})
	for n := 1; n <= mostShort+1; n++ {
		out = append(out, amount{arrows: 2, warnings: n}, amount{arrows: -1, warnings: n})
	}
	return out
}()

// leastChartsMM is the height of two charts below which they tell nothing.
const leastChartsMM = 72.0

// codeMM is the side of the code with its margin.
const codeMM = 18.5

// Warnings that find no room one under the other are joined, then those at the end are said in a few words.
const mostShort = 6

// gapMM is the least between two blocks.
const gapMM = 0.55

// back lays out the side for whoever sets up, measures and corrects: warnings, the film and what moves it, what
// to do about a print that looks wrong, the heat, cautions, and the log.
func (m *maker) back(r page.Rect) {
	faults, err := seen.Likely(m.plan, m.place, m.screen.Number, 5)
	if err != nil {
		m.err = err
		return
	}
	memo := map[piece]block{}
	for _, a := range amounts {
		if a.chartsMM > 0 && m.size.H < page.CardA5.H {
			continue
		}
		blocks := m.blocks(r.W, a, faults, memo)
		spare := r.H + gapMM - m.logMM(max(1, a.rows))
		for _, b := range blocks {
			spare -= b.h + gapMM
		}
		if spare < 0 {
			continue
		}
		y, before := r.Y, len(m.boxes)
		rows := max(1, a.rows)
		for rows < mostRows && spare >= m.logMM(1)-m.logMM(0) {
			spare, rows = spare-(m.logMM(1)-m.logMM(0)), rows+1
		}
		gap := gapMM + math.Min(1, spare/float64(len(blocks)+1))
		for _, b := range blocks {
			b.draw(page.Rect{X: r.X, Y: y, W: r.W, H: b.h})
			y += b.h + gap
		}
		h := math.Min(r.Bottom()-y, 1.35*m.logMM(rows))
		m.log(page.Rect{X: r.X, Y: r.Bottom() - h, W: r.W, H: h}, rows)
		if a.chartsMM > 0 && errors.Is(m.err, figure.ErrNoRoom) {
			m.boxes, m.err = m.boxes[:before], nil
			continue
		}
		return
	}
	m.err = fmt.Errorf("the warnings of the back leave no room; fewer warnings are accepted")
}

// noteMM is the height of a line of notes.
func (m *maker) noteMM() float64 { return canvas.LineHeight(canvas.Font{SizePT: m.grid.notePT}) }

// piece is what a block shows, and how much of it: laid out once for all amounts.
type piece struct {
	name string
	much int
}

// blocks are those of a back w wide, from the top, with so much of each; memo keeps what was laid out for another amount.
func (m *maker) blocks(w float64, a amount, faults []seen.Finding, memo map[piece]block) []block {
	once := func(p piece, lay func() block) block {
		b, done := memo[p]
		if !done {
			b = lay()
			memo[p] = b
		}
		return b
	}
	out := []block{once(piece{name: "title"}, m.title)}
	if len(m.screen.Warnings) > 0 {
		out = append(out, once(piece{name: "warnings", much: a.warnings}, func() block { return m.warnings(w, a.warnings) }))
	}
	brief := 0
	if a.warnings > mostShort {
		brief = 1
	}
	out = append(out, once(piece{name: "film", much: brief}, func() block { return m.film(w, brief > 0) }))
	if m.screen.Last != nil && a.last != lastNone {
		out = append(out, once(piece{name: "last", much: int(a.last)}, func() block { return m.last(w, a.last) }))
	}
	if a.arrows >= 0 {
		out = append(out, m.helps(w, a, faults)...)
	}
	if !a.code {
		if notes := once(piece{name: "notes", much: map[bool]int{true: 1}[a.setup]}, func() block { return m.notes(w, a.setup) }); notes.h > 0 {
			out = append(out, notes)
		}
		return out
	}
	return append(out, once(piece{name: "beside"}, func() block { return m.beside(w-codeMM-1, a.setup) }))
}

// notes are wipe test, flash and cure, then the cautions.
func (m *maker) notes(w float64, setup bool) block {
	var lines []say.Line
	if setup {
		lines = m.say.CardSetup(m.screen)
	}
	if text := m.say.Cautions(m.screen.Cautions); text != "" {
		lines = append(lines, say.Line{Text: text})
	}
	return m.lines("setup", w, lines)
}

// beside are the notes with the code at their right.
func (m *maker) beside(w float64, setup bool) block {
	notes := m.notes(w, setup)
	return block{h: math.Max(notes.h, codeMM), draw: func(r page.Rect) {
		notes.draw(page.Rect{X: r.X, Y: r.Y, W: w, H: notes.h})
		code, err := figure.Code(m.say.ScreenCode(m.plan, m.loc, m.screen), codeMM)
		if err != nil {
			m.err = err
			return
		}
		m.draw("code", page.Rect{X: r.Right() - codeMM, Y: r.Y, W: codeMM, H: codeMM}, code)
	}}
}

// lines are texts under each other, each behind its label in a narrow column; one without a label takes the whole width.
func (m *maker) lines(name string, w float64, lines []say.Line) block {
	label, text := canvas.Font{Face: canvas.Bold, SizePT: m.grid.notePT}, canvas.Font{SizePT: m.grid.notePT}
	column := 0.0
	for _, l := range lines {
		if l.Label != "" {
			column = math.Max(column, canvas.Width(l.Label, label)+1.6)
		}
	}
	var boxes []page.Box
	y, row := 0.0, m.noteMM()
	for _, l := range lines {
		x := 0.0
		if l.Label != "" {
			boxes, x = append(boxes, page.Text(name+": "+l.Label, 0, y, column, row, l.Label, label, canvas.Black, page.Left)), column
		}
		p := wrapped(name, x, y, w-x, l.Text, text)
		boxes, y = append(boxes, p.Boxes...), p.Bottom
	}
	return m.placed(boxes, y)
}

// shortLine is the share of a column below which a last line looks lost.
const shortLine = 0.1

// wrapped is a text on as many lines as it takes, none of them a lost last word where a narrower column helps.
func wrapped(name string, x, y, w float64, text string, f canvas.Font) page.Fitted {
	st := page.Style{Font: f, Color: canvas.Black}
	p := page.Paragraph(name, x, y, w, text, st, 0)
	if n := len(p.Boxes); n > 1 && (!strings.Contains(p.Boxes[n-1].Text, " ") || canvas.Width(p.Boxes[n-1].Text, f) < shortLine*w) {
		if q := page.Paragraph(name, x, y, 0.9*w, text, st, 0); len(q.Boxes) == n {
			return q
		}
	}
	return p
}

// placed is a block of boxes that are laid out at 0, 0.
func (m *maker) placed(boxes []page.Box, h float64) block {
	return block{h: h, draw: func(r page.Rect) {
		for _, b := range boxes {
			b.X, b.Y = b.X+r.X, b.Y+r.Y
			m.boxes = append(m.boxes, b)
		}
	}}
}

// paragraph is a text over as many rows as it takes.
func (m *maker) paragraph(name string, w float64, text string, face canvas.Face) block {
	p := wrapped(name, 0, 0, w, text, canvas.Font{Face: face, SizePT: m.grid.notePT})
	return m.placed(p.Boxes, p.Bottom)
}

// title names the screen. Names too long for the row share what there is of it, and the short ones leave them the
// rest; what is left out of a name is its middle, since names of one job begin alike.
func (m *maker) title() block {
	names := []string{m.color(), m.loc.Name, m.plan.Title}
	screen := m.say.T("card.screen", "n", fmt.Sprint(m.screen.Number), "of", fmt.Sprint(m.screen.Of)) + " · "
	if m.plan.Job != "" {
		screen = m.plan.Job + " · " + screen
	}
	f := canvas.Font{Face: canvas.Bold, SizePT: m.grid.notePT}
	return block{h: m.noteMM() + 0.4, draw: func(r page.Rect) {
		cut, order, room := slices.Clone(names), []int{0, 1, 2}, r.W-canvas.Width(screen+" ·  · ", f)
		slices.SortFunc(order, func(a, b int) int { return cmp.Compare(canvas.Width(names[a], f), canvas.Width(names[b], f)) })
		for n, i := range order {
			cut[i] = m.short(names[i], f.Face, f.SizePT, room/float64(len(order)-n))
			room -= canvas.Width(cut[i], f)
		}
		m.note("screen", page.Rect{X: r.X, Y: r.Y, W: r.W, H: m.noteMM()}, bold, screen+strings.Join(names, " · "), screen+strings.Join(cut, " · "))
		m.rule("under the title", r.X, r.Y+m.noteMM()+0.4, r.W, 0)
	}}
}

// warnings are all that the screen has.
func (m *maker) warnings(w float64, brief int) block {
	list := m.screen.Warnings
	whole := len(list)
	if brief > 0 {
		whole = max(0, whole*(mostShort-brief)/(mostShort-1))
	}
	var out []string
	for i, x := range list {
		text := x.Text
		if i >= whole {
			text = m.say.BriefWarning(x)
		}
		out = append(out, m.say.T("show.warning", "text", text))
	}
	between := "\n"
	if brief > 0 {
		between = " "
	}
	return m.paragraph("warnings", w, strings.Join(out, between), canvas.Bold)
}

// film is what to expect, large, and how to tell.
func (m *maker) film(w float64, brief bool) block {
	big, mil := m.say.Cured(m.screen)
	lines := m.say.Expect(m.plan, m.screen)
	if brief {
		lines = lines[:1]
	}
	left, row := m.wide(big, bold)+3, m.noteMM()
	how := m.lines("how to tell", w-left, lines)
	h := canvas.LineHeight(canvas.Font{SizePT: m.grid.linePT})
	high := h
	if mil != "" {
		high += row
	}
	return block{h: math.Max(high, how.h), draw: func(r page.Rect) {
		m.line("cured film", page.Rect{X: r.X, Y: r.Y, W: left, H: h}, bold, big)
		m.note("cured film in mil", page.Rect{X: r.X, Y: r.Y + h, W: left, H: row}, bold, mil)
		how.draw(page.Rect{X: r.X + left, Y: r.Y, W: r.W - left, H: how.h})
	}}
}

// helps are the ruler, what it looks like, and how far other blades may lean; on the largest card with the charts
// beside them.
func (m *maker) helps(w float64, a amount, faults []seen.Finding) []block {
	const columnMM = 3.0 // between what stands side by side
	if a.chartsMM == 0 {
		blocks := []block{m.ruler(w, a.arrows)}
		head := m.leansHead(0.36*w - columnMM)
		if looks, leans := m.looks(a.faults, faults), m.leans(faults[:min(a.faults, len(faults))], a.faults, head); looks.h > 0 && a.leans {
			bars := 0.0
			if leans.h > 0 {
				bars = columnMM + math.Max(0.3*w, m.width(head, bold, m.grid.notePT))
			}
			blocks = append(blocks, block{h: math.Max(looks.h, leans.h), draw: func(r page.Rect) {
				looks.draw(page.Rect{X: r.X, Y: r.Y, W: r.W - bars, H: looks.h})
				leans.draw(page.Rect{X: r.Right() - bars + columnMM, Y: r.Y, W: bars - columnMM, H: leans.h})
			}})
		}
		return blocks
	}
	left := 0.6 * w
	list := []block{m.ruler(left, a.arrows), m.looks(a.faults, faults), m.leans(faults, len(m.screen.Others.Leans), m.leansHead(left))}
	h := 0.0
	for _, b := range list {
		h += b.h
	}
	if h+4 > a.chartsMM {
		h -= list[2].h
		list[2] = m.leansText(left)
		h += list[2].h
	}
	between := math.Min(7, (a.chartsMM-h)/2)
	if between < 1 {
		return []block{{h: math.Inf(1)}}
	}
	h = a.chartsMM
	return []block{{h: h, draw: func(r page.Rect) {
		y := r.Y
		for _, b := range list {
			b.draw(page.Rect{X: r.X, Y: y, W: left, H: b.h})
			y += b.h + between
		}
		x := r.X + left + columnMM
		m.chartAngle(page.Rect{X: x, Y: r.Y, W: r.Right() - x, H: 0.63*r.H - 0.5})
		m.chartHardness(page.Rect{X: x, Y: r.Y + 0.63*r.H + 0.5, W: r.Right() - x, H: 0.37*r.H - 0.5})
	}}}
}

// ruler shows where each change would put the film, and what no change of blade or angle does to it.
func (m *maker) ruler(w float64, most int) block {
	s, v := m.screen, m.say
	films := func(i plan.Interval) figure.Interval { return figure.Interval{Low: i.Low, High: i.High} }
	fig := figure.Ruler{
		Target: figure.Interval{Low: s.TargetUM.Low, High: s.TargetUM.High}, Band: figure.Interval{Low: s.CuredUM.Low, High: s.CuredUM.High},
		Set: s.CuredUM.Value, SetLabel: v.T("card.as-set"), TargetLabel: v.CardTarget(s), Unit: v.T("card.scale"), Format: v.Number, SizePT: m.grid.notePT,
	}
	if s.HeightMM != nil {
		fig.Unit = v.T("card.scale-flat")
	}
	told := seen.Told(s, most)
	slices.SortStableFunc(told, func(a, b plan.Correction) int { return cmp.Compare(sense(b), sense(a)) })
	for _, c := range told {
		tag, known := "card.at-press", []string{"screen"}
		if c.Kind == "mesh" || c.Kind == "eom" {
			tag, known = "card.new-screen", []string{"screen", "flash"} // it gets a card of its own
		}
		effect, _, _ := strings.Cut(v.Signed(c.DeltaUM), "\u00a0")
		disturbs := v.Disturbs(c, known...)
		if flash := v.FlashBetween(s, c.Hits); flash != "" {
			disturbs += ", " + flash
		}
		fig.Rows = append(fig.Rows, figure.RulerRow{Label: v.Short(c), Effect: effect, Tag: v.T(tag) + disturbs, Brief: strings.TrimPrefix(disturbs, ", "), To: c.CuredUM})
	}
	any := films(s.Others.FilmUM)
	row := figure.RulerRow{Label: v.T("card.any-blade", "range", v.AngleRange(s.AngleDeg.Low, s.AngleDeg.High)), Tag: v.FilmRange(any.Low, any.High), Span: &any, To: s.CuredUM.Value}
	if math.Max(s.CuredUM.Value-any.Low, any.High-s.CuredUM.Value) < s.TellsUM {
		row.Tag, row.NoHelp = v.T("card.no-help", "range", row.Tag), true
	}
	fig.Rows = append(fig.Rows, row)
	h := fig.Height()
	return block{h: h, draw: func(r page.Rect) {
		m.draw("film ruler", page.Rect{X: r.X, Y: r.Y, W: w, H: h}, func(c canvas.Canvas) error {
			return fig.Draw(c, figure.Rect{W: w, H: h})
		})
	}}
}

// sense is 1 for a change that thickens the film and -1 for one that thins it.
func sense(c plan.Correction) float64 { return math.Copysign(1, c.DeltaUM) }

// looks are the faults that this screen is likely to show and what to do about each, in order.
func (m *maker) looks(most int, faults []seen.Finding) block {
	row := m.noteMM()
	faults = faults[:min(most, len(faults))]
	if len(faults) == 0 {
		return block{draw: func(page.Rect) {}}
	}
	return block{h: float64(len(faults)+1) * row, draw: func(r page.Rect) {
		wide := 0.0
		for _, f := range faults {
			looks, _ := m.say.Fault(f)
			wide = math.Max(wide, canvas.Width(looks, canvas.Font{SizePT: m.grid.notePT}))
		}
		m.note("looks wrong", page.Rect{X: r.X, Y: r.Y, W: r.W, H: row}, bold, m.say.T("card.wrong"))
		const box = 2.0
		for i, f := range faults {
			at := page.Rect{X: r.X, Y: r.Y + float64(i+1)*row, W: math.Min(wide+box+1.1, 0.5*r.W), H: row}
			looks, do := m.say.Fault(f)
			m.fill("tick", page.Rect{X: at.X, Y: at.Y + (row-box)/2, W: box, H: box}, canvas.White, 0.2)
			m.note("fault", page.Rect{X: at.X + box + 1, Y: at.Y, W: at.W - box - 1, H: row}, plain, looks)
			m.note("do", page.Rect{X: at.Right() + 1, Y: at.Y, W: r.Right() - at.Right() - 1, H: row}, plain, do...)
		}
	}}
}

// leans are bars of how far the other blades may lean, at most so many: those that mend a fault stay.
func (m *maker) leans(faults []seen.Finding, most int, head string) block {
	row, list := m.noteMM(), slices.Clone(m.screen.Others.Leans)
	for i := len(list) - 1; i >= 0 && len(list) > most; i-- {
		if !mended(faults, list[i].Blade) {
			list = slices.Delete(list, i, i+1)
		}
	}
	list = list[:min(len(list), most)]
	if len(list) == 0 {
		return block{draw: func(page.Rect) {}}
	}
	const mostDeg = 45.0
	fig := figure.Bars{SizePT: m.grid.notePT, PitchMM: row}
	for _, l := range list {
		bar := figure.Bar{Name: l.Blade, Figure: m.say.Lean(l)}
		if l.ToDeg != nil {
			bar.Share = *l.ToDeg / mostDeg
		}
		fig.Rows = append(fig.Rows, bar)
	}
	return block{h: float64(len(list)+1) * row, draw: func(r page.Rect) {
		m.note("other blades", page.Rect{X: r.X, Y: r.Y, W: r.W, H: row}, bold, head)
		at := page.Rect{X: r.X, Y: r.Y + row, W: r.W, H: r.H - row}
		m.draw("leans", at, func(c canvas.Canvas) error {
			return fig.Draw(c, figure.Rect{W: at.W, H: at.H})
		})
	}}
}

// mended tells whether a blade is what to change first for one of the faults, after what costs no change of the film.
func mended(faults []seen.Finding, blade string) bool {
	return slices.ContainsFunc(faults, func(f seen.Finding) bool {
		i := slices.IndexFunc(f.Changes, func(c seen.Change) bool { return c.Correction != nil })
		return i >= 0 && f.Changes[i].Correction.Kind == "blade" && f.Changes[i].Correction.To == blade
	})
}

// leansHead stands over the bars, and names the screen's own blade where w has room for it.
func (m *maker) leansHead(w float64) string {
	if head := m.say.T("card.no-blade", "blade", m.screen.Blade.Name); m.width(head, bold, m.grid.notePT) <= w {
		return head
	}
	return m.say.T("card.other-blade")
}

// leansText is the same in words.
func (m *maker) leansText(w float64) block {
	var list []string
	for _, l := range m.screen.Others.Leans {
		list = append(list, l.Blade+"\u00a0("+m.say.Lean(l)+")")
	}
	if list == nil {
		return block{draw: func(page.Rect) {}}
	}
	return m.paragraph("other blades", w, m.say.T("card.leans", "blade", m.screen.Blade.Name, "list", strings.Join(list, ", ")), canvas.Regular)
}

// mostRows is how many rows the log has at most.
const mostRows = 4

// logMM is the height of the log with so many rows to write on.
func (m *maker) logMM(rows int) float64 {
	return m.noteMM() + 4.1*math.Sqrt(m.grid.scale)*float64(rows)
}

// log is the strip to write on, in the columns that a press log has.
func (m *maker) log(r page.Rect, rows int) {
	widths := []float64{14.4, 16.2, 15.6, 13, 13, 12.5, 11, 12, 14.3}
	m.rule("above the log", r.X, r.Y, r.W, 0)
	x := r.X
	for i, head := range m.say.LogHeads(m.screen) {
		w := widths[i] / 122 * r.W
		m.note(fmt.Sprintf("log %d", i+1), page.Rect{X: x + 0.6, Y: r.Y + 0.2, W: w - 0.8, H: m.noteMM()}, plain, head)
		if i > 0 {
			m.rule("log edge", x, r.Y+0.5, 0, r.H-1)
			m.boxes[len(m.boxes)-1].Under = true // the rows cross it
		}
		x += w
	}
	pitch := (r.H - m.noteMM()) / float64(rows)
	for i := range rows {
		m.rule("log row", r.X, r.Bottom()-float64(i)*pitch, r.W, 0)
	}
}
