package card

import (
	"fmt"

	"bladecard/calc/plan"
	"bladecard/render/canvas"
	"bladecard/render/page"
	"bladecard/render/say"
)

// The margins of a card in mm: text stays TextMM inside the trim, where the laminate seals, and
// ClipMM clear at the top, where the clip bites.
const (
	TextMM = 5.0
	ClipMM = 13.0
)

// maker lays out one card.
type maker struct {
	plan   *plan.Plan
	loc    plan.Location
	screen plan.Screen
	size   page.Size
	say    *say.Voice
	grid   grid
	boxes  []page.Box
	known  map[rowsKey]page.Fitted
	words  backText
	err    error
}

// All lays out the cards of a plan, in print order.
func All(p *plan.Plan, size page.Size, v *say.Voice) ([]page.Card, error) {
	var out []page.Card
	for _, l := range p.Locations {
		for _, s := range l.Screens {
			m := maker{plan: p, loc: l, screen: s, size: size, say: v, grid: newGrid(safeArea(size))}
			front, err := m.side("front", m.front)
			if err != nil {
				return nil, err
			}
			back, err := m.side("back", m.back)
			if err != nil {
				return nil, err
			}
			out = append(out, page.Card{Front: front, Back: back})
		}
	}
	return out, nil
}

// safeArea is where text and drawings of a card lie.
func safeArea(size page.Size) page.Rect {
	return page.Rect{X: TextMM, Y: ClipMM, W: size.W - 2*TextMM, H: size.H - ClipMM - TextMM}
}

// side lays out one side on an empty face.
func (m *maker) side(name string, fill func(r page.Rect)) (page.Face, error) {
	face := page.Face{
		Name: fmt.Sprintf("%s, screen %d, %s", m.loc.Name, m.screen.Number, name),
		W:    m.size.W, H: m.size.H,
		Safe: safeArea(m.size),
	}
	m.boxes, m.known, m.err = make([]page.Box, 0, 64), map[rowsKey]page.Fitted{}, nil
	fill(face.Safe)
	face.Boxes = m.boxes
	if m.err != nil {
		return face, fmt.Errorf("%s: %w", face.Name, m.err)
	}
	return face, nil
}

// rule draws a line across r's top.
func (m *maker) rule(name string, x, y, w, h float64) {
	m.boxes = append(m.boxes, page.Rule(name, x, y, w, h, canvas.Pen{Color: canvas.Black, WidthMM: 0.25}))
}

// draw places a drawing and keeps its error.
func (m *maker) draw(name string, r page.Rect, draw func(canvas.Canvas) error) {
	m.boxes = append(m.boxes, page.Drawing(name, r.X, r.Y, r.W, r.H, func(c canvas.Canvas) {
		if err := draw(c); err != nil && m.err == nil {
			m.err = fmt.Errorf("%s: %w", name, err)
		}
	}))
}
