package sheet

import (
	"fmt"

	"bladecard/render/canvas"
	"bladecard/render/figure"
	"bladecard/render/flow"
	"bladecard/render/page"
)

// The room for the shop's picture, in mm.
const (
	logoW = 42.0
	logoH = 16.0
)

// accent is the rule of the head, in the shop's colour where it has one.
func (m *maker) accent() canvas.Pen {
	pen := flow.Hair(0.4)
	if c, err := figure.ParseColor(m.opt.Accent); err == nil {
		pen.Color, pen.WidthMM = c, 0.9
	}
	return pen
}

// head is what the job is: title, then facts in two columns.
func (m *maker) head() {
	v, p := m.say, m.plan
	top := m.Y
	if m.opt.Logo != nil {
		m.Add(page.Image("logo", page.Rect{X: m.Left() + m.Width() - logoW, Y: m.Y, W: logoW, H: logoH}, m.opt.Logo))
		m.Side = logoW + flow.GapMM
	}
	m.Paragraph("heading", v.T("sheet-doc.heading"), flow.Regular(flow.BodyPT))
	size := 16.0
	if len(canvas.Wrap(p.Title, flow.Bold(size), m.Width()-m.Side)) > 2 {
		size = 11
	}
	m.Paragraph("title", p.Title, flow.Bold(size))
	m.Y += 1
	if m.opt.Logo != nil {
		m.Y = max(m.Y, top+logoH+1)
		m.Side = 0
	}
	quantity, customer := "", p.Customer
	if p.Quantity > 0 {
		quantity = v.Many("show.pieces", p.Quantity)
	}
	if m.opt.NoCustomer {
		customer = ""
	}
	press := v.T("show.press", "name", p.Press.Name, "load", v.Load(p.Press.LoadNPerCM), "speed", v.Speed(p.Press.StrokeMPS))
	facts := [][2]string{
		{v.T("sheet-doc.job"), p.Job},
		{v.T("sheet-doc.customer"), customer},
		{v.T("sheet-doc.quantity"), quantity},
		{v.T("sheet-doc.due"), v.Date(p.Due)},
		{m.printedOn(), v.Substrate(p.Substrate)},
		{v.T("sheet-doc.shop"), v.Shop(p.ShopFrom, p.Shop, p.ShopFile)},
		{v.T("sheet-doc.press"), press + " (" + v.T("press."+p.Press.Kind) + ")"},
	}
	var some [][2]string
	for _, f := range facts {
		if f[1] != "" {
			some = append(some, f)
		}
	}
	m.Add(page.Rule("under the title", m.Left(), m.Y, m.Width(), 0, m.accent()))
	m.Y += 1
	for i := 0; i < len(some); i += 2 {
		m.facts(i, some[i:min(i+2, len(some))])
	}
	m.Y += 0.6
	m.Add(page.Rule("under the facts", m.Left(), m.Y, m.Width(), 0, m.accent()))
	m.Y += 1
	m.Paragraph("angle note", v.T("sheet-doc.angle-note"), flow.Regular(flow.SmallPT))
}

// facts sets one row of labels and values.
func (m *maker) facts(row int, facts [][2]string) {
	const gap = 5.0
	label := m.labelWidth()
	half := (m.Width() - gap) / 2
	rows := 1
	for i, f := range facts {
		x := m.Left() + float64(i)*(half+gap)
		name := fmt.Sprintf("fact %d", row+i+1)
		m.Add(page.Text(name+" label", x, m.Y, label, 0, f[0], flow.Regular(flow.BodyPT), canvas.Black, page.Left))
		for k, line := range canvas.Wrap(f[1], flow.Bold(flow.BodyPT), half-label) {
			m.Add(page.Text(name, x+label, m.Y+float64(k)*canvas.LineHeight(flow.Bold(flow.BodyPT)), half-label, 0, line, flow.Bold(flow.BodyPT), canvas.Black, page.Left))
			rows = max(rows, k+1)
		}
	}
	m.Y += float64(rows) * canvas.LineHeight(flow.Bold(flow.BodyPT))
}

// labelWidth is that of the widest label.
func (m *maker) labelWidth() float64 {
	w, v := 0.0, m.say
	for _, s := range []string{v.T("sheet-doc.job"), v.T("sheet-doc.customer"), v.T("sheet-doc.quantity"), v.T("sheet-doc.due"),
		m.printedOn(), v.T("sheet-doc.shop"), v.T("sheet-doc.press")} {
		w = max(w, canvas.Width(s, flow.Regular(flow.BodyPT)))
	}
	return w + 3
}

// printedOn labels what is printed on: a garment, or the stock of a sheet.
func (m *maker) printedOn() string {
	if m.plan.Substrate.Kind == "garment" {
		return m.say.T("sheet-doc.stock")
	}
	return m.say.T("sheet-doc.sheet")
}
