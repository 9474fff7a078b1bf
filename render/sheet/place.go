package sheet

import (
	"fmt"

	"bladecard/calc/plan"
	"bladecard/render/canvas"
	"bladecard/render/figure"
	"bladecard/render/page"
)

// The room for the garment, in mm.
const (
	garmentW = 58.0
	garmentH = 48.0
)

// placement draws where the print stands on the garment, with its distances beside it. A print
// on a sleeve is said in words only.
func (m *maker) placement(l plan.Location) {
	p := l.Placement
	if p == nil {
		return
	}
	v := m.say
	lines := []string{v.T("place." + p.Place)}
	down := "sheet-doc.down"
	if p.Side == "sleeve" {
		down = "sheet-doc.up"
	}
	lines = append(lines, v.T(down, "range", v.Lengths(p.DownMM.Low, p.DownMM.High), "from", v.T("sheet-doc.by-"+p.DownFrom)))
	switch {
	case p.AcrossMM == nil:
		lines = append(lines, v.T("sheet-doc.middle"))
	case p.Left:
		lines = append(lines, v.T("sheet-doc.across-left", "range", v.Lengths(p.AcrossMM.Low, p.AcrossMM.High), "from", v.T("sheet-doc.by-"+p.AcrossFrom)))
	default:
		lines = append(lines, v.T("sheet-doc.across-right", "range", v.Lengths(p.AcrossMM.Low, p.AcrossMM.High), "from", v.T("sheet-doc.by-"+p.AcrossFrom)))
	}
	lines = append(lines, v.T("sheet-doc.place-note"))
	drawn := p.Side != "sleeve" && l.WidthMM > 0 && l.HeightMM > 0
	m.heading("placement", v.T("sheet-doc.placement"), garmentH)
	x, w := m.left(), m.width()
	top := m.y
	if drawn {
		g := figure.Garment{
			Back: p.Side == "back", WidthMM: l.WidthMM, HeightMM: l.HeightMM, DownMM: p.DownMM.Low, Left: p.Left,
			DownLabel: v.Lengths(p.DownMM.Low, p.DownMM.High), SizePT: SmallPT,
		}
		if p.AcrossMM != nil {
			g.AcrossMM = p.AcrossMM.Low
		}
		m.add(page.Drawing("garment", x, top, garmentW, garmentH, func(c canvas.Canvas) {
			if err := g.Draw(c, figure.Rect{W: garmentW, H: garmentH}); err != nil && m.err == nil {
				m.err = err
			}
		}))
		x, w = x+garmentW+gapMM, w-garmentW-gapMM
	}
	for i, s := range lines {
		for k, line := range page.Wrap(s, regular(bodyPT), w) {
			m.add(page.Text(fmt.Sprintf("placement %d.%d", i+1, k+1), x, m.y, w, 0, line, regular(bodyPT), canvas.Black, page.Left))
			m.y += page.LineHeight(regular(bodyPT))
		}
	}
	if drawn {
		m.y = max(m.y, top+garmentH)
	}
}
