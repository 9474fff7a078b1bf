package film

import (
	"math"
	"math/bits"
	"slices"
	"testing"

	"bladecard/calc/mesh"
)

// stretched are counts and threads that are stretched for garments (from memory).
var stretched = [][2]float64{
	{110, 80}, {110, 71}, {125, 70}, {140, 64}, {156, 64}, {160, 55}, {180, 48}, {196, 55}, {200, 48},
	{225, 40}, {230, 48}, {230, 40}, {255, 40}, {280, 40}, {280, 34}, {305, 40}, {305, 34},
}

// wetHeightUM is the published rule of thumb for the wet film of a plain cloth, of its count M per cm, its
// thread D and its thickness F in um. It is a third low on thin threads, and drops by a third and more where
// the formula changes. Source: "How Much Ink Do You Need?", Screen Printing, April 2000, Table 1 and Fig. 1 [12].
func wetHeightUM(perCM, threadUM, fabricUM float64) float64 {
	switch open := 1 - perCM*threadUM/1e4; {
	case perCM < 43:
		return 1.82 * threadUM * open * open
	case perCM < 140:
		return 0.285 * fabricUM
	}
	return 0.35 * fabricUM
}

// TestTau compares the reference stroke with the published wet-height rule over every choice of
// seven cloths: Tau is the median of the choices to 4 %, as the list of cloths is a choice too, and they
// run over about the range that Tau's comment states. Published rule: How Much Ink Do You Need?, Screen Printing, April 2000 [12].
func TestTau(t *testing.T) {
	ratio := make([]float64, len(stretched))
	for i, c := range stretched {
		s := reference(t, cloth(t, c[0], c[1]), 0, 1)
		d, err := laid(s)
		if err != nil {
			t.Fatal(err)
		}
		ratio[i] = wetHeightUM(mesh.PerCM(c[0]), c[1], s.Cloth.FabricUM) / d.TotalUM
	}
	var means []float64
	for pick := range 1 << len(stretched) {
		if bits.OnesCount(uint(pick)) != 7 {
			continue
		}
		sum := 0.0
		for i, r := range ratio {
			if pick>>i&1 == 1 {
				sum += math.Log(r)
			}
		}
		means = append(means, math.Exp(sum/7))
	}
	slices.Sort(means)
	low, median, high := means[0], means[len(means)/2], means[len(means)-1]
	t.Logf("%d choices: %.3f to %.3f, median %.3f", len(means), low, high, median)
	if math.Abs(median/Tau-1) > 0.04 {
		t.Errorf("the median of rule over deposit is %.3f, Tau %g", median, Tau)
	}
	if math.Abs(low-0.67) > 0.03 || math.Abs(high-0.87) > 0.03 {
		t.Errorf("the choices run from %.3f to %.3f; 0.67 to 0.87 is said of them", low, high)
	}
}
