package trialsheet_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"bladecard/calc/fit"
	"bladecard/calc/trials"
	"bladecard/render/flow"
	"bladecard/render/page"
	"bladecard/render/pagecheck"
	"bladecard/render/say"
	"bladecard/render/trialsheet"
)

// TestPages: the sheet keeps to its pages in both languages, on both papers and in both systems of units, with names
// of any length; every print has a row, and each of its boxes to write in is large enough for a hand.
func TestPages(t *testing.T) {
	var setups []fit.Print
	for _, mesh := range []string{"110-80", "156-64", "a mesh with a name that no column is made for, and longer still"} {
		for _, shoreA := range []float64{60, 80} {
			for _, deg := range []float64{10, 20, 30} {
				for strokes := 1; strokes <= 2; strokes++ {
					setups = append(setups, fit.Print{Mesh: mesh, Blade: fmt.Sprintf("%g, the long one from the upper drawer", shoreA), AngleDeg: deg, HardnessShoreA: shoreA, Strokes: strokes, PredictedUM: 30})
				}
			}
		}
	}
	l := trials.Usual()
	l.Days = 2
	plan, err := trials.Plan(setups, fit.Expected(), l, 1)
	if err != nil {
		t.Fatal(err)
	}
	for _, language := range []string{"en", "es"} {
		for _, units := range []string{"metric", "inch"} {
			for _, paper := range []page.Paper{page.A4, page.Letter} {
				v, err := say.New(language, units)
				if err != nil {
					t.Fatal(err)
				}
				faces, err := trialsheet.Pages(plan, trialsheet.Shop{Name: "Kiln Lane Print Works", Press: "big carousel", Ink: "plastisol", PatchMM: 100}, paper, v)
				if err != nil {
					t.Fatal(err)
				}
				rows, lines := map[string]bool{}, make([]bool, len(plan.Prints))
				for _, f := range faces {
					for _, err := range pagecheck.Check(f, flow.SmallPT) {
						t.Errorf("%s, %s, %s: %v", language, units, paper.Name, err)
					}
					for _, b := range f.Boxes {
						if b.Kind == page.KindFill && b.Fill == nil && (b.W < 9 || b.H < 8) {
							t.Errorf("%s: %s is %.1f x %.1f mm", language, b.Name, b.W, b.H)
						}
						if after, is := strings.CutPrefix(b.Name, "change before "); is && !slices.ContainsFunc(f.Boxes, func(o page.Box) bool { return o.Name == after+" #" && o.Y >= b.Y }) {
							t.Errorf("%s: the line of a change stands without %s below it", language, after)
						}
						for i := range plan.Prints {
							if b.Name == fmt.Sprintf("print %d #", i+1) {
								rows[b.Name] = true
							}
							lines[i] = lines[i] || b.Name == fmt.Sprintf("change before print %d", i+1)
						}
					}
				}
				for i, p := range plan.Prints {
					last := fit.Print{}
					if i > 0 {
						last = plan.Prints[i-1]
					}
					if changed := p.Day != last.Day || p.Mesh != last.Mesh || p.Blade != last.Blade; lines[i] != changed {
						t.Errorf("%s: print %d: screen or blade changed %v, a line above it %v", language, i+1, changed, lines[i])
					}
				}
				if len(rows) != len(plan.Prints) {
					t.Errorf("%s: %d of %d prints have a row", language, len(rows), len(plan.Prints))
				}
			}
		}
	}
}
