package sheet

import (
	"fmt"

	"bladecard/calc/plan"
	"bladecard/render/canvas"
	"bladecard/render/figure"
	"bladecard/render/flow"
	"bladecard/render/page"
)

// The room for the garment, in mm.
const (
	garmentW = 52.0
	garmentH = 46.0
)

// placed is one location as it is drawn: its words, and the garment where the place is known.
type placed struct {
	name  string
	lines []string
	draw  *figure.Garment
}

// placements draws where the prints stand on the garment, two beside each other, each with its
// distances. There are none on a sheet of paper or metal.
func (m *maker) placements() {
	if m.plan.Substrate.Kind != "garment" {
		return
	}
	var all []placed
	drawn := false
	for _, l := range m.plan.Locations {
		p := m.placed(l)
		all = append(all, p)
		drawn = drawn || p.draw != nil
	}
	per := min(2, len(all))
	const gap = 5.0
	w := (m.Width() - float64(per-1)*gap) / float64(per)
	keep := m.placedHeight(all[0], w)
	m.Heading("placement", m.say.T("sheet-doc.placement"), keep)
	for i := 0; i < len(all); i += per {
		row := all[i:min(i+per, len(all))]
		h := 0.0
		for _, p := range row {
			h = max(h, m.placedHeight(p, w))
		}
		m.Ensure(h)
		for k, p := range row {
			m.place(i+k+1, p, m.Left()+float64(k)*(w+gap), w)
		}
		m.Y += h + 1.5
	}
	if drawn {
		m.Paragraph("placement note", m.say.T("sheet-doc.place-note"), flow.Regular(flow.SmallPT))
	}
}

// placed puts the place of a location into words and a drawing.
func (m *maker) placed(l plan.Location) placed {
	v, p := m.say, l.Placement
	out := placed{name: l.Name}
	if l.WidthMM > 0 && l.HeightMM > 0 {
		out.lines = append(out.lines, v.Size(l.WidthMM, l.HeightMM))
	} else {
		out.lines = append(out.lines, v.T("sheet-doc.size-unknown"))
	}
	if p == nil {
		out.lines = append(out.lines, v.T("sheet-doc.place-unknown"))
		return out
	}
	down, outline := "sheet-doc.down", m.plan.Substrate.Outline
	switch {
	case p.Side == "sleeve":
		down = "sheet-doc.up"
	case !figure.HasCollar(outline):
		down = "sheet-doc.down-edge"
	}
	if word := v.T("place." + p.Place); word != l.Name {
		out.lines = append(out.lines, word)
	}
	distance := v.Lengths(p.DownMM.Low, p.DownMM.High)
	out.lines = append(out.lines, v.T(down, "range", distance, "from", v.T("sheet-doc.by-"+p.DownFrom)))
	g := figure.Garment{
		Outline: outline,
		Back:    p.Side == "back", Sleeve: p.Side == "sleeve", WidthMM: l.WidthMM, HeightMM: l.HeightMM, DownMM: p.DownMM.Low, Left: p.Left,
		DownLabel: distance, SizePT: flow.SmallPT,
	}
	if p.AcrossMM == nil {
		out.lines = append(out.lines, v.T("sheet-doc.middle"))
	} else {
		side := "sheet-doc.across-right"
		if p.Left {
			side = "sheet-doc.across-left"
		}
		g.AcrossMM, g.AcrossLabel = p.AcrossMM.Low, v.Lengths(p.AcrossMM.Low, p.AcrossMM.High)
		out.lines = append(out.lines, v.T(side, "range", g.AcrossLabel, "from", v.T("sheet-doc.by-"+p.AcrossFrom)))
	}
	if l.WidthMM > 0 && l.HeightMM > 0 {
		out.draw = &g
	}
	return out
}

// words are the lines of a placed location in a column, with their fonts.
func (m *maker) words(p placed, w float64) (lines []string, fonts []canvas.Font) {
	if p.draw != nil {
		w -= garmentW + flow.GapMM
	}
	add := func(s string, f canvas.Font) {
		for _, line := range canvas.Wrap(s, f, w) {
			lines, fonts = append(lines, line), append(fonts, f)
		}
	}
	add(p.name, flow.Bold(flow.BodyPT))
	for _, s := range p.lines {
		add(s, flow.Regular(flow.BodyPT))
	}
	return lines, fonts
}

func (m *maker) placedHeight(p placed, w float64) float64 {
	h := 0.0
	_, fonts := m.words(p, w)
	for _, f := range fonts {
		h += canvas.LineHeight(f)
	}
	if p.draw != nil {
		h = max(h, garmentH)
	}
	return h
}

// place sets one location at x, the drawing first.
func (m *maker) place(n int, p placed, x, w float64) {
	lines, fonts := m.words(p, w)
	if p.draw != nil {
		m.Draw(fmt.Sprintf("garment %d", n), page.Rect{X: x, Y: m.Y, W: garmentW, H: garmentH}, func(c canvas.Canvas) error {
			return p.draw.Draw(c, figure.Rect{W: garmentW, H: garmentH})
		})
		x, w = x+garmentW+flow.GapMM, w-garmentW-flow.GapMM
	}
	y := m.Y
	for i, line := range lines {
		m.Add(page.Text(fmt.Sprintf("placement %d.%d", n, i+1), x, y, w, 0, line, fonts[i], canvas.Black, page.Left))
		y += canvas.LineHeight(fonts[i])
	}
}
