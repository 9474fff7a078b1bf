package handout

import (
	"fmt"

	"bladecard/render/canvas"
	"bladecard/render/charts"
	"bladecard/render/figure"
)

// why: what blade, mesh and strokes do to the film.
func (m *maker) why() {
	m.section(m.t("why.head"))
	m.paras(m.t("why.bend"))
	l := m.lesson
	once := l.Strokes[0].Value
	film := m.t("why.film", "mesh", l.Bench.Mesh.Name, "second", m.say.Percent(l.Strokes[1].Value/once-1),
		"flashed", m.say.Percent(l.FlashedUM/once-1), "band", m.say.FilmRangeBoth(l.Bench.CuredUM.Low, l.Bench.CuredUM.High))
	if len(l.Blades) > 1 {
		film += " " + m.t("why.blades", "other", m.say.Percent(l.Spread))
	}
	m.paras(film)
	m.chart(m.t("why.angle-chart", "mesh", l.Bench.Mesh.Name), charts.Angle(m.say, l.Bench, TablePT), 62)
}

// racks are the tables to look things up in later: blades, meshes, other inks.
func (m *maker) racks() {
	l := m.lesson
	m.section(m.t("rack.head"))
	m.rack()
	m.chart(m.t("why.hardness-chart", "mesh", l.Bench.Mesh.Name), charts.Hardness(m.say, l.Bench, TablePT), 50)
	m.meshes()
	m.choices(m.t("why.others"), l.Others)
}

// rack is the table of the shop's own blades.
func (m *maker) rack() {
	t := table{strong: m.lesson.Workhorse + 1, columns: []column{
		{m.t("choice.blade"), false}, {m.t("rack.layup"), false}, {m.t("rack.edge"), false}, {m.t("rack.size"), true}, {m.t("rack.stiff"), true},
	}}
	for i, b := range m.lesson.Blades {
		t.rows = append(t.rows, []string{
			m.called[i], b.Layup, m.say.T("card.edge-" + b.Edge), m.say.Thickness(b.ThicknessMM) + ", " + m.say.Length(b.FreeHeightMM), m.say.Percent(b.Stiff),
		})
	}
	m.long(m.t("rack.table"), t)
}

// chart places a chart over the full width under its caption.
func (m *maker) chart(caption string, ch figure.Chart, high float64) {
	m.add(m.caption(m.left(), m.width(), caption), m.growing("film", m.left(), m.width(), high, 28, func(c canvas.Canvas, high float64) error {
		return ch.Draw(c, figure.Rect{W: m.width(), H: high})
	}))
}

// meshes is the table of the cloths of the racks.
func (m *maker) meshes() {
	l := m.lesson
	t := table{columns: []column{
		{m.t("choice.mesh"), false}, {m.t("mesh.cm"), true}, {m.t("mesh.opening"), true}, {m.t("mesh.volume"), true}, {m.t("mesh.film"), true}, {m.t("mesh.dot"), true},
	}}
	measured := false
	for i, c := range l.Meshes {
		name, film := c.Name, "–"
		if c.Measured {
			name, measured = name+"\u00a0*", true
		}
		if c.FilmUM != nil {
			film = m.say.FilmBoth(*c.FilmUM)
		}
		if c.Name == l.Bench.Mesh.Name {
			t.strong = i + 1
		}
		t.rows = append(t.rows, []string{name, m.say.Number(c.CountPerCM, 0), m.say.Fine(c.OpeningUM), m.say.FilmUM(c.VolumeUM), film, m.say.Fine(c.DotUM)})
	}
	m.long(m.t("mesh.table", "blade", m.horseName()), t)
	if measured {
		m.paras(m.t("mesh.measured"))
	}
	if shown, all := len(l.Meshes), l.MeshesRacked; shown < all {
		m.paras(m.t("mesh.some", "shown", fmt.Sprint(shown), "all", fmt.Sprint(all)))
	}
}
