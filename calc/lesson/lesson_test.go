package lesson

import (
	"fmt"
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"

	"bladecard/calc/blade"
	"bladecard/calc/choose"
	"bladecard/calc/file"
	"bladecard/calc/internal/sure"
	"bladecard/calc/job"
	"bladecard/calc/plan"
	"bladecard/calc/plantest"
)

func TestBuiltInShop(t *testing.T) {
	shop := file.BuiltInShop()
	l, err := Make(shop)
	if err != nil {
		t.Fatal(err)
	}
	if w := l.Blades[l.Workhorse]; w.Name != "70" || w.Stiff != 1 || math.Abs(w.RigidityNM-0.526) > 0.001 {
		t.Errorf("workhorse %+v", w)
	}
	for i, b := range l.Blades[1:] {
		soft := l.Blades[i]
		for k := range l.SetDeg {
			if *b.Edges[k] >= *soft.Edges[k] {
				t.Errorf("at %g deg the edge of %s leans %g, no less than %s", l.SetDeg[k], b.Name, *b.Edges[k], soft.Name)
			}
		}
	}
	for _, b := range l.Blades { // the largest set angle meets its limit, a degree more does not
		for k, a := range b.Largest {
			if a == nil {
				continue
			}
			at, more := must(t, b, *a, l.Press.LoadNPerCM), must(t, b, *a+1, l.Press.LoadNPerCM)
			if at > l.Limits[k].EdgeDeg || more <= l.Limits[k].EdgeDeg && *a < mostDeg {
				t.Errorf("%s at %g deg leans %g, a degree more %g; the limit is %g", b.Name, *a, at, more, l.Limits[k].EdgeDeg)
			}
		}
	}
	for i, x := range l.Limits[1:] {
		if x.FinestMM <= l.Limits[i].FinestMM || x.EdgeDeg < l.Limits[i].EdgeDeg {
			t.Errorf("the edge may lean %g deg for %g mm, after %g deg for %g mm", x.EdgeDeg, x.FinestMM, l.Limits[i].EdgeDeg, l.Limits[i].FinestMM)
		}
	}
	for _, c := range l.Meshes { // one stroke lays no more than the mesh holds, and a finer one no second hit
		if c.FilmUM == nil || *c.FilmUM > c.VolumeUM {
			t.Errorf("one stroke through %s lays %v um of %g", c.Name, *c.FilmUM, c.VolumeUM)
		}
	}
	blades := map[string]bool{}
	for _, c := range append(l.Prints, l.Others...) {
		if c.Setup == nil {
			t.Errorf("no setup for %s, %s", c.Ink, c.Use)
			continue
		}
		blades[c.Setup.Blade.Name] = true
	}
	if len(l.Prints) != len(prints) || len(l.Others) < 8 || len(blades) < 4 {
		t.Errorf("%d typical prints and %d others with %d blades", len(l.Prints), len(l.Others), len(blades))
	}
	if !(l.Spread > 0 && l.Spread < 0.5) {
		t.Errorf("the heaviest film is %g over the lightest", l.Spread)
	}
	if !(l.Strokes[1].Value > l.Strokes[0].Value && l.FlashedUM > l.Strokes[1].Value) {
		t.Errorf("films of %v um, with a flash %g", l.Strokes, l.FlashedUM)
	}
}

// TestStiffness: a blade that stands far out of its holder is told as soft as its edge leans, whatever its rubber.
func TestStiffness(t *testing.T) {
	shop := file.BuiltInShop()
	shop.Blades[len(shop.Blades)-1].FreeHeightMM = 35
	l, err := Make(shop)
	if err != nil {
		t.Fatal(err)
	}
	if l.Blades[len(l.Blades)-1].FreeHeightMM == 35 {
		t.Error("the high blade stands last, as its rubber alone would")
	}
	for i, b := range l.Blades[1:] {
		if soft := l.Blades[i]; b.Stiff < soft.Stiff || *b.Edges[2] > *soft.Edges[2] {
			t.Errorf("%s is %g as stiff and leans %g, after %s with %g and %g", b.Name, b.Stiff, *b.Edges[2], soft.Name, soft.Stiff, *soft.Edges[2])
		}
	}
}

// TestExercises: a new hand gets ten and more; they read a card, a print and a screen; each answer follows from the
// figures of its question; a change of the film that one speaks of can be measured; and what mends a thin film is
// told from what does not.
func TestExercises(t *testing.T) {
	l, err := Make(file.BuiltInShop())
	if err != nil {
		t.Fatal(err)
	}
	intro, kinds := 0, map[string]int{}
	card := l.Worked.Locations[0].Screens[0]
	for _, e := range l.Exercises {
		if e.Intro {
			intro++
		}
		kind, _, _ := strings.Cut(e.Code, "-")
		kinds[kind]++
		if e.EffectUM != 0 && e.EffectUM < l.Bench.TellsUM {
			t.Errorf("%s speaks of %g um, and %g can be measured", e.Code, e.EffectUM, l.Bench.TellsUM)
		}
		v := e.Values
		switch e.Code {
		case "card-angle":
			if v["screen_deg"] != 90-v["set_deg"] || v["set_deg"] != card.AngleDeg.Set || v["found_deg"] <= v["high_deg"] {
				t.Errorf("%v: the card says %v", v, card.AngleDeg)
			}
		case "card-mesh":
			if e.Names["mesh"] != card.Mesh.Name || e.Names["other"] == card.Mesh.Name {
				t.Errorf("%v: the card says mesh %s", e.Names, card.Mesh.Name)
			}
		case "card-next":
			if v["head_int"] != float64(card.Next.Head) || v["start_s"] != *card.Flash.StartS {
				t.Errorf("%v: the card says %v, %v", v, card.Next, card.Flash)
			}
		case "print", "screen":
			if e.Fault == nil || !e.Fault.Shows || len(e.Fault.Changes) == 0 {
				t.Errorf("%s: the picture has no answer", e.Code)
			}
		case "screen-dot":
			if (v["dot_fine"] >= v["holds_fine"]) != (e.Names["verdict"] == "yes") || v["holds_fine"] != 2*v["thread_fine"]+v["opening_fine"] {
				t.Errorf("%v: %s", v, e.Names["verdict"])
			}
		case "strokes":
			if v["wet_um"]-v["once_um"] < e.EffectUM || v["flash_um"]-v["wet_um"] < e.EffectUM || e.EffectUM == 0 {
				t.Errorf("%v: an effect of %g um is said", v, e.EffectUM)
			}
		case "too-thin":
			short := v["film_um"] - v["measured_um"]
			if v["short_um"] != short || short <= 0 || len(e.Corrections) == 0 || len(e.TooLittle) == 0 {
				t.Errorf("%v with %d that mend it and %d that do not", v, len(e.Corrections), len(e.TooLittle))
			}
			for _, c := range e.Corrections {
				if slices.Contains(c.Disturbs, "screen") {
					t.Errorf("%s %s asks for another screen", c.Kind, c.To)
				}
				if c.DeltaUM < short {
					t.Errorf("%s %s brings %g um of %g", c.Kind, c.To, c.DeltaUM, short)
				}
			}
			for _, c := range e.TooLittle {
				if slices.Contains(c.Disturbs, "screen") {
					t.Errorf("%s %s asks for another screen", c.Kind, c.To)
				}
				if c.DeltaUM > short/2 || c.DeltaUM <= 0 {
					t.Errorf("%s %s brings %g um, and %g are missing", c.Kind, c.To, c.DeltaUM, short)
				}
			}
		}
	}
	if intro < 10 || intro >= len(l.Exercises) || kinds["card"] < 3 || kinds["print"] < 3 || kinds["screen"] < 3 {
		t.Errorf("%d of %d exercises for a new hand: %v", intro, len(l.Exercises), kinds)
	}
}

func must(t *testing.T, b Blade, setDeg, load float64) float64 {
	t.Helper()
	e, err := blade.EdgeAngleDeg(blade.Bend{SetDeg: setDeg, LoadNPerCM: load, FreeHeightMM: b.FreeHeightMM, RigidityNM: b.RigidityNM, Friction: blade.Friction})
	if err != nil {
		t.Fatal(err)
	}
	return e
}

// TestChoiceIsThePlanners: a row of the grid is what a job file with that screen gets.
func TestChoiceIsThePlanners(t *testing.T) {
	shop := file.BuiltInShop()
	m := newMaker(shop, choose.Make)
	if err := sure.Try(m.choice); err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct{ ink, use, lines string }{
		{"plastisol white", "solid", ""}, {"plastisol puff", "raised", ""}, {"plastisol", "halftone", "65 lpi"}, {"plastisol metallic", "solid", ""},
	} {
		text := "title = \"t\"\n[garment]\nfibre = \"cotton\"\nshade = \"dark\"\n[[location]]\n[[location.screen]]\nink = \"" + c.ink + "\"\nuse = \"" + c.use + "\"\n"
		if c.lines != "" {
			text += "halftone = { lines = \"" + c.lines + "\", smallest = \"5 %\" }\n"
		}
		want := plantest.Plan(t, text, shop).Locations[0].Screens[0]
		found := false
		for _, got := range append(m.out.Prints, m.out.Others...) {
			if got.Ink != c.ink || got.Use != c.use || c.lines != "" && !strings.HasPrefix(c.lines, fmt.Sprint(got.LinesPerInch)) {
				continue
			}
			found = true
			s := got.Setup
			if s.Blade.Name != want.Blade.Name || s.AngleDeg != want.AngleDeg || s.Strokes != want.Strokes || s.CuredUM != want.CuredUM || s.Mesh.Name != want.Mesh.Name {
				t.Errorf("%v: %s %v %d through %s; the planner says %s %v %d through %s", c, s.Blade.Name, s.AngleDeg, s.Strokes, s.Mesh.Name,
					want.Blade.Name, want.AngleDeg, want.Strokes, want.Mesh.Name)
			}
		}
		if !found {
			t.Errorf("%v is not in the grid", c)
		}
	}
}

// TestRacksThatGiveNothing: no blade at hand and a blade that folds over are errors, not pages.
func TestRacksThatGiveNothing(t *testing.T) {
	none := file.BuiltInShop()
	for i := range none.Blades {
		none.Blades[i].Count = 0
	}
	limp := file.BuiltInShop()
	limp.Blades = limp.Blades[:1]
	limp.Blades[0].FreeHeightMM = 70
	for want, shop := range map[string]*job.Shop{"every count is 0": none, "folds": limp} {
		if _, err := Make(shop); err == nil || !strings.Contains(err.Error(), want) || strings.Contains(err.Error(), "lesson") {
			t.Errorf("error %v; %q is wanted in it, and not the lesson's own names", err, want)
		}
	}
}

// TestOneStation: a shop of one station, where no base is printed under a color and no flash stands between two prints, has
// its lesson: a card of one screen, faults, and what a flash would do.
func TestOneStation(t *testing.T) {
	shop := file.BuiltInShop()
	shop.Presses = []job.Press{{Name: "table", Kind: "manual", Heads: 1, StrokeMPerS: 0.3, LoadNPerCM: 5}}
	for _, fine := range []bool{false, true} {
		if fine { // no white covers dark cloth in one print
			shop.Meshes = shop.Meshes[len(shop.Meshes)-1:]
		}
		l, err := Make(shop)
		if err != nil {
			t.Fatal(err)
		}
		if l.Worked == nil || len(l.Worked.Locations[0].Screens) != 1 || len(l.Faults) == 0 || len(l.Exercises) < 8 {
			t.Errorf("fine mesh %v: %d faults, %d exercises, card %v", fine, len(l.Faults), len(l.Exercises), l.Worked != nil)
		}
		if l.FlashedUM <= l.Strokes[1].Value {
			t.Errorf("a flash between two prints makes %g um of %g", l.FlashedUM, l.Strokes[0].Value)
		}
	}
}

// TestSpread: at most n, the ends kept and the one that must be there, no index twice.
func TestSpread(t *testing.T) {
	for _, c := range []struct {
		count, n, keep int
		want           []int
	}{
		{3, 5, 1, []int{0, 1, 2}}, {1, 12, 0, []int{0}}, {5, 5, 4, []int{0, 1, 2, 3, 4}},
		{9, 3, 4, []int{0, 4, 8}}, {9, 3, 5, []int{0, 5, 8}}, {9, 3, 8, []int{0, 4, 8}}, {9, 3, 1, []int{0, 1, 8}},
	} {
		if got := spread(c.count, c.n, c.keep); !slices.Equal(got, c.want) {
			t.Errorf("spread(%d, %d, %d) = %v; %v is wanted", c.count, c.n, c.keep, got, c.want)
		}
	}
}

// large is the built-in shop with racks of n different blades and n different meshes.
func large(n int) *job.Shop {
	shop := file.BuiltInShop()
	blade, mesh := shop.Blades[0], shop.Meshes[0]
	shop.Blades, shop.Meshes = nil, nil
	for i := range n {
		b, c := blade, mesh
		shore := 55 + 35*float64(i)/float64(n)
		b.Name, b.Layup, b.Hardness = fmt.Sprintf("b%d", i), fmt.Sprint(math.Round(shore)), []float64{shore}
		c.CountPerInch = 60 + 240*float64(i)/float64(n)
		c.ThreadUM = 0.4 * 25400 / c.CountPerInch
		c.Name = fmt.Sprintf("m%d", i)
		shop.Blades, shop.Meshes = append(shop.Blades, b), append(shop.Meshes, c)
	}
	return shop
}

// TestLargeRacksTakeNoMoreWork: beyond the blades and meshes that are tried, the setups that the planner may try grow no
// more than with their sum. The choice covers the rack from end to end, and a second run makes the same one.
func TestLargeRacksTakeNoMoreWork(t *testing.T) {
	lessonOf := func(n int) (*Lesson, int) {
		work := 0
		m := newMaker(large(n), func(j *job.Job, shop *job.Shop) (*plan.Plan, job.Errors) {
			work += len(j.Locations) * len(shop.Blades) * len(shop.Meshes)
			if len(shop.Meshes) == 1 {
				return choose.Make(j, shop)
			}
			few := *shop // what would be tried is counted: a few stand for all
			few.Blades, few.Meshes = few.Blades[:3], few.Meshes[:3]
			return choose.Make(j, &few)
		})
		l, err := m.lesson()
		if err != nil {
			t.Fatal(err)
		}
		if len(m.shop.Blades) > mostTried || len(m.shop.Meshes) > mostTried {
			t.Errorf("%d blades and meshes: %d and %d are tried", n, len(m.shop.Blades), len(m.shop.Meshes))
		}
		return l, work
	}
	small, few := lessonOf(mostTried)
	if small.BladesTried != mostTried || small.BladesAtHand != mostTried || small.MeshesTried != mostTried || small.MeshesRacked != mostTried {
		t.Errorf("of %d blades and meshes, %d and %d are tried", mostTried, small.BladesTried, small.MeshesTried)
	}
	const many = 256
	l, work := lessonOf(many)
	if extra := work - few; extra > 2*many {
		t.Errorf("%d blades and meshes take %d setups more than %d do; at most %d are linear", many, extra, mostTried, 2*many)
	}
	if l.BladesAtHand != many || l.BladesTried != mostTried || l.MeshesRacked != many || l.MeshesTried != mostTried {
		t.Errorf("%d of %d blades, %d of %d meshes are tried", l.BladesTried, l.BladesAtHand, l.MeshesTried, l.MeshesRacked)
	}
	if l.Blades[0].Name != "b0" || l.Blades[len(l.Blades)-1].Name != "b255" || l.Meshes[0].Name != "m0" || l.Meshes[len(l.Meshes)-1].Name != "m255" {
		t.Error("the ends of the rack are not shown")
	}
	if again, _ := lessonOf(many); !reflect.DeepEqual(again, l) {
		t.Error("a second run makes another lesson")
	}
}

// BenchmarkLargeRacks: more blades and meshes than are tried cost next to nothing.
func BenchmarkLargeRacks(b *testing.B) {
	for _, n := range []int{20, mostTried, 256} {
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			shop := large(n)
			for b.Loop() {
				if _, err := Make(shop); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
