package card

import (
	"math"
	"strings"

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

// look is how a row of text stands.
type look struct {
	face  canvas.Face
	align page.Align
	color canvas.Color
}

var (
	plain  = look{color: canvas.Black}
	bold   = look{face: canvas.Bold, color: canvas.Black}
	middle = look{align: page.Center, color: canvas.Black}
	strong = look{face: canvas.Bold, align: page.Center, color: canvas.Black}
	right  = look{align: page.Right, color: canvas.Black}
)

// white is the same on a black ground.
func (l look) white() look {
	l.color = canvas.White
	return l
}

// line sets the first of some texts that fits the row r, all else on the front.
func (m *maker) line(name string, r page.Rect, l look, texts ...string) {
	m.row(name, r, l, []float64{m.grid.linePT}, texts...)
}

// fact sets what is read at 1 m.
func (m *maker) fact(name string, r page.Rect, l look, text string) {
	m.row(name, r, l, m.grid.factPT, text)
}

// note sets a row of the back.
func (m *maker) note(name string, r page.Rect, l look, texts ...string) {
	m.row(name, r, l, []float64{m.grid.notePT}, texts...)
}

// row sets the first of some texts that fits r on one line, at the largest of the sizes at which it does; the
// last one is cut behind a word at the last size. In a row that is lower than a line the text stands on its descenders, or in the
// middle where it would stick out.
func (m *maker) row(name string, r page.Rect, l look, sizesPT []float64, texts ...string) {
	text, f := "", canvas.Font{Face: l.face}
	for _, text = range texts {
		for _, f.SizePT = range sizesPT {
			if canvas.Width(text, f) <= r.W {
				m.text(name, r, text, f, l)
				return
			}
		}
	}
	text, _ = page.Cut(text, f, r.W)
	if n := strings.LastIndexByte(text, ' '); n > 0 { // between words
		text = strings.TrimRight(text[:n], " ,·") + "…"
	}
	m.text(name, r, text, f, l)
}

// text places a line of text.
func (m *maker) text(name string, r page.Rect, s string, f canvas.Font, l look) {
	if s == "" {
		return
	}
	b := page.Text(name, r.X, r.Y, r.W, r.H, canvas.NFC(s), f, l.color, l.align)
	b.BaselineMM = r.H - canvas.Descent*f.SizePT*canvas.MMPerPT - math.Max(0, r.H-canvas.LineHeight(f))/2
	if above, below := canvas.Ink(b.Text, f); above > b.BaselineMM {
		b.BaselineMM = (r.H + above - below) / 2
	}
	m.boxes = append(m.boxes, b)
}

// wide is the width of a text on one line of the front.
func (m *maker) wide(s string, l look) float64 {
	return canvas.Width(s, canvas.Font{Face: l.face, SizePT: m.grid.linePT}) + 0.1
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
