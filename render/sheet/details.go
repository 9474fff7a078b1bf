package sheet

import (
	"fmt"
	"slices"
	"strings"

	"bladecard/calc/plan"
	"bladecard/render/flow"
)

// details is what stands behind the rows of the screens: a table a location.
func (m *maker) details() {
	v := m.say
	note := v.T("sheet-doc.details-note")
	for _, l := range m.plan.Locations {
		m.last(l)
		t := flow.Table{Name: "details", Header: []string{"#", "", v.T("show.wet"), v.T("sheet-doc.target-from"), v.T("sheet-doc.finest"), v.T("sheet-doc.share"),
			v.T("sheet-doc.to-screen"), v.T("sheet-doc.flash"), v.T("sheet-doc.rise"), v.T("sheet-doc.move-angle"), v.T("sheet-doc.move-hardness"), v.T("sheet-doc.print")}}
		for _, s := range l.Screens {
			finest, rise, grams := "", "", ""
			if s.FinestMM > 0 {
				finest = v.Small(s.FinestMM)
			}
			if s.HeightMM != nil {
				rise = v.Small(*s.HeightMM)
			}
			if s.InkGPerPrint != nil {
				grams = v.Grams(*s.InkGPerPrint)
			}
			t.Row(append([]flow.Cell{number(s), patch(s)}, flow.Plain(v.Film(s.WetUM.Value)+" ("+v.FilmRange(s.WetUM.Low, s.WetUM.High)+")",
				v.FilmRange(s.TargetUM.Low, s.TargetUM.High)+"\n"+v.T("from."+s.TargetUM.From), finest, v.Percent(s.Stencil.ShareOfCloth), v.Angle(s.AngleDeg.ToScreen),
				v.FlashShort(s.Flash), rise, m.move(s.Moves.Angle), m.move(s.Moves.Hardness), grams)...)...)
		}
		title := v.T("sheet-doc.details")
		if len(m.plan.Locations) > 1 {
			title += " · " + l.Name
		}
		m.Part("details", title, note, t)
		note = ""
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
func (m *maker) move(x plan.Move) string {
	side := func(x *float64) string {
		if x == nil {
			return m.say.T("show.no-figure")
		}
		return m.percent(100 * *x)
	}
	return side(x.Less) + " / " + side(x.More)
}

// ink is what to mix for the whole job.
func (m *maker) ink() {
	v := m.say
	t := flow.Table{Name: "ink", Header: []string{v.T("show.ink"), v.T("show.color"), v.T("sheet-doc.run"), v.T("sheet-doc.volume")}}
	for _, x := range m.plan.Mix {
		t.Row(flow.Plain(v.InkName(x.Ink), x.Color, v.Mass(x.G), v.Volume(x.ML))...)
	}
	if len(t.Rows) > 0 {
		m.Part("ink", v.T("sheet-doc.ink"), v.T("sheet-doc.ink-note"), t)
	}
}

// heat is the table of the dryer, a row for each ink and way to cure; the screens are listed.
func (m *maker) heat() {
	v := m.say
	t := flow.Table{Name: "heat", Header: []string{v.T("sheet-doc.screens"), v.T("show.ink"), v.T("sheet-doc.cure"), v.T("sheet-doc.top"), v.T("sheet-doc.dwell"),
		v.T("sheet-doc.belt"), v.T("sheet-doc.pieces"), v.T("sheet-doc.dryer")}}
	rows := map[string]int{}
	for _, l := range m.plan.Locations {
		here := map[int]bool{} // rows that list a screen of this location
		for _, s := range l.Screens {
			texts := append([]string{v.InkName(s.Ink)}, m.dryer(s.Cure)...)
			key := strings.Join(texts, "\n")
			i, ok := rows[key]
			if !ok {
				i = len(t.Rows)
				rows[key] = i
				t.Row(append([]flow.Cell{{}}, flow.Plain(texts...)...)...)
			}
			where := &t.Rows[i][0].Text
			if here[i] {
				*where += ", " + fmt.Sprint(s.Number)
			} else {
				*where = joined("\n", *where, l.Name+": "+fmt.Sprint(s.Number))
			}
			here[i] = true
		}
	}
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
