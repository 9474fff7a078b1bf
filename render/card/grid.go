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
	headPT []float64 // the head's number, and the seconds of a flash
	bigPT  []float64 // blade, angle, strokes and air: a text takes the first size at which it fits
	factPT []float64 // what else is read at 1 m
	linePT float64   // all else on the front
	notePT float64   // the back
}

// The least sizes of type, those of the smallest card.
const (
	BigPT   = 32.0
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
		scale: k, headPT: []float64{half(48 * k), half(40 * k), half(36 * k), half(BigPT * k), half(FactPT * k), half(22 * k), half(18 * k), half(FrontPT * k)},
		bigPT:  []float64{half(BigPT * k), half(28 * k), half(FactPT * k), half(22 * k), half(18 * k), half(FrontPT * k)},
		factPT: []float64{half(FactPT * k), half(22 * k), half(18 * k), half(FrontPT * k)},
		linePT: half(FrontPT * k), notePT: half(BackPT * math.Sqrt(k)),
	}
}

// stripesMM is the width of the stripes at an end of a warning.
const stripesMM = 5.0

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

// name sets what a job file calls something, which may be of any length.
func (m *maker) name(name string, r page.Rect, st page.Style, sizesPT []float64, text string) {
	m.row(name, r, st, sizesPT, text, m.short(text, st.Font.Face, sizesPT[len(sizesPT)-1], r.W))
}

// short leaves out the middle of a name that is too long: names of one job begin alike.
func (m *maker) short(text string, face canvas.Face, sizePT, w float64) string {
	return canvas.CutMiddle(text, canvas.Font{Face: face, SizePT: sizePT}, w)
}

// note sets a row of the back.
func (m *maker) note(name string, r page.Rect, st page.Style, texts ...string) {
	m.row(name, r, st, []float64{m.grid.notePT}, texts...)
}

func (m *maker) row(name string, r page.Rect, st page.Style, sizesPT []float64, texts ...string) {
	m.boxes = append(m.boxes, page.Row(name, r, st, sizesPT, texts...)...)
}

// digits sets figures in the middle of a place, those with a comma as high as those with a point.
func (m *maker) digits(name string, r page.Rect, st page.Style, sizesPT []float64, text string) {
	for _, b := range page.Row(name, r, st, sizesPT, text) {
		above, _ := canvas.Ink("0", b.Font)
		_, below := canvas.Ink("0,/", b.Font)
		b.BaselineMM = math.Min((r.H+above)/2, r.H-below)
		m.boxes = append(m.boxes, b)
	}
}

// wide is the width of a text on one line of the front.
func (m *maker) wide(s string, st page.Style) float64 { return m.width(s, st, m.grid.linePT) }

// width is the width of a text at a size.
func (m *maker) width(s string, st page.Style, sizePT float64) float64 {
	return canvas.Width(s, canvas.Font{Face: st.Font.Face, SizePT: sizePT}) + 0.1
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
