package card

import (
	"fmt"

	"bladecard/calc/plan"
	"bladecard/render/canvas"
	"bladecard/render/figure"
	"bladecard/render/say"
)

// Figure is a chart of a card that can be drawn by itself, such as for a slide.
type Figure struct {
	Name string // location1-screen2-angle
	Draw func(c canvas.Canvas, w, h float64) error
}

// slidePT is the type of a chart that stands by itself.
const slidePT = 9.0

// Figures are the charts of every screen of a plan.
func Figures(p *plan.Plan, v *say.Voice) []Figure {
	var out []Figure
	for i, l := range p.Locations {
		for _, s := range l.Screens {
			m := maker{plan: p, loc: l, screen: s, say: v}
			for _, f := range []struct {
				name  string
				chart figure.Chart
			}{{"angle", m.angleChart()}, {"hardness", m.hardnessChart()}} {
				ch := f.chart
				ch.SizePT = slidePT
				out = append(out, Figure{
					Name: fmt.Sprintf("location%d-screen%d-%s", i+1, s.Number, f.name),
					Draw: func(c canvas.Canvas, w, h float64) error {
						at := figure.Rect{X: 2, Y: 2, W: w - 4, H: h - 4}
						return ch.Draw(c, at)
					},
				})
			}
		}
	}
	return out
}
