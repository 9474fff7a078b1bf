package card_test

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"bladecard/calc/choose"
	"bladecard/calc/file"
	"bladecard/calc/job"
	"bladecard/calc/plan"
	"bladecard/render/canvas"
	"bladecard/render/canvas/pdf"
	"bladecard/render/card"
	"bladecard/render/internal/plantest"
	"bladecard/render/page"
	"bladecard/render/pagecheck"
	"bladecard/render/say"
	"bladecard/templates"

	"pgregory.net/rapid"
)

// tester is what *testing.T and *rapid.T share here.
type tester interface {
	plantest.TB
	Errorf(string, ...any)
}

// sound checks every face of every card: nothing overlaps, is cut, leaves the safe area or is
// set too small.
func sound(t tester, p *plan.Plan, v *say.Voice, size page.Size) []page.Card {
	t.Helper()
	cards, err := all(p, size, v)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range cards {
		for _, err := range pagecheck.Check(c.Front, card.FrontPT) {
			t.Errorf("%s: %v", size.Name, err)
		}
		for _, err := range pagecheck.Check(c.Back, card.BackPT) {
			t.Errorf("%s: %v", size.Name, err)
		}
	}
	return cards
}

// TestSamples lays out every sample job on every size in every language, and imposes each of them on one of the papers.
func TestSamples(t *testing.T) {
	files, err := filepath.Glob("../../samples/jobs/*.toml")
	if err != nil || len(files) < 5 {
		t.Fatal(files, err)
	}
	papers := []page.Paper{page.A4, page.Letter}
	for i, f := range files {
		src, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		for li, language := range templates.Bases() {
			j, shop := plantest.Job(t, filepath.Dir(f), string(src))
			shop.Language = language
			p, v := plantest.Plan(t, j, shop)
			for si, size := range page.Sizes {
				cards := sound(t, p, v, size)
				for _, c := range cards {
					for _, b := range append(c.Front.Boxes, c.Back.Boxes...) {
						if strings.Contains(b.Text, "…") {
							t.Errorf("%s %s %s: %s is cut: %s", f, language, size.Name, b.Name, b.Text)
						}
					}
				}
				paper := papers[(i+li+si)%2]
				sheets, err := page.Impose(paper, size, len(cards), laid(cards), page.Options{Title: p.Title})
				if err != nil {
					t.Fatal(err)
				}
				if err := page.WriteEach(&bytes.Buffer{}, pdf.Meta{Title: p.Title}, sheets); err != nil {
					t.Errorf("%s %s %s %s: %v", f, language, paper.Name, size.Name, err)
				}
			}
		}
	}
}

// TestAnyNames lays out random jobs with long names, many screens and demands that nothing meets.
func TestAnyNames(t *testing.T) {
	t.Parallel()
	shop := file.BuiltInShop()
	words := rapid.SampledFrom([]string{"Ärmel", "full", "front", "Überdruck", "white", "Nº", "½", "lantern", "W", "festival-of-the-long-harbor", "ñandú", "Żółć", strings.Repeat("W", 40)})
	name := func(t *rapid.T, label string, most int) string {
		s := strings.Join(rapid.SliceOfN(words, 1, 30).Draw(t, label), " ")
		if r := []rune(s); len(r) > most {
			s = strings.TrimSpace(string(r[:most]))
		}
		return s
	}
	rapid.Check(t, func(t *rapid.T) {
		j := &job.Job{Title: name(t, "title", 200), Number: name(t, "number", 32)}
		l := job.Location{Name: name(t, "location", 200), WidthMM: rapid.SampledFrom([]float64{0, 50, 300, 700}).Draw(t, "width")}
		for range rapid.IntRange(1, 4).Draw(t, "screens") {
			s := job.Screen{
				Color:    name(t, "colour", 200),
				Use:      rapid.SampledFrom([]string{"", "underbase", "halftone", "raised", "detail"}).Draw(t, "use"),
				MeshName: rapid.SampledFrom([]string{"", "110-80", "305-40", "77-55"}).Draw(t, "mesh"),
				Swatch:   rapid.SampledFrom([]string{"", "#ffffff", "#102030"}).Draw(t, "swatch"),
			}
			if rapid.Bool().Draw(t, "target") {
				low := rapid.Float64Range(2, 900).Draw(t, "low")
				s.FilmUM = &job.Range{Low: low, High: low * 1.2}
			}
			if rapid.Bool().Draw(t, "fine") {
				s.Halftone = &job.Halftone{LinesPerInch: 85, Smallest: 0.02}
			}
			if rapid.Bool().Draw(t, "fixed") {
				a := 42.5
				s.AngleDeg, s.BladeName, s.Strokes = &a, "60", 6
			}
			l.Screens = append(l.Screens, s)
		}
		j.Locations = []job.Location{l}
		shop.Units = rapid.SampledFrom([]string{"metric", "inch"}).Draw(t, "units")
		shop.Language = rapid.SampledFrom(templates.Bases()).Draw(t, "language")
		if errs := job.Resolve(j, shop); errs != nil {
			return
		}
		if _, errs := choose.Make(j, shop); errs != nil {
			return
		}
		p, v := plantest.Plan(t, j, shop)
		sound(t, p, v, rapid.SampledFrom(page.Sizes).Draw(t, "size"))
	})
}

// TestBacksTellLongNamesApart: names that begin alike leave what tells them apart, and fill their row.
func TestBacksTellLongNamesApart(t *testing.T) {
	long := strings.Repeat("a name of many words ", 9)
	j, shop := plantest.Job(t, ".", fmt.Sprintf("title = %q\n[[location]]\nname = %q\n[[location.screen]]\ncolor = \"red\"\n[[location]]\nname = %q\n[[location.screen]]\ncolor = \"red\"\n", long, long+"front", long+"back"))
	p, v := plantest.Plan(t, j, shop)
	for _, size := range page.Sizes {
		cards := sound(t, p, v, size)
		for i, want := range []string{"front · ", "back · "} {
			back := cards[i].Back
			at := slices.IndexFunc(back.Boxes, func(b page.Box) bool { return b.Name == "screen" })
			if b := back.Boxes[at]; !strings.Contains(b.Text, "· red ·") || !strings.Contains(b.Text, want) || canvas.Width(b.Text, b.Font) < 0.8*back.Safe.W {
				t.Errorf("%s: %q", size.Name, b.Text)
			}
		}
	}
}

// TestLongNumberLeavesRoom: beside the second row of a job number there is room for location and screen.
func TestLongNumberLeavesRoom(t *testing.T) {
	j, shop := plantest.Job(t, ".", "job = \"0123456789-0123456789-0123456789\"\ntitle = \"t\"\n[[location]]\nname = \"front\"\n[[location.screen]]\ncolor = \"red\"\n[[location.screen]]\ncolor = \"blue\"\n")
	p, v := plantest.Plan(t, j, shop)
	for _, size := range page.Sizes {
		for _, c := range sound(t, p, v, size) {
			if got := joined(c.Front); got["location"] != "· front" || got["screen number"] == "" {
				t.Errorf("%s: %q", size.Name, got)
			}
		}
	}
}

// TestOneToSixteenScreens: any number of screens with names of 200 letters numbers, is laid out
// and imposes; one and sixteen in every language on every size, the others turn about.
func TestOneToSixteenScreens(t *testing.T) {
	t.Parallel()
	names := []string{"white", strings.Repeat("W", 200), strings.Repeat("Ärger ", 33) + "!!"}
	screens := []string{
		"ink = \"plastisol white\"\nuse = \"underbase\"\n",
		"ink = \"discharge\"\nhalftone = { lines = \"65 lpi\", angle = 22.5, smallest = \"3 %\" }\n",
		"ink = \"plastisol puff\"\nuse = \"raised\"\n",
		"film = \"300..320 um\"\nangle = 42.5\nblade = \"60\"\n",
	}
	for n := 1; n <= 16; n++ {
		name := names[n%len(names)]
		src := fmt.Sprintf("title = %q\njob = %q\n[garment]\nname = %q\nfibre = \"polyester\"\nshade = \"dark\"\n[[location]]\nname = %q\n", name, numbered(name), name, name)
		for i := range n {
			src += fmt.Sprintf("[[location.screen]]\ncolor = %q\nswatch = \"#20%02x40\"\n%s", name, 15*i, screens[i%len(screens)])
		}
		languages, sizes := templates.Bases(), page.Sizes
		if n > 1 && n < 16 {
			languages = languages[n%len(languages):][:1]
			sizes = sizes[n/2%len(sizes):][:1]
		}
		for _, language := range languages {
			j, shop := plantest.Job(t, ".", src)
			shop.Presses[0].Heads = 40
			shop.Language = language
			p, v := plantest.Plan(t, j, shop)
			for _, size := range sizes {
				cards := sound(t, p, v, size)
				sheets, err := page.Impose(page.Letter, size, len(cards), laid(cards), page.Options{})
				if err != nil {
					t.Fatal(err)
				}
				pages := 0
				for range sheets {
					pages++
				}
				per := size.Cols * size.Rows
				if want := 2 * ((n + per - 1) / per); len(cards) != n || pages != want {
					t.Fatalf("%s %s: %d cards on %d pages; %d on %d are wanted", language, size.Name, len(cards), pages, n, want)
				}
			}
			if t.Failed() {
				t.Fatalf("%s: %d screens, name %q", language, n, name)
			}
		}
	}
}

// numbered is a name as long as a job number may be.
func numbered(name string) string {
	return strings.TrimSpace(string([]rune(name)[:min(32, len([]rune(name)))]))
}

// TestLabelsFitInInches: the words beside a figure fit in every language where the figures are
// longest, in inches: none of the fixed labels of the front is cut.
func TestLabelsFitInInches(t *testing.T) {
	j, shop := plantest.Job(t, ".", "title = \"t\"\n[[location]]\nwidth = \"14.3 in\"\nheight = \"12 in\"\n[[location.screen]]\nmesh = \"156-64\"\nangle = 37.5\n")
	shop.Units = "inch"
	for _, language := range templates.Bases() {
		shop.Language = language
		p, v := plantest.Plan(t, j, shop)
		for _, size := range page.Sizes {
			for _, c := range sound(t, p, v, size) {
				for _, b := range c.Front.Boxes {
					if strings.Contains(b.Text, "…") {
						t.Errorf("%s %s: %s is cut: %s", language, size.Name, b.Name, b.Text)
					}
				}
			}
		}
	}
}

// texts are the words of both sides, by box.
func texts(t *testing.T, screen string) map[string]string {
	t.Helper()
	p, v := plantest.Text(t, ".", "title = \"t\"\n[[location]]\nname = \"front\"\n[[location.screen]]\n"+screen)
	cards, err := all(p, page.Card132, v)
	if err != nil {
		t.Fatal(err)
	}
	out := map[string]string{}
	for side, f := range map[string]page.Face{"front ": cards[0].Front, "back ": cards[0].Back} {
		for _, b := range f.Boxes {
			out[side+b.Name] += b.Text
			for _, x := range b.Art.Texts() {
				out[side+b.Name] += " " + x.Text
			}
		}
	}
	return out
}

// TestNothingIsCanned: change one thing in the job and the words that depend on it change.
func TestNothingIsCanned(t *testing.T) {
	base := texts(t, "mesh = \"156-64\"\neom = \"20 %\"\nfilm = \"20..60 um\"")
	for _, c := range []struct {
		change, screen string
		follow         []string
	}{
		{"mesh", "mesh = \"230-48\"\neom = \"20 %\"\nfilm = \"10..60 um\"", []string{"front mesh", "back cured film", "back how to tell", "back film ruler"}},
		{"EOM", "mesh = \"156-64\"\neom = \"70 um\"\nfeature = \"3 mm\"\nfilm = \"20..95 um\"", []string{"front mesh", "back cured film", "back how to tell"}},
		{"blade", "mesh = \"156-64\"\neom = \"20 %\"\nfilm = \"20..60 um\"\nblade = \"80\"", []string{"front blade", "back other blades", "back cured film"}},
		{"target", "mesh = \"156-64\"\neom = \"20 %\"\nfilm = \"38..60 um\"", []string{"front strokes", "back how to tell", "back cured film"}},
		{"finest feature", "mesh = \"156-64\"\neom = \"20 %\"\nfilm = \"20..60 um\"\nfinest = \"0.1 mm\"", []string{"front blade", "front angle fact"}},
	} {
		got := texts(t, c.screen)
		for _, name := range c.follow {
			if base[name] == "" {
				t.Fatalf("there is no box %q", name)
			}
			if got[name] == base[name] {
				t.Errorf("the %s is another, %q still says %q", c.change, name, got[name])
			}
		}
	}
}
