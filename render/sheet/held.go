package sheet

import (
	"fmt"
	"strings"

	"bladecard/calc/plan"
	"bladecard/render/page"
	"bladecard/render/report"
)

// held is what another shop must hold, and within what it is free.
func (m *maker) held(l plan.Location) {
	v := m.say
	t := table{name: "held", header: []string{"#", "", v.T("sheet-doc.film-held"), v.T("sheet-doc.finest"), v.T("sheet-doc.cut-limit"), v.T("sheet-doc.cure"),
		v.T("sheet-doc.may-angle"), v.T("sheet-doc.move-angle"), v.T("sheet-doc.move-hardness"), v.T("sheet-doc.move-load")}}
	for _, s := range l.Screens {
		cut := v.T("sheet-doc.cut-none")
		if s.EdgeLimitDeg != nil {
			cut = v.T("sheet-doc.cut-bends", "limit", v.Number(*s.EdgeLimitDeg, 0)+"°", "edge", v.Number(s.EdgeAngleDeg, 0)+"°")
		}
		finest := ""
		if s.FinestMM > 0 {
			finest = v.Length(s.FinestMM)
		}
		t.row(append([]cell{number(s), patch(s)}, plain(v.FilmRange(s.TargetUM.Low, s.TargetUM.High), finest, cut, cureTemperature(m, s.Cure),
			v.AngleRange(s.AngleDeg.Low, s.AngleDeg.High), report.Move(s.Moves.Angle, v), report.Move(s.Moves.Hardness, v), report.Move(s.Moves.Load, v))...)...)
	}
	m.heading("held heading", v.T("sheet-doc.held"), 24)
	m.paragraph("held note", v.T("sheet-doc.held-note"), regular(bodyPT))
	m.y += 0.8
	m.table(t)
}

// equivalents are the other blades and meshes, a group a screen, the setup itself first.
func (m *maker) equivalents(l plan.Location) {
	v := m.say
	t := table{name: "equivalents", header: []string{"#", "", v.T("sheet-doc.other"), v.T("show.blade"), v.T("show.mesh"),
		v.T("sheet-doc.angle"), v.T("show.strokes"), v.T("sheet-doc.cured"), v.T("sheet-doc.change")}}
	var without []string
	for _, s := range l.Screens {
		if len(s.Equivalents) == 0 {
			without = append(without, fmt.Sprint(s.Number))
			continue
		}
		first := append([]cell{number(s), patch(s)}, plain(v.T("sheet-doc.as-set"), s.Blade.Name, s.Mesh.Name,
			v.Angle(s.AngleDeg.Set), fmt.Sprint(s.Strokes), v.FilmUM(s.CuredUM.Value), "")...)
		for i := range first {
			first[i].strong = true
		}
		t.row(first...)
		t.group = append(t.group, true)
		for _, e := range s.Equivalents {
			cells := append([]cell{{}, {}}, plain(v.T("sheet-doc.other-"+e.Kind), e.Blade, e.Mesh, v.Angle(e.AngleDeg), fmt.Sprint(e.Strokes),
				v.FilmUM(e.CuredUM), v.SignedPercent(e.DeltaPercent))...)
			cells[3].strong, cells[4].strong = e.Kind == "blade", e.Kind == "mesh"
			t.row(cells...)
			t.group = append(t.group, false)
		}
	}
	m.heading("equivalents heading", v.T("sheet-doc.equivalents"), 24)
	if len(t.rows) == 0 {
		m.paragraph("no equivalents", v.T("sheet-doc.none"), regular(bodyPT))
		return
	}
	m.paragraph("equivalents note", v.T("sheet-doc.equivalents-note"), regular(bodyPT))
	m.y += 0.8
	m.table(t)
	if without != nil {
		m.ensure(page.LineHeight(regular(bodyPT)))
		m.paragraph("without equivalents", v.T("sheet-doc.none-for", "list", strings.Join(without, ", ")), regular(bodyPT))
	}
}
