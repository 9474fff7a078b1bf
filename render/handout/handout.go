package handout

import (
	"cmp"
	"fmt"

	"bladecard/calc/lesson"
	"bladecard/render/canvas"
	"bladecard/render/figure"
	"bladecard/render/page"
	"bladecard/render/say"
)

// maker lays out one handout.
type maker struct {
	*flow
	lesson *lesson.Lesson
	level  Level
	number int      // of the last section
	called []string // what tables, charts and texts call each blade; see call
	logo   *canvas.Picture
	shop   string

	chartMM   float64 // how high a chart is, where the page allows
	sectionMM float64 // how high a blade in section is
}

// Options are the shop's look and the length of the paper; none of it is needed.
type Options struct {
	Logo   *canvas.Picture // at the head of the first page; nil: none
	Accent string          // #rrggbb, colour of the rules under the headings; empty: black
	Level  Level           // empty: Press
	Shop   string          // whose racks these are, in words; empty: the shop's name
}

// Pages lays out the handout of a lesson on a paper, in the words of a voice. Of the heights that
// drawings may have it takes the largest of those that need the fewest pages.
func Pages(l *lesson.Lesson, paper page.Paper, v *say.Voice, o Options) ([]page.Face, error) {
	level, ok := ParseLevel(string(o.Level))
	if !ok {
		return nil, fmt.Errorf("handout: level %q; accepted: %s", o.Level, Levels())
	}
	accent := canvas.Black
	if c, err := figure.ParseColor(o.Accent); err == nil {
		accent = c
	}
	var best *maker
	for _, high := range []struct{ chart, section float64 }{{68, 22}, {60, 22}, {60, 17}, {54, 17}, {lowChartMM, 17}} {
		m := &maker{flow: &flow{say: v, paper: paper, accent: accent}, lesson: l, level: level, logo: o.Logo, shop: cmp.Or(o.Shop, v.Shop("", l.Shop, "")), called: call(l.Blades), chartMM: high.chart, sectionMM: high.section}
		m.title()
		for _, p := range m.parts() {
			p.lay()
		}
		if m.err != nil {
			return nil, fmt.Errorf("handout: %w", m.err)
		}
		if best == nil || len(m.pages) < len(best.pages) {
			best = m
		}
	}
	return best.faces(v.T("handout.title"), best.shop), nil
}

// t is a text of the handout.
func (m *maker) t(key string, pairs ...string) string { return m.say.T("handout."+key, pairs...) }

// section begins a numbered section.
func (m *maker) section(title string) {
	m.number++
	m.add(m.head(fmt.Sprintf("%d\u00a0\u00a0%s", m.number, title)))
}

// paras sets paragraphs over the full width.
func (m *maker) paras(texts ...string) {
	for _, s := range texts {
		m.add(m.body(m.left(), m.width(), s))
	}
}

// lead is a paragraph that stays with the table after it.
func (m *maker) lead(s string) {
	b := m.body(m.left(), m.width(), s)
	b.keep = true
	m.add(b)
}

// column stacks paragraphs in a column.
func (m *maker) column(x, w float64, texts ...string) block {
	var list []block
	for _, s := range texts {
		list = append(list, m.body(x, w, s))
	}
	return stack(list...)
}

// halves is where two columns stand: the left one takes the share of the width.
func (m *maker) halves(share float64) (x1, w1, x2, w2 float64) {
	w := m.width() - gutterMM
	x1, w1 = m.left(), share*w
	return x1, w1, x1 + w1 + gutterMM, w - w1
}

func (m *maker) title() {
	const logoW, logoH = 42.0, 16.0
	l, w := m.lesson, m.width()
	if m.logo != nil {
		w -= logoW + gutterMM
	}
	b := m.text(m.left(), w, m.t("title"), TitlePT, canvas.Bold)
	b.after = 0.5
	subtitle := "subtitle"
	if m.intro() {
		subtitle = "subtitle-intro"
	}
	head := stack(b, m.text(m.left(), w, m.t(subtitle, "shop", m.shop), 12, canvas.Regular))
	if m.logo != nil {
		at := page.Rect{X: m.left() + m.width() - logoW, W: logoW, H: logoH}
		head = beside(head, block{boxes: []page.Box{page.Image("logo", at, m.logo)}, h: logoH, after: paraMM})
	}
	m.add(head)
	m.paras(
		m.t("intro", "press", l.Press.Name, "load", m.say.Load(l.Press.LoadNPerCM), "speed", m.say.Speed(l.Press.StrokeMPS),
			"mesh", l.Film.Mesh, "ink", m.say.InkName(l.Film.Ink), "section", fmt.Sprint(m.numberOf("choice"))),
		m.t("trust", "value", m.say.FilmUM(l.Film.Band.Value), "band", m.say.FilmRange(l.Film.Band.Low, l.Film.Band.High)),
	)
}

// horse is the blade that a job starts from, horseName what the paper calls it.
func (m *maker) horse() lesson.Blade { return m.lesson.Blades[m.lesson.Workhorse] }
func (m *maker) horseName() string   { return m.called[m.lesson.Workhorse] }
