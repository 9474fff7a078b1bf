package handout

import (
	"fmt"
	"math"
	"slices"

	"bladecard/calc/lesson"
	"bladecard/calc/plan"
	"bladecard/render/charts"
	"bladecard/render/figure"
)

// film: the deposit over the angle.
func (m *maker) film() {
	m.section(m.t("film.head"))
	f := m.lesson.Film
	texts := []string{m.t("film.text", "mesh", f.Mesh, "ink", m.say.InkName(f.Ink))}
	if less, more := f.Moves.Angle.Less, f.Moves.Angle.More; less != nil && more != nil {
		texts = append(texts, m.t("film.moves", "blade", m.horseName(), "less", m.percent(*less), "more", m.percent(*more),
			"hardness", m.most(f.Moves.Hardness)))
	}
	texts = append(texts, m.t("film.small", "spread", m.share(f.Spread), "band", m.say.FilmRange(f.Band.Low, f.Band.High)))
	if m.edgesDiffer() {
		texts = append(texts, m.t("film.edges"))
	}
	m.paras(texts...)
	ch := figure.Chart{
		X: charts.Lean(m.say), Top: charts.ToScreen(m.say), Y: charts.Film(m.say), Ends: charts.Ends(m.say), Known: charts.Known(m.say, f.Band),
		SizePT: TablePT, Format: m.say.Number, Mark: &figure.XY{X: m.lesson.SetDeg[2], Y: f.Band.Value},
	}
	drawn := map[string]bool{}
	for i := range m.drawn() {
		drawn[m.lesson.Blades[i].Name] = true
	}
	for i, c := range f.Curves {
		if drawn[c.Name] && len(c.Points) > 0 {
			c.Chosen = c.Name == m.horse().Name
			ch.Lines = append(ch.Lines, charts.Line(c, m.nameOf(c.Name), i))
		}
	}
	m.chart("film over angle", m.t("film.chart", "mesh", f.Mesh, "load", m.say.Load(m.lesson.Press.LoadNPerCM)), ch)
	ch.X, ch.Top, ch.Lines, ch.Mark = charts.Shore(m.say, f.EdgeShore), nil, charts.Lines(m.say, f.Hardness), &figure.XY{X: f.EdgeShore, Y: f.Band.Value}
	m.chart("film over hardness", m.t("film.hardness", "mesh", f.Mesh, "angle", m.say.Angle(m.lesson.SetDeg[2])), ch)
}

// edgesDiffer tells whether some blades of the rack are sharper than others.
func (m *maker) edgesDiffer() bool {
	for _, b := range m.lesson.Blades {
		if b.Edge != m.horse().Edge {
			return true
		}
	}
	return false
}

// percent is a change of a film in whole percent with its sign, share one without: films are
// known no better. Less than one percent is said to be that.
func (m *maker) percent(x float64) string {
	if math.Abs(x) < 0.0095 {
		return m.share(x)
	}
	sign := "+"
	if x < 0 {
		sign = "−"
	}
	return sign + m.share(x)
}

func (m *maker) share(x float64) string {
	if math.Abs(x) < 0.0095 {
		return m.t("less-than", "x", m.say.Percent(0.01))
	}
	return m.say.Percent(math.Abs(x))
}

// most is the larger of the two changes of a move, without its sign.
func (m *maker) most(v plan.Move) string {
	var x float64
	for _, p := range []*float64{v.Less, v.More} {
		if p != nil {
			x = math.Max(x, math.Abs(*p))
		}
	}
	return m.share(x)
}

// load: what light, medium and firm do to the edge. What they do to the film is not said: not even its sign is sure.
func (m *maker) load() {
	m.section(m.t("load.head"))
	l := m.lesson
	m.paras(m.t("load.text"), m.t("load.least"))
	t := table{even: true, columns: []column{{m.t("rack.blade"), false}}, strong: l.Workhorse + 1}
	for _, w := range l.LoadsNPerCM {
		t.columns = append(t.columns, column{m.t("load.edge", "load", m.say.Load(w)), true})
	}
	stars := false
	for i, b := range l.Blades {
		r := []string{m.called[i]}
		for _, x := range b.Loaded {
			text := m.edge(x.EdgeDeg)
			switch {
			case x.Floats:
				text += ", " + m.t("load.floats")
			case x.EdgeDeg != nil && !x.Clears:
				text += "*"
				stars = true
			}
			r = append(r, text)
		}
		t.rows = append(t.rows, r)
	}
	m.long(m.t("load.table"), t)
	if stars {
		m.paras(m.t("load.star"))
	}
}

// strokes: what a second and a third wet stroke add.
func (m *maker) strokes() {
	m.section(m.t("strokes.head"))
	x1, w1, x2, w2 := m.halves(0.52)
	s := m.lesson.Strokes
	text := m.column(x1, w1, m.t("strokes.text", "share", m.say.Percent(s[1].AddsUM/s[0].AddsUM)), m.t("strokes.flash"))
	t := table{columns: []column{{m.t("strokes.count"), true}, {m.t("strokes.film"), true}, {m.t("strokes.band"), true}, {m.t("strokes.adds"), true}}}
	for _, x := range s {
		t.rows = append(t.rows, []string{
			fmt.Sprint(x.Count), m.say.FilmUM(x.CuredUM.Value), m.say.FilmRange(x.CuredUM.Low, x.CuredUM.High), "+" + m.say.Fine(x.AddsUM),
		})
	}
	m.add(beside(text, m.table(t, x2, w2)))
}

// mesh: what cloth and stencil hold.
func (m *maker) mesh() {
	m.section(m.t("mesh.head"))
	m.lead(m.t("mesh.text"))
	t := table{columns: []column{
		{m.t("mesh.name"), false}, {m.t("mesh.cm"), true}, {m.t("mesh.opening"), true}, {m.t("mesh.area"), true}, {m.t("mesh.fabric"), true},
		{m.t("mesh.volume"), true}, {m.t("mesh.eom", "share", m.say.Percent(m.lesson.ThinShare)), true}, {m.t("mesh.holds"), true}, {m.t("mesh.solid", "width", m.say.Length(m.lesson.WideMM)), true}, {m.t("mesh.detail", "width", m.say.Length(m.lesson.NarrowMM)), true},
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
	m.long(m.t("mesh.table", "blade", m.horseName()), t)
	if measured {
		m.paras(m.t("mesh.measured"))
	}
	if shown, all := len(m.lesson.Meshes), m.lesson.MeshesRacked; shown < all {
		m.paras(m.t("mesh.some", "shown", fmt.Sprint(shown), "all", fmt.Sprint(all)))
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
	t := table{even: true, columns: []column{{m.t("stencil.feature"), true}, {m.t("stencil.counts"), true}, {m.t("stencil.thin", "share", m.say.Percent(m.lesson.ThinShare)), true}, {m.t("stencil.thick", "share", m.say.Percent(m.lesson.ThickShare)), true}}}
	for _, s := range m.lesson.Stencil {
		t.rows = append(t.rows, []string{m.say.Length(s.FeatureMM), m.say.Percent(s.Counts), m.film1(s.ThinUM), m.film1(s.ThickUM)})
	}
	m.add(beside(m.column(x1, w1, m.t("stencil.text"), m.t("stencil.raised")), stack(m.caption(x2, w2, m.t("stencil.table", "mesh", m.lesson.Film.Mesh)), m.table(t, x2, w2))))
}

// choice: what are you printing, which blade.
func (m *maker) choice() {
	m.section(m.t("choice.head"))
	read := m.t("choice.read")
	if !m.allMeet() {
		read += " " + m.t("choice.misses-read")
	}
	m.paras(m.t("choice.text"), read)
	if l := m.lesson; l.BladesTried < l.BladesAtHand || l.MeshesTried < l.MeshesRacked {
		m.paras(m.t("choice.some", "blades", fmt.Sprint(l.BladesTried), "all-blades", fmt.Sprint(l.BladesAtHand),
			"meshes", fmt.Sprint(l.MeshesTried), "all-meshes", fmt.Sprint(l.MeshesRacked)))
	}
	t := table{columns: []column{
		{m.t("choice.ink"), false}, {m.t("choice.use"), false}, {m.t("choice.mesh"), false}, {m.t("choice.blade"), false},
		{m.t("choice.angle"), true}, {m.t("choice.edge"), true}, {m.t("choice.strokes"), true}, {m.t("choice.film"), true}, {m.t("choice.misses"), false},
	}}
	t.group = true
	for _, c := range m.lesson.Works {
		r := m.choiceRow(c)
		if n := len(t.rows) - 1; n >= 0 && t.rows[n][0] == r[0] && slices.Equal(t.rows[n][2:], r[2:]) {
			t.rows[n][1] += ", " + r[1] // the same setup does both
			continue
		}
		t.rows = append(t.rows, r)
	}
	if m.allMeet() {
		last := len(t.columns) - 1
		t.columns = t.columns[:last]
		for i := range t.rows {
			t.rows[i] = t.rows[i][:last]
		}
	}
	m.long(m.t("choice.table"), t)
	if !m.intro() {
		m.through()
	}
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
		return []string{m.say.InkName(c.Ink), m.use(c), c.Mesh, m.t("choice.no-setup"), "", "", "", "", ""}
	}
	return []string{
		m.say.InkName(c.Ink), m.use(c), s.Mesh.Name, m.short(s.Blade), m.angleRange(s), m.whole(s.EdgeAngleDeg), m.say.Pulls(s.Strokes, s.Hits),
		m.say.FilmRange(s.CuredUM.Low, s.CuredUM.High), m.misses(c),
	}
}

// use is the use, with the line count of a halftone.
func (m *maker) use(c lesson.Choice) string {
	s := m.say.T("use." + c.Use)
	if c.LinesPerInch > 0 {
		s += "\u00a0" + m.say.Number(c.LinesPerInch, 0) + "\u00a0" + m.say.T("unit.lines")
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
	m.lead(m.t("through.text", "ink", m.say.InkName(list[0].Ink)))
	t := table{columns: []column{{m.t("choice.mesh"), false}}}
	n := 0
	for n < len(list) && list[n].Mesh == list[0].Mesh {
		t.columns = append(t.columns, column{m.use(list[n]), false})
		n++
	}
	for i := 0; i+n <= len(list); i += n {
		r := []string{list[i].Mesh}
		for _, c := range list[i : i+n] {
			r = append(r, m.throughCell(c))
		}
		t.rows = append(t.rows, r)
	}
	m.long(m.t("through.table", "ink", m.say.InkName(list[0].Ink)), t)
}

func (m *maker) throughCell(c lesson.Choice) string {
	s := c.Setup
	if s == nil {
		return m.t("choice.no-setup")
	}
	cell := m.t("through.cell", "n", m.say.Pulls(s.Strokes, s.Hits), "blade", m.short(s.Blade), "angle", m.say.Angle(s.AngleDeg.Set), "film", m.say.FilmUM(s.CuredUM.Value))
	if miss := m.misses(c); miss != "" {
		cell += "; " + miss
	}
	return cell
}
