package seen_test

import (
	"math"
	"slices"
	"testing"

	"bladecard/calc/file"
	"bladecard/calc/plan"
	"bladecard/calc/plantest"
	"bladecard/calc/seen"
	"bladecard/samples/bench"
)

// TestCorrect: a measured film gets the changes that go the right way, scaled to it, those that
// reach the target first; a change put into the job then gives the same ratio.
func TestCorrect(t *testing.T) {
	const keys = "ink = \"plastisol\"\nmesh = \"156-64\"\neom = \"12 um\"\nblade = \"70\"\nangle = 15\nhits = 1\n"
	s := plantest.Screen(t, plantest.OneScreen("", keys+"strokes = 1\nfilm = \"36..48 um\""))
	thin, err := seen.Correct(s, 30, false)
	if err != nil || thin.InTarget || thin.OffUM != -6 || len(thin.Outcomes) == 0 {
		t.Fatalf("%+v, %v", thin, err)
	}
	two := plantest.Screen(t, plantest.OneScreen("", keys+"strokes = 2\nfilm = \"36..48 um\""))
	reached := true
	for i, o := range thin.Outcomes {
		if !(o.FilmUM.Value > 30 && o.FilmUM.Low <= o.FilmUM.Value+1e-9 && o.FilmUM.Value <= o.FilmUM.High) {
			t.Errorf("%s %s makes %v of 30 um", o.Kind, o.To, o.FilmUM)
		}
		if o.InRange && !reached {
			t.Errorf("%s %s reaches the target and stands behind one that does not", o.Kind, o.To)
		}
		reached = o.InRange
		if o.InRange && i > 0 && o.Cost < thin.Outcomes[i-1].Cost {
			t.Errorf("%s %s costs less than the one before", o.Kind, o.To)
		}
		if o.Kind == "strokes" {
			if want := 30 * two.CuredUM.Value / s.CuredUM.Value; math.Abs(o.FilmUM.Value-want) > 1e-9*want {
				t.Errorf("two strokes: %g um; the job gives %g", o.FilmUM.Value, want)
			}
		}
	}
	heavy, err := seen.Correct(s, 60, false)
	if err != nil || heavy.OffUM != 12 {
		t.Fatalf("%+v, %v", heavy, err)
	}
	for _, o := range heavy.Outcomes {
		if o.DeltaUM >= 0 {
			t.Errorf("%s %s thickens a film that is too heavy", o.Kind, o.To)
		}
	}
	if good, err := seen.Correct(s, 40, false); err != nil || !good.InTarget || len(good.Outcomes) != 0 {
		t.Errorf("40 um: %+v, %v", good, err)
	}
	for _, um := range []float64{0, -3, 1e6, math.NaN(), math.Inf(1)} {
		if _, err := seen.Correct(s, um, false); err == nil {
			t.Errorf("%g um is taken", um)
		}
	}
	water := plantest.Screen(t, plantest.OneScreen("", "ink = \"water-based\"\nmesh = \"156-64\"\n"))
	solids := water.CuredUM.Value / water.WetUM.Value
	if m, err := seen.Correct(water, 40, true); err != nil || math.Abs(m.MeasuredUM-40*solids) > 1e-9 {
		t.Errorf("40 um wet is %g um cured; %g is wanted (%v)", m.MeasuredUM, 40*solids, err)
	}
	twice := plantest.Screen(t, plantest.OneScreen("", "ink = \"water-based\"\nmesh = \"156-64\"\nhits = 2\n"))
	if m, err := seen.Correct(twice, 20, true); err != nil || math.Abs(m.MeasuredUM-40*solids) > 1e-9 {
		t.Errorf("20 um wet on the second hit are %g um cured of both; %g is wanted (%v)", m.MeasuredUM, 40*solids, err)
	}
}

// TestOutcomesCanBeMeasured: no change is offered whose effect neither a comb of 5 um nor a scale of 0.1 g tells.
func TestOutcomesCanBeMeasured(t *testing.T) {
	offered := 0
	for n := range 100 {
		for _, l := range plantest.Plan(t, string(bench.Job(n, 4, "")), file.BuiltInShop()).Locations {
			for _, s := range l.Screens {
				for _, um := range []float64{s.TargetUM.Low / 2, s.TargetUM.High * 1.5} {
					got, err := seen.Correct(s, um, false)
					if err != nil {
						t.Fatal(err)
					}
					for _, o := range got.Outcomes {
						offered++
						wet := math.Abs(o.FilmUM.Value-um) * s.WetUM.Value / s.CuredUM.Value
						grams := 0.0
						if s.InkGPerPrint != nil {
							grams = *s.InkGPerPrint * wet / (s.WetUM.Value + s.SinksUM)
						}
						if wet < 5-1e-9 && grams < 0.1-1e-9 {
							t.Errorf("%s %s: %.1f um wet and %.2f g", o.Kind, o.To, wet, grams)
						}
					}
				}
			}
		}
	}
	if offered < 500 {
		t.Errorf("only %d changes were offered", offered)
	}
}

// TestToldAsLikely: two changes of a film are those that its faults name first, where a gauge tells them; none leads
// further out of the target, nor is the fault likely that would ask for it.
func TestToldAsLikely(t *testing.T) {
	compared := 0
	for _, name := range []string{"lantern-apron", "lantern-crew", "lantern-jersey", "lantern-poster", "lantern-scene", "lantern-title"} {
		p := sample(t, name)
		for l := range p.Locations {
			for i := range p.Locations[l].Screens {
				s := &p.Locations[l].Screens[i]
				for _, what := range []string{seen.TooThin, seen.TooHeavy} {
					found, err := seen.Ask(p, l+1, i+1, []string{what}, nil)
					if err != nil {
						t.Fatal(err)
					}
					changes := found.Findings[0].Changes
					if len(changes) == 0 || changes[0].Correction == nil || !changes[0].Correction.Seen {
						continue
					}
					first := *changes[0].Correction
					if compared++; !slices.ContainsFunc(seen.Told(*s, 2), func(c plan.Correction) bool { return c.Kind == first.Kind && c.To == first.To }) {
						t.Errorf("%s %s: %s asks for %s %s, which is not told", name, s.Color, what, first.Kind, first.To)
					}
				}
				was := s.TargetUM
				for what, off := range map[string]float64{seen.TooThin: 0.5, seen.TooHeavy: 2} { // the target lies below the film, above it
					s.TargetUM.Low, s.TargetUM.High = 0.9*off*s.CuredUM.Value, 1.1*off*s.CuredUM.Value
					for _, c := range seen.Told(*s, 6) {
						if (c.DeltaUM > 0) != (off > 1) {
							t.Errorf("%s %s: a film at %g of its target is told %s %s", name, s.Color, 1/off, c.Kind, c.To)
						}
					}
					likely, err := seen.Likely(p, l+1, i+1, 9)
					if err != nil || slices.ContainsFunc(likely, func(f seen.Finding) bool { return f.Seen == what }) {
						t.Errorf("%s %s: a film at %g of its target is likely %s, %v", name, s.Color, 1/off, what, err)
					}
				}
				s.TargetUM = was
			}
		}
	}
	if compared < 20 {
		t.Fatalf("%d changes are compared", compared)
	}
}

// TestLikelyDots: lost dots come before plugged ones where the mesh does not hold the smallest, else after them.
func TestLikelyDots(t *testing.T) {
	for _, c := range []struct {
		job    string
		screen int
		holds  bool
	}{{"lantern-scene", 1, false}, {"lantern-scene", 5, false}, {"lantern-jersey", 3, true}} {
		p := sample(t, c.job)
		if h := p.Locations[0].Screens[c.screen-1].Halftone; h == nil || h.DotHolds != c.holds {
			t.Fatalf("%s %d: halftone %+v", c.job, c.screen, h)
		}
		likely, err := seen.Likely(p, 1, c.screen, 9)
		at := func(what string) int {
			return slices.IndexFunc(likely, func(f seen.Finding) bool { return f.Seen == what })
		}
		if lost, plugged := at(seen.DotsLost), at(seen.DotsPlugged); err != nil || lost < 0 || plugged < 0 || (lost > plugged) != c.holds {
			t.Errorf("%s %d: lost dots are fault %d, plugged ones %d, %v", c.job, c.screen, lost, plugged, err)
		}
	}
}
