package card_test

import (
	"strings"
	"testing"

	"bladecard/calc/plan"
	"bladecard/render/internal/plantest"
	"bladecard/render/page"
	"bladecard/templates"
)

// ran is a last run that differs in all that it may, of a mesh, a blade and a name called so.
func ran(name string) *plan.LastRun {
	f := func(v float64) *float64 { return &v }
	return &plan.LastRun{
		Date: "2026-11-10", Mesh: name, EOMUM: f(25), Ink: name, Blade: name, AngleDeg: 22.5, LoadNPerCM: f(6), AirBar: f(2.5), Strokes: 2, Hits: 2, FlashS: f(9),
		CuredUM: f(300), CuredFrom: "comb", Wiped: "no", CureC: f(162), Wash: "pass", Name: name,
		Differences: []plan.Difference{
			{What: "mesh", Then: name, Now: "156-64"}, {What: "eom", Was: f(25), Is: f(12)}, {What: "ink", Then: name, Now: "plastisol"}, {What: "blade", Then: name, Now: "65/90/65"},
			{What: "angle", Was: f(22.5), Is: f(15)}, {What: "strokes", Was: f(2), Is: f(1)}, {What: "hits", Was: f(2), Is: f(1)}, {What: "load", Was: f(6), Is: f(5)},
			{What: "air", Was: f(2.5), Is: f(2.1)}, {What: "flash", Was: f(9), Is: f(5)}, {What: "film", Was: f(300), Is: f(34), Range: &plan.Band{Low: 24, Value: 34, High: 48}},
		},
	}
}

// lines is how many boxes of a name stand on a face, and the first one's text.
func lines(f page.Face, name string) (n int, first string) {
	for _, b := range f.Boxes {
		if strings.HasPrefix(b.Name, name) {
			if n++; n == 1 {
				first = b.Text
			}
		}
	}
	return n, first
}

// TestLastRun: what the screen ran with last stands on the back of every size, in at most three lines, whatever the
// names, and the card keeps to its rules; where nothing ran, nothing stands.
func TestLastRun(t *testing.T) {
	t.Parallel()
	usual := ran("70")
	usual.Differences = usual.Differences[3:5]
	for _, language := range templates.Languages() {
		for name, last := range map[string]*plan.LastRun{"none": nil, "usual": usual, "all": ran("70"), "long": ran(strings.Repeat("W", 200)), "words": ran(strings.Repeat("Ärger ", 33))} {
			j, shop := plantest.Job(t, ".", "title = \"Towpath tees\"\n[garment]\nshade = \"dark\"\n[[location]]\n[[location.screen]]\ncolor = \"white\"\nuse = \"underbase\"\n[[location.screen]]\ncolor = \"red\"\n")
			shop.Language = language
			if name == "all" {
				shop.Units = "inch"
			}
			p, v := plantest.Plan(t, j, shop)
			for i := range p.Locations[0].Screens {
				p.Locations[0].Screens[i].Last = last
			}
			for _, size := range page.Sizes {
				for _, c := range sound(t, p, v, size) {
					n, text := lines(c.Back, "last run")
					switch head, _, _ := strings.Cut(v.T("last.line"), "{"); {
					case last == nil && n > 0, last != nil && (n < 1 || n > 3):
						t.Errorf("%s %s %s, %s: %d lines", language, size.Name, name, c.Back.Name, n)
					case last != nil && !strings.HasPrefix(text, head):
						t.Errorf("%s %s %s, %s: begins %q", language, size.Name, name, c.Back.Name, text)
					case name == "usual" && n == 1 && strings.Contains(text, "…"):
						t.Errorf("%s %s, %s: cut to %q", language, size.Name, c.Back.Name, text)
					}
				}
			}
			if t.Failed() {
				t.FailNow()
			}
		}
	}
}
