package card

import (
	"math"

	"bladecard/render/canvas"
	"bladecard/render/page"
)

// grid is the one measure of a card: the rows of the front in mm and the three sizes of type.
// Larger cards are the smallest one enlarged; notes, read from the hand, grow with the root, so
// that a larger card also holds more of them.
type grid struct {
	scale  float64
	factPT float64 // blade, angle, strokes, colour, which screen
	linePT float64 // the other facts
	notePT float64 // everything on the back but the film
}

// The least sizes of type, those of the smallest card.
const (
	FactPT  = 26.0
	FrontPT = 14.0
	BackPT  = 7.5
)

// Rules are what page.Check asks of the two sides.
var (
	FrontRules = page.Rules{SmallestPT: FrontPT, SmallestDrawingPT: FrontPT}
	BackRules  = page.Rules{SmallestPT: BackPT, SmallestDrawingPT: BackPT}
)

// newGrid is the grid of a safe area.
func newGrid(safe page.Rect) grid {
	least := safeArea(page.Card132)
	k := math.Min(safe.W/least.W, safe.H/least.H)
	half := func(pt float64) float64 { return math.Floor(2*pt+1e-9) / 2 }
	return grid{scale: k, factPT: half(FactPT * k), linePT: half(FrontPT * k), notePT: half(BackPT * math.Sqrt(k))}
}

// mm is a length of the smallest card on this one.
func (g grid) mm(x float64) float64 { return g.scale * x }

// fact places a big fact: at the size of facts on one line, else at that of lines.
func (m *maker) fact(name string, r page.Rect, s string, a page.Align) {
	m.place(page.FitSizes(name, r, s, style(canvas.Bold, a), m.grid.factPT, m.grid.linePT))
}

// line places a smaller fact.
func (m *maker) line(name string, r page.Rect, s string, face canvas.Face, a page.Align) {
	m.place(page.FitSizes(name, r, s, style(face, a), m.grid.linePT))
}

// note places a note on one row.
func (m *maker) note(name string, r page.Rect, s string, face canvas.Face) {
	m.place(page.FitSizes(name, r, s, style(face, page.Left), m.grid.notePT))
}

func (m *maker) place(f page.Fitted) { m.boxes = append(m.boxes, f.Boxes...) }

func style(face canvas.Face, a page.Align) page.Style {
	return page.Style{Font: canvas.Font{Face: face}, Color: canvas.Black, Align: a}
}
