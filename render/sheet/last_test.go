package sheet_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"bladecard/calc/plan"
	"bladecard/render/sheet"
	"bladecard/templates"
)

// TestLastRuns: each screen that ran before has a row on the sheet with its setup, film, differences and sign-off; a
// job that has not run has no such table.
func TestLastRuns(t *testing.T) {
	src := "title = \"t\"\n[[location]]\n"
	for i := range 16 {
		src += fmt.Sprintf("[[location.screen]]\ncolor = \"color %d\"\n", i+1)
	}
	um, cure := 300.0, 162.0
	for _, language := range templates.Languages() {
		p, v := planned(t, ".", src, language, "inch", 20)
		if words := sound(t, p, v, sheet.Options{}); slices.Contains(slices.Concat(words...), v.T("last.heading")) {
			t.Errorf("%s: a job that has not run has a table of last runs", language)
		}
		for i := range p.Locations[0].Screens {
			if i%3 == 2 {
				continue
			}
			p.Locations[0].Screens[i].Last = &plan.LastRun{
				Date: "2026-11-10", Mesh: "110-80", Blade: strings.Repeat("W", 20*i+2), AngleDeg: 20, Strokes: 1, Hits: 1, CuredUM: &um, CuredFrom: "gauge", Wiped: "yes", CureC: &cure, Wash: "fail",
				Name: fmt.Sprint("No", i), Differences: []plan.Difference{{What: "mesh", Then: "110-80", Now: "156-64"}},
			}
		}
		text := strings.Join(slices.Concat(sound(t, p, v, sheet.Options{})...), " ")
		for i := range p.Locations[0].Screens {
			if name := v.T("last.signed", "name", fmt.Sprint("No", i)); strings.Contains(text, name+",") != (i%3 != 2) {
				t.Errorf("%s: screen %d is signed off in %q", language, i+1, name)
			}
		}
		for _, want := range []string{v.T("last.heading"), v.Date("2026-11-10"), "324 °F", v.T("last.what-mesh") + " 110-80"} {
			if !strings.Contains(strings.ReplaceAll(text, "\u00a0", " "), want) {
				t.Errorf("%s: no %q", language, want)
			}
		}
	}
}
