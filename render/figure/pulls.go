package figure

import (
	"fmt"

	"bladecard/render/canvas"
)

// Pulls shows the strokes of a print: a heavy arrow for each print stroke, to the right as on
// the dial, and over each a thin dashed one back where the screen is flooded before it.
type Pulls struct {
	Strokes int
	Flood   bool
}

// most strokes that are drawn.
const mostPulls = 9

// Draw draws the arrows in the middle of r.
func (s Pulls) Draw(c canvas.Canvas, r Rect) error {
	if err := r.check("pulls"); err != nil {
		return err
	}
	if !(s.Strokes >= 1 && s.Strokes <= mostPulls) {
		return fmt.Errorf("pulls: %d strokes; accepted are 1 to %d", s.Strokes, mostPulls)
	}
	const pitchMM, floodMM, heavyMM = 3.6, 2.2, 1.1
	rows := float64(s.Strokes) * pitchMM
	if s.Flood {
		rows += float64(s.Strokes) * floodMM
	}
	k := min(1, r.H/rows)
	y := r.Y + (r.H-k*rows)/2
	left, right := r.X+0.3, r.Right()-0.3
	if left+leastArrowMM > right {
		return noRoom("pulls", r, "no length for an arrow")
	}
	for range s.Strokes {
		if s.Flood {
			back := y + k*floodMM/2
			tip := left + 1.4*k
			c.Draw(polyline(canvas.Point{X: right, Y: back}, canvas.Point{X: left, Y: back}), nil, ink(0.25, 1.2, 0.8))
			c.Draw(polyline(canvas.Point{X: tip, Y: back - 0.6*k}, canvas.Point{X: left, Y: back}, canvas.Point{X: tip, Y: back + 0.6*k}), nil, ink(0.25*min(1, 2*k)))
			y += k * floodMM
		}
		at := y + k*pitchMM/2
		arrow(c, canvas.Point{X: left + heavyMM/2*k, Y: at}, canvas.Point{X: right, Y: at}, heavyMM*k, 3.4*k, false)
		y += k * pitchMM
	}
	return nil
}
