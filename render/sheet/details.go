package sheet

import (
	"slices"
	"strings"

	"bladecard/calc/plan"
	"bladecard/render/flow"
)

// details is what stands behind the rows of the screens, a row for the screens that have the same. Inks that lose
// nothing in the heat lie as thick wet as cured: where all do, that is said once.
func (m *maker) details() {
	v := m.say
	for _, l := range m.plan.Locations {
		m.last(l)
	}
	keeps, hits, note := true, false, v.T("sheet-doc.details-note")
	for _, l := range m.plan.Locations {
		for _, s := range l.Screens {
			keeps, hits = keeps && v.FilmUM(s.WetUM.Value) == v.FilmUM(s.CuredUM.Value), hits || s.Hits > 1
		}
	}
	switch {
	case keeps && hits:
		note += " " + v.T("sheet-doc.wet-by-hits")
	case keeps:
		note += " " + v.T("sheet-doc.wet-as-cured")
	}
	t := flow.Table{Name: "details", Header: []string{v.T("sheet-doc.screens"), v.T("show.wet"), v.T("sheet-doc.target-from"), v.T("sheet-doc.finest"), v.T("sheet-doc.share"),
		v.T("sheet-doc.flash"), v.T("sheet-doc.rise"), v.T("sheet-doc.move-angle"), v.T("sheet-doc.move-hardness")}}
	m.grouped(&t, func(s plan.Screen) []string {
		film, finest, rise := "", "", ""
		if !keeps {
			film = v.Comb(s, "\n")
		}
		if s.FinestMM > 0 {
			finest = v.Small(s.FinestMM)
		}
		if s.HeightMM != nil {
			rise = v.Small(*s.HeightMM)
		}
		return []string{film, v.FilmRange(s.TargetUM.Low, s.TargetUM.High) + "\n" + v.T("from."+s.TargetUM.From), finest, v.Percent(s.Stencil.ShareOfCloth), v.FlashShort(s.Flash), rise,
			m.move("sheet-doc.moved-angle", s.Moves.Angle), m.move("sheet-doc.moved-hardness", s.Moves.Hardness)}
	})
	m.Part("details", v.T("sheet-doc.details"), note, t)
}

// grouped fills a table with a row for all screens of the job whose texts are the same, their names before them.
func (m *maker) grouped(t *flow.Table, texts func(plan.Screen) []string) {
	var who [][]member
	rows := map[string]int{}
	for _, l := range m.plan.Locations {
		for _, s := range l.Screens {
			row := texts(s)
			key := strings.Join(row, "\x00")
			i, has := rows[key]
			if !has {
				i = len(who)
				rows[key], who = i, append(who, nil)
				t.Row(append([]flow.Cell{{Strong: true}}, flow.Plain(row...)...)...)
			}
			who[i] = append(who[i], member{l.Name, s.Number})
			t.Rows[i][0].Text = m.members(who[i], "\n")
		}
	}
}

// measured tells which measured prints stand behind the films; empty where there are none.
func (m *maker) measured(l plan.Location) string {
	var all []string
	for _, s := range l.Screens {
		if text := m.say.Measured(m.plan.Calibration, s.Measured); text != "" && !slices.Contains(all, text) {
			all = append(all, text)
		}
	}
	return strings.Join(all, " ")
}

// move is how the film moves with a setting that is less and more.
func (m *maker) move(key string, x plan.Move) string {
	side := func(x *float64) string {
		if x == nil {
			return m.say.T("show.no-figure")
		}
		return m.percent(100 * *x)
	}
	return strings.ReplaceAll(m.say.T(key, "less", side(x.Less), "more", side(x.More)), " ", "\u00a0")
}

// ink is what to mix for the whole job, two inks a row.
func (m *maker) ink() {
	const across = 2
	v, mix := m.say, m.plan.Mix
	t := flow.Table{Name: "ink"}
	for range min(across, len(mix)) {
		t.Header = append(t.Header, v.T("show.ink"), v.T("show.color"), v.T("sheet-doc.total"), v.T("sheet-doc.volume"))
	}
	for row := range slices.Chunk(mix, across) {
		var cells []flow.Cell
		for _, x := range row {
			cells = append(cells, flow.Plain(v.InkName(x.Ink), x.Color, v.Mass(x.G), v.Volume(x.ML))...)
		}
		t.Row(append(cells, make([]flow.Cell, len(t.Header)-len(cells))...)...)
	}
	if len(t.Rows) > 0 {
		m.Part("ink", v.T("sheet-doc.ink"), v.T("sheet-doc.ink-note"), t)
	}
}

// heat is the table of the dryer, a row for the screens that cure alike.
func (m *maker) heat() {
	v := m.say
	t := flow.Table{Name: "heat", Header: []string{v.T("sheet-doc.screens"), v.T("sheet-doc.cure"), v.T("sheet-doc.top"), v.T("sheet-doc.dwell"),
		v.T("sheet-doc.belt"), v.T("sheet-doc.pieces"), v.T("sheet-doc.dryer")}}
	m.grouped(&t, func(s plan.Screen) []string { return m.dryer(s.Cure) })
	m.Part("heat", v.T("sheet-doc.heat"), "", t)
}

// dryer is temperature, top, dwell, belt, pieces and dryer; empty where nothing is known.
func (m *maker) dryer(c plan.Cure) []string {
	v := m.say
	out := []string{m.cure(c), "", "", "", "", c.Dryer}
	if c.TopC > 0 {
		out[1] = v.Temperature(c.TopC)
	}
	if c.DwellS != nil {
		out[2] = v.SecondsRange(c.DwellS.Low, c.DwellS.High)
	}
	if c.BeltMPerMin != nil {
		out[3] = v.BeltSpeed(c.BeltMPerMin.Low, c.BeltMPerMin.High)
	}
	if g := c.GarmentsPerHour; g != nil {
		out[4] = v.Number(g.Low, 0) + "–" + v.Number(g.High, 0)
	}
	return out
}
