package card_test

import (
	"strings"
	"testing"
	"unicode"

	"bladecard/render/card"
	"bladecard/render/internal/plantest"
	"bladecard/render/page"
	"bladecard/templates"
)

// TestReadsFromOneMeter: what hands set is large on every front of the samples, in every language: the figures of
// two places most, those of more places, layups and the words of a hand press a little less; flash and head too.
func TestReadsFromOneMeter(t *testing.T) {
	for _, src := range append(sampleJobs(t), tiles...) {
		for _, language := range templates.Languages() {
			j, shop := plantest.Job(t, "../../samples/jobs", src)
			shop.Language = language
			p, v := plantest.Plan(t, j, shop)
			cards, err := all(p, page.Card132, v)
			if err != nil {
				t.Fatal(err)
			}
			for _, c := range cards {
				read := 0
				for _, b := range c.Front.Boxes {
					least := card.BigPT
					switch b.Name {
					default:
						continue
					case "head", "flash time", "color":
						least = card.FactPT
					case "blade", "angle", "strokes", "air":
						if strings.ContainsFunc(b.Text, unicode.IsLetter) || strings.Contains(b.Text, "/") {
							least = 18
						} else if len([]rune(b.Text)) > 4 {
							least = 28
						}
					}
					if read++; b.Font.SizePT < least {
						t.Errorf("%s: %s: %s %q is %g pt; %g pt is wanted", language, c.Front.Name, b.Name, b.Text, b.Font.SizePT, least)
					}
				}
				if read < 6 {
					t.Errorf("%s: %s has %d of head, color and four figures", language, c.Front.Name, read)
				}
			}
		}
	}
}

// TestTitleStandsForNumber: the front of a job without a number names the job by its title, and leaves the location
// its room beside a long one.
func TestTitleStandsForNumber(t *testing.T) {
	for _, title := range []string{"Tote bags", strings.Repeat("harbor festival ", 12) + "crew"} {
		p, v := plantest.Text(t, ".", "title = \""+title+"\"\n[[location]]\nname = \"left sleeve\"\n[[location.screen]]\ncolor = \"navy\"\n[[location.screen]]\ncolor = \"red\"\n")
		for _, size := range page.Sizes {
			for _, c := range sound(t, p, v, size) {
				words := joined(c.Front)
				head, tail, cut := strings.Cut(words["job title"], "…")
				if !strings.HasPrefix(title, strings.TrimSpace(head)) || !strings.HasSuffix(title, strings.TrimSpace(tail)) || head == "" || cut != (len(title) > 40) {
					t.Errorf("%s: the front of %q says %q", size.Name, title, words["job title"])
				}
				if !strings.Contains(words["location"], "left sleeve") {
					t.Errorf("%s: beside %q the location reads %q", size.Name, words["job title"], words["location"])
				}
			}
		}
	}
}

// TestNextIsWhole: where the garment goes next is never cut, beside the widest off-contact in every language.
func TestNextIsWhole(t *testing.T) {
	for _, language := range templates.Languages() {
		for _, units := range []string{"metric", "inch"} {
			j, shop := plantest.Job(t, ".", "title = \"t\"\npress = \"manual\"\n[[location]]\n[[location.screen]]\ncolor = \"white, mixed for the harbor wall\"\nhits = 2\n[[location.screen]]\ncolor = \"white, mixed for the harbor wall\"\n[[location.screen]]\ncolor = \"red\"\nhits = 2\n")
			shop.Language, shop.Units = language, units
			p, v := plantest.Plan(t, j, shop)
			for i := range p.Locations[0].Screens {
				p.Locations[0].Screens[i].OffContact.Low, p.Locations[0].Screens[i].OffContact.High = 1.5875, 12.7
			}
			for _, size := range page.Sizes {
				for _, c := range sound(t, p, v, size) {
					if next := joined(c.Front)["next"]; next == "" || strings.Contains(next, "…") {
						t.Errorf("%s %s %s: %s says %q", language, units, size.Name, c.Front.Name, next)
					}
				}
			}
		}
	}
}

// TestNextAfterLastHead: the one card that hangs at both heads of a last color says where the garment goes from the
// second, and names the heads in the plural.
func TestNextAfterLastHead(t *testing.T) {
	for _, c := range []struct{ language, after, label, next string }{
		{"en", "", "HEADS", "next: head 4, then dryer"},
		{"es", "", "CABEZALES", "sigue 4, luego al horno"},
		{"en", "[[location.screen]]\ncolor = \"red\"\n", "HEADS", "next: same color, head 4"},
	} {
		j, shop := plantest.Job(t, ".", "title = \"t\"\n[[location]]\n[[location.screen]]\ncolor = \"white\"\nhits = 2\n"+c.after)
		shop.Language = c.language
		p, v := plantest.Plan(t, j, shop)
		words := joined(sound(t, p, v, page.Card132)[0].Front)
		if words["head label"] != c.label || words["next"] != c.next {
			t.Errorf("%s: %q over %q, %q", c.language, words["head label"], words["head"], words["next"])
		}
	}
}
