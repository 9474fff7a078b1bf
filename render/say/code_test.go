package say_test

import (
	"strings"
	"testing"

	"bladecard/calc/plan"
	"bladecard/render/figure"
	"bladecard/render/say"
)

// TestCodes: however long the names and however many the screens, the codes fit their places and tell of the first ones.
func TestCodes(t *testing.T) {
	for _, language := range []string{"en", "es"} {
		for _, units := range []string{"metric", "inch"} {
			v, err := say.New(language, units)
			if err != nil {
				t.Fatal(err)
			}
			long := strings.Repeat("ñame ", 40)
			s := plan.Screen{
				Number: 1, Of: 16, Heads: []int{10, 12}, Color: long, Ink: long, Mesh: plan.Mesh{Name: "120/cm-34"}, Stencil: plan.Stencil{EOMUM: 120},
				Blade: plan.Blade{Layup: "65/90/65", LengthMM: 360, Edge: "new"}, AngleDeg: plan.SetRange{Low: 12.5, Set: 17.5, High: 27.5}, Strokes: 3, Hits: 2,
				CuredUM: plan.Band{Low: 105, Value: 150, High: 215}, LoadClass: "medium", Flash: plan.Flash{Needed: true, Does: "gel", Seconds: &plan.Interval{Low: 10, High: 20}},
			}
			p := &plan.Plan{Job: strings.Repeat("W", 32), Title: long}
			l := plan.Location{Name: long}
			for range 16 {
				l.Screens = append(l.Screens, s)
			}
			p.Locations = []plan.Location{l}
			card, sheet := v.ScreenCode(p, l, s), v.JobCode(p)
			if _, err := figure.Code(card, 18.5); err != nil {
				t.Errorf("%s, %s: card: %v: %q", language, units, err, card)
			}
			if _, err := figure.Code(sheet, 24); err != nil {
				t.Errorf("%s, %s: sheet: %v: %q", language, units, err, sheet)
			}
			if !strings.Contains(card, "65/90/65") || !strings.HasPrefix(card, "WWWWWWWW") || !strings.Contains(sheet, "\n1/1 120/cm-34 65/90/65") || !strings.Contains(sheet, "\n+ ") {
				t.Errorf("%q, %q", card, sheet)
			}
		}
	}
}
