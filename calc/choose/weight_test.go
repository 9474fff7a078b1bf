package choose_test

import (
	"bytes"
	"math"
	"strings"
	"testing"

	"bladecard/calc/choose"
	"bladecard/calc/file"
	"bladecard/calc/fit"
	"bladecard/calc/presslog"
)

// TestWeightsBothWays: a log of a plan whose prints gain just what the plan says says just the plan's film, on
// cotton, on woven nylon, on a base and on a sheet.
func TestWeightsBothWays(t *testing.T) {
	const size = "width = \"20 cm\"\nheight = \"15 cm\"\n"
	for name, head := range map[string]string{
		"cotton knit": "[garment]\nfibre = \"cotton\"\n", "knit": "", "nylon woven": "[garment]\nfibre = \"nylon\"\nweave = \"woven\"\n", "none": "[stock]\nkind = \"board\"\n",
	} {
		ink := "plastisol"
		if name == "none" {
			ink = "uv graphics"
		}
		p := planOf(t, "title = \"t\"\njob = \"7\"\n"+head+"[[location]]\nname = \"front\"\n"+size+
			"[[location.screen]]\ncolor = \"white\"\nuse = \"underbase\"\nmesh = \"156-64\"\ncoverage = \"30 %\"\nink = \""+strings.Replace(ink, "plastisol", "plastisol white", 1)+"\"\nfilm = \"10..80 um\"\n"+
			"[[location.screen]]\ncolor = \"red\"\nmesh = \"156-64\"\ncoverage = \"20 %\"\nink = \""+ink+"\"\nfilm = \"10..60 um\"\n")
		rows := choose.LogOf(p)
		if rows[0].Cloth != name || rows[1].Cloth != "none" {
			t.Errorf("%s: the log says %q and, on the base, %q", name, rows[0].Cloth, rows[1].Cloth)
		}
		for i, s := range p.Locations[0].Screens {
			rows[i].BeforeG, rows[i].AfterG, rows[i].AreaCM2 = 150, 150+*s.InkGPerPrint, 20*15*[]float64{0.3, 0.2}[i]
		}
		var csv bytes.Buffer
		if err := presslog.Write(&csv, rows); err != nil {
			t.Fatal(err)
		}
		prints, _, errs := choose.Prints("l.csv", csv.Bytes(), file.BuiltInShop())
		if errs != nil {
			t.Fatal(errs)
		}
		for i, s := range p.Locations[0].Screens {
			if got := prints[i].MeasuredUM; math.Abs(got/s.CuredUM.Value-1) > 1e-6 {
				t.Errorf("%s, screen %d: the weight of a print of %g um says %g um", name, i+1, s.CuredUM.Value, got)
			}
			if want := s.SinksHalfUM / 1.6449 / s.WetUM.Value; math.Abs(prints[i].Doubt-want) > 1e-6 {
				t.Errorf("%s, screen %d: doubt %g; %g is wanted", name, i+1, prints[i].Doubt, want)
			}
		}
	}
}

// TestWeighedLogIsNoBetterThanItsCloth: however many prints are weighed on one cloth, the factor stays as uncertain
// as what the cloth takes in; a log by comb has no such floor.
func TestWeighedLogIsNoBetterThanItsCloth(t *testing.T) {
	of := func(doubt float64) float64 {
		var prints []fit.Print
		for i := range 200 {
			prints = append(prints, fit.Print{Mesh: "156-64", Blade: "70", Day: string(rune('a' + i%20)), AngleDeg: 15, HardnessShoreA: 70, Strokes: 1,
				PredictedUM: 30, MeasuredUM: 33 * math.Exp(0.02*float64(i%5-2)), Doubt: doubt})
		}
		r, err := fit.Shop(prints, fit.Expected())
		if err != nil {
			t.Fatal(err)
		}
		return r.Meshes[0].Error
	}
	comb, weight := of(0), of(0.05)
	if !(comb < 0.03 && math.Abs(weight-math.Hypot(comb, 0.05)) < 1e-12) {
		t.Errorf("by comb the factor is off by %g, by weight by %g", comb, weight)
	}
}
