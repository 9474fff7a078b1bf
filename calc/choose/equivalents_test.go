package choose_test

import (
	"math"
	"slices"
	"testing"

	"bladecard/calc/file"
	"bladecard/calc/plan"
	"bladecard/calc/plantest"
)

// TestEquivalentsOfAMiss: where the setup misses a demand, the others give its film inside its
// band, lean no more than it or the limit, clear as it does, and are said to share the miss.
func TestEquivalentsOfAMiss(t *testing.T) {
	for name, screen := range map[string]string{
		"thin":        "ink = \"plastisol\"\nfilm = \"60..65 um\"\nstrokes = 1\nhits = 1\n",
		"halftone":    "ink = \"plastisol\"\nfilm = \"120..130 um\"\nhits = 1\nfinest = \"0.1 mm\"\n",
		"leans":       "ink = \"plastisol\"\nangle = 35\nfinest = \"0.2 mm\"\nfilm = \"10..70 um\"\n",
		"fixed blade": "ink = \"plastisol\"\nblade = \"80\"\nfilm = \"60..65 um\"\nstrokes = 1\nhits = 1\n",
	} {
		const mesh, eom = "mesh = \"156-64\"\n", "eom = \"12 um\"\n"
		s := screenOf(t, one("", screen+mesh+eom))
		if s.MeetsAll {
			t.Errorf("%s meets all demands", name)
		}
		if len(s.Equivalents) == 0 {
			t.Errorf("%s has no equivalent", name)
		}
		limit := s.EdgeAngleDeg
		if s.EdgeLimitDeg != nil {
			limit = math.Max(limit, *s.EdgeLimitDeg)
		}
		for _, e := range s.Equivalents {
			if !(e.CuredUM >= s.CuredUM.Low && e.CuredUM <= s.CuredUM.High) {
				t.Errorf("%s: %+v is outside the band %+v", name, e, s.CuredUM)
			}
			rest := "ink = \"plastisol\"\nfilm = \"1..500 um\"\n" + eom
			got := screenOf(t, one("", rest+"mesh = \""+e.Mesh+"\"\nblade = \""+e.Blade+"\"\nangle = "+jsonNumber(e.AngleDeg)+"\nstrokes = "+itoa(e.Strokes)+"\nhits = "+itoa(e.Hits)))
			if math.Abs(got.CuredUM.Value-e.CuredUM) > 1e-9*e.CuredUM {
				t.Errorf("%s: %+v in a job gives %g um", name, e, got.CuredUM.Value)
			}
			if got.EdgeAngleDeg > limit+1e-9 {
				t.Errorf("%s: %+v leans to %g deg; the setup to %g, the limit counted in", name, e, got.EdgeAngleDeg, limit)
			}
			if s.Clears && !got.Clears {
				t.Errorf("%s: %+v leaves ink", name, e)
			}
			if name == "thin" && !e.SharesMiss {
				t.Errorf("%s: %+v is said to meet all demands", name, e)
			}
		}
	}
}

// TestEquivalentsStandAlone: an equivalent carries all that another shop sets.
func TestEquivalentsStandAlone(t *testing.T) {
	fixed := "blade = \"70\"\n"
	for _, blade := range []string{"", fixed} {
		s := screenOf(t, one("", "ink = \"plastisol\"\nmesh = \"156-64\"\nload = \"4 N/cm\"\nfilm = \"20..60 um\"\n"+blade))
		kinds := map[string][]plan.Equivalent{}
		for _, e := range s.Equivalents {
			kinds[e.Kind] = append(kinds[e.Kind], e)
			if e.LoadNPerCM != 4 || e.ToScreen != 90-e.AngleDeg || !(e.EOMUM > 0) || e.Layup == "" || !(e.ThicknessMM > 0) || !(e.FreeHeightMM > 0) || e.Edge == "" || e.SharesMiss {
				t.Errorf("%q: %+v", blade, e)
			}
			if e.Kind == "blade" && (e.Mesh != s.Mesh.Name || e.EOMUM != s.Stencil.EOMUM || e.Blade == s.Blade.Name) {
				t.Errorf("%q: another blade on the same screen: %+v", blade, e)
			}
			if e.Kind == "mesh" && (e.Mesh == s.Mesh.Name || blade == fixed && e.Layup != "70") {
				t.Errorf("%q: another mesh: %+v", blade, e)
			}
		}
		if len(kinds["blade"]) < 3 || len(kinds["mesh"]) == 0 {
			t.Errorf("%q: equivalents %v; other blades and meshes are wanted, though the job fixes the blade", blade, kinds)
		}
	}
}

// TestEquivalentsStayInTarget: a setup that misses something else, here a blade that the job fixes and that is too
// short, keeps its film in the target, and no blade that is too short stands in for it.
func TestEquivalentsStayInTarget(t *testing.T) {
	shop, errs := file.DecodeShop("shop.toml", []byte(`
[[blade]]
layup = "60"
lengths = ["30 cm"]
[[blade]]
layup = "65/90/65"
lengths = ["30 cm"]
[[blade]]
layup = "70"
lengths = ["60 cm"]
`))
	if errs != nil {
		t.Fatal(errs)
	}
	s := plantest.Plan(t, `title = "t"
[[location]]
width = "45 cm"
height = "30 cm"
[[location.screen]]
ink = "plastisol puff"
use = "raised"
blade = "60"
angle = 30
mesh = "125-70"
film = "175..195 um"
`, shop).Locations[0].Screens[0]
	short := slices.ContainsFunc(s.Warnings, func(w plan.Warning) bool { return w.Code == "blade-short" })
	if !short || s.CuredUM.Value < s.TargetUM.Low || s.CuredUM.Value > s.TargetUM.High {
		t.Fatalf("%+v, film %v of %v: a blade that is too short and a film in its target are wanted", s.Warnings, s.CuredUM, s.TargetUM)
	}
	blades := 0
	for _, e := range s.Equivalents {
		if e.CuredUM < s.TargetUM.Low-1e-9 || e.CuredUM > s.TargetUM.High+1e-9 {
			t.Errorf("%s %s on %s lays %g um of %v", e.Kind, e.Blade, e.Mesh, e.CuredUM, s.TargetUM)
		}
		if e.Kind == "blade" {
			if blades++; e.Blade != "70" {
				t.Errorf("blade %s is too short as well", e.Blade)
			}
		}
	}
	if blades != 1 {
		t.Errorf("%d other blades; 70 is wanted: %+v", blades, s.Equivalents)
	}
}
