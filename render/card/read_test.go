package card_test

import (
	"bytes"
	"fmt"
	"math"
	"os"
	"os/exec"
	"slices"
	"strings"
	"testing"

	"bladecard/calc/plan"
	"bladecard/render/canvas/pdf"
	"bladecard/render/card"
	"bladecard/render/internal/plantest"
	"bladecard/render/page"
	"bladecard/render/say"
	"bladecard/templates"
)

// pages are the words of each side in the order in which another program reads them; where the machine has none
// such, in the order in which they are drawn.
func pages(t *testing.T, cards []page.Card) [][]string {
	t.Helper()
	var out [][]string
	if _, err := exec.LookPath("pdftotext"); err != nil {
		for _, c := range cards {
			for _, f := range []page.Face{c.Front, c.Back} {
				var words []string
				for _, b := range f.Boxes {
					words = append(words, strings.Fields(b.Text)...)
					for _, x := range b.Art.Texts() {
						words = append(words, strings.Fields(x.Text)...)
					}
				}
				out = append(out, words)
			}
		}
		return out
	}
	size := page.Size{Name: "own", W: cards[0].Front.W, H: cards[0].Front.H}
	sheets, err := page.Impose(page.A4, size, len(cards), laid(cards), page.Options{Single: true})
	if err != nil {
		t.Fatal(err)
	}
	var doc bytes.Buffer
	if err := page.WriteEach(&doc, pdf.Meta{Title: "t"}, sheets); err != nil {
		t.Fatal(err)
	}
	cmd := exec.Command("pdftotext", "-raw", "-", "-")
	cmd.Stdin = &doc
	text, err := cmd.Output()
	if err != nil {
		t.Fatal(err)
	}
	for p := range strings.SplitSeq(strings.TrimSuffix(string(text), "\f"), "\f") {
		out = append(out, strings.Fields(p))
	}
	return out
}

// spoken is what a front tells an operator, in the order of reading.
func spoken(p *plan.Plan, s plan.Screen, v *say.Voice) []string {
	head := strings.Trim(strings.Join(strings.Fields(fmt.Sprint(s.Heads)), "+"), "[]")
	if p.Press.Kind == "flatbed" {
		head = fmt.Sprint(s.Number)
	}
	_, air, _ := v.Air(s)
	flash := v.T("card.no-flash")
	switch {
	case s.Flash.Does == "lamp":
		flash = v.T("card.lamp")
	case s.Flash.StartS != nil:
		flash = v.Seconds(*s.Flash.StartS)
	case s.Flash.Seconds != nil:
		flash = v.SecondsRange(s.Flash.Seconds.Low, s.Flash.Seconds.High)
	}
	_, strokes := v.Strokes(s)
	return []string{head, s.Color, s.Blade.Layup, v.Angle(s.AngleDeg.Set), strokes, air, flash}
}

// tiles are jobs whose prints are set by a lamp, dried to the touch, and dried.
var tiles = []string{
	"title = \"t\"\n[stock]\nname = \"vinyl\"\nkind = \"plastic\"\n[[location]]\nname = \"sheet\"\n[[location.screen]]\ncolor = \"opaque white\"\nink = \"uv graphics\"\n",
	"title = \"t\"\n[[location]]\n[[location.screen]]\ncolor = \"grey\"\nink = \"silicone\"\nflash = true\n[[location.screen]]\ncolor = \"black\"\nink = \"silicone\"\n",
	"title = \"t\"\n[[location]]\n[[location.screen]]\ncolor = \"natural\"\nink = \"discharge\"\nflash = true\n[[location.screen]]\ncolor = \"sand\"\nink = \"discharge\"\n",
}

// TestReadsInOrder: read aloud, every front of the samples gives head, color, blade, angle, strokes, air and flash
// in this order, on every size and in every language, each size in one of the languages and with BLADECARD_FULL in all; so do an inch shop's, and the lamps and flashes that dry.
func TestReadsInOrder(t *testing.T) {
	t.Parallel()
	full := os.Getenv("BLADECARD_FULL") != ""
	for li, language := range templates.Languages() {
		var plans []*plan.Plan
		var voices []*say.Voice
		for i, src := range append(sampleJobs(t), tiles...) {
			j, shop := plantest.Job(t, "../../samples/jobs", src)
			if shop.Language = language; i%2 == 1 {
				shop.Units = "inch"
			}
			p, v := plantest.Plan(t, j, shop)
			plans, voices = append(plans, p), append(voices, v)
		}
		for si, size := range page.Sizes {
			if si%len(templates.Languages()) != li && !full {
				continue
			}
			var cards []page.Card
			var want [][]string
			for i, p := range plans {
				list, err := all(p, size, voices[i])
				if err != nil {
					t.Fatal(err)
				}
				cards = append(cards, list...)
				for _, l := range p.Locations {
					for _, s := range l.Screens {
						want = append(want, spoken(p, s, voices[i]))
					}
				}
			}
			read := pages(t, cards)
			if len(read) != 2*len(want) || len(want) < 15 {
				t.Fatalf("%d pages of %d cards", len(read), len(want))
			}
			for i, figures := range want {
				words := read[2*i]
				for _, figure := range figures {
					next := strings.Fields(figure)
					at := -1
					for k := range words {
						if k+len(next) <= len(words) && slices.Equal(words[k:k+len(next)], next) {
							at = k
							break
						}
					}
					if at < 0 {
						t.Fatalf("%s %s, card %d: %q does not come in its turn; %v is left to read of %v", language, size.Name, i+1, figure, words, figures)
					}
					words = words[at+len(next):]
				}
			}
		}
	}
}

// TestEffectsCanBeMeasured: every change that a back prints moves the film by more than can be measured, and ends
// where the film would then be.
func TestEffectsCanBeMeasured(t *testing.T) {
	printed := 0
	for _, src := range sampleJobs(t) {
		p, v := plantest.Text(t, "../../samples/jobs", src)
		for _, size := range page.Sizes {
			cards, err := all(p, size, v)
			if err != nil {
				t.Fatal(err)
			}
			n := 0
			for _, l := range p.Locations {
				for _, s := range l.Screens {
					var texts []string
					for _, b := range cards[n].Back.Boxes {
						if b.Name == "film ruler" {
							for _, x := range b.Art.Texts() {
								texts = append(texts, x.Text)
							}
						}
					}
					n++
					for _, c := range s.Corrections {
						if !slices.Contains(texts, v.Short(c)) {
							continue
						}
						printed++
						if math.Abs(c.DeltaUM) < s.TellsUM {
							t.Errorf("%s %s screen %d: %s moves the film by %.2f um of the %.2f that can be measured", size.Name, l.Name, s.Number, c.Change, c.DeltaUM, s.TellsUM)
						}
					}
				}
			}
		}
	}
	if printed < 100 {
		t.Errorf("only %d changes were printed", printed)
	}
}

// TestFrontKeepsWords: whatever the names, a front breaks no word over two lines, cuts names alone and only behind
// a word that fits, and never the job number.
func TestFrontKeepsWords(t *testing.T) {
	names := []string{"white", strings.Repeat("W", 200), strings.Repeat("Ärger ", 33) + "!!", "rope grain, navy over the long harbor wall"}
	numbers := []string{"L-031", strings.Repeat("W", 32), "PO 2026-11-000123/2 harbor 7", "9"}
	mayBeCut := []string{"color", "ink", "location", "next"}
	for _, language := range templates.Languages() {
		for i, name := range names {
			for _, number := range numbers {
				j, shop := plantest.Job(t, ".", fmt.Sprintf("title = %q\njob = %q\n[[location]]\nname = %q\n[[location.screen]]\ncolor = %q\nuse = \"underbase\"\nink = \"plastisol white\"\n[[location.screen]]\ncolor = %q\n", name, number, name, name, name))
				shop.Language = language
				p, v := plantest.Plan(t, j, shop)
				size := page.Sizes[i%len(page.Sizes)]
				for _, c := range sound(t, p, v, size) {
					count, job := map[string]int{}, ""
					for _, b := range c.Front.Boxes {
						if b.Text == "" {
							continue
						}
						if b.Name == "job number" {
							job += b.Text
							continue
						}
						if count[b.Name]++; count[b.Name] > 1 {
							t.Errorf("%s %s: %s goes over two lines: %q", language, size.Name, b.Name, b.Text)
						}
						head, tail, cut := strings.Cut(b.Text, "…")
						if !cut {
							continue
						}
						if !slices.Contains(mayBeCut, b.Name) {
							t.Errorf("%s %s: %s is cut: %q", language, size.Name, b.Name, b.Text)
						}
						if b.Name == "color" && (!strings.HasPrefix(name, strings.TrimSpace(head)) || !strings.HasSuffix(name, strings.TrimSpace(tail)) || tail == "") {
							t.Errorf("%s %s: %s shows %q of %q", language, size.Name, b.Name, b.Text, name)
						}
						for _, word := range strings.Fields(head + " " + tail) {
							if strings.Contains(name, " ") && b.Name == "color" && !slices.Contains(strings.Fields(name), word) {
								t.Errorf("%s %s: %s is cut in a word: %q", language, size.Name, b.Name, b.Text)
							}
						}
						if b.Name == "color" && b.Font.SizePT > 1.7*card.FrontPT*size.W/132 {
							t.Errorf("%s %s: a color is cut at %g pt", language, size.Name, b.Font.SizePT)
						}
					}
					if strings.ReplaceAll(job, " ", "") != strings.ReplaceAll(number, " ", "") {
						t.Errorf("%s %s: of the job number %q the front shows %q", language, size.Name, number, job)
					}
				}
			}
		}
	}
}
