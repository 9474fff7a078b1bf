package choose_test

import (
	"math"
	"testing"

	"bladecard/calc/plan"
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
