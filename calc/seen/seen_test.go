package seen_test

import (
	"encoding/json"
	"maps"
	"math"
	"regexp"
	"slices"
	"strings"
	"testing"

	"bladecard/calc/file"
	"bladecard/calc/plan"
	"bladecard/calc/plantest"
	"bladecard/calc/seen"
	"bladecard/render/say"
	"bladecard/templates"
)

// ask asks for one fault of a screen, with a measured film where one is given.
func ask(t *testing.T, p *plan.Plan, location, screen int, what string, measuredUM float64) seen.Answer {
	t.Helper()
	var m *seen.Measurement
	if measuredUM > 0 {
		got, err := seen.Correct(p.Locations[location-1].Screens[screen-1], measuredUM, false)
		if err != nil {
			t.Fatal(err)
		}
		m = &got
	}
	a, err := seen.Ask(p, location, screen, []string{what}, m)
	if err != nil {
		t.Fatal(err)
	}
	return a
}

// parts are all lines of a finding, by code.
func parts(f seen.Finding) map[string]seen.Line {
	out := map[string]seen.Line{}
	for _, lines := range [][]seen.Line{f.Instead, f.Look, f.Against, f.Measure, f.Not, f.Cautions} {
		for _, l := range lines {
			out[l.Code] = l
		}
	}
	for _, c := range f.Changes {
		code := c.Code
		if c.Correction != nil {
			code += " " + c.Correction.Kind + " " + c.Correction.To
		}
		out[code] = c.Line
	}
	return out
}

// TestAnswersDiffer asks each fault of two screens of the samples whose answers must differ, by a figure or by a
// line that only one of them has.
func TestAnswersDiffer(t *testing.T) {
	type at struct {
		job              string
		location, screen int
	}
	puff, dots, base, jersey := at{"lantern-title", 1, 2}, at{"lantern-scene", 1, 2}, at{"lantern-crew", 1, 1}, at{"lantern-jersey", 1, 2}
	apron, poster, chest, blocker := at{"lantern-apron", 1, 1}, at{"lantern-poster", 1, 1}, at{"lantern-crew", 2, 1}, at{"lantern-jersey", 1, 1}
	for _, c := range []struct {
		what     string
		one, two at
		line     string // that both have, and the figure that differs; without one, the line that only one has
		figure   string
		why      string
	}{
		{seen.TooThin, puff, dots, "film strokes 2", "", "the halftone takes a second stroke, the puff has two already"},
		{seen.TooThin, chest, base, "look-comb", "wet_low_um", "the wet film that is expected"},
		{seen.TooHeavy, chest, base, "film hits 1", "", "only the chest print has a hit to leave out"},
		{seen.TooHeavy, dots, puff, "not-spread-dots", "", "only a halftone has dot gain"},
		{seen.Pinholes, apron, base, "measure-hides", "", "the same mesh, but on a light cloth there is nothing to hide"},
		{seen.DotsLost, dots, puff, "no-dots-rise", "", "a puff has no dots: it is something else"},
		{seen.DotsLost, dots, at{"lantern-jersey", 1, 3}, "dots-from", "", "the jersey's bitmap dot holds on its mesh"},
		{seen.DotsPlugged, dots, at{"lantern-scene", 1, 5}, "look-plug", "dot_um", "the dots are of another size"},
		{seen.InkLeft, apron, puff, "water-mist", "", "only a water-based ink dries in"},
		{seen.RaggedEdge, poster, puff, "look-lean", "limit_deg", "detail on board takes less lean"},
		{seen.Ghost, poster, base, "glue", "", "only a garment sticks to a platen"},
		{seen.OneSide, base, apron, "hand-even", "", "only the hand bench has hands"},
		{seen.PicksUp, base, jersey, "flash-up", "flash_s", "each film and ink has its own flash"},
		{seen.PicksUp, base, chest, "no-next", "", "nothing prints after the chest print"},
		{seen.PuffFallen, puff, dots, "no-rise-dots", "", "a halftone does not rise"},
		{seen.DyeBleeds, jersey, base, "no-dye-cotton", "", "the dye of cotton stays"},
		{seen.DyeBleeds, jersey, blocker, "dye-blocker-self", "", "the blocker cannot ask for a blocker"},
		{seen.WashesOff, base, jersey, "cure-hotter", "cure_low_c", "a low-cure ink sets cooler"},
		{seen.WashesOff, apron, base, "cure-water", "", "only a water-based ink dries before it cures"},
		{seen.Scorch, jersey, puff, "scorch-cooler", "", "the blend has no stop here, polyester has"},
		{seen.Scorch, base, poster, "no-heat", "", "an air-dried poster meets no heat"},
	} {
		one := parts(ask(t, sample(t, c.one.job), c.one.location, c.one.screen, c.what, 0).Findings[0])
		two := parts(ask(t, sample(t, c.two.job), c.two.location, c.two.screen, c.what, 0).Findings[0])
		a, inOne := one[c.line]
		b, inTwo := two[c.line]
		switch {
		case c.figure == "" && inOne == inTwo:
			t.Errorf("%s: %s; %q is in both or in none", c.what, c.why, c.line)
		case c.figure != "" && !(inOne && inTwo && a.Values[c.figure] != b.Values[c.figure] && a.Values[c.figure] > 0):
			t.Errorf("%s: %s; %s of %s is %v and %v", c.what, c.why, c.figure, c.line, a.Values, b.Values)
		}
	}
}

// TestTellsWhatHelps: pressure is told as the press sets it; where no dot holds, no share of dots and no lean is
// proposed; a cure of one temperature has no low end; and a puff that was gauged may have risen.
func TestTellsWhatHelps(t *testing.T) {
	few := plantest.Plan(t, "title = \"t\"\n[garment]\nfibre = \"polyester\"\nshade = \"dark\"\n[[location]]\n[[location.screen]]\nuse = \"halftone\"\nhalftone = { lines = \"85 lpi\", smallest = \"1 %\" }\nmesh = \"83-100\"\n[[location.screen]]\nink = \"water-based\"\n", plantest.Shop(t, ""))
	crew, title, scene, jersey := sample(t, "lantern-crew"), sample(t, "lantern-title"), sample(t, "lantern-scene"), sample(t, "lantern-jersey")
	for _, c := range []struct {
		plan          *plan.Plan
		screen        int
		what          string
		with, without string // change
	}{
		{crew, 1, seen.InkLeft, "load-wipe", "load-wipe-hand"},
		{title, 1, seen.InkLeft, "load-wipe-hand", "load-wipe"},
		{few, 1, seen.DotsLost, "dots-mesh", "dots-from"},
		{few, 1, seen.DotsLost, "dots-mesh", "film angle 0"},
		{few, 1, seen.DotsLost, "dots-mesh", "gap-down"},
		{scene, 2, seen.DotsLost, "dots-from", "dots-mesh"},
		{few, 1, seen.DyeBleeds, "dye-ink", "dye-cooler"},
		{jersey, 2, seen.DyeBleeds, "dye-cooler", "dye-ink"},
	} {
		got := parts(ask(t, c.plan, 1, c.screen, c.what, 0).Findings[0])
		_, with := got[c.with]
		if _, without := got[c.without]; !with || without {
			t.Errorf("%s of screen %d: %v; %s is wanted, and no %s", c.what, c.screen, slices.Sorted(maps.Keys(got)), c.with, c.without)
		}
	}
	if first := ask(t, title, 1, 1, seen.DyeBleeds, 0).Findings[0].Changes[0].Code; first != "dye-blocker" {
		t.Errorf("dye that moves at every heat that cures is met with %s first", first)
	}
	if l := parts(ask(t, title, 1, 1, seen.InkLeft, 0).Findings[0])["load-wipe-hand"]; l.Names["load_class"] != title.Locations[0].Screens[0].LoadClass {
		t.Errorf("a hand is told %v", l)
	}
	for _, c := range []struct {
		um    float64
		wet   bool
		risen bool
	}{{390, false, true}, {390, true, false}, {100, false, false}} {
		m, err := seen.Correct(title.Locations[0].Screens[1], c.um, c.wet)
		if err != nil {
			t.Fatal(err)
		}
		a, err := seen.Ask(title, 1, 2, nil, &m)
		if risen := len(a.Means) > 0 && a.Means[0].Code == "means-puffed"; err != nil || risen != c.risen {
			t.Errorf("a puff of %g um, wet %v: %v, %v", c.um, c.wet, a.Means, err)
		}
	}
}

// TestPuffAndHalftone: no answer is the same for a puff and a halftone.
func TestPuffAndHalftone(t *testing.T) {
	title, scene := sample(t, "lantern-title"), sample(t, "lantern-scene")
	for _, what := range seen.Faults() {
		one, err := json.Marshal(ask(t, title, 1, 2, what, 0).Findings)
		if err != nil {
			t.Fatal(err)
		}
		two, err := json.Marshal(ask(t, scene, 1, 2, what, 0).Findings)
		if err != nil {
			t.Fatal(err)
		}
		if string(one) == string(two) {
			t.Errorf("%s: %s", what, one)
		}
	}
}

// TestNoDotHolds: where no dot of a line count holds, larger dots are no advice.
func TestNoDotHolds(t *testing.T) {
	for from, want := range map[float64]bool{0.06: true, 1: false} {
		p := sample(t, "lantern-scene")
		h := p.Locations[0].Screens[1].Halftone
		h.DotHolds, h.HoldsFrom = false, from
		if _, got := parts(ask(t, p, 1, 2, seen.DotsLost, 0).Findings[0])["dots-from"]; got != want {
			t.Errorf("dots hold from %v: dots-from is said: %v", from, got)
		}
	}
}

// TestDisagreement: a film that speaks against what was seen is said, and then no film is changed for it; a film
// that agrees is not.
func TestDisagreement(t *testing.T) {
	for _, c := range []struct {
		job      string
		screen   int
		what     string
		um       float64
		says     string // empty: agrees
		unopened bool   // no film is changed
	}{
		{"lantern-scene", 2, seen.DotsLost, 40, "off-lost", true},
		{"lantern-scene", 2, seen.DotsLost, 21, "", false},
		{"lantern-scene", 2, seen.DotsPlugged, 8, "off-plugged", true},
		{"lantern-scene", 2, seen.DotsPlugged, 40, "", false},
		{"lantern-crew", 1, seen.TooThin, 45, "off-thin", true},
		{"lantern-crew", 1, seen.TooThin, 20, "", false},
		{"lantern-jersey", 1, seen.TooThin, 28, "", false}, // in its band, and short of the target
		{"lantern-crew", 1, seen.TooHeavy, 40, "off-heavy", true},
		{"lantern-crew", 1, seen.TooHeavy, 80, "", false},
		{"lantern-crew", 1, seen.Pinholes, 50, "off-pins", true},
		{"lantern-crew", 1, seen.InkLeft, 90, "off-left", true},
		{"lantern-crew", 1, seen.InkLeft, 20, "", false},
		{"lantern-crew", 3, seen.RaggedEdge, 10, "off-ragged", true},
		{"lantern-crew", 1, seen.PicksUp, 15, "off-pickup", true},
		{"lantern-title", 2, seen.PuffFallen, 200, "off-puff", true},
		{"lantern-title", 2, seen.PuffFallen, 100, "", false},
		{"lantern-jersey", 2, seen.DyeBleeds, 15, "", true}, // a blocker is under it: hiding is not asked
	} {
		a := ask(t, sample(t, c.job), 1, c.screen, c.what, c.um)
		f := a.Findings[0]
		var says []string
		for _, l := range f.Against {
			says = append(says, l.Code)
		}
		if got := strings.Join(says, " "); got != c.says {
			t.Errorf("%s of %s at %g um: says %q, %q is wanted", c.what, c.job, c.um, got, c.says)
		}
		if c.says != "" && f.Against[0].Values["film_um"] != c.um {
			t.Errorf("%s at %g um names %v", c.what, c.um, f.Against[0].Values)
		}
		films := slices.ContainsFunc(f.Changes, func(ch seen.Change) bool { return ch.Correction != nil })
		if films == c.unopened {
			t.Errorf("%s of %s at %g um: changes of film: %v", c.what, c.job, c.um, films)
		}
	}
}

// TestOutsideTheBand: a film outside its band is told what it means, inside the target or not.
func TestOutsideTheBand(t *testing.T) {
	for _, c := range []struct {
		job    string
		screen int
		um     float64
		in     bool // the target
		wants  string
	}{
		{"lantern-scene", 2, 40, true, "means-dots-heavy means-dwell means-belt"},
		{"lantern-scene", 2, 10, true, "means-dots-light means-shows-plain means-dwell means-belt"},
		{"lantern-crew", 1, 80, false, "means-fills means-flash means-dwell means-belt"},
		{"lantern-crew", 1, 20, false, "means-shows means-flash means-dwell means-belt"},
		{"lantern-title", 2, 100, false, "means-shows means-dwell means-belt means-rise"},
		{"lantern-poster", 1, 12, false, "means-fills means-air"},
		{"lantern-scene", 2, 21, true, ""},
	} {
		a := ask(t, sample(t, c.job), 1, c.screen, seen.TooThin, c.um)
		var got []string
		for _, l := range a.Means {
			got = append(got, l.Code)
		}
		if strings.Join(got, " ") != c.wants || a.InTarget != c.in {
			t.Errorf("%s screen %d at %g um (in the target: %v) means %v; %s is wanted", c.job, c.screen, c.um, a.InTarget, got, c.wants)
		}
		for _, l := range a.Means { // more film takes longer, less shorter
			if l.Code == "means-flash" && (l.Values["flash_now_s"] > l.Values["flash_s"]) != (c.um > a.ExpectedUM.Value) ||
				l.Code == "means-dwell" && (l.Values["dwell_now_low_s"] > l.Values["dwell_low_s"]) != (c.um > a.ExpectedUM.Value) {
				t.Errorf("%g um: %v", c.um, l)
			}
		}
	}
}

// TestChanges: the changes of a fault go the right way, are measurable, stand in the order of cost and carry
// film, edge, dots and flash of this screen; the flash of the film as planned is the planned one.
func TestChanges(t *testing.T) {
	for _, name := range []string{"lantern-crew", "lantern-scene", "lantern-title", "lantern-jersey", "lantern-apron", "lantern-poster"} {
		p := sample(t, name)
		for l, loc := range p.Locations {
			for _, s := range loc.Screens {
				for _, what := range seen.Faults() {
					cost := 0.0
					for _, c := range ask(t, p, l+1, s.Number, what, 0).Findings[0].Changes {
						if c.Correction == nil {
							continue
						}
						k, v := *c.Correction, c.Values
						if k.Cost < cost {
							t.Errorf("%s %d %s: %s %s costs less than the one before", name, s.Number, what, k.Kind, k.To)
						}
						cost = k.Cost
						if !slices.Contains([]string{"blade", "angle", "strokes", "hits", "edge", "eom", "mesh"}, k.Kind) {
							t.Errorf("%s is no way to a film", k.Kind)
						}
						if v["film_um"] != k.CuredUM || v["edge_deg"] != k.EdgeAngleDeg || k.EdgeAngleDeg <= 0 {
							t.Errorf("%s %d %s: %s %s has %v, the plan %g um, edge %g", name, s.Number, what, k.Kind, k.To, v, k.CuredUM, k.EdgeAngleDeg)
						}
						if (v["film_of_dot_percent"] > 0) != (s.Halftone != nil) || (v["flash_s"] > 0) != (s.Flash.StartS != nil && k.Kind != "hits") {
							t.Errorf("%s %d %s: dots or flash of %v", name, s.Number, what, v)
						}
						switch what {
						case seen.TooThin, seen.Pinholes, seen.PuffFallen:
							if k.DeltaUM <= 0 || !k.Seen && math.Abs(k.DeltaPercent) < 10 {
								t.Errorf("%s: %s %s brings %g um", what, k.Kind, k.To, k.DeltaUM)
							}
						case seen.TooHeavy, seen.DotsPlugged, seen.PicksUp:
							if k.DeltaUM >= 0 || !k.Seen && math.Abs(k.DeltaPercent) < 10 {
								t.Errorf("%s: %s %s brings %g um", what, k.Kind, k.To, k.DeltaUM)
							}
						case seen.DotsLost, seen.InkLeft, seen.RaggedEdge:
							if k.EdgeAngleDeg >= s.EdgeAngleDeg {
								t.Errorf("%s: %s %s bends the edge to %g, from %g", what, k.Kind, k.To, k.EdgeAngleDeg, s.EdgeAngleDeg)
							}
						}
					}
				}
			}
		}
	}
	// Twice the film by a measurement that hits the planned one: the flash must come out as planned.
	crew := sample(t, "lantern-crew")
	s := crew.Locations[0].Screens[0]
	at := ask(t, crew, 1, 1, seen.TooHeavy, s.CuredUM.High*1.001)
	for _, l := range at.Means {
		if l.Code == "means-flash" && !(l.Values["flash_now_s"] > *s.Flash.StartS && l.Values["flash_now_s"] < s.Flash.Seconds.High*1.5) {
			t.Errorf("flash of the band's end: %v, planned %v", l.Values, *s.Flash.StartS)
		}
	}
	if x := parts(ask(t, crew, 1, 1, seen.TooHeavy, 0).Findings[0])["film strokes 1"].Values["flash_s"]; math.Abs(x-*s.Flash.StartS) < 0.1 || x > *s.Flash.StartS {
		t.Errorf("one stroke flashes in %g s, two in %g", x, *s.Flash.StartS)
	}
}

// TestOpposed: faults that one film cannot have at one place are told.
func TestOpposed(t *testing.T) {
	a, err := seen.Ask(sample(t, "lantern-scene"), 1, 2, []string{seen.DotsLost, seen.TooThin, seen.DotsPlugged}, nil)
	if err != nil || len(a.Opposed) != 1 || a.Opposed[0].Names["one"] != seen.DotsLost || len(a.Findings) != 3 {
		t.Errorf("%+v, %v", a.Opposed, err)
	}
	for _, c := range []struct {
		location, screen int
		what             string
	}{{0, 1, seen.Ghost}, {2, 1, seen.Ghost}, {1, 8, seen.Ghost}, {1, 1, "rust"}} {
		if _, err := seen.Ask(sample(t, "lantern-scene"), c.location, c.screen, []string{c.what}, nil); err == nil {
			t.Errorf("%+v is taken", c)
		}
	}
}

var brace = regexp.MustCompile(`\{([a-z_]+)\}`)

// TestWordsFit: every line that any screen gets has its text in every language, filled in whole, and every text
// belongs to a line of the table.
func TestWordsFit(t *testing.T) {
	needs := seen.Needs()
	for _, lang := range templates.Bases() {
		words, err := templates.Language(lang)
		if err != nil {
			t.Fatal(err)
		}
		for code, figures := range needs {
			text := words["seen."+code]
			if text == "" {
				t.Errorf("%s lacks seen.%s", lang, code)
			}
			for _, b := range brace.FindAllStringSubmatch(text, -1) {
				stem, ranged := strings.CutSuffix(b[1], "_range")
				has := slices.ContainsFunc(figures, func(f string) bool { return f == b[1] || ranged && strings.HasPrefix(f, stem+"_low_") })
				if !has {
					t.Errorf("%s seen.%s asks for {%s}; it gets %v", lang, code, b[1], figures)
				}
			}
		}
		for key := range words {
			if code, is := strings.CutPrefix(key, "seen."); is && code != "opposed" && needs[code] == nil {
				t.Errorf("%s has seen.%s, which no line of the table has", lang, code)
			}
		}
		for _, what := range seen.Faults() {
			if words["seen-word."+what] == "" || words["seen-name."+what] == "" {
				t.Errorf("%s has no word or no name for %s", lang, what)
			}
		}
	}
	voice, err := say.New("es", "inch")
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"lantern-scene", "lantern-title", "lantern-apron", "lantern-poster"} {
		a, err := seen.Ask(sample(t, name), 1, 1, seen.Faults(), nil)
		if err != nil {
			t.Fatal(err)
		}
		voice.Seen(&a)
		for _, f := range a.Findings {
			for code, l := range parts(f) {
				if l.Text == "" || brace.MatchString(l.Text) {
					t.Errorf("%s %s %s: %q", name, f.Seen, code, l.Text)
				}
			}
		}
	}
	if len(needs) < 100 || !slices.Equal(slices.Sorted(maps.Keys(needs))[:1], []string{"base-first"}) {
		t.Errorf("%d lines", len(needs))
	}
}

// TestDetailIsKept: no change that costs the finest detail is named beside one that keeps it, and on the poster there
// is such a one: a softer blade thickens the film and closes its lines.
func TestDetailIsKept(t *testing.T) {
	poster := sample(t, "lantern-poster")
	costs := 0
	for _, c := range poster.Locations[0].Screens[1].Corrections {
		if c.Kind == "blade" && c.DeltaUM > 0 && slices.Contains(c.Disturbs, "detail") {
			costs++
		}
	}
	if costs == 0 {
		t.Error("no blade costs the poster its detail: another job is wanted here")
	}
	for _, c := range ask(t, poster, 1, 2, seen.TooThin, 0).Findings[0].Changes {
		if c.Correction != nil && slices.Contains(c.Correction.Disturbs, "detail") {
			t.Errorf("too thin on the poster: %s %s loses detail", c.Correction.Kind, c.Correction.To)
		}
	}
}

// TestExpectedFaultComesSecond: a film that is expected outside its target is the fault to look for after the wipe test.
func TestExpectedFaultComesSecond(t *testing.T) {
	for film, want := range map[string]string{"5..6 um": seen.TooHeavy, "90..95 um": seen.TooThin} {
		p := plantest.Plan(t, plantest.OneScreen("", "ink = \"plastisol\"\nmesh = \"156-64\"\nstrokes = 2\nhits = 1\nfilm = \""+film+"\"\n"), file.BuiltInShop())
		found, err := seen.Likely(p, 1, 1, 2)
		if err != nil || len(found) != 2 || found[1].Seen != want {
			t.Errorf("film %s: %+v, %v; %s is wanted second", film, found, err, want)
		}
	}
}

// TestNoHeatDoes: where the cloth ends the heat before the ink is cured, no fault is met with heat, but with another ink.
func TestNoHeatDoes(t *testing.T) {
	p := plantest.Plan(t, "title = \"t\"\n[garment]\nfibre = \"polyester\"\n[[location]]\n[[location.screen]]\nink = \"discharge\"\n", file.BuiltInShop())
	got := parts(ask(t, p, 1, 1, seen.WashesOff, 0).Findings[0])
	if _, ink := got["cure-clash"]; !ink || got["cure-hotter"].Code != "" {
		t.Errorf("washes off: %v; cure-clash is wanted, and no cure-hotter", slices.Sorted(maps.Keys(got)))
	}
}
