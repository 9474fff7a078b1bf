package card

import (
	"math"

	"bladecard/calc/plan"
	"bladecard/render/canvas"
	"bladecard/render/figure"
	"bladecard/render/page"
)

func (m *maker) chartAngle(r page.Rect)    { m.drawChart("film over angle", r, m.angleChart()) }
func (m *maker) chartHardness(r page.Rect) { m.drawChart("film over hardness", r, m.hardnessChart()) }

// angleChart is the cured film over the angle, a line per blade of the rack.
func (m *maker) angleChart() figure.Chart {
	s := m.screen
	ch := m.chart(s.Charts.Angle)
	ch.X = figure.Axis{Title: m.say.T("card.x-angle"), Low: 0, High: math.Max(45, stepsUp(s.AngleDeg.High, 15))}
	ch.Top = &figure.TopAxis{Title: m.say.T("card.x-screen"), Label: func(x float64) string { return m.say.Number(90-x, 0) }}
	ch.Range = &figure.Interval{Low: s.AngleDeg.Low, High: s.AngleDeg.High}
	ch.Mark = &figure.Mark{X: s.AngleDeg.Set, Y: s.CuredUM.Value, Low: s.CuredUM.Low, High: s.CuredUM.High}
	return ch
}

// hardnessChart is the cured film over the edge hardness.
func (m *maker) hardnessChart() figure.Chart {
	s := m.screen
	ch := m.chart(s.Charts.Hardness)
	at := s.Blade.EdgeHardness
	ch.X = figure.Axis{Title: m.say.T("card.x-hardness"), Low: math.Min(50, -stepsUp(-at, 10)), High: math.Max(90, stepsUp(at, 10))}
	ch.Mark = &figure.Mark{X: at, Y: s.CuredUM.Value, Low: s.CuredUM.Value, High: s.CuredUM.Value}
	return ch
}

// stepsUp is x rounded up to whole steps.
func stepsUp(x, step float64) float64 { return step * math.Ceil(x/step) }

// chart is what both charts share: the curves, and the target as the band.
func (m *maker) chart(curves []plan.Curve) figure.Chart {
	ch := figure.Chart{
		Y: figure.Axis{Title: m.say.T("card.y-film")}, SizePT: m.grid.notePT, Format: m.say.Number,
		Band: &figure.Band{Interval: figure.Interval{Low: m.screen.TargetUM.Low, High: m.screen.TargetUM.High}, Label: m.say.T("show.target")},
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
	ch.Lines = figure.Choose(ch.Lines, figure.MostLines)
	return ch
}

// drawChart draws a chart. Where the setup stands alone, every other one folding over or
// floating, its own point is the line.
func (m *maker) drawChart(name string, r page.Rect, ch figure.Chart) {
	points := 0
	for _, l := range ch.Lines {
		points += len(l.Points)
	}
	if points == 0 {
		ch.Lines = []figure.Line{{Label: m.screen.Blade.Name, Strong: true, Points: []figure.XY{{X: ch.Mark.X, Y: ch.Mark.Y}}}}
	}
	m.draw(name, r, func(c canvas.Canvas) error {
		at := figure.Rect{W: r.W, H: r.H}
		return ch.Draw(c, at)
	})
}
