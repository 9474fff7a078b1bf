package handout

import (
	"fmt"

	"bladecard/calc/lesson"
	"bladecard/render/canvas"
	"bladecard/render/page"
	"bladecard/render/say"
)

// maker lays out one handout.
type maker struct {
	*flow
	lesson *lesson.Lesson
	number int // of the last section
}

// Pages lays out the handout of a lesson on a paper, in the words of a voice.
func Pages(l *lesson.Lesson, paper page.Paper, v *say.Voice) ([]page.Face, error) {
	m := &maker{flow: &flow{say: v, paper: paper}, lesson: l}
	for _, part := range []func(){
		m.title, m.hardness, m.rack, m.angle, m.film, m.load, m.strokes, m.mesh, m.choice, m.wipe, m.mark, m.wear, m.safety, m.sheet, m.answers,
	} {
		part()
	}
	if m.err != nil {
		return nil, fmt.Errorf("handout: %w", m.err)
	}
	return m.faces(v.T("handout.title"), m.shop()), nil
}

func (m *maker) shop() string {
	if m.lesson.Shop == "" {
		return m.say.T("handout.built-in")
	}
	return m.lesson.Shop
}

// t is a text of the handout.
func (m *maker) t(key string, pairs ...string) string { return m.say.T("handout."+key, pairs...) }

// section begins a numbered section.
func (m *maker) section(title string) {
	m.number++
	m.add(m.head(fmt.Sprintf("%d  %s", m.number, title)))
}

// paras sets paragraphs over the full width.
func (m *maker) paras(texts ...string) {
	for _, s := range texts {
		m.add(m.body(m.left(), m.width(), s))
	}
}

// intro is a paragraph that stays with the table after it.
func (m *maker) intro(s string) {
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
	b := m.text(m.left(), m.width(), m.t("title"), TitlePT, canvas.Bold)
	b.after = 0.5
	l := m.lesson
	m.add(b, m.text(m.left(), m.width(), m.t("subtitle", "shop", m.shop()), 12, canvas.Regular))
	m.paras(
		m.t("intro", "press", l.Press.Name, "load", m.say.Load(l.Press.LoadNPerCM), "speed", m.say.Speed(l.Press.StrokeMPS), "mesh", l.Film.Mesh, "ink", l.Film.Ink),
		m.t("trust", "value", m.say.FilmUM(l.Film.Band.Value), "band", m.say.FilmRange(l.Film.Band.Low, l.Film.Band.High)),
	)
}

// horse is the blade that a job starts from.
func (m *maker) horse() lesson.Blade { return m.lesson.Blades[m.lesson.Workhorse] }
