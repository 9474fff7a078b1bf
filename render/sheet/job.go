package sheet

import (
	"fmt"
	"slices"
	"strings"

	"bladecard/calc/plan"
	"bladecard/render/canvas"
	"bladecard/render/flow"
	"bladecard/render/say"
)

// ink is what to mix for the whole job.
func (m *maker) ink() {
	v := m.say
	t := flow.Table{Name: "ink", Header: []string{v.T("show.ink"), v.T("show.color"), v.T("sheet-doc.run"), v.T("sheet-doc.volume")}}
	for _, x := range m.plan.Mix {
		t.Row(flow.Plain(v.InkName(x.Ink), x.Color, v.Mass(x.G), v.Volume(x.ML))...)
	}
	if len(t.Rows) == 0 {
		return
	}
	m.Part("ink", v.T("sheet-doc.ink"), v.T("sheet-doc.ink-note"), t)
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
			texts := append([]string{m.say.InkName(s.Ink)}, m.cure(s.Cure)...)
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

// cure is temperature, top, dwell, belt, pieces and dryer; empty where nothing is known.
func (m *maker) cure(c plan.Cure) []string {
	v := m.say
	out := []string{cureTemperature(m, c), "", "", "", "", c.Dryer}
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

// warnings lists what a person must know, each once, with the places that it is about.
func (m *maker) warnings() {
	v := m.say
	all := say.Tell(m.plan.Warnings, m.plan.Locations...)
	if all == nil {
		return
	}
	m.Heading("warnings heading", v.T("sheet-doc.warnings"), 8)
	for i, w := range all {
		m.Paragraph(fmt.Sprintf("warning %d", i+1), v.T("show.warning", "text", v.Tell(w, nil)), flow.Regular(flow.BodyPT))
	}
}

// cautions lists what can hurt, each once, and who has the last word.
func (m *maker) cautions() {
	v := m.say
	var codes []string
	for _, l := range m.plan.Locations {
		for _, s := range l.Screens {
			for _, c := range s.Cautions {
				if !slices.Contains(codes, c) {
					codes = append(codes, c)
				}
			}
		}
	}
	var texts []string
	for _, c := range codes {
		texts = append(texts, v.T("caution."+c))
	}
	all := strings.Join(texts, " ")
	m.Heading("cautions heading", v.T("sheet-doc.cautions"), float64(len(canvas.Wrap(all, flow.Regular(flow.BodyPT), m.Width())))*canvas.LineHeight(flow.Regular(flow.BodyPT))+canvas.LineHeight(flow.Bold(flow.BodyPT))+1)
	if all != "" {
		m.Paragraph("cautions", all, flow.Regular(flow.BodyPT))
	}
	m.Paragraph("defer", v.T("caution.defer"), flow.Bold(flow.BodyPT))
}
