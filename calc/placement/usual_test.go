package placement_test

import (
	"fmt"
	"math"
	"testing"

	"bladecard/calc/placement"
)

func ExampleUsual() {
	p, err := placement.Usual("left-chest")
	fmt.Printf("%s, %.0f to %.0f mm down, %.0f to %.0f mm across %v\n", p.Side, p.Down.LowMM, p.Down.HighMM, p.Across.LowMM, p.Across.HighMM, err)
	// Output: front, 71 to 102 mm down, 76 to 102 mm across <nil>
}

// TestGuides: what each guide says lies inside the range (published).
func TestGuides(t *testing.T) {
	for _, c := range []struct {
		place     string
		low, high float64 // inches below the collar seam
		source    string
	}{
		{"full-front", 2, 3, "freshprintssupply.com; inkandpxl.com"},
		{"full-back", 2, 3, "freshprintssupply.com"},
		{"full-back", 3, 4, "inkandpxl.com"},
		{"center-chest", 3, 3, "inkandpxl.com"},
		{"center-chest", 2, 3.1, "live.ink"},
		{"left-chest", 2.8, 3.9, "live.ink"},
		{"left-chest", 3, 4, "inkandpxl.com"},
	} {
		p, err := placement.Usual(c.place)
		if err != nil || p.Down.LowMM > c.low*25.4+1e-9 || p.Down.HighMM < c.high*25.4-1e-9 {
			t.Errorf("%s: %+v (%v) leaves out %g to %g in of %s", c.place, p.Down, err, c.low, c.high, c.source)
		}
	}
	if _, err := placement.Usual("elbow"); err == nil {
		t.Error("elbow is taken")
	}
	l, _ := placement.Usual("left-chest")
	r, _ := placement.Usual("right-chest")
	if l.Across != r.Across || !l.Left || r.Left || math.Abs(l.Across.LowMM-76.2) > 1e-9 { // "about 3 in from centre", printreadypod.com
		t.Errorf("left %+v, right %+v", l, r)
	}
}
