package daysheet

import (
	"fmt"
	"strings"

	"bladecard/calc/day"
	"bladecard/render/canvas"
	"bladecard/render/flow"
	"bladecard/render/page"
	"bladecard/render/say"
)

// The list hangs on a wall: what a press prints, in which order, and what is changed before it reads at arm's length,
// the lists of each room with the paper in the hand. All sizes are points and mm.
const (
	titlePT  = 22.0
	pressPT  = 17.0
	jobPT    = 13.0
	changePT = 11.5
	listPT   = 9.0
	factPT   = 8.5

	jobMM   = 13.0 // least height of a job
	padMM   = 1.6  // above and below its text
	tickMM  = 9.0  // side of its box
	placeMM = 9.0  // of its place in the order
	listMM  = 7.6  // height of a row of a list

	leastOfPage = 0.3 // what a list that goes over a page begins on, so that each room gets its own page
)

// maker lays out one list.
type maker struct {
	*flow.Flow
	say *say.Voice
}

// Pages lays out the list of a day. when is the days in words; empty where none were named.
func Pages(d day.Day, shop, when string, paper page.Paper, v *say.Voice) ([]page.Face, error) {
	heading := v.T("day.title")
	if when != "" {
		heading = v.T("day.title-due", "when", when)
	}
	m := maker{flow.New(paper, "day list", heading, 1), v}
	m.Paragraph("heading", heading, flow.Bold(titlePT))
	m.Paragraph("shop", shop, flow.Regular(listPT))
	if d.FileOrder > 0 {
		m.Paragraph("saves", v.DaySaves(d), flow.Regular(listPT))
	}
	m.Paragraph("caution", v.T("day.caution"), flow.Regular(listPT))
	for _, p := range d.Presses {
		m.press(p)
	}
	parts := map[string]say.Part{}
	for _, p := range v.Day(d) {
		parts[p.Name] = p
	}
	m.lines(parts["clashes"])
	var dryers [][]string
	for _, x := range d.Dryers {
		dryers = append(dryers, []string{x.Dryer, v.TemperatureRange(x.Film.Low, x.Film.High), v.BeltSpeed(x.Belt.Low, x.Belt.High), strings.Join(x.Jobs, ", ")})
	}
	m.list("dryers", dryers, "dryer", "film", "belt", "for")
	m.blades(d.Blades)
	m.lines(parts["sharpen"])
	var screens, inks [][]string
	for _, s := range d.Screens {
		screens = append(screens, v.DayScreen(s))
	}
	m.list("screens", screens, "mesh", "stencil", "tension", "dots", "color", "for")
	for _, x := range d.Inks {
		inks = append(inks, []string{v.InkName(x.Ink), x.Color, v.Mass(x.G), v.Volume(x.ML), strings.Join(x.Jobs, ", ")})
	}
	m.list("inks", inks, "ink", "color", "mass", "volume", "for")
	m.Number(func(n, of int) string { return v.T("sheet-doc.page", "n", fmt.Sprint(n), "of", fmt.Sprint(of)) })
	return m.Flow.Pages, m.Err
}

// press is the jobs of a press in their order, under its name.
func (m *maker) press(p day.Press) {
	name := "press " + p.Name
	head, sum := canvas.Wrap(p.Name, flow.Bold(pressPT), m.Width()), m.say.DaySum(p)
	m.Space(2 * flow.GapMM)
	m.Ensure(float64(len(head))*canvas.LineHeight(flow.Bold(pressPT)) + canvas.LineHeight(flow.Regular(listPT)) + 1 + m.jobHeight(0, p))
	m.Paragraph(name, p.Name, flow.Bold(pressPT))
	m.Paragraph(name+" sum", sum, flow.Regular(listPT))
	m.Y += 1
	for i := range p.Jobs {
		h := m.jobHeight(i, p)
		if m.Room() < h {
			m.Next()
			m.Paragraph(name+" again", p.Name, flow.Bold(jobPT))
			m.Y += 1
		}
		m.Add(page.Rule(fmt.Sprintf("%s rule %d", name, i+1), m.Left(), m.Y, m.Width(), 0, flow.Hair(0.25)))
		m.job(fmt.Sprintf("%s job %d", name, i+1), i, p, h)
	}
	m.Add(page.Rule(name+" end", m.Left(), m.Y, m.Width(), 0, flow.Hair(0.25)))
}

// text is lines of one size in a column of a job.
type text struct {
	lines []string
	font  canvas.Font
}

func (m *maker) wrapped(s string, font canvas.Font, w float64) text {
	return text{canvas.Wrap(s, font, w), font}
}

func (t text) height() float64 { return float64(len(t.lines)) * canvas.LineHeight(t.font) }

// columns are those of a job: box, place, what it is, and what is changed before it.
func (m *maker) columns() (place, what, change page.Rect) {
	place = page.Rect{X: m.Left() + tickMM + 3, W: placeMM}
	what = page.Rect{X: place.Right() + 1}
	what.W = 0.65 * (m.Left() + m.Width() - what.X)
	change = page.Rect{X: what.Right() + 4}
	change.W = m.Left() + m.Width() - change.X
	return place, what, change
}

// texts are what stands in the columns of a job.
func (m *maker) texts(i int, p day.Press) (title, facts, change text) {
	j := p.Jobs[i]
	_, what, changed := m.columns()
	return m.wrapped(strings.TrimSpace(j.Job+" "+j.Title), flow.Bold(jobPT), what.W),
		m.packed(m.say.DayFacts(p, j), " · ", "", flow.Regular(factPT), what.W),
		m.packed(m.say.DayChanges(i, j), ", ", ",", flow.Bold(changePT), changed.W)
}

// packed sets parts side by side with something between them, and something else where a line ends; none is broken.
func (m *maker) packed(parts []string, between, atEnd string, font canvas.Font, w float64) text {
	lines := []string{parts[0]}
	for _, p := range parts[1:] {
		last := &lines[len(lines)-1]
		if joined := *last + between + p; canvas.Width(joined+atEnd, font) <= w {
			*last = joined
		} else {
			*last += atEnd
			lines = append(lines, p)
		}
	}
	return text{lines, font}
}

func (m *maker) jobHeight(i int, p day.Press) float64 {
	title, facts, change := m.texts(i, p)
	return max(jobMM, max(title.height()+facts.height(), change.height())+2*padMM)
}

// job is a row h high.
func (m *maker) job(name string, i int, p day.Press, h float64) {
	title, facts, change := m.texts(i, p)
	place, what, changed := m.columns()
	m.Tick(name+" tick", tickMM, h)
	n := m.wrapped(fmt.Sprint(i+1), flow.Bold(pressPT), place.W)
	m.set(name+" place", n, place, m.Y+(h-n.height())/2)
	y := m.Y + (h-title.height()-facts.height())/2
	m.set(name, title, what, y)
	m.set(name+" facts", facts, what, y+title.height())
	m.set(name+" change", change, changed, m.Y+(h-change.height())/2)
	m.Y += h
}

func (m *maker) set(name string, t text, at page.Rect, y float64) {
	for _, line := range t.lines {
		m.Add(page.Text(name, at.X, y, at.W, 0, line, t.font, canvas.Black, page.Left))
		y += canvas.LineHeight(t.font)
	}
}

// blades are those to lay out; how many a stock has stands once, since it is that of all its lengths.
func (m *maker) blades(list []day.Blades) {
	var rows [][]string
	for i, b := range list {
		count := ""
		if i == 0 || b.Blade != list[i-1].Blade {
			count = fmt.Sprint(b.Count)
		}
		rows = append(rows, []string{m.say.BladeLength(b), fmt.Sprint(b.Wanted), count})
	}
	m.list("blades", rows, "blade", "wanted", "count")
}

// list is a list to tick off, with its note where the language has one.
func (m *maker) list(name string, rows [][]string, columns ...string) {
	if len(rows) == 0 {
		return
	}
	t := flow.Table{Name: name, Tick: true, RowMM: listMM}
	for _, c := range columns {
		t.Header = append(t.Header, m.say.T("day.col-"+c))
	}
	for _, r := range rows {
		cells := flow.Plain(r...)
		for i := range cells {
			cells[i].PT = listPT
		}
		t.Row(cells...)
	}
	if whole := listMM * float64(len(rows)+2); m.Room() < whole && m.Room() < leastOfPage*m.Bottom() {
		m.Next()
	}
	note := ""
	if key := "day.note-" + name; m.say.Has(key) {
		note = m.say.T(key)
	}
	m.Part(name, m.say.T("day."+name), note, t)
}

// lines is a part of sentences.
func (m *maker) lines(p say.Part) {
	if len(p.Lines) == 0 {
		return
	}
	font, n := flow.Regular(listPT), 0
	for _, line := range p.Lines {
		n += len(canvas.Wrap(line, font, m.Width()))
	}
	m.Heading(p.Name, p.Title, min(float64(n)*canvas.LineHeight(font), leastOfPage*m.Bottom()))
	for i, line := range p.Lines {
		m.Paragraph(fmt.Sprintf("%s %d", p.Name, i+1), line, font)
	}
}
