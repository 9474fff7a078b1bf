package card_test

import (
	"encoding/json"
	"fmt"
	"maps"
	"slices"
	"strings"
	"testing"

	"bladecard/calc/choose"
	"bladecard/calc/file"
	"bladecard/calc/job"
	"bladecard/calc/plan"
	"bladecard/render/internal/plantest"
	"bladecard/render/page"
	"bladecard/render/say"
	"bladecard/templates"

	"pgregory.net/rapid"
)

// anyName is a name that a file may hold: some words, or one word of up to 200 letters.
func anyName() *rapid.Generator[string] {
	return rapid.OneOf(
		rapid.SampledFrom([]string{"white", "Überdruck", "ñandú ½", "W", strings.Repeat("W", 200), strings.Repeat("il", 100), strings.Repeat("Ärger ", 33) + "!", strings.Repeat("70/90/", 33)}),
		rapid.StringMatching(`[A-Za-zÀ-ÿĄąĆćĘęŁłŃńŚśŹźŻż0-9 /-]{1,200}`).Filter(func(s string) bool { return strings.TrimSpace(s) != "" }),
	)
}

// anyShop is the built-in shop with names, blades, ink classes and a press of all kinds.
func anyShop(t *rapid.T) *job.Shop {
	shop := file.BuiltInShop()
	shop.Units = rapid.SampledFrom([]string{"metric", "inch"}).Draw(t, "units")
	shop.Language = rapid.SampledFrom(templates.Bases()).Draw(t, "language")
	for i := range rapid.IntRange(0, 6).Draw(t, "blades") {
		layers := rapid.SliceOfN(rapid.Float64Range(50, 95), 1, 7).Draw(t, "layers")
		b := job.Blade{
			Name: fmt.Sprint(i, anyName().Draw(t, "blade")), Hardness: layers, Count: 1,
			ThicknessMM:  rapid.Float64Range(3, 25).Draw(t, "thickness"),
			FreeHeightMM: rapid.Float64Range(5, 80).Draw(t, "free height"),
			Edge:         rapid.SampledFrom([]string{"new", "used", "worn"}).Draw(t, "edge"),
		}
		var words []string
		for k, h := range layers {
			layers[k] = float64(int(h))
			words = append(words, fmt.Sprint(layers[k]))
			b.LayersMM = append(b.LayersMM, b.ThicknessMM/float64(len(layers)))
		}
		b.Layup = strings.Join(words, "/")
		shop.Blades = append(shop.Blades, b)
	}
	ink := shop.Inks[rapid.IntRange(0, len(shop.Inks)-1).Draw(t, "like")]
	ink.Name = anyName().Draw(t, "ink")
	ink.Cautions = strings.Fields("hot-flash hot-dryer fume moving-press solvent discharge-agent uv-lamp uv-skin flammable")
	shop.Inks = append(shop.Inks, ink)
	shop.Presses[0].Name = anyName().Draw(t, "press")
	return shop
}

// TestAnyRack lays out jobs of up to sixteen screens with random racks, inks and names;
// the count proves that most of them gave cards.
func TestAnyRack(t *testing.T) {
	t.Parallel()
	runs, made := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		shop := anyShop(t)
		j := &job.Job{Title: anyName().Draw(t, "title"), Number: numbered(anyName().Draw(t, "number"))}
		if rapid.Bool().Draw(t, "polyester") {
			j.Garment = &job.Garment{Name: "tee", Fibre: "polyester", Shade: "dark"}
		}
		l := job.Location{Name: anyName().Draw(t, "location"), WidthMM: 250, HeightMM: 300}
		own := shop.Inks[len(shop.Inks)-1].Name
		for range rapid.SampledFrom([]int{1, 1, 2, 3, 16}).Draw(t, "screens") {
			s := job.Screen{
				Color:   rapid.OneOf(rapid.Just(""), anyName()).Draw(t, "colour"),
				InkName: rapid.SampledFrom([]string{"", own, "plastisol white", "plastisol puff", "water-based", "discharge"}).Draw(t, "ink"),
				Use:     rapid.SampledFrom([]string{"", "underbase", "halftone", "raised", "detail", "solid", "clear"}).Draw(t, "use"),
			}
			if n := len(shop.Blades); rapid.Bool().Draw(t, "its blade") {
				s.BladeName = shop.Blades[rapid.IntRange(0, n-1).Draw(t, "which")].Name
			}
			if rapid.Bool().Draw(t, "its angle") {
				a := rapid.Float64Range(0, 60).Draw(t, "angle")
				s.AngleDeg = &a
			}
			if rapid.Bool().Draw(t, "target") {
				low := rapid.Float64Range(2, 900).Draw(t, "low")
				s.FilmUM = &job.Range{Low: low, High: low * 1.1}
			}
			if rapid.Bool().Draw(t, "fine") {
				a := rapid.Float64Range(0, 90).Draw(t, "screen angle")
				s.Halftone = &job.Halftone{LinesPerInch: 85, Smallest: 0.02, AngleDeg: &a}
			}
			l.Screens = append(l.Screens, s)
		}
		j.Locations = []job.Location{l}
		runs++
		if job.Resolve(j, shop) != nil {
			return
		}
		p, errs := choose.Make(j, shop)
		if errs != nil {
			return
		}
		made++
		v, err := say.New(shop.Language, shop.Units)
		if err != nil {
			t.Fatal(err)
		}
		v.Fill(p)
		sound(t, p, v, rapid.SampledFrom(page.Sizes).Draw(t, "size"))
	})
	if made < runs/4 {
		t.Errorf("only %d of %d jobs gave cards", made, runs)
	}
}

// TestAllWarnings: every warning that a screen may have is on its card, however many there are: in full, or the
// last of them in a few words where the room is short; and its front tells the first, and how many more there are.
func TestAllWarnings(t *testing.T) {
	for _, language := range templates.Languages() {
		j, shop := plantest.Job(t, ".", "title = \"t\"\n[[location]]\n[[location.screen]]\nink = \"discharge\"\nhalftone = { lines = \"45 lpi\", angle = 22.5 }")
		shop.Language = language
		p, v := plantest.Plan(t, j, shop)
		screen := &p.Locations[0].Screens[0]
		screen.Cautions = strings.Fields("hot-flash hot-dryer fume moving-press solvent discharge-agent uv-lamp uv-skin flammable")
		words, err := templates.Language(language)
		if err != nil {
			t.Fatal(err)
		}
		var all []plan.Warning
		for _, key := range slices.Sorted(maps.Keys(words)) {
			if code, is := strings.CutPrefix(key, "front-warning."); is && code != "other" && !strings.HasPrefix(code, "dot-none") { // which stands in the place of dot-small
				all = append(all, plan.Warning{Code: code, Text: v.T("warning." + code)})
			}
		}
		if len(all) < 30 {
			t.Fatalf("%d warnings of a screen have words for a front", len(all))
		}
		for _, size := range page.Sizes {
			for _, n := range []int{0, 1, 2, 3, 6, 12, 20, len(all)} {
				screen.Warnings = all[len(all)-n:]
				card := sound(t, p, v, size)[0]
				front, back := joined(card.Front), joined(card.Back)["warnings"]
				if told := front["see back"] == v.T("card.see-back"); told != (n > 0) {
					t.Errorf("%s %s: %d warnings, and the front says %q", language, size.Name, n, front["see back"])
				}
				if more := v.T("card.more-warnings", "n", fmt.Sprint(n-1)); n > 1 && !strings.HasSuffix(front["warning"], more) && !strings.HasSuffix(front["warning"], fmt.Sprint("+", n-1)) {
					t.Errorf("%s %s: the front of %d warnings says %q", language, size.Name, n, front["warning"])
				}
				from := 0
				for _, w := range screen.Warnings {
					at := strings.Index(back[from:], w.Text)
					if at < 0 && n > 3 {
						at = strings.Index(back[from:], "! "+v.T("front-warning."+w.Code))
					}
					if at < 0 {
						t.Fatalf("%s %s: of %d warnings %s is not on the back: %q", language, size.Name, n, w.Code, back)
					}
					from += at
				}
			}
		}
	}
}

// TestFrontsNameTheirWarning: the first warning of a screen stands on its front in words of its own, alone and with
// others behind it, in every language on the smallest card.
func TestFrontsNameTheirWarning(t *testing.T) {
	for _, language := range templates.Languages() {
		j, shop := plantest.Job(t, ".", "title = \"t\"\n[[location]]\n[[location.screen]]\n")
		shop.Language = language
		p, v := plantest.Plan(t, j, shop)
		words, err := templates.Language(language)
		if err != nil {
			t.Fatal(err)
		}
		for key, word := range words {
			code, is := strings.CutPrefix(key, "front-warning.")
			if !is {
				continue
			}
			for _, n := range []int{1, 2, 9} {
				p.Locations[0].Screens[0].Warnings = slices.Repeat([]plan.Warning{{Code: code, Text: "t"}}, n)
				cards, err := all(p, page.Card132, v)
				if err != nil {
					t.Fatal(err)
				}
				if got := joined(cards[0].Front)["warning"]; !strings.HasPrefix(got, word) {
					t.Errorf("%s: the front of %d warnings says %q; %q is wanted", language, n, got, word)
				}
			}
		}
	}
}

// joined are the texts of a face by box, lines of one text joined.
func joined(f page.Face) map[string]string {
	out := map[string]string{}
	for _, b := range f.Boxes {
		text := b.Text
		for _, x := range b.Art.Texts() {
			text += " " + x.Text
		}
		out[b.Name] = strings.TrimSpace(out[b.Name] + " " + text)
	}
	return out
}

// drawn are the texts of a face by box, and of its drawings every stroke.
func drawn(f page.Face) map[string]string {
	out := joined(f)
	for _, b := range f.Boxes {
		if b.Kind == page.KindDrawing {
			art, err := json.Marshal(b.Art)
			if err != nil {
				panic(err)
			}
			out[b.Name] = string(art)
		}
	}
	return out
}

// TestBladeStockShows: the same layup in another stock (thinner, shorter, worn) gives another
// card: the film, where the changes put it, and the edge.
func TestBladeStockShows(t *testing.T) {
	back := func(stock string) map[string]string {
		shop := plantest.Shop(t, "[[blade]]\nlayup = \"70\"\n"+stock)
		j, _ := plantest.Job(t, ".", "title = \"t\"\n[[location]]\n[[location.screen]]\nmesh = \"156-64\"\nfilm = \"20..60 um\"\nangle = \"15 deg\"\nstrokes = 1")
		p, v := plantest.Plan(t, j, shop)
		cards, err := all(p, page.Card132, v)
		if err != nil {
			t.Fatal(err)
		}
		out := drawn(cards[0].Back)
		for name, what := range drawn(cards[0].Front) {
			out[name] = what
		}
		return out
	}
	base := back("thickness = \"9.5 mm\"")
	for _, stock := range []string{"thickness = \"8 mm\"", "free-height = \"40 mm\"", "edge = \"worn\""} {
		got := back(stock)
		for _, name := range []string{"cured film", "film ruler"} {
			if base[name] == "" || got[name] == base[name] {
				t.Errorf("%s: %s still reads %q", stock, name, got[name])
			}
		}
		if strings.HasPrefix(stock, "edge") && got["blade fact"] == base["blade fact"] {
			t.Errorf("%s: the front still says %q", stock, got["blade fact"])
		}
	}
}

// TestNoCurves: a setup beside which every other one fails still gives a card, its own point on
// both charts.
func TestNoCurves(t *testing.T) {
	p, v := plantest.Text(t, ".", "title = \"t\"\n[[location]]\n[[location.screen]]\n")
	screen := &p.Locations[0].Screens[0]
	for _, curves := range [][]plan.Curve{nil, {{Name: "70", Chosen: true}, {Name: "80"}}} {
		screen.Charts = plan.Charts{Angle: curves, Hardness: curves}
		words := joined(sound(t, p, v, page.CardA5)[0].Back)
		for _, name := range []string{"film over angle", "film over hardness"} {
			if !strings.Contains(words[name], screen.Blade.Name) {
				t.Errorf("%s reads %q", name, words[name])
			}
		}
	}
}
