package sheet

import (
	"fmt"

	"bladecard/render/canvas"
	"bladecard/render/figure"
	"bladecard/render/page"
	"bladecard/render/report"
)

// The room for the shop's picture, in mm.
const (
	logoW = 42.0
	logoH = 16.0
)

// accent is the rule of the head, in the shop's colour where it has one.
func (m *maker) accent() canvas.Pen {
	pen := hair(0.4)
	if c, err := figure.ParseColor(m.opt.Accent); err == nil {
		pen.Color, pen.WidthMM = c, 0.9
	}
	return pen
}

// head is what the job is: title, then facts in two columns.
func (m *maker) head() {
	v, p := m.say, m.plan
	top := m.y
	if m.opt.Logo != nil {
		m.add(page.Image("logo", page.Rect{X: m.left() + m.width() - logoW, Y: m.y, W: logoW, H: logoH}, m.opt.Logo))
		m.side = logoW + gapMM
	}
	m.paragraph("heading", v.T("sheet-doc.heading"), regular(bodyPT))
	size := 16.0
	if len(page.Wrap(p.Title, bold(size), m.width()-m.side)) > 2 {
		size = 11
	}
	m.paragraph("title", p.Title, bold(size))
	m.y += 1
	if m.opt.Logo != nil {
		m.y = max(m.y, top+logoH+1)
		m.side = 0
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
		{m.printedOn(), report.Substrate(p.Substrate, v)},
		{v.T("sheet-doc.shop"), v.Shop(p.ShopFrom, p.Shop, p.ShopFile)},
		{v.T("sheet-doc.press"), press + " (" + v.T("press."+p.Press.Kind) + ")"},
	}
	var some [][2]string
	for _, f := range facts {
		if f[1] != "" {
			some = append(some, f)
		}
	}
	m.add(page.Rule("under the title", m.left(), m.y, m.width(), 0, m.accent()))
	m.y += 1
	for i := 0; i < len(some); i += 2 {
		m.facts(i, some[i:min(i+2, len(some))])
	}
	m.y += 0.6
	m.add(page.Rule("under the facts", m.left(), m.y, m.width(), 0, m.accent()))
	m.y += 1
	m.paragraph("angle note", v.T("sheet-doc.angle-note"), regular(SmallPT))
}

// facts sets one row of labels and values.
func (m *maker) facts(row int, facts [][2]string) {
	const gap = 5.0
	label := m.labelWidth()
	half := (m.width() - gap) / 2
	rows := 1
	for i, f := range facts {
		x := m.left() + float64(i)*(half+gap)
		name := fmt.Sprintf("fact %d", row+i+1)
		m.add(page.Text(name+" label", x, m.y, label, 0, f[0], regular(bodyPT), canvas.Black, page.Left))
		for k, line := range page.Wrap(f[1], bold(bodyPT), half-label) {
			m.add(page.Text(name, x+label, m.y+float64(k)*canvas.LineHeight(bold(bodyPT)), half-label, 0, line, bold(bodyPT), canvas.Black, page.Left))
			rows = max(rows, k+1)
		}
	}
	m.y += float64(rows) * canvas.LineHeight(bold(bodyPT))
}

// labelWidth is that of the widest label.
func (m *maker) labelWidth() float64 {
	w, v := 0.0, m.say
	for _, s := range []string{v.T("sheet-doc.job"), v.T("sheet-doc.customer"), v.T("sheet-doc.quantity"), v.T("sheet-doc.due"),
		m.printedOn(), v.T("sheet-doc.shop"), v.T("sheet-doc.press")} {
		w = max(w, canvas.Width(s, regular(bodyPT)))
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
