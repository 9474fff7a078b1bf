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

// The row below the blade: how far it hangs under the edge, and the gap between its numbers.
const (
	rowMM    = 1.6
	rowGapEM = 0.45
)

// row are the middles of the numbers below the blade, spread so that none overlaps; ok is false
// when there is no room.
func (s Section) row(c canvas.Canvas, b rubber, f canvas.Font, r Rect) (at []float64, ok bool) {
	var want, size []float64
	gap := rowGapEM * em(f)
	for i, l := range s.Layers {
		want, size = append(want, s.middle(b, i)), append(size, c.TextWidth(l.Hardness, f)+gap)
	}
	return spread(want, size, r.X-gap/2, r.Right()+gap/2)
}

// numbersBelow writes the numbers at the places of row, each joined to its layer.
func (s Section) numbersBelow(c canvas.Canvas, b rubber, f canvas.Font, at []float64) {
	for i, l := range s.Layers {
		if l.Hardness == "" {
			continue
		}
		x := s.middle(b, i)
		c.Draw(polyline(canvas.Point{X: x, Y: b.edge - 0.8}, canvas.Point{X: x, Y: b.edge + 0.3},
			canvas.Point{X: at[i], Y: b.edge + rowMM}), nil, ink(0.18))
		c.Text(at[i]-c.TextWidth(l.Hardness, f)/2, b.edge+rowMM+canvas.Ascent*em(f), l.Hardness, f, canvas.Black, 0)
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
