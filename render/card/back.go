package card

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"bladecard/calc/plan"
	"bladecard/calc/seen"
	"bladecard/render/canvas"
	"bladecard/render/figure"
	"bladecard/render/page"
)

// block is a piece of the back over its whole width, laid out and not yet placed.
type block struct {
	h    float64
	draw func(r page.Rect)
}

// amount is how much of what may be left out stands on the back.
type amount struct {
	charts         bool
	arrows, faults int // rows of the ruler and of what it looks like; arrows < 0: no ruler
	leans, setup   bool
	code           bool    // that a phone reads
	last           lastRun // of the last run of the screen
	warnings       int     // a row each, one after the other, in a few words
}

// amounts are tried from the fullest: the charts, which only the larger cards have, give way to the text, and all
// else to the warnings.
func (m *maker) amounts() []amount {
	var out []amount
	whole := []amount{{arrows: 6, faults: 5}, {arrows: 5, faults: 5}, {arrows: 5, faults: 4}, {arrows: 4, faults: 4}, {arrows: 4, faults: 3}, {arrows: 3, faults: 3}, {arrows: 2, faults: 3}, {arrows: 2, faults: 2}}
	for _, charts := range []bool{true, false} {
		if charts && m.size.H <= page.Card132.H {
			continue
		}
		for _, code := range []bool{true, false} {
			for _, a := range whole {
				if a.charts, a.leans, a.setup, a.code, a.last = charts, true, true, code, lastWhole; !code || a.faults >= faultsBesideCode {
					out = append(out, a)
				}
			}
		}
	}
	out = append(out, amount{arrows: 2, setup: true, last: lastWhole}, amount{arrows: 2, setup: true, last: lastLine}, amount{setup: true, last: lastLine},
		amount{arrows: -1, setup: true, last: lastLine}, amount{arrows: -1, last: lastLine}, amount{arrows: -1})
	for n := 1; n <= mostShort+1; n++ {
		out = append(out, amount{arrows: 2, warnings: n}, amount{arrows: -1, warnings: n})
	}
	return out
}

// faultsBesideCode is how many faults a back must have room for beside the code; with fewer the code gives way.
const faultsBesideCode = 3

// codeMM is the side of the code with its margin.
const codeMM = 18.5

// Warnings that find no room one under the other are joined, then those at the end are said in a few words.
const mostShort = 6

// back lays out the side for whoever sets up, measures and corrects: warnings, the film and what moves it, what
// to do about a print that looks wrong, the heat, cautions, and the log.
func (m *maker) back(r page.Rect) {
	faults, err := seen.Likely(m.plan, m.place, m.screen.Number, 5)
	if err != nil {
		m.err = err
		return
	}
	const gapMM = 0.9
	for _, a := range m.amounts() {
		blocks := m.blocks(r.W, a, faults)
		spare := r.H + gapMM
		for _, b := range blocks {
			spare -= b.h + gapMM
		}
		if spare < 0 {
			continue
		}
		y, before := r.Y, len(m.boxes)
		gap := gapMM + math.Min(1, spare/float64(2*len(blocks)))
		for i, b := range blocks {
			if i == len(blocks)-1 { // the log takes what is left: room to write
				b.h, y = math.Min(2*b.h, r.Bottom()-y), math.Max(y, r.Bottom()-2*b.h)
			}
			b.draw(page.Rect{X: r.X, Y: y, W: r.W, H: b.h})
			y += b.h + gap
		}
		if a.charts && errors.Is(m.err, figure.ErrNoRoom) {
			m.boxes, m.err = m.boxes[:before], nil
			continue
		}
		return
	}
	m.err = fmt.Errorf("the warnings of the back leave no room; fewer warnings are accepted")
}

// noteMM is the height of a line of notes.
func (m *maker) noteMM() float64 { return canvas.LineHeight(canvas.Font{SizePT: m.grid.notePT}) }

func (m *maker) blocks(w float64, a amount, faults []seen.Finding) []block {
	out := []block{m.title()}
	if len(m.screen.Warnings) > 0 {
		out = append(out, m.warnings(w, a.warnings))
	}
	out = append(out, m.film(w, a.warnings > mostShort))
	if m.screen.Last != nil && a.last != lastNone {
		out = append(out, m.last(w, a.last))
	}
	if a.arrows >= 0 {
		out = append(out, m.helps(w, a, faults)...)
	}
	if a.code {
		out = append(out, m.beside(w-codeMM-1, a.setup))
	} else {
		out = append(out, m.notes(w, a.setup)...)
	}
	return append(out, m.log())
}

// notes are wipe test, flash and cure, then the cautions.
func (m *maker) notes(w float64, setup bool) []block {
	var out []block
	if setup {
		out = append(out, m.paragraph("setup", w, m.say.CardSetup(m.screen), canvas.Regular))
	}
	if text := m.say.Cautions(m.screen.Cautions); text != "" {
		out = append(out, m.paragraph("cautions", w, text, canvas.Regular))
	}
	return out
}

// beside are the notes with the code at their right.
func (m *maker) beside(w float64, setup bool) block {
	const gapMM = 0.9
	notes, h := m.notes(w, setup), -gapMM
	for _, b := range notes {
		h += b.h + gapMM
	}
	return block{h: math.Max(h, codeMM), draw: func(r page.Rect) {
		y := r.Y
		for _, b := range notes {
			b.draw(page.Rect{X: r.X, Y: y, W: w, H: b.h})
			y += b.h + gapMM
		}
		code, err := figure.Code(m.say.ScreenCode(m.plan, m.loc, m.screen), codeMM)
		if err != nil {
			m.err = err
			return
		}
		m.draw("code", page.Rect{X: r.Right() - codeMM, Y: r.Y, W: codeMM, H: codeMM}, code)
	}}
}

// paragraph is a text over as many rows as it takes.
func (m *maker) paragraph(name string, w float64, text string, face canvas.Face) block {
	st := page.Style{Font: canvas.Font{Face: face, SizePT: m.grid.notePT}, Color: canvas.Black}
	p := page.Paragraph(name, 0, 0, w, text, st, 0)
	return block{h: p.Bottom, draw: func(r page.Rect) {
		for _, b := range p.Boxes {
			b.X, b.Y = b.X+r.X, b.Y+r.Y
			m.boxes = append(m.boxes, b)
		}
	}}
}

// title names the screen.
func (m *maker) title() block {
	s := m.say.T("card.screen", "n", fmt.Sprint(m.screen.Number), "of", fmt.Sprint(m.screen.Of)) + " · " + m.color() + " · " + m.loc.Name + " · " + m.plan.Title
	if m.plan.Job != "" {
		s = m.plan.Job + " · " + s
	}
	return block{h: m.noteMM() + 0.4, draw: func(r page.Rect) {
		m.note("screen", page.Rect{X: r.X, Y: r.Y, W: r.W, H: m.noteMM()}, bold, s)
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
	s, v := m.screen, m.say
	big := v.T("card.cured", "value", v.FilmBoth(s.CuredUM.Value))
	left := m.wide(big, bold) + 3
	texts := v.Expect(m.plan, s)
	if brief {
		texts = texts[:1]
	}
	how := m.paragraph("how to tell", w-left, strings.Join(texts, " "), canvas.Regular)
	h := canvas.LineHeight(canvas.Font{SizePT: m.grid.linePT})
	return block{h: math.Max(h, how.h), draw: func(r page.Rect) {
		m.line("cured film", page.Rect{X: r.X, Y: r.Y, W: left, H: h}, bold, big)
		how.draw(page.Rect{X: r.X + left, Y: r.Y, W: r.W - left, H: how.h})
	}}
}

// helps are the ruler, what it looks like, and how far other blades may lean; on a larger card with the charts
// beside them, the one over the angle alone where two would be too low.
func (m *maker) helps(w float64, a amount, faults []seen.Finding) []block {
	const gapMM, chartMM = 3.0, 30.0 // a lower chart tells nothing
	if !a.charts {
		blocks := []block{m.ruler(w, a.arrows)}
		if looks, leans := m.looks(a.faults, faults), m.leans(max(3, a.faults)); looks.h > 0 && a.leans {
			left := 0.64 * w
			blocks = append(blocks, block{h: math.Max(looks.h, leans.h), draw: func(r page.Rect) {
				looks.draw(page.Rect{X: r.X, Y: r.Y, W: left, H: looks.h})
				leans.draw(page.Rect{X: r.X + left + gapMM, Y: r.Y, W: r.W - left - gapMM, H: leans.h})
			}})
		}
		return blocks
	}
	left := 0.62 * w
	list := []block{m.ruler(left, a.arrows), m.looks(a.faults, faults), m.leansText(left)}
	h := 2.0
	for _, b := range list {
		h += b.h
	}
	charts := 1.4
	if m.size.H >= page.CardA5.H {
		charts = 2.4
	}
	h = math.Max(h, charts*chartMM)
	return []block{{h: h, draw: func(r page.Rect) {
		y := r.Y
		for _, b := range list {
			b.draw(page.Rect{X: r.X, Y: y, W: left, H: b.h})
			y += b.h + 1
		}
		x := r.X + left + gapMM
		if charts < 2 {
			m.chartAngle(page.Rect{X: x, Y: r.Y, W: r.Right() - x, H: r.H})
			return
		}
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
		Set: s.CuredUM.Value, SetLabel: v.T("card.as-set"), Unit: v.T("card.scale"), Format: v.Number, SizePT: m.grid.notePT,
	}
	for _, c := range seen.Told(s.Corrections, most) {
		tag := "card.at-press"
		if c.Kind == "mesh" || c.Kind == "eom" {
			tag = "card.new-screen"
		}
		effect, _, _ := strings.Cut(v.Signed(c.DeltaUM), "\u00a0")
		fig.Rows = append(fig.Rows, figure.RulerRow{Label: v.Short(c), Effect: effect, Tag: v.T(tag) + v.Disturbs(c, "screen"), To: c.CuredUM})
	}
	any := films(s.Others.FilmUM)
	row := figure.RulerRow{Label: v.T("card.any-blade", "range", v.AngleRange(s.AngleDeg.Low, s.AngleDeg.High)), Tag: v.FilmRange(any.Low, any.High), Span: &any, To: s.CuredUM.Value}
	if math.Max(s.CuredUM.Value-any.Low, any.High-s.CuredUM.Value) < s.TellsUM {
		row.Tag = v.T("card.no-help", "range", row.Tag)
	}
	fig.Rows = append(fig.Rows, row)
	h := fig.Height()
	return block{h: h, draw: func(r page.Rect) {
		m.draw("film ruler", page.Rect{X: r.X, Y: r.Y, W: w, H: h}, func(c canvas.Canvas) error {
			return fig.Draw(c, figure.Rect{W: w, H: h})
		})
	}}
}

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

// leans are bars of how far the other blades may lean.
func (m *maker) leans(most int) block {
	row, list := m.noteMM(), m.screen.Others.Leans
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
		m.note("other blades", page.Rect{X: r.X, Y: r.Y, W: r.W, H: row}, bold, m.say.T("card.no-blade", "blade", m.screen.Blade.Name), m.say.T("card.other-blade"))
		at := page.Rect{X: r.X, Y: r.Y + row, W: r.W, H: r.H - row}
		m.draw("leans", at, func(c canvas.Canvas) error {
			return fig.Draw(c, figure.Rect{W: at.W, H: at.H})
		})
	}}
}

// leansText is the same in words.
func (m *maker) leansText(w float64) block {
	var list []string
	for _, l := range m.screen.Others.Leans {
		list = append(list, l.Blade+"\u00a0"+m.say.Lean(l))
	}
	if list == nil {
		return block{draw: func(page.Rect) {}}
	}
	return m.paragraph("other blades", w, m.say.T("card.leans", "blade", m.screen.Blade.Name, "list", strings.Join(list, " · ")), canvas.Regular)
}

// log is the strip to write on, in the columns that a press log has.
func (m *maker) log() block {
	heads := m.say.LogHeads(m.screen)
	widths := []float64{15, 15.8, 14.7, 13, 13, 12.5, 11, 12, 15}
	row := m.noteMM()
	return block{h: row + 4.2, draw: func(r page.Rect) {
		m.rule("above the log", r.X, r.Y, r.W, 0)
		x := r.X
		for i, head := range heads {
			w := widths[i] / 122 * r.W
			m.note(fmt.Sprintf("log %d", i+1), page.Rect{X: x + 0.4, Y: r.Y + 0.3, W: w - 0.8, H: row}, plain, head)
			if i > 0 {
				m.rule("log edge", x, r.Y+0.5, 0, r.H-1)
			}
			x += w
		}
		m.rule("under the log", r.X, r.Bottom(), r.W, 0)
	}}
}
