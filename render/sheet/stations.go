package sheet

import (
	"fmt"
	"slices"
	"strings"

	"bladecard/calc/plan"
	"bladecard/render/canvas"
	"bladecard/render/figure"
	"bladecard/render/flow"
	"bladecard/render/page"
)

// The measures of a drawn station, in mm.
const (
	stationW = 27.0 // at most
	stationH = 15.6
	arrowMM  = 2.6 // between two
	mostRow  = 9   // stations in a row
)

// order draws the press order as a row of stations, over as many rows as it takes. One print alone has no order.
func (m *maker) order(l plan.Location) {
	if len(l.Stations) < 2 {
		return
	}
	m.Space(1)
	m.Ensure(stationH + 5)
	m.Paragraph("order", m.say.Many("sheet-doc.order", l.HeadsNeeded), flow.Bold(flow.BodyPT))
	m.Y += 0.5
	rows := (len(l.Stations) + mostRow - 1) / mostRow
	per := (len(l.Stations) + rows - 1) / rows // none with one left over
	w := min(stationW, (m.Width()-float64(per-1)*arrowMM)/float64(per))
	for i := 0; i < len(l.Stations); i += per {
		m.Ensure(stationH)
		row := l.Stations[i:min(i+per, len(l.Stations))]
		for k, s := range row {
			r := page.Rect{X: m.Left() + float64(k)*(w+arrowMM), Y: m.Y, W: w, H: stationH}
			m.station(i+k+1, s, l.Screens[s.Screen-1], r)
			if i+k+1 < len(l.Stations) && k+1 < per {
				m.arrow(fmt.Sprintf("arrow %d", i+k+1), r.Right(), r.Y)
			}
		}
		m.Y += stationH + 1
	}
}

// station is one box: a print with its patch, a flash white on black with its time, a cool-down with a dashed frame.
func (m *maker) station(n int, s plan.Station, of plan.Screen, r page.Rect) {
	const pad, line, tab = 0.9, 3.2, 5.0
	v, name := m.say, fmt.Sprintf("station %d", n)
	pen, fill, type_ := flow.Hair(0.3), canvas.White, canvas.Black
	lines := []string{"", ""}
	what := v.T("station." + s.Kind)
	switch s.Kind {
	case "flash":
		fill, type_ = canvas.Black, canvas.White
		what, lines[0], lines[1] = v.FlashTile(of.Flash)
		if t := of.Flash.TemperatureC; t != nil {
			lines[1] = v.TemperatureRange(t.Low, t.High)
		}
	case "cool":
		pen.DashMM = []float64{1.2, 0.8}
		what, lines[0] = "", what
	default:
		what = v.T("sheet-doc.station-print", "n", fmt.Sprint(s.Screen))
		if s.Wet {
			lines[1] = v.T("sheet-doc.station-wet")
		}
	}
	in := r.Inset(pen.WidthMM / 2)
	m.Add(page.Fill(name+" frame", in.X, in.Y, in.W, in.H, &fill, pen))
	text := func(part string, r page.Rect, s string, sizePT float64, face canvas.Face) {
		small := canvas.Font{Face: face, SizePT: flow.SmallPT}
		wide := func(word string) bool { return canvas.Width(word, small) > r.W }
		if slices.ContainsFunc(strings.Fields(s), wide) || wide(s) && r.H < 2*canvas.LineHeight(small) { // bold is too wide for its box
			face = canvas.Regular
		}
		f := page.Fit(name+part, r, s, page.Style{Font: canvas.Font{Face: face, SizePT: sizePT}, Color: type_}, flow.SmallPT)
		m.Add(f.Boxes...)
	}
	in = r.Inset(pad)
	text(" number", page.Rect{X: in.X, Y: in.Y, W: tab - 0.5, H: line + 0.8}, fmt.Sprint(n), 10, canvas.Bold)
	low := page.Rect{X: in.X, Y: in.Y + line + 0.8, W: in.W, H: in.H - line - 0.8}
	if s.Kind == "print" {
		const screen = 6.5
		text(" screen", page.Rect{X: in.X + tab - 0.5, Y: in.Y + 0.3, W: screen, H: line + 0.3}, what, flow.SmallPT, canvas.Regular)
		at := page.Rect{X: in.X + tab + screen, Y: in.Y + 0.2, W: in.W - tab - screen, H: line}
		m.Draw(name+" patch", at, func(c canvas.Canvas) error { return swatch(of).Draw(c, figure.Rect{W: at.W, H: at.H}) })
		text(" color", page.Rect{X: low.X, Y: low.Y, W: low.W, H: 2 * line}, m.color(of), flow.SmallPT, canvas.Regular)
		text(" wet", page.Rect{X: r.X + 0.5, Y: low.Bottom() - line, W: r.W - 1, H: line}, lines[1], flow.SmallPT, canvas.Bold)
		return
	}
	kind := page.Rect{X: in.X + tab, Y: in.Y, W: in.W - tab, H: line + 0.8}
	if canvas.Width(what, flow.Bold(flow.SmallPT)) > kind.W {
		kind.H = 2 * line
	}
	text(" kind", kind, what, 8.5, canvas.Bold)
	text(" time", page.Rect{X: low.X, Y: kind.Bottom(), W: low.W, H: low.Bottom() - line - kind.Bottom()}, lines[0], 9, canvas.Bold)
	text(" how", page.Rect{X: low.X, Y: low.Bottom() - line, W: low.W, H: line}, lines[1], flow.SmallPT, canvas.Regular)
}

// arrow leads from a station to the next.
func (m *maker) arrow(name string, x, y float64) {
	const half, long = 1.1, 1.8
	m.Draw(name, page.Rect{X: x + (arrowMM-long)/2, Y: y + stationH/2 - half, W: long, H: 2 * half}, func(c canvas.Canvas) error {
		var p canvas.Path
		p.Move(0, 0)
		p.Line(long, half)
		p.Line(0, 2*half)
		p.Close()
		c.Draw(p, &canvas.Black, canvas.Pen{})
		return nil
	})
}
