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

// The least and the most height of a chart, what stands between two and above the first, in mm, and how many setups
// have theirs.
const (
	chartMM     = 42.0
	mostChartMM = 80.0
	betweenMM   = 1.0
	aboveMM     = 12.0 // the head line of a page and the heading
	mostCharts  = 8
)

// charted are screens that have the same charts.
type charted struct {
	plan.Screen
	who []member
}

// charts draws the film over the angle and over the hardness, once for the screens that have the same charts. They
// spread evenly over their pages and share the height, so that none is left over on a page that is mostly empty.
func (m *maker) charts() {
	var all []charted
	at := map[string]int{}
	for _, l := range m.plan.Locations {
		for _, s := range l.Screens {
			key := fmt.Sprint(s.Mesh.Name, s.Blade.Name, s.AngleDeg, s.CuredUM, s.TargetUM, s.Charts)
			n, has := at[key]
			if !has {
				n = len(all)
				at[key], all = n, append(all, charted{Screen: s})
			}
			all[n].who = append(all[n].who, member{l.Name, s.Number})
		}
	}
	shown := all[:min(len(all), mostCharts)]
	least := canvas.LineHeight(flow.Bold(flow.SmallPT)) + chartMM + betweenMM
	whole := int((m.Bottom() - flow.MarginMM - aboveMM) / least) // on a page of their own
	keep := least
	if len(shown) == 2 {
		keep *= 2
	}
	m.Heading("charts", m.say.T("sheet-doc.charts"), keep)
	for i := 0; i < len(shown); {
		left, n := len(shown)-i, int(m.Room()/least)
		if pages := 1 + (left-n+whole-1)/whole; left > n {
			n = min(n, left/pages)
		}
		n = min(n, left)
		h := min(mostChartMM, m.Room()/float64(n)-least+chartMM)
		for range n {
			m.chart(i+1, shown[i], h)
			i++
		}
		if i < len(shown) {
			m.Next()
		}
	}
	if len(all) > len(shown) {
		m.Paragraph("chart note", m.say.T("sheet-doc.charts-some", "shown", fmt.Sprint(len(shown)), "all", fmt.Sprint(len(all))), flow.Regular(flow.SmallPT))
	}
}

// chart draws the two charts of a setup side by side, below the names of its screens.
func (m *maker) chart(n int, x charted, h float64) {
	font := flow.Bold(flow.SmallPT)
	who := m.members(x.who, " · ")
	if len(m.plan.Locations) == 1 {
		var numbers []int
		for _, w := range x.who {
			numbers = append(numbers, w.number)
		}
		who = m.say.Screens(numbers)
	}
	with := joined(" · ", x.Mesh.Name, x.Blade.Name)
	who, _ = canvas.Cut(who, font, max(m.Width()/2, m.Width()-canvas.Width(" · "+with, font)))
	what, _ := canvas.Cut(joined(" · ", who, with), font, m.Width())
	m.Paragraph(fmt.Sprint("chart title ", n), what, font)
	w := (m.Width() - flow.GapMM) / 2
	for k, ch := range []figure.Chart{charts.Angle(m.say, x.Screen, flow.SmallPT), charts.Hardness(m.say, x.Screen, flow.SmallPT)} {
		r := page.Rect{X: m.Left() + float64(k)*(w+flow.GapMM), Y: m.Y, W: w, H: h}
		m.Draw(fmt.Sprintf("chart %d.%d", n, k+1), r, func(c canvas.Canvas) error { return ch.Draw(c, figure.Rect{W: r.W, H: r.H}) })
	}
	m.Y += h + betweenMM
}
