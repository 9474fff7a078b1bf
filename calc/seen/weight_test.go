package seen_test

import (
	"math"
	"testing"

	"bladecard/calc/plantest"
	"bladecard/calc/seen"
)

// TestWeighed: a print that gains what the plan says has the plan's film, and one that gains twice the film has
// more than twice, since the cloth takes in no more. The doubt of what it takes in widens what is told.
func TestWeighed(t *testing.T) {
	s := plantest.Screen(t, plantest.OneScreen("", "use = \"underbase\"\nink = \"plastisol white\"\nmesh = \"156-64\"\ncoverage = \"30 %\"\nfilm = \"10..30 um\"\n"))
	m, err := seen.CorrectWeighed(s, *s.InkGPerPrint)
	if err != nil || math.Abs(m.MeasuredUM/s.CuredUM.Value-1) > 1e-9 || math.Abs(m.DoubtUM-2.5*s.CuredUM.Value/s.WetUM.Value) > 1e-9 || !m.InBand {
		t.Errorf("the plan's own gain: %+v, %v; %g um is planned", m, err, s.CuredUM.Value)
	}
	twice, err := seen.CorrectWeighed(s, 2**s.InkGPerPrint)
	if err != nil || !(twice.MeasuredUM > 2*s.CuredUM.Value) {
		t.Errorf("twice the gain: %g um, %v", twice.MeasuredUM, err)
	}
	comb, err := seen.Correct(s, twice.MeasuredUM, false)
	if err != nil || len(comb.Outcomes) == 0 || len(comb.Outcomes) != len(twice.Outcomes) {
		t.Fatalf("%d outcomes by comb, %d by weight, %v", len(comb.Outcomes), len(twice.Outcomes), err)
	}
	for i, o := range comb.Outcomes {
		w := twice.Outcomes[i].FilmUM
		if want := math.Hypot(o.FilmUM.High-o.FilmUM.Value, twice.DoubtUM); math.Abs(w.High-w.Value-want) > 1e-9 || w.Value != o.FilmUM.Value {
			t.Errorf("%s %s: %v by comb, %v by weight", o.Kind, o.To, o.FilmUM, w)
		}
	}
	if _, err := seen.CorrectWeighed(s, 0.1**s.InkGPerPrint); err == nil {
		t.Error("a gain that the cloth takes in leaves a film")
	}
	s.InkGPerPrint = nil
	if _, err := seen.CorrectWeighed(s, 2); err == nil {
		t.Error("a gain over no stated area says a film")
	}
}
