package sheet

import (
	"fmt"

	"bladecard/calc/plan"
	"bladecard/render/canvas"
	"bladecard/render/charts"
	"bladecard/render/figure"
	"bladecard/render/flow"
	"bladecard/render/page"
)

// chartMM is the height of a chart, of which five stand under one another on a page of either paper; mostCharts is
// how many setups have theirs: two pages.
const (
	chartMM    = 44.0
	mostCharts = 8
)

// charted are screens that have the same charts.
type charted struct {
	screen plan.Screen
	who    []member
}

// charts draws the film over the angle and over the hardness, once for the screens that have the same charts.
func (m *maker) charts() {
	var all []charted
	at := map[string]int{}
	for _, l := range m.plan.Locations {
		for _, s := range l.Screens {
			key := fmt.Sprint(s.Mesh.Name, s.Blade.Name, s.AngleDeg, s.CuredUM, s.TargetUM, s.Charts)
			n, has := at[key]
			if !has {
				n = len(all)
				at[key], all = n, append(all, charted{screen: s})
			}
			all[n].who = append(all[n].who, member{l.Name, s.Number})
		}
	}
	font := flow.Bold(flow.SmallPT)
	title := canvas.LineHeight(font)
	for i, one := range all[:min(len(all), mostCharts)] {
		if i == 0 {
			m.Heading("charts", m.say.T("sheet-doc.charts"), chartMM+title)
		}
		m.Ensure(chartMM + title)
		s := one.screen
		who := m.members(one.who, " · ")
		if len(m.plan.Locations) == 1 {
			who = m.say.Many("told.screens", len(one.who), "list", who)
		}
		with := joined(" · ", s.Mesh.Name, s.Blade.Name)
		who, _ = canvas.Cut(who, font, max(m.Width()/2, m.Width()-canvas.Width(" · "+with, font)))
		what, _ := canvas.Cut(joined(" · ", who, with), font, m.Width())
		m.Paragraph(fmt.Sprint("chart title ", i+1), what, font)
		w := (m.Width() - flow.GapMM) / 2
		for k, ch := range []figure.Chart{charts.Angle(m.say, s, flow.SmallPT), charts.Hardness(m.say, s, flow.SmallPT)} {
			r := page.Rect{X: m.Left() + float64(k)*(w+flow.GapMM), Y: m.Y, W: w, H: chartMM}
			m.Draw(fmt.Sprintf("chart %d.%d", i+1, k+1), r, func(c canvas.Canvas) error { return ch.Draw(c, figure.Rect{W: r.W, H: r.H}) })
		}
		m.Y += chartMM + 1
	}
	if len(all) > mostCharts {
		m.Paragraph("chart note", m.say.T("sheet-doc.charts-some", "shown", fmt.Sprint(mostCharts), "all", fmt.Sprint(len(all))), flow.Regular(flow.SmallPT))
	}
}
