package film

import (
	"math"
	"testing"

	"bladecard/calc/mesh"
)

// TestTau compares the reference stroke with the published wet-height rule over seven
// customary cloths (counts and threads from memory): Tau is the geometric mean of rule over
// deposit, and no cloth is farther from it than -22 and +29 %.
// Published rule: How Much Ink Do You Need?, Screen Printing, April 2000.
func TestTau(t *testing.T) {
	cloths := [][2]float64{{110, 80}, {156, 64}, {196, 55}, {230, 48}, {255, 40}, {280, 40}, {305, 40}}
	sum := 0.0
	for _, c := range cloths {
		s := reference(t, cloth(t, c[0], c[1]), 0, 1)
		d, err := Stroke(s)
		if err != nil {
			t.Fatal(err)
		}
		rule, err := mesh.WetHeightRuleUM(mesh.PerCM(c[0]), c[1], s.Cloth.FabricUM, mesh.Plain)
		if err != nil {
			t.Fatal(err)
		}
		r := rule / d.TotalUM
		sum += math.Log(r)
		if off := r/Tau - 1; !(off > -0.225 && off < 0.295) {
			t.Errorf("%v: rule %.1f um, deposit %.1f um: %+.1f %% off Tau", c, rule, d.TotalUM, 100*off)
		}
	}
	if mean := math.Exp(sum / float64(len(cloths))); math.Abs(mean-Tau) > 0.005 {
		t.Errorf("geometric mean of rule over deposit is %.3f, Tau %g", mean, Tau)
	}
}
