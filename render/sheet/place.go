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
	garmentW = 48.0
	garmentH = 28.0
)

// place is a location with its size, where it stands on the garment, and what holds for all of its screens; the
// garment is drawn beside them. What holds for all outlines is said beside the first.
func (m *maker) place(l plan.Location, first bool) {
	v := m.say
	name, size := l.Name, v.T("sheet-doc.size-unknown")
	if l.WidthMM > 0 && l.HeightMM > 0 {
		size = v.Size(l.WidthMM, l.HeightMM)
	}
	words, draw := m.placed(l)
	if first && draw != nil {
		words += ". " + v.T("sheet-doc.outline-"+figure.SizeOf(draw.Outline))
	}
	m.Space(flow.GapMM)
	m.Ensure(garmentH + stationH + 16)
	top, pages := m.Y, len(m.Pages)
	if draw != nil {
		m.Draw("garment "+l.Name, page.Rect{X: m.Left() + m.Width() - garmentW, Y: top, W: garmentW, H: garmentH}, func(c canvas.Canvas) error {
			return draw.Draw(c, figure.Rect{W: garmentW, H: garmentH})
		})
		m.Side = garmentW + flow.GapMM
	}
	m.Paragraph("location", name+" · "+size, flow.Bold(11))
	m.note("placement", words)
	m.every(l)
	for _, text := range []string{m.say.PressTime(l.Time), m.say.Rounds(m.plan.Press.Kind, l), m.say.Base(l.Base), m.measured(l)} {
		m.note("note", text)
	}
	if m.Side > 0 && pages == len(m.Pages) {
		m.Y = max(m.Y, top+garmentH)
	}
	m.Side = 0
}

// every is a panel with what holds for every screen of a location.
func (m *maker) every(l plan.Location) {
	const pad = 1.2
	var shared []string
	for _, f := range m.facts() {
		if f.head == "" || f.shared(l) {
			shared = append(shared, m.once(f, l))
		}
	}
	m.Y += 0.8
	w, font := m.Width()-m.Side, flow.Regular(flow.BodyPT)
	lines := canvas.Wrap(joined("\u00a0· ", shared...), font, w-2*pad)
	row := canvas.LineHeight(font)
	h := float64(len(lines)+1)*row + pad
	m.Ensure(h)
	ground := canvas.Gray(232)
	m.Add(page.Fill("every screen ground", m.Left(), m.Y, w, h, &ground, canvas.Pen{}))
	for i, s := range append([]string{m.say.Many("sheet-doc.every", len(l.Screens))}, lines...) {
		f := font
		f.Face = canvas.Face(i == 0)
		m.Add(page.Text(fmt.Sprintf("every screen %d", i+1), m.Left()+pad, m.Y+pad/2+float64(i)*row, w-2*pad, 0, s, f, canvas.Black, page.Left))
	}
	m.Y += h + 0.6
}

// placed puts the place of a location into words and, where it is known, a drawing. A sheet of paper or metal has none.
func (m *maker) placed(l plan.Location) (words string, draw *figure.Garment) {
	v, p, outline := m.say, l.Placement, m.plan.Substrate.Outline
	switch {
	case m.plan.Substrate.Kind != "garment":
		return "", nil
	case p == nil:
		return v.T("sheet-doc.place-unknown"), nil
	}
	down := "sheet-doc.down"
	switch {
	case p.Side == "sleeve":
		down = "sheet-doc.up"
	case !figure.HasCollar(outline):
		down = "sheet-doc.down-edge"
	case outline == "hood":
		down = "sheet-doc.down-neck"
	}
	word, across := v.T("place."+p.Place), v.T("sheet-doc.middle")
	if word == l.Name {
		word = ""
	}
	g := figure.Garment{
		Outline: outline, Back: p.Side == "back", Sleeve: p.Side == "sleeve", Left: p.Left, SizePT: flow.SmallPT,
		WidthMM: l.WidthMM, HeightMM: l.HeightMM, DownMM: p.DownMM.Low, DownLabel: v.Lengths(p.DownMM.Low, p.DownMM.High), NoDown: p.DownFrom == "",
	}
	if p.AcrossMM != nil {
		side := "sheet-doc.across-right"
		if p.Left {
			side = "sheet-doc.across-left"
		}
		g.AcrossMM, g.AcrossLabel = p.AcrossMM.Low, v.Lengths(p.AcrossMM.Low, p.AcrossMM.High)
		across = v.T(side, "range", g.AcrossLabel, "from", v.T("sheet-doc.by-"+p.AcrossFrom))
	}
	how := v.T("sheet-doc.down-unknown")
	if g.NoDown {
		g.DownLabel = "?"
	} else {
		how = v.T(down, "range", g.DownLabel, "from", v.T("sheet-doc.by-"+p.DownFrom))
	}
	words = joined("; ", word, how, across)
	if !(l.WidthMM > 0 && l.HeightMM > 0) {
		return words, nil
	}
	return words, &g
}
