package card_test

import (
	"strings"
	"testing"

	"bladecard/calc/plan"
	"bladecard/render/canvas"
	"bladecard/render/internal/plantest"
	"bladecard/render/page"
	"bladecard/templates"
)

// TestColumnsMakeRoom: in every language and on every size, in mm and in inches, the columns under the head leave
// room for length and edge of the blade and for the range with its word, which the smallest card in inches may leave
// out, and no word stands close to the lines between them.
func TestColumnsMakeRoom(t *testing.T) {
	for _, src := range sampleJobs(t) {
		for _, language := range templates.Bases() {
			for _, units := range []string{"metric", "inch"} {
				j, shop := plantest.Job(t, "../../samples/jobs", src)
				shop.Language, shop.Units = language, units
				p, v := plantest.Plan(t, j, shop)
				for _, size := range page.Sizes {
					cards, err := all(p, size, v)
					if err != nil {
						t.Fatal(err)
					}
					n := 0
					for _, l := range p.Locations {
						for _, s := range l.Screens {
							front := cards[n].Front
							n++
							var lines []float64
							for _, b := range front.Boxes {
								if strings.HasPrefix(b.Name, "after the ") {
									lines = append(lines, b.X)
								}
							}
							for _, b := range front.Boxes {
								want := b.Text
								switch b.Name {
								case "angle fact":
									want = v.T("card.hold", "range", v.AngleRange(s.AngleDeg.Low, s.AngleDeg.High))
								case "blade fact":
									want = v.BladeFact(s.Blade)[0]
								}
								least := units == "inch" && size.Name == page.Card132.Name && strings.HasSuffix(want, b.Text)
								if b.Text != want && !(least && b.Name == "angle fact") {
									t.Errorf("%s %s %s: %s is %q instead of %q", language, units, size.Name, b.Name, b.Text, want)
								}
								if !strings.HasSuffix(b.Name, " fact") && !strings.HasSuffix(b.Name, " label") {
									continue
								}
								wide := canvas.Width(b.Text, b.Font)
								for _, x := range lines {
									if middle := b.X + b.W/2; middle-wide/2 < x+1 && x-1 < middle+wide/2 {
										t.Errorf("%s %s %s: %s %q is less than 1 mm from a line", language, units, size.Name, b.Name, b.Text)
									}
								}
							}
						}
					}
				}
			}
		}
	}
}

// TestSecondsBesideWarning: a warning takes room from the tile of the flash; its seconds are larger than the words
// beside them all the same, in every language.
func TestSecondsBesideWarning(t *testing.T) {
	for _, src := range tiles {
		for _, language := range templates.Languages() {
			j, shop := plantest.Job(t, ".", src)
			shop.Language = language
			p, v := plantest.Plan(t, j, shop)
			for i := range p.Locations[0].Screens {
				p.Locations[0].Screens[i].Warnings = []plan.Warning{{Code: "dyes-migrate"}}
			}
			for _, size := range page.Sizes {
				for _, c := range sound(t, p, v, size) {
					pt := map[string]float64{}
					for _, b := range c.Front.Boxes {
						pt[b.Name] = b.Font.SizePT
					}
					if s := pt["flash time"]; s > 0 && s < 1.2*max(pt["flash"], pt["flash word"]) {
						t.Errorf("%s %s: %s: the seconds are %g pt beside a word of %g pt", language, size.Name, c.Front.Name, s, pt["flash"])
					}
				}
			}
		}
	}
}
