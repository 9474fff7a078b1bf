package choose_test

import (
	"encoding/json"
	"maps"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"bladecard/calc/choose"
	"bladecard/calc/file"
	"bladecard/calc/job"
	"bladecard/calc/plan"
	"bladecard/calc/plantest"

	"pgregory.net/rapid"
)

// TestFiguresFollowTheJob changes one line of a job at a time and sees the figures change the
// way they must.
func TestFiguresFollowTheJob(t *testing.T) {
	base := screenOf(t, one("", "ink = \"plastisol\"\nmesh = \"156-64\"\neom = \"20 %\"\nfilm = \"20..60 um\""))
	finer := screenOf(t, one("", "ink = \"plastisol\"\nmesh = \"230-48\"\neom = \"20 %\"\nfilm = \"10..60 um\""))
	if !(finer.CuredUM.Value < base.CuredUM.Value) {
		t.Errorf("finer mesh: %g um; coarser: %g um", finer.CuredUM.Value, base.CuredUM.Value)
	}
	thick := screenOf(t, one("", "ink = \"plastisol\"\nmesh = \"156-64\"\neom = \"60 um\"\nfeature = \"2 mm\"\nfilm = \"20..90 um\""))
	if !(thick.CuredUM.Value > base.CuredUM.Value) {
		t.Errorf("thick stencil: %g um; thin: %g um", thick.CuredUM.Value, base.CuredUM.Value)
	}
	heavy := screenOf(t, one("", "ink = \"plastisol\"\nmesh = \"156-64\"\neom = \"20 %\"\nfilm = \"38..60 um\""))
	if !(heavy.Strokes > base.Strokes) || heavy.TargetUM.From != "job" {
		t.Errorf("a target of 38 um takes %d strokes (%s); one of 20 um %d", heavy.Strokes, heavy.TargetUM.From, base.Strokes)
	}
	soft := screenOf(t, one("", "ink = \"plastisol\"\nmesh = \"156-64\"\neom = \"20 %\"\nfilm = \"20..60 um\"\nblade = \"60\""))
	if soft.Blade.Layup != "60" || soft.Blade.From != "job" || !(soft.CuredUM.Value > base.CuredUM.Value) {
		t.Errorf("blade 60 set by the job: %s from %s, %g um; 70: %g um", soft.Blade.Layup, soft.Blade.From, soft.CuredUM.Value, base.CuredUM.Value)
	}
	thin := screenOf(t, one("", "ink = \"water-based\"\nmesh = \"156-64\"\neom = \"20 %\""))
	if got, want := thin.CuredUM.Value/thin.WetUM.Value, 0.30; math.Abs(got-want) > 1e-9 {
		t.Errorf("cured/wet of water-based = %g, its volume solids are %g", got, want)
	}
}

// TestFixedIsRespected: what the job states stands, and is judged.
func TestFixedIsRespected(t *testing.T) {
	s := screenOf(t, one("", "mesh = \"305-40\"\nhalftone = { lines = \"65 lpi\" }\nblade = \"60\"\nstrokes = 2\nangle = 30\nload = \"4 N/cm\""))
	if s.Blade.Layup != "60" || s.Strokes != 2 || s.AngleDeg.Set != 30 || s.LoadNPerCM != 4 {
		t.Errorf("set by the job: 60, 2 strokes, 30°, 4 N/cm; planned: %s, %d, %g, %g", s.Blade.Layup, s.Strokes, s.AngleDeg.Set, s.LoadNPerCM)
	}
	codes := codesOf(s)
	for _, want := range []string{"edge-leans", "mend-unfix"} {
		if !strings.Contains(codes, want) {
			t.Errorf("warnings %s; %s is wanted", codes, want)
		}
	}
	if s.MeetsAll {
		t.Error("a 60 leaning 30° is said to hold a 5 % dot of 65 lines")
	}
}

func codesOf(s plan.Screen) string {
	var out []string
	for _, w := range s.Warnings {
		out = append(out, w.Code)
	}
	return strings.Join(out, " ")
}

// TestFoldingIsAnErrorAtItsKey: a setup that folds over is an error with the place of the key
// that asked for it, never a number.
func TestFoldingIsAnErrorAtItsKey(t *testing.T) {
	src := one("", "mesh = \"156-64\"\nblade = \"60\"\nload = \"20 N/cm\"\nangle = 60")
	shop := file.BuiltInShop()
	p, errs := choose.Make(plantest.Job(t, src, shop), shop)
	if p != nil || len(errs) != 1 {
		t.Fatalf("plan %v, errors %v; one error is wanted", p, errs)
	}
	got := errs[0].Error()
	line := strings.Count(src[:strings.Index(src, "angle")], "\n") + 1
	for _, want := range []string{"job.toml:" + itoa(line) + ":9: location \"front\", screen 1: angle: ", "folds over", "a harder or thicker blade"} {
		if !strings.Contains(got, want) {
			t.Errorf("%q lacks %q", got, want)
		}
	}
}

func itoa(n int) string { b, _ := json.Marshal(n); return string(b) }

// TestMendsMend: what a warning says would mend a screen does mend it.
func TestMendsMend(t *testing.T) {
	screen := func(mesh, eom, more string) plan.Screen {
		return screenOf(t, one("", "ink = \"plastisol white\"\nuse = \"solid\"\nfeature = \"3 mm\"\nfilm = \"70..90 um\"\nhits = 1\nmesh = \""+mesh+"\"\neom = \""+eom+"\"\n"+more))
	}
	s := screen("230-48", "20 %", "")
	if s.MeetsAll {
		t.Fatalf("70 um through 230-48 is said to hold: %g um", s.CuredUM.Value)
	}
	var mended int
	for _, w := range s.Warnings {
		switch w.Code {
		case "mend-mesh":
			mended++
			if got := screen(w.Names["mesh"], "20 %", ""); !got.MeetsAll {
				t.Errorf("mesh %s is said to mend it; it gives %g um", w.Names["mesh"], got.CuredUM.Value)
			}
		case "mend-eom":
			mended++
			if got := screen("230-48", jsonNumber(w.Values["eom_um"])+" um", ""); !got.MeetsAll {
				t.Errorf("EOM %g um is said to mend it; it gives %g um", w.Values["eom_um"], got.CuredUM.Value)
			}
		case "mend-unfix":
			mended++
			if got := screenOf(t, one("", "ink = \"plastisol white\"\nuse = \"solid\"\nfeature = \"3 mm\"\nfilm = \"70..90 um\"\nmesh = \"230-48\"\neom = \"20 %\"\n")); !got.MeetsAll || got.Hits < 2 {
				t.Errorf("a free count of hits is said to mend it; %d hits give %g um", got.Hits, got.CuredUM.Value)
			}
		case "film-thin":
			if math.Abs(w.Values["short_um"]-(70-s.CuredUM.Value)) > 1e-9 {
				t.Errorf("short by %g um; 70 - %g is %g", w.Values["short_um"], s.CuredUM.Value, 70-s.CuredUM.Value)
			}
		}
	}
	if mended < 3 {
		t.Errorf("warnings %q; mesh, EOM and a second hit are known to mend it", codesOf(s))
	}
	l := screenOf(t, one("", "mesh = \"355-34\"\nhalftone = { lines = \"100 lpi\", smallest = \"3 %\" }\nblade = \"70\"\nangle = 15"))
	for _, w := range l.Warnings {
		if w.Code == "mend-lines" {
			got := screenOf(t, one("", "mesh = \"355-34\"\nhalftone = { lines = \""+jsonNumber(w.Values["lines_per_inch"])+" lpi\", smallest = \"3 %\" }\nblade = \"70\"\nangle = 15"))
			if !got.MeetsAll {
				t.Errorf("%g lines are said to mend it: %s", w.Values["lines_per_inch"], codesOf(got))
			}
			return
		}
	}
	t.Errorf("100 lines with a 70 at 15°: warnings %q; a coarser line count is known to mend it", codesOf(l))
}

func jsonNumber(x float64) string { b, _ := json.Marshal(x); return string(b) }

// TestCorrectionsComeTrue: a correction put into the job file (a sharp edge: into the shop file)
// gives the film that it promised.
func TestCorrectionsComeTrue(t *testing.T) {
	const rack = "[[blade]]\nlayup=\"60\"\n[[blade]]\nlayup=\"70\"\nedge=\"used\"\n[[blade]]\nlayup=\"70/90/70\"\n[[blade]]\nlayup=\"80\"\n" +
		"[[mesh]]\nmesh=\"110-80\"\n[[mesh]]\nmesh=\"156-64\"\n[[mesh]]\nmesh=\"230-48\"\n"
	keys := map[string]string{"blade": `blade = "70"`, "angle": "angle = 20", "hits": "hits = 1", "strokes": "strokes = 2", "mesh": `mesh = "156-64"`, "eom": `eom = "12 um"`}
	plan := func(keys map[string]string, rack string) plan.Screen {
		src := "ink = \"plastisol\"\n"
		for _, k := range []string{"blade", "angle", "hits", "strokes", "mesh", "eom"} {
			src += keys[k] + "\n"
		}
		return screenIn(t, one("", src), rack)
	}
	s := plan(keys, rack)
	kinds := map[string]int{}
	for i, c := range s.Corrections {
		changed, with := maps.Clone(keys), rack
		switch c.Kind {
		case "angle", "strokes", "hits":
			changed[c.Kind] = c.Kind + " = " + c.To
		case "eom":
			changed[c.Kind] = `eom = "` + c.To + ` um"`
		case "edge":
			with = strings.Replace(rack, "used", c.To, 1)
		default:
			changed[c.Kind] = c.Kind + ` = "` + c.To + `"`
		}
		got := plan(changed, with).CuredUM.Value
		if math.Abs(got-c.CuredUM) > 1e-12*got || math.Abs(s.CuredUM.Value+c.DeltaUM-got) > 1e-9*got {
			t.Errorf("%s %s promises %g um (%+g), the job then gives %g um", c.Kind, c.To, c.CuredUM, c.DeltaUM, got)
		}
		if !(c.DeltaBandUM.Low <= c.DeltaUM && c.DeltaUM <= c.DeltaBandUM.High && c.Cost > 0) {
			t.Errorf("%s %s: %g um in the band %v, cost %g", c.Kind, c.To, c.DeltaUM, c.DeltaBandUM, c.Cost)
		}
		if i > 0 {
			worth := func(c planCorrection) float64 { return math.Abs(math.Log1p(c.DeltaPercent/100)) / c.Cost }
			if worth(c) > worth(s.Corrections[i-1])*(1+1e-12) {
				t.Errorf("%s %s stands behind %s, which is worth less", c.Kind, c.To, s.Corrections[i-1].Kind)
			}
		}
		kinds[c.Kind]++
	}
	want := map[string]int{"angle": 4, "strokes": 2, "hits": 1, "blade": 3, "edge": 1, "eom": 2, "mesh": 2}
	if !maps.Equal(kinds, want) {
		t.Errorf("corrections %v; %v are to be had", kinds, want)
	}
}

type planCorrection = plan.Correction

// TestDisturbed: what a change disturbs beside the film is said.
func TestDisturbed(t *testing.T) {
	src := "title = \"t\"\n[[location]]\nname = \"front\"\n" +
		"[[location.screen]]\nuse = \"underbase\"\nmesh = \"156-64\"\nblade = \"70\"\nangle = 20\nstrokes = 1\nfinest = \"0.5 mm\"\n[[location.screen]]\n"
	s := screenOf(t, src)
	says := func(kind, to, what string, want bool) {
		t.Helper()
		for _, c := range s.Corrections {
			if c.Kind == kind && c.To == to {
				if got := slices.Contains(c.Disturbs, what); got != want {
					t.Errorf("%s %s disturbs %v; %s is %v", kind, to, c.Disturbs, what, want)
				}
				return
			}
		}
		t.Errorf("no correction %s %s", kind, to)
	}
	if !s.Flash.Needed {
		t.Fatal("the base is not flashed")
	}
	says("strokes", "2", "flash", true)
	says("angle", "15", "flash", false)
	says("angle", "30", "detail", true)
	says("angle", "15", "detail", false)
	says("eom", number(math.Round(s.Stencil.EOMUM+5)), "screen", true)
}

func number(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

// TestAnyJob: whatever valid job comes, the Plan is finite, ordered and true to its own figures,
// or there is an error that says why.
func TestAnyJob(t *testing.T) {
	shop := file.BuiltInShop()
	rapid.Check(t, func(t *rapid.T) {
		j := &job.Job{Title: "t", Locations: []job.Location{{Name: "front", WidthMM: rapid.Float64Range(0, 420).Draw(t, "width")}}}
		s := job.Screen{
			Use:       rapid.SampledFrom([]string{"", "underbase", "solid", "detail", "halftone", "highlight", "blocker", "raised", "clear"}).Draw(t, "use"),
			InkName:   rapid.SampledFrom([]string{"", "plastisol", "plastisol white", "water-based", "plastisol puff", "solvent graphics"}).Draw(t, "ink"),
			FinestMM:  rapid.SampledFrom([]float64{0, 0.05, 0.1, 0.3, 1, 5}).Draw(t, "finest"),
			Strokes:   rapid.SampledFrom([]int{0, 0, 0, 1, 3, 6}).Draw(t, "strokes"),
			BladeName: rapid.SampledFrom([]string{"", "", "", "60", "70/90/70"}).Draw(t, "blade"),
			LoadNCM:   rapid.SampledFrom([]float64{0, 0.5, 2, 8, 20}).Draw(t, "load"),
		}
		if !rapid.Bool().Draw(t, "open mesh") {
			s.MeshName = rapid.SampledFrom(shop.Meshes).Draw(t, "mesh").Name
		}
		if low := rapid.Float64Range(0, 300).Draw(t, "low"); low > 1 {
			s.FilmUM = &job.Range{Low: low, High: low * rapid.Float64Range(1, 3).Draw(t, "spread")}
		}
		if a := rapid.Float64Range(-60, 60).Draw(t, "angle"); a >= 0 {
			s.AngleDeg = &a
		}
		if lines := rapid.Float64Range(-100, 100).Draw(t, "lines"); lines > 5 {
			s.Halftone = &job.Halftone{LinesPerInch: lines}
		}
		if rapid.Bool().Draw(t, "garment") {
			j.Garment = &job.Garment{
				Fibre: rapid.SampledFrom([]string{"", "cotton", "polyester", "blend", "tri-blend", "nylon"}).Draw(t, "fibre"),
				Shade: rapid.SampledFrom([]string{"", "light", "medium", "dark"}).Draw(t, "shade"),
			}
		}
		j.Quantity = rapid.IntRange(0, 5000).Draw(t, "quantity")
		j.Press = rapid.SampledFrom([]string{"", "automatic", "manual"}).Draw(t, "press")
		j.Locations[0].HeightMM = rapid.Float64Range(0, 400).Draw(t, "height")
		s.Coverage = rapid.SampledFrom([]float64{0, 0.02, 0.5, 1}).Draw(t, "coverage")
		j.Locations[0].Screens = []job.Screen{s, {Use: "solid"}}
		if errs := job.Resolve(j, shop); errs != nil {
			return // not a valid job
		}
		p, errs := choose.Make(j, shop)
		if errs != nil {
			if errs[0].Wrong == "" || errs[0].Accepted == "" {
				t.Fatalf("an error that does not say why: %+v", errs[0])
			}
			return
		}
		if _, err := json.Marshal(p); err != nil {
			t.Fatal(err) // NaN and infinities do not marshal
		}
		sc := p.Locations[0].Screens[0]
		a := sc.AngleDeg
		if !(a.Low <= a.Set && a.Set <= a.High && a.Low >= 0 && a.High <= 75) {
			t.Fatalf("angles %+v", a)
		}
		if !(0 < sc.CuredUM.Low && sc.CuredUM.Low < sc.CuredUM.Value && sc.CuredUM.Value < sc.CuredUM.High) {
			t.Fatalf("cured film %+v", sc.CuredUM)
		}
		if sc.MeetsAll && !(sc.TargetUM.Low <= sc.CuredUM.Value && sc.CuredUM.Value <= sc.TargetUM.High && sc.Clears) {
			t.Fatalf("all demands are said to be met with %+v of %+v, clears %v", sc.CuredUM, sc.TargetUM, sc.Clears)
		}
		if g := sc.InkGPerPrint; g != nil && !(*g > 0 && *g < 1e5) {
			t.Fatalf("%g g a print", *g)
		}
		if f := sc.Flash.Seconds; f != nil && !(0 < f.Low && f.Low < f.High && f.High < 1000) {
			t.Fatalf("flash %+v", *f)
		}
		if b := sc.Cure.BeltMPerMin; b != nil && !(0 < b.Low && b.Low <= b.High) {
			t.Fatalf("belt %+v", *b)
		}
		if o := sc.OffContact; !(0 < o.Low && o.Low <= o.High && o.High < 10) {
			t.Fatalf("off-contact %+v", o)
		}
		if !sc.MeetsAll && len(sc.Warnings) == 0 {
			t.Fatal("a demand is missed and no warning says so")
		}
		if last := sc.Reasons[len(sc.Reasons)-1]; math.Abs(last.FilmUM-sc.CuredUM.Value) > 1e-9*last.FilmUM {
			t.Fatalf("the path ends at %g um, the setup at %g um", last.FilmUM, sc.CuredUM.Value)
		}
		if k := s.AngleDeg; k != nil && a.Set != *k {
			t.Fatalf("angle %g set by the job, %g planned", *k, a.Set)
		}
	})
}

// TestSameTwice: the same job and shop give the same Plan to the last bit.
func TestSameTwice(t *testing.T) {
	src := one("", "ink = \"plastisol white\"\nuse = \"underbase\"")
	a, _ := json.Marshal(planOf(t, src))
	b, _ := json.Marshal(planOf(t, src))
	if string(a) != string(b) {
		t.Errorf("two plans of one job differ:\n%s\n%s", a, b)
	}
}
