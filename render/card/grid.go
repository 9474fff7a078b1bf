package card

import (
	"math"

	"bladecard/render/canvas"
	"bladecard/render/page"
)

// grid is the one measure of a card: lengths of the front in mm and the sizes of type. Larger cards
// are the smallest one enlarged; notes, read from the hand, grow with the root, so that a larger
// card also holds more of them.
type grid struct {
	scale  float64
	headPT []float64 // the head's number
	factPT []float64 // what is read at 1 m: a text takes the first size at which it fits
	linePT float64   // all else on the front
	notePT float64   // the back
}

// The least sizes of type, those of the smallest card.
const (
	FactPT  = 26.0
	FrontPT = 14.0
	BackPT  = 7.5
)

// newGrid is the grid of a safe area.
func newGrid(safe page.Rect) grid {
	least := safeArea(page.Card132)
	k := math.Min(safe.W/least.W, safe.H/least.H)
	half := func(pt float64) float64 { return math.Floor(2*pt+1e-9) / 2 }
	return grid{
		scale: k, headPT: []float64{half(48 * k), half(36 * k), half(FactPT * k), half(18 * k), half(FrontPT * k)},
		factPT: []float64{half(FactPT * k), half(22 * k), half(18 * k), half(FrontPT * k)},
		linePT: half(FrontPT * k), notePT: half(BackPT * math.Sqrt(k)),
	}
}

// mm is a length of the smallest card on this one.
func (g grid) mm(x float64) float64 { return g.scale * x }

var (
	plain  = page.Style{Color: canvas.Black}
	bold   = page.Style{Font: canvas.Font{Face: canvas.Bold}, Color: canvas.Black}
	middle = page.Style{Color: canvas.Black, Align: page.Center}
	strong = page.Style{Font: bold.Font, Color: canvas.Black, Align: page.Center}
	right  = page.Style{Color: canvas.Black, Align: page.Right}
)

// white is the same style on a black ground.
func white(st page.Style) page.Style {
	st.Color = canvas.White
	return st
}

// line sets the first of some texts that fits a row of the front.
func (m *maker) line(name string, r page.Rect, st page.Style, texts ...string) {
	m.row(name, r, st, []float64{m.grid.linePT}, texts...)
}

// fact sets what is read at 1 m.
func (m *maker) fact(name string, r page.Rect, st page.Style, text string) {
	m.row(name, r, st, m.grid.factPT, text)
}

// note sets a row of the back.
func (m *maker) note(name string, r page.Rect, st page.Style, texts ...string) {
	m.row(name, r, st, []float64{m.grid.notePT}, texts...)
}

func (m *maker) row(name string, r page.Rect, st page.Style, sizesPT []float64, texts ...string) {
	m.boxes = append(m.boxes, page.Row(name, r, st, sizesPT, texts...)...)
}

// wide is the width of a text on one line of the front.
func (m *maker) wide(s string, st page.Style) float64 {
	return canvas.Width(s, canvas.Font{Face: st.Font.Face, SizePT: m.grid.linePT}) + 0.1
}

// fill places a ground with an outline.
func (m *maker) fill(name string, r page.Rect, ground canvas.Color, outlineMM float64) {
	in := r.Inset(outlineMM / 2)
	m.boxes = append(m.boxes, page.Fill(name, in.X, in.Y, in.W, in.H, &ground, canvas.Pen{Color: canvas.Black, WidthMM: outlineMM}))
}

// rule draws a line.
func (m *maker) rule(name string, x, y, w, h float64) {
	m.boxes = append(m.boxes, page.Rule(name, x, y, w, h, canvas.Pen{Color: canvas.Black, WidthMM: 0.25}))
}
