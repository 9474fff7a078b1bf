package handout

import (
	"fmt"
	"slices"
	"strings"

	"bladecard/calc/lesson"
	"bladecard/calc/plan"
	"bladecard/render/canvas"
	"bladecard/render/card"
	"bladecard/render/page"
)

// choice: what is printed, and which blade of the rack the planner takes for it.
func (m *maker) choice() {
	m.section(m.t("choice.head"))
	m.lead(m.t("choice.text", "blade", m.horseName()))
	m.choices(m.t("choice.table"), m.lesson.Prints)
	if l := m.lesson; l.BladesTried < l.BladesAtHand || l.MeshesTried < l.MeshesRacked {
		m.paras(m.t("choice.some", "blades", fmt.Sprint(l.BladesTried), "all-blades", fmt.Sprint(l.BladesAtHand),
			"meshes", fmt.Sprint(l.MeshesTried), "all-meshes", fmt.Sprint(l.MeshesRacked)))
	}
}

// choices is a table of works with their setups; works of one ink that get the same setup share a row.
func (m *maker) choices(caption string, works []lesson.Choice) {
	t := table{columns: []column{
		{m.t("choice.print"), false}, {m.t("choice.mesh"), false}, {m.t("choice.blade"), false},
		{m.t("choice.angle"), true}, {m.t("choice.strokes"), true}, {m.t("choice.film"), true}, {m.t("choice.misses"), false},
	}}
	some := false
	for _, c := range works {
		r := m.choiceRow(c)
		some = some || r[6] != ""
		if n := len(t.rows) - 1; n >= 0 && c.Print == "" && works[n].Ink == c.Ink && slices.Equal(t.rows[n][1:], r[1:]) {
			t.rows[n][0] += ", " + m.say.T("use."+c.Use)
			continue
		}
		t.rows = append(t.rows, r)
	}
	if !some {
		t = t.without(6)
	}
	if m.intro() {
		t = t.without(5)
	}
	m.long(caption, t)
	if some {
		m.paras(m.t("choice.misses-read"))
	}
}

// choiceRow is a row of the choice table.
func (m *maker) choiceRow(c lesson.Choice) []string {
	s := c.Setup
	if s == nil {
		return []string{m.work(c), "", "", "", "", "", m.t("choice.no-setup")}
	}
	return []string{
		m.work(c), s.Mesh.Name, m.short(s.Blade), m.angleRange(s), m.say.Pulls(s.Strokes, s.Hits), m.say.FilmRangeBoth(s.CuredUM.Low, s.CuredUM.High), m.misses(c),
	}
}

// work is a print by the name that shops have for it, or ink and use.
func (m *maker) work(c lesson.Choice) string {
	lines := m.say.Number(c.LinesPerInch, 0) + "\u00a0" + m.say.T("unit.lines")
	if c.Print != "" {
		return m.say.T("handout.print."+c.Print, "lines", lines, "finest", m.say.Small(c.FinestMM))
	}
	s := m.say.InkName(c.Ink) + ": " + m.say.T("use."+c.Use)
	if c.LinesPerInch > 0 {
		s += "\u00a0" + lines
	}
	return s
}

func (m *maker) angleRange(s *plan.Screen) string {
	a := s.AngleDeg
	if a.Low == a.High {
		return m.say.Angle(a.Set)
	}
	return m.t("choice.range", "set", m.say.Angle(a.Set), "range", m.say.AngleRange(a.Low, a.High))
}

// misses says what a setup does not meet.
func (m *maker) misses(c lesson.Choice) string {
	var list []string
	for _, x := range c.Misses {
		list = append(list, m.say.T("handout.miss."+x))
	}
	return strings.Join(list, ", ")
}

// card: the front of a card of the worked job as it is printed, with what each row says beside it.
func (m *maker) card() {
	m.section(m.t("card.head"))
	m.lead(m.t("card.text"))
	const clipMM, gapMM = 8.5, 5.0
	size := page.Card132
	var front page.Face
	for both, err := range card.Each(m.worked(), size, m.say) {
		if err != nil {
			m.fail(err)
			return
		}
		front = both.Front
		break
	}
	b := block{h: size.H - clipMM, after: blockMM}
	frame := page.Fill(m.name("card"), m.left(), 0, size.W, b.h, nil, canvas.Pen{Color: canvas.Black, WidthMM: 0.3})
	b.boxes = append(b.boxes, frame)
	rows := []float64{front.Safe.Y - clipMM, 0, 0, 0, front.Safe.Bottom() - clipMM}
	for _, x := range front.Boxes {
		x.X, x.Y = x.X+m.left(), x.Y-clipMM
		b.boxes = append(b.boxes, x)
		switch x.Name {
		case "warning band", "under the head":
			rows[1] = x.Bottom()
		case "under the figures":
			rows[2] = x.Y
		case "above the foot":
			rows[3] = x.Y
		}
	}
	x := m.left() + size.W + gapMM
	y := 0.0
	for i, key := range []string{"who", "set", "lean", "screen"} {
		say := m.text(x, m.left()+m.width()-x, m.say.T("handout.card."+key), TablePT, canvas.Regular)
		y = max(y, rows[i])
		for _, box := range say.boxes {
			box.Y += y
			b.boxes = append(b.boxes, box)
		}
		if i == 3 { // the last may go on below the card's last row
			rows[4] = max(rows[4], y+say.h)
		}
		b.boxes = append(b.boxes, page.Rule(m.name("call-out"), x-gapMM/2, rows[i]+0.5, 0, rows[i+1]-rows[i]-1, canvas.Pen{Color: m.accent, WidthMM: 0.6}))
		y += say.h + 1
	}
	b.h = max(b.h, y)
	m.add(b, m.body(m.left(), m.width(), m.t("card.back")))
}

// worked is the worked job with the first screen alone, in the words of the language.
func (m *maker) worked() *plan.Plan {
	p := *m.lesson.Worked
	p.Title = m.t("card.title")
	l := p.Locations[0]
	s := l.Screens[0]
	s.Color = m.t("card.next-color")
	if s.Swatch != "" { // the lesson gives one to white alone
		s.Color = m.t("card.color")
	}
	if s.Next != nil {
		n := *s.Next
		n.Color = m.t("card.next-color")
		s.Next = &n
	}
	l.Name, l.Screens = m.t("card.location"), []plan.Screen{s}
	p.Locations = []plan.Location{l}
	return &p
}
