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

// The smallest type of each side, in points.
const (
	FrontPT = 14.0
	BackPT  = 7.5
)

// Rules are what page.Check asks of the two sides.
var (
	FrontRules = page.Rules{SmallestPT: FrontPT, SmallestDrawingPT: FrontPT}
	BackRules  = page.Rules{SmallestPT: BackPT, SmallestDrawingPT: BackPT}
)

// maker lays out one card.
type maker struct {
	plan   *plan.Plan
	loc    plan.Location
	screen plan.Screen
	size   page.Size
	say    *say.Voice
	boxes  []page.Box
	err    error
}

// All lays out the cards of a plan, in print order.
func All(p *plan.Plan, size page.Size, v *say.Voice) ([]page.Card, error) {
	var out []page.Card
	for _, l := range p.Locations {
		for _, s := range l.Screens {
			m := maker{plan: p, loc: l, screen: s, size: size, say: v}
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

// side lays out one side on an empty face.
func (m *maker) side(name string, fill func(r page.Rect)) (page.Face, error) {
	face := page.Face{
		Name: fmt.Sprintf("%s, screen %d, %s", m.loc.Name, m.screen.Number, name),
		W:    m.size.W, H: m.size.H,
		Safe: page.Rect{X: TextMM, Y: ClipMM, W: m.size.W - 2*TextMM, H: m.size.H - ClipMM - TextMM},
	}
	m.boxes, m.err = nil, nil
	fill(face.Safe)
	face.Boxes = m.boxes
	if m.err != nil {
		return face, fmt.Errorf("%s: %w", face.Name, m.err)
	}
	return face, nil
}

// fit places a line of text in r, shrunk to no less than the side's smallest type.
func (m *maker) fit(name string, r page.Rect, s string, sizePT, smallestPT float64, face canvas.Face, a page.Align) {
	if s == "" {
		return
	}
	f := page.Fit(name, r, s, page.Style{Font: canvas.Font{Face: face, SizePT: sizePT}, Color: canvas.Black, Align: a}, smallestPT)
	m.boxes = append(m.boxes, f.Boxes...)
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
