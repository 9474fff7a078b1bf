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
	boxes  []page.Box // of the wall chart
	fresh  bool       // care begins a page
	sparse bool       // the page before the work sheet has little on it
}

// Options are the shop's look and the length of the paper; none of it is needed.
type Options struct {
	Logo   *canvas.Picture // at the head of the first page; nil: none
	Accent string          // #rrggbb, colour of the rules under the headings; empty: black
	Level  Level           // empty: Press
	Shop   string          // whose racks these are, in words; empty: the shop's name
}

// Pages lays out the handout of a lesson on a paper, in the words of a voice. The section on care begins a
// page where else little of it would stand on the next.
func Pages(l *lesson.Lesson, paper page.Paper, v *say.Voice, o Options) ([]page.Face, error) {
	level, ok := ParseLevel(string(o.Level))
	if !ok {
		return nil, fmt.Errorf("handout: level %q; accepted: %s", o.Level, Levels())
	}
	accent := canvas.Black
	if c, err := figure.ParseColor(o.Accent); err == nil {
		accent = c
	}
	var faces []page.Face
	for _, fresh := range []bool{false, true} {
		m := &maker{flow: &flow{say: v, paper: paper, accent: accent}, lesson: l, level: level, logo: o.Logo, shop: cmp.Or(o.Shop, v.Shop("", l.Shop, "")), called: call(l.Blades), fresh: fresh}
		if level == Wall {
			return m.wall()
		}
		m.title()
		for _, p := range m.parts() {
			p.lay()
		}
		faces = m.faces(v.T("handout.title"), m.shop)
		if m.err != nil {
			return nil, fmt.Errorf("handout: %w", m.err)
		}
		if !m.sparse {
			break
		}
	}
	return faces, nil
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

// halves is where two columns stand: the left one takes the share of the width.
func (m *maker) halves(share float64) (x1, w1, x2, w2 float64) {
	w := m.width() - gutterMM
	x1, w1 = m.left(), share*w
	return x1, w1, x1 + w1 + gutterMM, w - w1
}

// title is the head of the first page: what the lesson is for, and its hour.
func (m *maker) title() {
	const logoW, logoH = 42.0, 16.0
	w := m.width()
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
	x1, w1, x2, w2 := m.halves(0.5)
	aims := []block{m.caption(x1, w1, m.t("aims.head"))}
	for i := 1; i <= 4; i++ {
		aims = append(aims, m.bullet(x1, w1, "•", m.say.T("handout.aims.aim"+fmt.Sprint(i))))
	}
	t := table{columns: []column{{m.t("aims.what"), false}, {m.t("aims.how"), false}, {m.t("aims.minutes"), true}}}
	for _, p := range m.parts() {
		if p.minutes > 0 {
			t.rows = append(t.rows, []string{fmt.Sprintf("%d\u00a0\u00a0%s", m.numberOf(p.key), m.t("do."+p.key)), m.t("how." + p.how), fmt.Sprint(p.minutes)})
		}
	}
	hour := stack(m.caption(x2, w2, m.t("aims.hour")), m.table(t, x2, w2))
	bring := func(x, w float64) []block {
		blades := map[int]string{1: "bring-one", 2: "bring-few"}[len(m.lesson.Blades)]
		return []block{m.caption(x, w, m.t("aims.bring-head")), m.body(x, w, m.t("aims.bring", "blades", m.t("aims."+cmp.Or(blades, "bring-blades"))))}
	}
	const lowerMM = 8 // than the hour
	if left := stack(append(aims, bring(x1, w1)...)...); left.h <= hour.h+lowerMM {
		m.add(beside(left, hour))
		return
	}
	m.add(beside(stack(aims...), hour))
	m.add(bring(m.left(), m.width())...)
}
