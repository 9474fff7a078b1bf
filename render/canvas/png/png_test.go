package png

import (
	"math"
	"testing"

	"bladecard/render/canvas"
)

func TestDashes(t *testing.T) {
	points := []canvas.Point{{X: 0, Y: 0}, {X: 3, Y: 0}, {X: 3, Y: 4}, {X: 10, Y: 4}} // 14 long
	var drawn float64
	pieces := dashes(points, []float64{2, 1})
	for _, p := range pieces {
		for i := 1; i < len(p); i++ {
			drawn += math.Hypot(p[i].X-p[i-1].X, p[i].Y-p[i-1].Y)
		}
	}
	if len(pieces) != 5 || math.Abs(drawn-10) > 1e-9 { // 2 of every 3: 8 in four, and the last 2
		t.Errorf("%d pieces, %g mm drawn; 5 and 10", len(pieces), drawn)
	}
	if got := dashes(points, nil); len(got) != 1 || len(got[0]) != 4 {
		t.Errorf("without a pattern: %v", got)
	}
}
