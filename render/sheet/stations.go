package sheet

import (
	"fmt"

	"bladecard/calc/plan"
	"bladecard/render/canvas"
	"bladecard/render/figure"
	"bladecard/render/flow"
	"bladecard/render/page"
)

// The measures of a drawn station.
const (
	stationW = 28.0
	stationH = 18.5
	arrowMM  = 3.2 // between two
)

// order draws the press order as a row of stations, over as many rows as it takes.
func (m *maker) order(l plan.Location) {
	v := m.say
	m.Y += 0.5
	if len(l.Stations) > 1 {
		m.Paragraph("order", v.Many("sheet-doc.order", l.HeadsNeeded), flow.Regular(flow.BodyPT))
	}
	m.Y += 0.8
	per := max(1, int((m.Width()+arrowMM)/(stationW+arrowMM)))
	if rows := (len(l.Stations) + per - 1) / per; rows > 1 { // none with one left over
		per = (len(l.Stations) + rows - 1) / rows
	}
	for i := 0; i < len(l.Stations); i += per {
		m.Ensure(stationH)
		row := l.Stations[i:min(i+per, len(l.Stations))]
		for k, s := range row {
			r := page.Rect{X: m.Left() + float64(k)*(stationW+arrowMM), Y: m.Y, W: stationW, H: stationH}
			m.station(i+k+1, s, l.Screens[s.Screen-1], r)
			if i+k+1 < len(l.Stations) && k+1 < per {
				m.arrow(fmt.Sprintf("arrow %d", i+k+1), r.Right(), r.Y)
			}
		}
		m.Y += stationH + 1.5
	}
}

// station is one box: a print with its patch, a flash in grey with a heavy frame, a cool-down
// with a dashed one.
func (m *maker) station(n int, s plan.Station, of plan.Screen, r page.Rect) {
	const pad, line, tab = 1.2, 3.6, 5.5
	v, name := m.say, fmt.Sprintf("station %d", n)
	pen := flow.Hair(0.3)
	fill := canvas.White
	switch s.Kind {
	case "flash":
		pen, fill = flow.Hair(0.7), canvas.Gray(215)
	case "cool":
		pen.DashMM = []float64{1.2, 0.8}
	}
	in := r.Inset(pen.WidthMM / 2)
	m.Add(page.Fill(name+" frame", in.X, in.Y, in.W, in.H, &fill, pen))
	tall := page.Rect{X: r.X + pad, Y: r.Y + pad, W: tab - 1, H: line + 1}
	m.fit(name+" number", tall, fmt.Sprint(n), 9, canvas.Bold)
	what := page.Rect{X: r.X + pad + tab, Y: r.Y + pad, W: r.W - 2*pad - tab, H: line + 1}
	low := page.Rect{X: r.X + pad, Y: r.Y + pad + line + 1.6, W: r.W - 2*pad, H: 2 * line}
	if s.Kind != "print" {
		m.fit(name+" kind", what, v.T("station."+s.Kind), 9, canvas.Bold)
		m.fit(name+" screen", low, v.T("sheet-doc.station-after", "n", fmt.Sprint(s.Screen)), flow.BodyPT, canvas.Regular)
		if t := of.Flash.Seconds; s.Kind == "flash" && t != nil {
			how := page.Rect{X: low.X, Y: r.Bottom() - pad - line, W: low.W, H: line}
			m.fit(name+" time", how, v.SecondsRange(t.Low, t.High), flow.BodyPT, canvas.Bold)
		}
		return
	}
	m.fit(name+" kind", what, v.T("sheet-doc.station-print", "n", fmt.Sprint(s.Screen)), 9, canvas.Bold)
	const patch = 6.0
	m.Draw(name+" patch", page.Rect{X: low.X, Y: low.Y + 0.4, W: patch, H: patch}, func(c canvas.Canvas) error {
		return swatch(of).Draw(c, figure.Rect{W: patch, H: patch})
	})
	text := page.Rect{X: low.X + patch + 1, Y: low.Y, W: low.W - patch - 1, H: low.H}
	if s.Wet {
		mark := page.Rect{X: r.X + 0.8, Y: r.Bottom() - pad - line, W: r.W - 1.6, H: line}
		m.fit(name+" wet", mark, v.T("sheet-doc.station-wet"), flow.SmallPT, canvas.Bold)
	}
	m.fit(name+" colour", text, m.color(of), flow.BodyPT, canvas.Regular)
}

// fit places a text in r, shrunk to no less than the smallest type.
func (m *maker) fit(name string, r page.Rect, s string, sizePT float64, face canvas.Face) {
	f := page.Fit(name, r, s, page.Style{Font: canvas.Font{Face: face, SizePT: sizePT}, Color: canvas.Black}, flow.SmallPT)
	m.Add(f.Boxes...)
}

// arrow leads from a station to the next.
func (m *maker) arrow(name string, x, y float64) {
	const half, long = 1.2, 2.2
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
