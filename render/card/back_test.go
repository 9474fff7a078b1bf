package card_test

import (
	"slices"
	"strings"
	"testing"

	"bladecard/calc/plan"
	"bladecard/calc/seen"
	"bladecard/render/canvas"
	"bladecard/render/internal/plantest"
	"bladecard/render/page"
	"bladecard/templates"
)

// boxes are the boxes of a face whose name begins so.
func boxes(f page.Face, name string) (out []page.Box) {
	for _, b := range f.Boxes {
		if strings.HasPrefix(b.Name, name) {
			out = append(out, b)
		}
	}
	return out
}

// mends is the blade to change for ink left in a screen; empty where something else comes first.
func mends(t *testing.T, p *plan.Plan, location, screen int) string {
	t.Helper()
	a, err := seen.Ask(p, location, screen, []string{seen.InkLeft}, nil)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range a.Findings[0].Changes {
		if c.Correction != nil {
			if c.Correction.Kind == "blade" {
				return c.Correction.To
			}
			break
		}
	}
	return ""
}

// TestBackScans: on the backs of all samples no line ends in the middle of a range or of a parenthesis, and none is a word;
// how to measure stands on a line a way, the label first; of the most usual faults two things to do are told; and a back
// without warnings has two rows to write on, in English beside the code.
func TestBackScans(t *testing.T) {
	t.Parallel()
	usual := []string{seen.InkLeft, seen.TooThin, seen.RaggedEdge}
	for _, language := range templates.Languages() {
		for i, src := range append(sampleJobs(t), tiles...) {
			j, shop := plantest.Job(t, "../../samples/jobs", src)
			if shop.Language = language; i%2 == 1 {
				shop.Units = "inch"
			}
			p, v := plantest.Plan(t, j, shop)
			for _, size := range page.Sizes {
				cards, err := all(p, size, v)
				if err != nil {
					t.Fatal(err)
				}
				for place, l := range p.Locations {
					for _, s := range l.Screens {
						back := cards[0].Back
						cards = cards[1:]
						for _, b := range back.Boxes {
							if strings.HasSuffix(b.Text, "–") || strings.Count(b.Text, "(") != strings.Count(b.Text, ")") {
								t.Errorf("%s %s, %s: a line reads %q", language, size.Name, back.Name, b.Text)
							}
						}
						want := v.Expect(p, s)
						labels, texts := boxes(back, "how to tell: "), slices.DeleteFunc(boxes(back, "how to tell"), func(b page.Box) bool { return strings.Contains(b.Name, ":") })
						if len(texts) != len(want) {
							t.Errorf("%s %s, %s: %d lines for %d ways to measure", language, size.Name, back.Name, len(texts), len(want))
						}
						if blade := mends(t, p, place+1, s.Number); slices.ContainsFunc(s.Others.Leans, func(l plan.Lean) bool { return l.Blade == blade }) {
							for _, b := range boxes(back, "leans") {
								if !slices.ContainsFunc(b.Art.Texts(), func(x canvas.PlacedText) bool { return x.Text == blade }) {
									t.Errorf("%s %s, %s: blade %s mends ink left in the screen, and nothing says how far it may lean", language, size.Name, back.Name, blade)
								}
							}
						}
						for i, b := range labels {
							if b.Text != want[i].Label || b.Y != texts[i].Y {
								t.Errorf("%s %s, %s: the label %q stands at %.1f mm, its text at %.1f", language, size.Name, back.Name, b.Text, b.Y, texts[i].Y)
							}
						}
						for name, w := range map[string]float64{"warnings": back.Safe.W, "setup": back.Safe.W - 20} {
							lines := slices.DeleteFunc(boxes(back, name), func(b page.Box) bool { return strings.Contains(b.Name, ":") })
							for i, b := range lines[:max(0, len(lines)-1)] {
								if b = lines[i+1]; canvas.Width(b.Text, b.Font) < 0.07*w {
									t.Errorf("%s %s, %s: %q is a line", language, size.Name, back.Name, b.Text)
								}
							}
						}
						faults, err := seen.Likely(p, place+1, s.Number, 5)
						if err != nil {
							t.Fatal(err)
						}
						for i, b := range boxes(back, "do") {
							if _, do := v.Fault(faults[i]); slices.Contains(usual, faults[i].Seen) && len(do) > 1 && b.Text == do[len(do)-1] {
								t.Errorf("%s %s, %s: of %d things to do stands %q", language, size.Name, back.Name, len(do), b.Text)
							}
						}
						rows, code := len(boxes(back, "log row")), len(boxes(back, "code"))
						if warned := boxes(back, "warnings"); len(warned) == 0 && (rows < 2 || code != 1 && language == "en") {
							t.Errorf("%s %s, %s: %d rows to write on and %d codes", language, size.Name, back.Name, rows, code)
						}
					}
				}
			}
		}
	}
}

// TestPuffIsFlat: of ink that rises the back tells the film before it does, and says so at the film, at the ruler and at
// the log.
func TestPuffIsFlat(t *testing.T) {
	p, v := plantest.Text(t, ".", "title = \"t\"\n[[location]]\n[[location.screen]]\nink = \"plastisol puff\"\nuse = \"raised\"\n")
	for _, size := range page.Sizes {
		words := joined(sound(t, p, v, size)[0].Back)
		film, _ := v.Cured(p.Locations[0].Screens[0])
		if words["cured film"] != film || !strings.Contains(film, "flat") {
			t.Errorf("%s: the film reads %q", size.Name, words["cured film"])
		}
		if words["log 3"] != v.T("card.log-flat") || !strings.Contains(words["film ruler"], v.T("card.scale-flat")) {
			t.Errorf("%s: the log has %q, the ruler %q", size.Name, words["log 3"], words["film ruler"])
		}
	}
}

// TestHitsSayTheirFlash: two hits without a flash between them are two strokes, so a screen that has none is told of it,
// and one that is flashed anyway is not.
func TestHitsSayTheirFlash(t *testing.T) {
	for text, flashed := range map[string]bool{
		"[[location.screen]]\nink = \"plastisol\"\nmesh = \"156-64\"\n":                                                                                         false,
		"[[location.screen]]\nink = \"plastisol white\"\nuse = \"underbase\"\nmesh = \"156-64\"\n[[location.screen]]\nink = \"plastisol\"\nmesh = \"156-64\"\n": true,
	} {
		p, v := plantest.Text(t, ".", "title = \"t\"\n[[location]]\n"+text)
		for _, size := range page.Sizes {
			ruler := joined(sound(t, p, v, size)[0].Back)["film ruler"]
			if !strings.Contains(ruler, "2 hits") || strings.Contains(ruler, v.T("card.flash-between")) == flashed {
				t.Errorf("%s, flashed %v: the ruler reads %q", size.Name, flashed, ruler)
			}
		}
	}
}

// TestCureStopsAtTheCloth: the card tells where the cloth ends the heat before the ink is cured, and no other limit.
func TestCureStopsAtTheCloth(t *testing.T) {
	for src, told := range map[string]bool{
		"[garment]\nfibre = \"polyester\"\n[[location]]\n[[location.screen]]\nink = \"discharge\"\n":   true,
		"[garment]\nfibre = \"cotton\"\n[[location]]\n[[location.screen]]\nink = \"plastisol puff\"\n": false,
	} {
		p, v := plantest.Text(t, ".", "title = \"t\"\n"+src)
		s := p.Locations[0].Screens[0]
		for _, line := range v.CardSetup(s) {
			if line.Label == v.T("card.cure") && (s.Cure.TopC == 0 || strings.Contains(line.Text, "max "+v.Temperature(s.Cure.TopC)) != told) {
				t.Errorf("%s: %q, the top is %g", src, line.Text, s.Cure.TopC)
			}
		}
	}
}
