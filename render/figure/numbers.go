package figure

import "bladecard/render/canvas"

// Round a number: the plate, and what is left of its layer beside the plate.
const (
	platePadMM  = 0.5
	numberPadMM = 2*platePadMM + 0.6
)

// numbered tells whether any layer has a number.
func (s Section) numbered() bool {
	for _, l := range s.Layers {
		if l.Hardness != "" {
			return true
		}
	}
	return false
}

// numbersFit tells whether every number fits in its layer with a plate around it.
func (s Section) numbersFit(c canvas.Canvas, b rubber, f canvas.Font) bool {
	if !s.numbered() {
		return true
	}
	for _, l := range s.Layers {
		if c.TextWidth(l.Hardness, f)+numberPadMM > l.Share*b.w {
			return false
		}
	}
	free := b.edge - b.lip
	if b.broken {
		free -= 2 * breakMM
	}
	return free > 1.6*lineEM*em(f)
}

// place of a text in a row.
type place struct {
	text string
	x, w float64
}

// rowGapEM is the gap between the numbers in the row below, in em.
const rowGapEM = 0.45

// rowWidth is the width of all numbers in a row.
func (s Section) rowWidth(c canvas.Canvas, f canvas.Font) float64 {
	w := -rowGapEM * em(f)
	for _, l := range s.Layers {
		w += c.TextWidth(l.Hardness, f) + rowGapEM*em(f)
	}
	return w
}

// row spreads the numbers below the blade; nil when there is no room.
func (s Section) row(c canvas.Canvas, b rubber, f canvas.Font, r Rect) []place {
	var want, size []float64
	gap := rowGapEM * em(f)
	for i, l := range s.Layers {
		want = append(want, s.middle(b, i))
		size = append(size, c.TextWidth(l.Hardness, f)+gap)
	}
	at, ok := spread(want, size, r.X-gap/2, r.Right()+gap/2)
	if !ok {
		return nil
	}
	out := make([]place, len(at))
	for i := range at {
		w := size[i] - gap
		out[i] = place{s.Layers[i].Hardness, clamp(at[i]-w/2, r.X, r.Right()-w), w}
	}
	return out
}

// numbersInside writes each number on a white plate in its layer.
func (s Section) numbersInside(c canvas.Canvas, b rubber, f canvas.Font) {
	y := (b.lip + b.edge) / 2
	if b.broken {
		y += breakMM
	}
	for i, l := range s.Layers {
		if l.Hardness == "" {
			continue
		}
		w := c.TextWidth(l.Hardness, f)
		x := s.middle(b, i) - w/2
		h := capEM * em(f)
		c.Draw(rectPath(x-platePadMM, y-h/2-platePadMM, w+2*platePadMM, h+2*platePadMM), &canvas.White, canvas.Pen{})
		c.Text(x, y+h/2, l.Hardness, f, canvas.Black, 0)
	}
}
