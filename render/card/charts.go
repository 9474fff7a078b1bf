package card

import (
	"bladecard/render/canvas"
	"bladecard/render/charts"
	"bladecard/render/figure"
	"bladecard/render/page"
)

func (m *maker) chartAngle(r page.Rect) {
	m.drawChart("film over angle", r, charts.Angle(m.say, m.screen, m.grid.notePT))
}

func (m *maker) chartHardness(r page.Rect) {
	m.drawChart("film over hardness", r, charts.Hardness(m.say, m.screen, m.grid.notePT))
}

func (m *maker) drawChart(name string, r page.Rect, ch figure.Chart) {
	m.draw(name, r, func(c canvas.Canvas) error { return ch.Draw(c, figure.Rect{W: r.W, H: r.H}) })
}
