package figure

import (
	"math"

	"bladecard/render/canvas"
)

// Round a number: the plate, and what is left of its layer beside the plate.
const (
	platePadMM  = 0.5
	numberPadMM = 2*platePadMM + 0.6
)

// widthInside is the thickness of a blade in whose layers the numbers fit.
func (s Section) widthInside(c canvas.Canvas, f canvas.Font) float64 {
	w := 0.0
	for _, l := range s.Layers {
		w = math.Max(w, (c.TextWidth(l.Hardness, f)+numberPadMM)/l.Share+1e-9)
	}
	return w
}

// numbersFit tells whether every number fits in its layer with a plate around it.
func (s Section) numbersFit(c canvas.Canvas, b rubber, f canvas.Font) bool {
	free := b.edge - b.lip
	if b.broken {
		free -= 2 * breakMM
	}
	return s.widthInside(c, f) <= b.w && free > 1.6*lineEM*em(f)
}

// place of a text in a row.
type place struct {
	text string
	x, w float64
}

// The row below the blade: how far it hangs under the edge, and the gap between its numbers.
const (
	rowMM    = 1.6
	rowGapEM = 0.45
)

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

// numbersBelow writes the row, each number joined to its layer.
func (s Section) numbersBelow(c canvas.Canvas, b rubber, f canvas.Font, row []place) {
	for i, n := range row {
		if n.text == "" {
			continue
		}
		x := s.middle(b, i)
		c.Draw(polyline(canvas.Point{X: x, Y: b.edge - 0.8}, canvas.Point{X: x, Y: b.edge + 0.3},
			canvas.Point{X: n.x + n.w/2, Y: b.edge + rowMM}), nil, ink(0.18))
		c.Text(n.x, b.edge+rowMM+canvas.Ascent*em(f), n.text, f, canvas.Black, 0)
	}
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
