package lesson

import (
	"math"
	"strings"
	"testing"

	"bladecard/calc/blade"
	"bladecard/calc/choose"
	"bladecard/calc/file"
	"bladecard/calc/job"
)

func TestBuiltInShop(t *testing.T) {
	shop := file.BuiltInShop()
	l, err := Make(shop)
	if err != nil {
		t.Fatal(err)
	}
	if w := l.Blades[l.Workhorse]; w.Name != "70" || math.Abs(w.To70-1) > 1e-12 || math.Abs(w.RigidityNM-0.526) > 0.001 {
		t.Errorf("workhorse %+v", w)
	}
	if math.Abs(l.CoreShare-1.0/27) > 1e-12 {
		t.Errorf("core share %g; 1/27 is wanted", l.CoreShare)
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
	if l.Wear[2].CuredUM <= l.Wear[0].CuredUM {
		t.Error("a worn edge lays no more than a new one")
	}
	works := map[string]bool{}
	for _, c := range l.Works {
		if c.Setup == nil {
			t.Errorf("no setup for %s, %s", c.Ink, c.Use)
			continue
		}
		works[c.Setup.Blade.Name] = true
	}
	if len(l.Works) < 12 || len(works) < 4 {
		t.Errorf("%d works with %d blades", len(l.Works), len(works))
	}
	if len(l.Exercises) < 10 {
		t.Errorf("%d exercises", len(l.Exercises))
	}
	if !(l.Film.Spread > 0 && l.Film.Spread < 0.5) {
		t.Errorf("the heaviest film is %g over the lightest", l.Film.Spread)
	}
}

// TestExercises: each follows from the figures of its question as they are printed, a new hand gets ten and more,
// and what mends a thin film is told from what does not.
func TestExercises(t *testing.T) {
	l, err := Make(file.BuiltInShop())
	if err != nil {
		t.Fatal(err)
	}
	intro := 0
	for _, e := range l.Exercises {
		if e.Intro {
			intro++
		}
		v := e.Values
		switch e.Code {
		case "strokes":
			if once := v["once_um"]; once != math.Round(once) || v["flash_um"] != 2*once {
				t.Errorf("%v: the answer does not follow from %g um", v, once)
			}
		case "share":
			if math.Abs(v["narrow_fine"]-v["narrow_percent"]/100*v["eom_fine"]) > 1e-9 || v["wide_percent"] != math.Round(v["wide_percent"]) {
				t.Errorf("%v: the answer does not follow from whole percent", v)
			}
		case "too-thin":
			short := v["film_um"] - v["measured_um"]
			if v["short_um"] != short || short <= 0 || len(e.Corrections) == 0 || len(e.TooLittle) == 0 {
				t.Errorf("%v with %d that mend it and %d that do not", v, len(e.Corrections), len(e.TooLittle))
			}
			for _, c := range e.Corrections {
				if c.DeltaUM < short {
					t.Errorf("%s %s brings %g um of %g", c.Kind, c.To, c.DeltaUM, short)
				}
			}
			for _, c := range e.TooLittle {
				if c.DeltaUM >= short || c.DeltaUM <= 0 {
					t.Errorf("%s %s brings %g um, and %g are missing", c.Kind, c.To, c.DeltaUM, short)
				}
			}
		}
	}
	if intro < 10 || intro >= len(l.Exercises) {
		t.Errorf("%d of %d exercises for a new hand", intro, len(l.Exercises))
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
	m := maker{shop: shop, out: &Lesson{Meshes: []Mesh{{Name: "110-80"}}}}
	if err := m.choice(); err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct{ ink, use, lines, mesh string }{
		{"plastisol white", "solid", "", ""}, {"plastisol puff", "raised", "", ""}, {"plastisol", "halftone", "65 lpi", ""}, {"plastisol white", "underbase", "", "110-80"},
	} {
		text := "title = \"t\"\n[garment]\nfibre = \"cotton\"\nshade = \"dark\"\n[[location]]\n[[location.screen]]\nink = \"" + c.ink + "\"\nuse = \"" + c.use + "\"\n"
		if c.lines != "" {
			text += "halftone = { lines = \"" + c.lines + "\", smallest = \"5 %\" }\n"
		}
		if c.mesh != "" {
			text += "mesh = \"" + c.mesh + "\"\n"
		}
		j, errs := file.DecodeJob("job.toml", []byte(text))
		if errs = append(errs, job.Resolve(j, shop)...); len(errs) > 0 {
			t.Fatal(errs)
		}
		p, errs := choose.Make(j, shop)
		if errs != nil {
			t.Fatal(errs)
		}
		want := p.Locations[0].Screens[0]
		found := false
		for _, got := range append(m.out.Works, m.out.Through...) {
			if got.Ink != c.ink || got.Use != c.use || got.Mesh != c.mesh || c.lines != "" && !strings.HasPrefix(c.lines, number(got.LinesPerInch)) {
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
		if _, err := Make(shop); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("error %v; %q is wanted in it", err, want)
		}
	}
}

// TestEven: at most n, the ends kept, no index twice.
func TestEven(t *testing.T) {
	for _, c := range []struct{ count, n, last, len int }{{5, 12, 4, 5}, {12, 12, 11, 12}, {40, 12, 39, 12}, {1, 12, 0, 1}} {
		got := even(c.count, c.n)
		if len(got) != c.len || got[0] != 0 || got[len(got)-1] != c.last {
			t.Errorf("even(%d, %d) = %v", c.count, c.n, got)
		}
	}
}

func TestStiffnessRange(t *testing.T) {
	for _, c := range [][2]float64{{math.NaN(), 25}, {0, 25}, {0.5, math.NaN()}, {0.5, 0}, {math.Inf(1), 25}} {
		if k, err := StiffnessNPerCMPerMM(c[0], c[1]); err == nil {
			t.Errorf("StiffnessNPerCMPerMM(%g, %g) = %g", c[0], c[1], k)
		}
	}
}
