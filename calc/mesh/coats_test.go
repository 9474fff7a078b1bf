package mesh

import (
	"math"
	"testing"
)

func TestBuildFor(t *testing.T) {
	for _, c := range []struct {
		eomUM float64
		coats int
		films []float64
	}{
		{0, 1, nil}, {5, 1, nil}, {19, 4, nil}, {60, 12, nil},
		{61, 0, []float64{80}}, {150, 0, []float64{150}}, {151, 0, []float64{200}},
		{400, 0, []float64{400}}, {450, 0, []float64{400, 80}}, {900, 0, []float64{400, 400, 100}},
	} {
		got, err := BuildFor(c.eomUM)
		if err != nil || got.Coats != c.coats || len(got.FilmsUM) != len(c.films) {
			t.Errorf("%g um: %+v %v; %d coats or films %v are wanted", c.eomUM, got, err, c.coats, c.films)
			continue
		}
		sum := float64(got.Coats) * CoatUM
		for i, f := range got.FilmsUM {
			sum += f
			if f != c.films[i] {
				t.Errorf("%g um: films %v; %v are wanted", c.eomUM, got.FilmsUM, c.films)
			}
		}
		if sum < c.eomUM {
			t.Errorf("%g um: %+v reaches only %g um", c.eomUM, got, sum)
		}
	}
	for _, bad := range []float64{-1, 2001, math.NaN(), math.Inf(1)} {
		if _, err := BuildFor(bad); err == nil {
			t.Errorf("%g um is taken", bad)
		}
	}
}
