package card

import (
	"fmt"
	"runtime"
	"sync"
	"sync/atomic"

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

// fewCards are laid out one after the other: sharing them out would cost more than it saves.
const fewCards = 8

// All lays out the cards of a plan, in print order; those of a large job on all cores.
func All(p *plan.Plan, size page.Size, v *say.Voice) ([]page.Card, error) {
	var makers []*maker
	for _, l := range p.Locations {
		for _, s := range l.Screens {
			makers = append(makers, &maker{plan: p, loc: l, screen: s, size: size, say: v, grid: newGrid(safeArea(size))})
		}
	}
	out, errs := make([]page.Card, len(makers)), make([]error, len(makers))
	cores := 1
	if len(makers) > fewCards {
		cores = runtime.GOMAXPROCS(0)
	}
	var next atomic.Int64
	var all sync.WaitGroup
	for range cores {
		all.Go(func() {
			for n := next.Add(1) - 1; n < int64(len(makers)); n = next.Add(1) - 1 {
				out[n], errs[n] = makers[n].card()
			}
		})
	}
	all.Wait()
	for _, err := range errs {
		if err != nil {
			return nil, err
		}
	}
	return out, nil
}

// card lays out both sides.
func (m *maker) card() (c page.Card, err error) {
	if c.Front, err = m.side("front", m.front); err != nil {
		return c, err
	}
	c.Back, err = m.side("back", m.back)
	return c, err
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
