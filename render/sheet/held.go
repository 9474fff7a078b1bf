package sheet

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"bladecard/render/flow"

	"bladecard/calc/plan"
	"bladecard/render/canvas"
)

// held is what another shop must hold, and within what it is free.
func (m *maker) held(l plan.Location) {
	v := m.say
	t := flow.Table{Name: "held", Header: []string{"#", "", v.T("sheet-doc.film-held"), v.T("sheet-doc.finest"), v.T("sheet-doc.cut-limit"), v.T("sheet-doc.cure"),
		v.T("sheet-doc.may-angle"), v.T("sheet-doc.move-angle"), v.T("sheet-doc.move-hardness")}}
	for _, s := range l.Screens {
		cut := v.T("sheet-doc.cut-none")
		if s.EdgeLimitDeg != nil {
			cut = v.T("sheet-doc.cut-bends", "limit", v.Number(*s.EdgeLimitDeg, 0)+"°", "edge", v.Number(s.EdgeAngleDeg, 0)+"°")
		}
		finest := ""
		if s.FinestMM > 0 {
			finest = v.Length(s.FinestMM)
		}
		t.Row(append([]flow.Cell{number(s), patch(s)}, flow.Plain(v.FilmRange(s.TargetUM.Low, s.TargetUM.High), finest, cut, cureTemperature(m, s.Cure),
			v.AngleRange(s.AngleDeg.Low, s.AngleDeg.High), m.move(s.Moves.Angle), m.move(s.Moves.Hardness))...)...)
	}
	m.Part("held", v.T("sheet-doc.held"), v.T("sheet-doc.held-note"), t)
}

// equivalents are the other blades and meshes, a group for the screens that are set alike and
// have the same ones, the setup itself first.
func (m *maker) equivalents(l plan.Location) {
	v := m.say
	t := flow.Table{Name: "equivalents", Header: []string{"#", "", v.T("sheet-doc.other"), v.T("show.blade"), v.T("sheet-doc.rubber"), v.T("show.mesh"),
		v.T("sheet-doc.stencil"), v.T("sheet-doc.angle"), v.T("sheet-doc.to-screen"), v.T("show.strokes"), v.T("sheet-doc.load"), v.T("sheet-doc.cured"), v.T("sheet-doc.change")}}
	var without, missing []string
	starts := map[string]int{} // rows that start a group, by its texts
	for _, s := range l.Screens {
		if len(s.Equivalents) == 0 {
			without = append(without, fmt.Sprint(s.Number))
			continue
		}
		if slices.ContainsFunc(s.Equivalents, func(e plan.Equivalent) bool { return e.SharesMiss }) {
			missing = append(missing, fmt.Sprint(s.Number))
		}
		rows := m.group(s)
		key := fmt.Sprint(rows)
		if at, ok := starts[key]; ok {
			t.Rows[at][0].Text += ", " + fmt.Sprint(s.Number)
			t.Rows[at][1] = flow.Cell{}
			continue
		}
		starts[key] = len(t.Rows)
		for i, r := range rows {
			head := []flow.Cell{{}, {}}
			if i == 0 {
				head = []flow.Cell{number(s), patch(s)}
			}
			t.Row(append(head, r...)...)
			t.Group = append(t.Group, i == 0)
		}
	}
	if len(t.Rows) == 0 {
		m.Heading("equivalents heading", v.T("sheet-doc.equivalents"), canvas.LineHeight(flow.Regular(flow.BodyPT)))
		m.Paragraph("no equivalents", v.T("sheet-doc.none"), flow.Regular(flow.BodyPT))
		return
	}
	m.Part("equivalents", v.T("sheet-doc.equivalents"), v.T("sheet-doc.equivalents-note"), t)
	if missing != nil {
		m.Paragraph("equivalents that miss", v.T("sheet-doc.share-miss", "list", strings.Join(missing, ", ")), flow.Regular(flow.BodyPT))
	}
	if without != nil {
		m.Paragraph("without equivalents", v.T("sheet-doc.none-for", "list", strings.Join(without, ", ")), flow.Regular(flow.BodyPT))
	}
}

// group are the rows of one screen, but for its number and patch.
func (m *maker) group(s plan.Screen) [][]flow.Cell {
	v := m.say
	first := flow.Plain(v.T("sheet-doc.as-set"), m.blade(s.Blade.Name, s.Blade.Layup, s.Blade.Edge), m.rubber(s.Blade.ThicknessMM, s.Blade.FreeHeightMM),
		s.Mesh.Name, v.Fine(s.Stencil.EOMUM), v.Angle(s.AngleDeg.Set), v.Angle(s.AngleDeg.ToScreen), v.Pulls(s.Strokes, s.Hits), v.Load(s.LoadNPerCM), v.FilmUM(s.CuredUM.Value), "")
	for i := range first {
		first[i].Strong = true
	}
	rows := [][]flow.Cell{first}
	for _, e := range s.Equivalents {
		r := flow.Plain(v.T("sheet-doc.other-"+e.Kind), m.blade(e.Blade, e.Layup, e.Edge), m.rubber(e.ThicknessMM, e.FreeHeightMM),
			e.Mesh, v.Fine(e.EOMUM), v.Angle(e.AngleDeg), v.Angle(e.ToScreen), v.Pulls(e.Strokes, e.Hits), v.Load(e.LoadNPerCM), v.FilmUM(e.CuredUM), m.percent(e.DeltaPercent))
		r[1].Strong, r[3].Strong = e.Kind == "blade", e.Kind == "mesh"
		rows = append(rows, r)
	}
	return rows
}

// blade is the name of a blade with its layup, where that is not the name, and its edge.
func (m *maker) blade(name, layup, edge string) string {
	if layup != "" && !strings.Contains(name, layup) {
		name += " (" + layup + ")"
	}
	return name + ", " + m.say.T("edge."+edge)
}

// rubber is what else makes a blade stiff: thickness and free height.
func (m *maker) rubber(thicknessMM, freeMM float64) string {
	return m.say.Thickness(thicknessMM) + " / " + m.say.Thickness(freeMM)
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

// percent is a change in whole percent, since a finer figure would say more than is known; only one that would be
// nothing in whole percent keeps its first digit.
func (m *maker) percent(p float64) string {
	exact, s := p, m.say.Number(math.Abs(p), 0)+"\u00a0%"
	switch p = math.Round(p); {
	case p > 0:
		return "+" + s
	case p < 0:
		return "−" + s
	case exact == 0:
		return s
	}
	return m.say.SignedPercent(exact)
}
