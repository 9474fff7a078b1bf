package trialsheet

import (
	"fmt"

	"bladecard/calc/fit"
	"bladecard/calc/trials"
	"bladecard/render/canvas"
	"bladecard/render/flow"
	"bladecard/render/page"
	"bladecard/render/say"
)

// Shop is where the prints are made.
type Shop struct {
	Name, Press, Ink string
	PatchMM          float64 // a side of the square that is printed
}

// What a box to write in measures, in mm, and the sizes of type.
const (
	rowMM    = 8.5
	dateMM   = 60.0
	numberMM = 4.0 // of a step
	thinMM   = 0.2
	changeMM = 0.8 // of the line where a screen or a blade is changed
	titlePT  = 16.0
	textPT   = 9.0
	printPT  = 11.0
)

// maker lays out one sheet.
type maker struct {
	*flow.Flow
	say  *say.Voice
	shop Shop
}

// Pages lays out the sheet of a trial.
func Pages(t trials.Trial, s Shop, paper page.Paper, v *say.Voice) ([]page.Face, error) {
	heading := v.T("trial.heading", "press", s.Press, "ink", s.Ink)
	m := maker{Flow: flow.New(paper, "trial sheet", heading, 1), say: v, shop: s}
	m.Paragraph("heading", heading, flow.Bold(titlePT))
	m.Paragraph("shop", s.Name, flow.Regular(flow.BodyPT))
	m.Space(1.5)
	m.Paragraph("why", v.T("trial.why", "before", v.Around(t.Before), "after", v.Around(t.After)), flow.Regular(textPT))
	m.steps("before", 5)
	m.steps("measure", 3)
	n := 0
	for d, minutes := range t.Minutes {
		var of []fit.Print
		for ; n < len(t.Prints) && t.Prints[n].Day == fmt.Sprint(d+1); n++ {
			of = append(of, t.Prints[n])
		}
		m.day(d+1, minutes, n-len(of), of)
	}
	m.tells(t)
	m.Space(flow.GapMM)
	m.Paragraph("then", v.T("trial.then"), flow.Regular(textPT))
	m.Number(func(n, of int) string { return v.T("sheet-doc.page", "n", fmt.Sprint(n), "of", fmt.Sprint(of)) })
	return m.Flow.Pages, m.Err
}

// steps is a heading and its numbered sentences.
func (m *maker) steps(what string, count int) {
	m.Heading(what, m.say.T("trial."+what+"-head"), 12)
	for i := 1; i <= count; i++ {
		text := m.say.T(fmt.Sprintf("trial.%s-%d", what, i), "side", m.say.Size(m.shop.PatchMM, m.shop.PatchMM))
		m.step(fmt.Sprintf("%s %d", what, i), fmt.Sprint(i, "."), text)
	}
}

// step is a sentence with its number before it.
func (m *maker) step(name, number, text string) {
	font := flow.Regular(textPT)
	lines := canvas.Wrap(text, font, m.Width()-numberMM)
	m.Ensure(float64(len(lines)) * canvas.LineHeight(font))
	m.Add(page.Text(name+" number", m.Left(), m.Y, numberMM, 0, number, font, canvas.Black, page.Left))
	for _, line := range lines {
		m.Add(page.Text(name, m.Left()+numberMM, m.Y, m.Width()-numberMM, 0, line, font, canvas.Black, page.Left))
		m.Y += canvas.LineHeight(font)
	}
}

// column is one of the list of prints: its head, its share of the width, and what stands in it for a print and the one
// before, with whether it is new; nil: a box to fill in.
type column struct {
	head  string
	share float64
	of    func(n int, p, before fit.Print) (text string, isNew bool)
}

// columns are those of the list. What does not change from print to print is not bold, so that what has to be set
// is seen; an EOM is that of the screen and stands once.
func (m *maker) columns() []column {
	v := m.say
	head := func(name string) string { return v.T("trial.col-" + name) }
	of := func(text func(fit.Print) string) func(int, fit.Print, fit.Print) (string, bool) {
		return func(_ int, p, before fit.Print) (string, bool) { return text(p), text(p) != text(before) }
	}
	return []column{
		{head("n"), 0.6, func(n int, _, _ fit.Print) (string, bool) { return fmt.Sprint(n), true }},
		{head("screen"), 1.4, of(func(p fit.Print) string { return p.Mesh })},
		{head("blade"), 1.45, of(func(p fit.Print) string { return p.Blade })},
		{head("angle"), 0.8, of(func(p fit.Print) string { return v.Angle(p.AngleDeg) })},
		{head("strokes"), 1.0, of(func(p fit.Print) string { return fmt.Sprint(p.Strokes) })},
		{head("clear"), 1.0, nil},
		{head("eom") + ", µm", 1.05, func(_ int, p, before fit.Print) (string, bool) {
			if p.Mesh == before.Mesh {
				return "″", false
			}
			return "", true
		}},
		{head("wet") + ", µm", 1.25, nil},
		{head("cured") + ", µm", 1.2, nil},
		{head("before"), 1.25, nil},
		{head("after"), 1.25, nil},
	}
}

// day is the list of one day's prints. Those of a screen and blade stay on one page where half a page takes them.
func (m *maker) day(day int, minutes float64, before int, prints []fit.Print) {
	columns := m.columns()
	name := fmt.Sprintf("day %d", day)
	header := func() {
		m.row(name+" head", columns, func(c column) (string, canvas.Font) { return c.head, flow.Bold(flow.SmallPT) }, true)
	}
	m.Heading(name, m.say.T("trial.list-head", "n", fmt.Sprint(day), "minutes", m.say.Minutes(minutes)), 5*rowMM)
	m.signed(name)
	header()
	var last fit.Print
	for i, p := range prints {
		changed := p.Mesh != last.Mesh || p.Blade != last.Blade
		need := rowMM
		if h := rowMM * float64(alike(prints[i:])); changed && h < m.Bottom()/2 {
			need = h
		}
		if m.Room() < need {
			m.Next()
			header()
		}
		if changed {
			m.Add(page.Rule(fmt.Sprintf("change before print %d", before+i+1), m.Left(), m.Y, m.Width(), 0, flow.Hair(changeMM)))
		}
		m.row(fmt.Sprintf("print %d", before+i+1), columns, func(c column) (string, canvas.Font) {
			if c.of == nil {
				return "", canvas.Font{}
			}
			text, isNew := c.of(before+i+1, p, last)
			return text, canvas.Font{Face: canvas.Face(isNew), SizePT: printPT}
		}, false)
		last = p
	}
}

// alike is how many prints from the first on are of one screen and blade.
func alike(prints []fit.Print) int {
	n := 1
	for n < len(prints) && prints[n].Mesh == prints[0].Mesh && prints[n].Blade == prints[0].Blade {
		n++
	}
	return n
}

// signed is a line for the date and the name.
func (m *maker) signed(name string) {
	font := flow.Regular(flow.BodyPT)
	x := m.Left()
	for _, what := range []string{"date", "by"} {
		text := m.say.T("trial." + what)
		w := canvas.Width(text, font) + 1
		m.Add(
			page.Text(name+" "+what, x, m.Y, w, 0, text, font, canvas.Black, page.Left),
			page.Rule(name+" "+what+" line", x+w+1, m.Y+canvas.LineHeight(font), dateMM-w, 0, flow.Hair(thinMM)),
		)
		x += dateMM + 8
	}
	m.Y += canvas.LineHeight(font) + 2.5
}

// row is one row of the list, ruled all round so that there is a box to write in.
func (m *maker) row(name string, columns []column, text func(column) (string, canvas.Font), head bool) {
	all := 0.0
	for _, c := range columns {
		all += c.share
	}
	x, h := m.Left(), rowMM
	if head {
		grey := canvas.Gray(225)
		m.Add(page.Fill(name+" ground", x, m.Y, m.Width(), h, &grey, canvas.Pen{}))
	}
	for _, c := range columns {
		w := m.Width() * c.share / all
		s, font := text(c)
		m.Add(page.Fill(name+" "+c.head+" box", x, m.Y, w, h, nil, flow.Hair(thinMM)))
		if s != "" {
			m.Add(page.Fit(name+" "+c.head, page.Rect{X: x + 0.8, Y: m.Y + 0.8, W: w - 1.6, H: h - 1.6}, s,
				page.Style{Font: font, Color: canvas.Black, Align: page.Left}, flow.SmallPT).Boxes...)
		}
		x += w
	}
	m.Y += h
}

// tells is the table of what the prints do to the expected range of each mesh.
func (m *maker) tells(t trials.Trial) {
	v := m.say
	table := flow.Table{Name: "tells", Header: []string{v.T("trial.tells-mesh"), v.T("trial.tells-prints"), v.T("trial.tells-before"), v.T("trial.tells-after")}}
	for _, x := range t.Meshes {
		table.Row(flow.Plain(x.Name, fmt.Sprint(x.Prints), v.Around(x.Before), v.Around(x.After))...)
	}
	m.Part("tells", v.T("trial.tells-head"), v.T("trial.tells-note"), table)
	m.Space(flow.GapMM)
	effects := flow.Table{Name: "effects", Header: []string{v.T("trial.tells-effect"), v.T("trial.tells-known"), v.T("trial.tells-after")}}
	for _, e := range v.TrialEffects(t) {
		effects.Row(flow.Plain(e.What, e.Before, e.After)...)
	}
	m.Table(effects)
}
