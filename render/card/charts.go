package card

import (
	"bladecard/calc/plan"
	"bladecard/render/canvas"
	"bladecard/render/figure"
	"bladecard/render/page"
)

// chartAngle draws the cured film over the angle, a line per blade of the rack.
func (m *maker) chartAngle(r page.Rect) {
	s := m.screen
	ch := m.chart(s.Charts.Angle)
	ch.X = figure.Axis{Title: m.say.T("card.x-angle"), Low: 0, High: 45}
	ch.Top = &figure.TopAxis{Title: m.say.T("card.x-screen"), Label: func(x float64) string { return m.say.Number(90-x, 0) }}
	ch.Range = &figure.Interval{Low: s.AngleDeg.Low, High: s.AngleDeg.High}
	ch.Mark = &figure.Mark{X: s.AngleDeg.Set, Y: s.CuredUM.Value, Low: s.CuredUM.Low, High: s.CuredUM.High}
	m.drawChart("film over angle", r, ch)
}

// chartHardness draws the cured film over the edge hardness.
func (m *maker) chartHardness(r page.Rect) {
	s := m.screen
	ch := m.chart(s.Charts.Hardness)
	ch.X = figure.Axis{Title: m.say.T("card.x-hardness"), Low: 50, High: 90}
	ch.Mark = &figure.Mark{X: s.Blade.EdgeHardness, Y: s.CuredUM.Value, Low: s.CuredUM.Value, High: s.CuredUM.Value}
	m.drawChart("film over hardness", r, ch)
}

func (m *maker) chart(curves []plan.Curve) figure.Chart {
	ch := figure.Chart{
		Y: figure.Axis{Title: m.say.T("card.y-film")}, SizePT: BackPT, Format: m.say.Number,
		Band: &figure.Interval{Low: m.screen.TargetUM.Low, High: m.screen.TargetUM.High},
	}
	dash := 0
	for _, c := range curves {
		l := figure.Line{Label: c.Name, Strong: c.Chosen, Dash: dash % figure.Dashes, Step: 2.5}
		if m.say.Has("curve." + c.Name) {
			l.Label = m.say.T("curve." + c.Name)
		}
		if !c.Chosen {
			dash++
		}
		for _, p := range c.Points {
			l.Points = append(l.Points, figure.XY{X: p.X, Y: p.UM})
		}
		ch.Lines = append(ch.Lines, l)
	}
	return ch
}

func (m *maker) drawChart(name string, r page.Rect, ch figure.Chart) {
	m.draw(name, r, func(c canvas.Canvas) error {
		at := figure.Rect{W: r.W, H: r.H}
		return ch.Fit(c, at).Draw(c, at)
	})
}
