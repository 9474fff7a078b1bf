package handout

import (
	"fmt"
	"math"

	"bladecard/calc/lesson"
	"bladecard/calc/plan"
	"bladecard/render/canvas"
	"bladecard/render/figure"
	"bladecard/render/page"
)

// film: the deposit over the angle.
func (m *maker) film() {
	m.section(m.t("film.head"))
	f := m.lesson.Film
	b := m.horse()
	texts := []string{m.t("film.text", "mesh", f.Mesh, "ink", f.Ink)}
	if less, more := f.Moves.Angle.Less, f.Moves.Angle.More; less != nil && more != nil {
		texts = append(texts, m.t("film.moves", "blade", b.Name, "less", m.say.SignedPercent(100**less), "more", m.say.SignedPercent(100**more),
			"hardness", m.most(f.Moves.Hardness)))
	}
	m.paras(append(texts, m.t("film.small"))...)
	ch := figure.Chart{
		X: figure.Axis{Title: m.say.T("card.x-angle"), Low: 0, High: 45},
		Y: figure.Axis{Title: m.say.T("card.y-film")}, SizePT: TablePT, Format: m.say.Number,
		Top: &figure.TopAxis{Title: m.say.T("card.x-screen"), Label: func(x float64) string { return m.say.Number(90-x, 0) }},
	}
	n := 0
	for _, c := range f.Curves {
		line := figure.Line{Label: c.Name, Strong: c.Name == b.Name, Dash: n % figure.Dashes, Step: 2.5}
		if !line.Strong {
			n++
		}
		for _, p := range c.Points {
			line.Points = append(line.Points, figure.XY{X: p.X, Y: p.UM})
		}
		if len(line.Points) > 0 {
			ch.Lines = append(ch.Lines, line)
		}
	}
	m.chart("film over angle", m.t("film.chart", "mesh", f.Mesh, "load", m.say.Load(m.lesson.Press.LoadNPerCM)), ch, 70)
}

// most is the larger of the two changes of a move, without its sign.
func (m *maker) most(v plan.Move) string {
	var x float64
	for _, p := range []*float64{v.Less, v.More} {
		if p != nil {
			x = math.Max(x, math.Abs(*p))
		}
	}
	return m.say.Number(100*x, 1) + "\u00a0%"
}

// load: what light, medium and firm do.
func (m *maker) load() {
	m.section(m.t("load.head"))
	l := m.lesson
	m.paras(m.t("load.text"), m.t("load.least"))
	t := table{columns: []column{{m.t("rack.blade"), 2.2, false}}, strong: l.Workhorse + 1}
	for _, w := range l.LoadsNPerCM {
		t.columns = append(t.columns,
			column{m.t("load.edge", "load", m.say.Load(w)), 1, true},
			column{m.t("load.film", "load", m.say.Load(w)), 1, true})
	}
	for _, b := range l.Blades {
		r := []string{b.Name}
		for _, x := range b.Loaded {
			um := m.t("load.floats")
			switch {
			case x.EdgeDeg == nil:
				um = "–"
			case x.CuredUM != nil && x.Clears:
				um = m.say.FilmUM(*x.CuredUM)
			case x.CuredUM != nil:
				um = m.say.FilmUM(*x.CuredUM) + "*"
			}
			r = append(r, m.edge(x.EdgeDeg), um)
		}
		t.rows = append(t.rows, r)
	}
	m.long(m.t("load.table", "mesh", l.Film.Mesh), t)
	for _, b := range l.Blades {
		for _, x := range b.Loaded {
			if x.CuredUM != nil && !x.Clears {
				m.paras(m.t("load.star"))
				return
			}
		}
	}
}

// strokes: what a second and a third wet stroke add.
func (m *maker) strokes() {
	m.section(m.t("strokes.head"))
	x1, w1, x2, w2 := m.halves(0.52)
	s := m.lesson.Strokes
	text := m.column(x1, w1, m.t("strokes.text", "share", m.say.Percent(s[1].AddsUM/s[0].AddsUM)), m.t("strokes.flash"))
	t := table{columns: []column{{m.t("strokes.count"), 1, true}, {m.t("strokes.film"), 1, true}, {m.t("strokes.band"), 1.4, true}, {m.t("strokes.adds"), 1.1, true}}}
	for _, x := range s {
		t.rows = append(t.rows, []string{
			fmt.Sprint(x.Count), m.say.FilmUM(x.CuredUM.Value), m.say.FilmRange(x.CuredUM.Low, x.CuredUM.High), m.say.Signed(x.AddsUM),
		})
	}
	m.add(beside(text, m.table(t, x2, w2)))
}

// mesh: what cloth and stencil hold.
func (m *maker) mesh() {
	m.section(m.t("mesh.head"))
	m.intro(m.t("mesh.text"))
	t := table{columns: []column{
		{m.t("mesh.name"), 1.5, false}, {m.t("mesh.cm"), 0.7, true}, {m.t("mesh.opening"), 1, true}, {m.t("mesh.area"), 0.8, true}, {m.t("mesh.fabric"), 1, true},
		{m.t("mesh.volume"), 1, true}, {m.t("mesh.eom", "share", m.say.Percent(m.lesson.ThinShare)), 0.9, true}, {m.t("mesh.holds"), 1.1, true}, {m.t("mesh.solid", "width", m.say.Length(m.lesson.WideMM)), 1, true}, {m.t("mesh.detail", "width", m.say.Length(m.lesson.NarrowMM)), 1, true},
	}}
	measured := false
	for i, c := range m.lesson.Meshes {
		name := c.Name
		if c.Measured {
			name += "*"
			measured = true
		}
		if c.Name == m.lesson.Film.Mesh {
			t.strong = i + 1
		}
		t.rows = append(t.rows, []string{
			name, m.say.Number(c.CountPerCM, 0), m.say.Fine(c.OpeningUM), m.say.Percent(c.OpenArea), m.say.Fine(c.FabricUM),
			m.say.Fine(c.VolumeUM), m.say.Fine(c.EOMUM), m.say.Fine(c.HoldsUM), m.film1(c.SolidUM), m.film1(c.DetailUM),
		})
	}
	m.long(m.t("mesh.table", "blade", m.horse().Name), t)
	if measured {
		m.paras(m.t("mesh.measured"))
	}
	if n := m.lesson.MeshesLeft; n > 0 {
		m.paras(m.say.Many("handout.mesh.left", n))
	}
	m.stencil()
}

// film1 is a film or that there is none.
func (m *maker) film1(um *float64) string {
	if um == nil {
		return "–"
	}
	return m.say.FilmUM(*um)
}

func (m *maker) stencil() {
	x1, w1, x2, w2 := m.halves(0.42)
	t := table{columns: []column{{m.t("stencil.feature"), 1, true}, {m.t("stencil.counts"), 1.2, true}, {m.t("stencil.thin", "share", m.say.Percent(m.lesson.ThinShare)), 1.2, true}, {m.t("stencil.thick", "share", m.say.Percent(m.lesson.ThickShare)), 1.2, true}}}
	for _, s := range m.lesson.Stencil {
		t.rows = append(t.rows, []string{m.say.Length(s.FeatureMM), m.say.Percent(s.Counts), m.film1(s.ThinUM), m.film1(s.ThickUM)})
	}
	m.add(beside(m.column(x1, w1, m.t("stencil.text"), m.t("stencil.raised")), stack(m.caption(x2, w2, m.t("stencil.table", "mesh", m.lesson.Film.Mesh)), m.table(t, x2, w2))))
}

// choice: what are you printing, which blade.
func (m *maker) choice() {
	m.section(m.t("choice.head"))
	m.paras(m.t("choice.text"), m.t("choice.read"))
	t := table{columns: []column{
		{m.t("choice.ink"), 1.9, false}, {m.t("choice.use"), 1.9, false}, {m.t("choice.mesh"), 1.3, false}, {m.t("choice.blade"), 1.5, false},
		{m.t("choice.angle"), 1.5, true}, {m.t("choice.edge"), 0.8, true}, {m.t("choice.strokes"), 1, true}, {m.t("choice.film"), 1.5, true}, {m.t("choice.misses"), 1.2, false},
	}}
	for _, c := range m.lesson.Works {
		t.rows = append(t.rows, m.choiceRow(c))
	}
	if m.allMeet() {
		last := len(t.columns) - 1
		t.columns = t.columns[:last]
		for i := range t.rows {
			t.rows[i] = t.rows[i][:last]
		}
	}
	m.long(m.t("choice.table"), t)
	m.through()
}

// allMeet tells whether every setup of the grid meets all demands: the column of what gives is
// then left out.
func (m *maker) allMeet() bool {
	for _, c := range m.lesson.Works {
		if len(c.Misses) > 0 {
			return false
		}
	}
	return true
}

// choiceRow is a row of the choice table.
func (m *maker) choiceRow(c lesson.Choice) []string {
	s := c.Setup
	if s == nil {
		return []string{c.Ink, m.use(c), c.Mesh, m.t("choice.no-setup"), "", "", "", "", ""}
	}
	return []string{
		c.Ink, m.use(c), s.Mesh.Name, short(s.Blade), m.angleRange(s), m.whole(s.EdgeAngleDeg), fmt.Sprint(s.Strokes),
		m.say.FilmRange(s.CuredUM.Low, s.CuredUM.High), m.misses(c),
	}
}

// use is the use, with the line count of a halftone.
func (m *maker) use(c lesson.Choice) string {
	s := m.say.T("use." + c.Use)
	if c.LinesPerInch > 0 {
		s += ", " + m.say.Number(c.LinesPerInch, 0) + "\u00a0lpi"
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
		list = append(list, m.t("miss."+x))
	}
	return words(", ", list...)
}

// through: one ink in three uses through every mesh.
func (m *maker) through() {
	list := m.lesson.Through
	if len(list) == 0 {
		return
	}
	m.intro(m.t("through.text", "ink", list[0].Ink))
	t := table{columns: []column{{m.t("choice.mesh"), 1.2, false}}}
	n := 0
	for n < len(list) && list[n].Mesh == list[0].Mesh {
		t.columns = append(t.columns, column{m.use(list[n]), 3, false})
		n++
	}
	for i := 0; i+n <= len(list); i += n {
		r := []string{list[i].Mesh}
		for _, c := range list[i : i+n] {
			r = append(r, m.throughCell(c))
		}
		t.rows = append(t.rows, r)
	}
	m.long(m.t("through.table", "ink", list[0].Ink), t)
}

// short is the name of a blade, or its layup where the name leaves no room for figures beside it.
func short(b plan.Blade) string {
	const wide = 26.0 // mm
	if page.Width(b.Name, canvas.Font{SizePT: TablePT}) > wide {
		return b.Layup
	}
	return b.Name
}

func (m *maker) throughCell(c lesson.Choice) string {
	s := c.Setup
	if s == nil {
		return m.t("choice.no-setup")
	}
	cell := m.say.Many("handout.through.cell", s.Strokes, "blade", short(s.Blade), "angle", m.say.Angle(s.AngleDeg.Set), "film", m.say.FilmUM(s.CuredUM.Value))
	if miss := m.misses(c); miss != "" {
		cell += "; " + miss
	}
	return cell
}
