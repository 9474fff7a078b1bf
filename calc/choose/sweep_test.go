package choose_test

import (
	"fmt"
	"math"
	"testing"

	"bladecard/calc/choose"
	"bladecard/calc/file"
	"bladecard/calc/plantest"
)

// TestSweepIsThePlan: each point of a sweep is what the job gives with that value in its file.
func TestSweepIsThePlan(t *testing.T) {
	const head = "ink = \"plastisol\"\nmesh = \"156-64\"\nblade = \"70\"\nfilm = \"10..200 um\"\n"
	keys := map[string]string{"angle": "angle = 15", "strokes": "strokes = 1", "load": "load = \"5 N/cm\"", "eom": "eom = \"12 um\""}
	text := func(what, line string) string {
		src := head
		for _, k := range []string{"angle", "strokes", "load", "eom"} {
			if k == what {
				src += line + "\n"
			} else {
				src += keys[k] + "\n"
			}
		}
		return one("", src)
	}
	shop := file.BuiltInShop()
	j := plantest.Job(t, text("", ""), shop)
	for what, c := range map[string]struct {
		form   string
		values []float64
	}{"angle": {"angle = %g", []float64{0, 12.5, 30}}, "strokes": {"strokes = %g", []float64{1, 2, 3}}, "load": {"load = \"%g N/cm\"", []float64{3, 7}}, "eom": {"eom = \"%g um\"", []float64{5, 40}}} {
		got, err := choose.Sweep(j, shop, 1, 1, []choose.Axis{{What: what, Values: c.values}})
		if err != nil || len(got) != len(c.values) {
			t.Fatal(got, err)
		}
		for i, x := range c.values {
			want := screenOf(t, text(what, fmt.Sprintf(c.form, x))).CuredUM.Value
			if math.Abs(got[i].CuredUM-want) > 1e-9*want || got[i].At[0] != x {
				t.Errorf("%s %g: %g um; the job gives %g", what, x, got[i].CuredUM, want)
			}
		}
	}
	two, err := choose.Sweep(j, shop, 1, 1, []choose.Axis{{"hardness", []float64{60, 80}}, {"angle", []float64{10, 20, 30}}})
	if err != nil || len(two) != 6 || two[4].At[0] != 80 || two[4].At[1] != 20 || !(two[1].CuredUM > two[4].CuredUM) {
		t.Errorf("two things: %+v, %v", two, err)
	}
	folded, err := choose.Sweep(j, shop, 1, 1, []choose.Axis{{"free-height", []float64{80}}})
	if err != nil || folded[0].Fault == "" || folded[0].CuredUM != 0 {
		t.Errorf("a blade 80 mm free: %+v, %v", folded, err)
	}
	for _, axes := range [][]choose.Axis{
		nil, {{"colour", []float64{1}}}, {{"angle", nil}}, {{"angle", []float64{70}}}, {{"angle", []float64{math.NaN()}}}, {{"strokes", []float64{1.5}}},
		{{"angle", make([]float64, 400)}, {"eom", make([]float64, 400)}},
	} {
		if _, err := choose.Sweep(j, shop, 1, 1, axes); err == nil {
			t.Errorf("%v is taken", axes)
		}
	}
	if _, err := choose.Sweep(j, shop, 2, 1, []choose.Axis{{"angle", []float64{15}}}); err == nil {
		t.Error("a second location is taken")
	}
}
