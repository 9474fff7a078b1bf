package card

import (
	"fmt"
	"slices"
	"sync"

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
	place  int // of the location, from 1
	loc    plan.Location
	screen plan.Screen
	size   page.Size
	say    *say.Voice
	grid   grid
	boxes  []page.Box
	err    error
}

// atOnce is how many cards are laid out at the same time: enough that sharing them out saves more than it
// costs, and few enough to be held.
const atOnce = 32

// Each lays out the cards of a plan, in print order, while they are taken: some at a time, on all cores.
func Each(p *plan.Plan, size page.Size, v *say.Voice) page.Cards {
	p = v.Named(p)
	return func(yield func(page.Card, error) bool) {
		var makers []*maker
		flush := func() bool {
			cards, errs := layOut(makers)
			makers = makers[:0]
			for i, c := range cards {
				if !yield(c, errs[i]) || errs[i] != nil {
					return false
				}
			}
			return true
		}
		for i, l := range p.Locations {
			for _, s := range l.Screens {
				s.Warnings = slices.Concat(s.Warnings, of(l, s.Number, v))
				makers = append(makers, &maker{plan: p, place: i + 1, loc: l, screen: s, size: size, say: v, grid: newGrid(safeArea(size))})
				if len(makers) == atOnce && !flush() {
					return
				}
			}
		}
		flush()
	}
}

// of are the warnings of a location that are one screen's and have words for its front; the others stand on the sheet.
func of(l plan.Location, screen int, v *say.Voice) (out []plan.Warning) {
	for _, w := range l.Warnings {
		if w.Values["screen"] == float64(screen) && v.Has("front-warning."+w.Code) {
			out = append(out, w)
		}
	}
	return out
}

// Count is how many cards a plan has.
func Count(p *plan.Plan) int {
	n := 0
	for _, l := range p.Locations {
		n += len(l.Screens)
	}
	return n
}

// layOut lays out some cards, on all cores.
func layOut(makers []*maker) ([]page.Card, []error) {
	out, errs := make([]page.Card, len(makers)), make([]error, len(makers))
	var all sync.WaitGroup
	for n, m := range makers {
		all.Go(func() { out[n], errs[n] = m.card() })
	}
	all.Wait()
	return out, errs
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
	m.boxes, m.err = make([]page.Box, 0, 64), nil
	fill(face.Safe)
	face.Boxes = m.boxes
	if m.err != nil {
		return face, fmt.Errorf("%s: %w", face.Name, m.err)
	}
	return face, nil
}

// draw places a drawing and keeps its error.
func (m *maker) draw(name string, r page.Rect, draw func(canvas.Canvas) error) {
	m.boxes = append(m.boxes, page.Drawing(name, r.X, r.Y, r.W, r.H, func(c canvas.Canvas) {
		if err := draw(c); err != nil && m.err == nil {
			m.err = fmt.Errorf("%s: %w", name, err)
		}
	}))
}
