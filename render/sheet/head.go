package sheet

import (
	"fmt"
	"slices"
	"strings"

	"bladecard/render/canvas"
	"bladecard/render/figure"
	"bladecard/render/flow"
	"bladecard/render/page"
	"bladecard/render/say"
)

// The room for the job's code and for the shop's picture, in mm.
const (
	codeMM = 24.0
	logoW  = 36.0
	logoH  = 16.0
)

// head is what the job is, in lines beside the picture and the code.
func (m *maker) head() {
	v, p := m.say, m.plan
	top, right := m.Y, m.Left()+m.Width()
	m.Side = codeMM + flow.GapMM
	if m.opt.Logo != nil {
		m.Side += logoW + flow.GapMM
	}
	quantity, customer := "", p.Customer
	if p.Quantity > 0 {
		quantity = v.Many("show.pieces", p.Quantity)
	}
	if m.opt.NoCustomer {
		customer = ""
	}
	due := ""
	if p.Due != "" {
		due = v.T("show.due", "date", v.Date(p.Due))
	}
	m.note("heading", joined(" · ", v.T("sheet-doc.heading"), v.Shop(p.ShopFrom, p.Shop, "")))
	title, size := joined(" ", p.Job, p.Title), 15.0
	if len(canvas.Wrap(title, flow.Bold(size), m.Width()-m.Side)) > 2 {
		size = 10
	}
	m.Paragraph("title", title, flow.Bold(size))
	m.Paragraph("order facts", joined(" · ", quantity, due, customer), flow.Bold(flow.BodyPT))
	m.Paragraph("stock", v.T("show.on", "what", v.Substrate(p.Substrate)), flow.Regular(flow.BodyPT))
	press := v.T("press." + p.Press.Kind)
	if !strings.Contains(press, p.Press.Name) {
		press = p.Press.Name + " (" + press + ")"
	}
	m.Paragraph("press", v.T("sheet-doc.press", "name", press, "speed", v.Speed(p.Press.StrokeMPS)), flow.Regular(flow.BodyPT))
	who := m.opt.Contact
	if who == "" {
		who = strings.Repeat("_", 30)
	}
	m.Paragraph("contact", v.T("sheet-doc.call", "who", who), flow.Bold(flow.BodyPT))
	m.Side = 0
	if m.opt.Logo != nil && len(m.Pages) == 1 {
		m.Add(page.Image("logo", page.Rect{X: right - codeMM - flow.GapMM - logoW, Y: top, W: logoW, H: logoH}, m.opt.Logo))
	}
	m.Draw("code", page.Rect{X: right - codeMM, Y: top, W: codeMM, H: codeMM}, m.code)
	m.Y = max(m.Y, top+codeMM) + 0.8
	pen := flow.Hair(0.4)
	if c, err := figure.ParseColor(m.opt.Accent); err == nil {
		pen = canvas.Pen{Color: c, WidthMM: 0.9}
	}
	m.Add(page.Rule("under the head", m.Left(), m.Y, m.Width(), 0, pen))
	m.Y += 0.8
}

// warnings lists what a person must know, each once, with the places that it is about. A black bar runs beside them.
func (m *maker) warnings() {
	const bar, gap = 0.8, 1.6
	font := flow.Regular(flow.SmallPT)
	m.Space(1)
	for i, w := range say.Tell(m.plan.Warnings, m.plan.Locations...) {
		text := m.say.Tell(w, nil)
		if len(m.plan.Locations) == 1 { // its name would say nothing
			text = m.say.Tell(w, func(string) string { return "" })
			text = strings.TrimLeft(text, ",: ")
		}
		for k, line := range canvas.Wrap(m.say.T("show.warning", "text", text), font, m.Width()-bar-gap) {
			h := canvas.LineHeight(font)
			m.Ensure(h)
			m.Add(page.Fill(fmt.Sprintf("warning bar %d.%d", i+1, k+1), m.Left(), m.Y, bar, h, &canvas.Black, canvas.Pen{}),
				page.Text(fmt.Sprintf("warning %d.%d", i+1, k+1), m.Left()+bar+gap, m.Y, m.Width()-bar-gap, 0, line, font, canvas.Black, page.Left))
			m.Y += h
		}
	}
}

// cautions lists what can hurt, each once, and who has the last word.
func (m *maker) cautions() {
	v := m.say
	var texts []string
	for _, l := range m.plan.Locations {
		for _, s := range l.Screens {
			for _, c := range s.Cautions {
				if text := v.T("caution." + c); !slices.Contains(texts, text) {
					texts = append(texts, text)
				}
			}
		}
	}
	font := flow.Regular(flow.SmallPT)
	all := joined(" ", strings.Join(texts, " "), v.T("caution.defer"))
	m.Space(1.5)
	match := m.say.T("sheet-doc.match")
	m.Ensure(float64(len(canvas.Wrap(all, font, m.Width()))+len(canvas.Wrap(match, flow.Bold(flow.SmallPT), m.Width()))) * canvas.LineHeight(font))
	m.Paragraph("must match", match, flow.Bold(flow.SmallPT))
	m.Paragraph("cautions", all, font)
}

// column is one of a table to fill in by hand, with its share of the width.
type column struct {
	key   string
	share float64
}

// firstPrint are the tables that go back with the first print: a row a screen with what it really ran with, and a
// row a location with what the whole print came to.
func (m *maker) firstPrint() {
	v, rowMM := m.say, 5+2*m.Open
	table := func(name string, columns ...column) flow.Table {
		t := flow.Table{Name: name, Shares: []float64{42}, RowMM: rowMM, Header: []string{v.T("sheet-doc." + name)}}
		for _, c := range columns {
			t.Header, t.Shares = append(t.Header, v.T("sheet-doc.first-"+c.key)), append(t.Shares, c.share)
		}
		return t
	}
	row := func(t *flow.Table, name string) {
		t.Row(append([]flow.Cell{{Text: name, Lead: true}}, make([]flow.Cell, len(t.Header)-1)...)...)
	}
	test := "wash"
	if m.plan.Substrate.Kind != "garment" { // nobody washes a poster
		test = "rub"
	}
	screens := table("first-screen", column{"blade", 24}, column{"angle", 17}, column{"strokes", 17}, column{"air", 22}, column{"flash", 17}, column{"wipe", 25}, column{"film", 26})
	prints := table("first-print", column{"cure", 36}, column{test, 32}, column{"name", 30}, column{"sign", 30}, column{"date", 20})
	for _, l := range m.plan.Locations {
		row(&prints, short(l.Name))
		for _, s := range l.Screens {
			row(&screens, joined(" ", m.members([]member{{l.Name, s.Number}}, ""), whole(short(m.color(s)), shortMM)))
		}
	}
	m.Part("first print", v.T("sheet-doc.first"), "", screens)
	m.Table(prints)
}
