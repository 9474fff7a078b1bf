package card_test

import (
	"encoding/json"
	"fmt"
	"slices"
	"strings"
	"testing"

	"bladecard/calc/choose"
	"bladecard/calc/file"
	"bladecard/calc/job"
	"bladecard/calc/plan"
	"bladecard/render/card"
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
		j := &job.Job{Title: anyName().Draw(t, "title"), Number: anyName().Draw(t, "number")}
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

// TestManyWarnings: as many warnings as have the room are printed whole, in their order, and a
// last line counts the others.
func TestManyWarnings(t *testing.T) {
	p, v := plantest.Text(t, ".", "title = \"t\"\n[[location]]\n[[location.screen]]\nink = \"discharge\"\nhalftone = { lines = \"45 lpi\", angle = 22.5 }")
	screen := &p.Locations[0].Screens[0]
	screen.Cautions = strings.Fields("hot-flash hot-dryer fume moving-press solvent discharge-agent uv-lamp uv-skin flammable")
	for _, size := range page.Sizes {
		last := 0
		for n := range 25 {
			screen.Warnings = nil
			for i := range n {
				text := fmt.Sprintf("%dth %s", i, strings.Repeat("this film cannot be met ", 1+i%4))
				screen.Warnings = append(screen.Warnings, plan.Warning{Text: strings.TrimSpace(text)})
			}
			cards := sound(t, p, v, size)
			words := joined(cards[0].Back)
			shown := 0
			for i, w := range screen.Warnings {
				if got := words[fmt.Sprintf("warning %d", i+1)]; got != "" {
					if got != v.T("show.warning", "text", w.Text) {
						t.Errorf("%s, %d warnings: warning %d reads %q", size.Name, n, i+1, got)
					}
					if shown != i {
						t.Errorf("%s, %d warnings: warning %d stands without the one before", size.Name, n, i+1)
					}
					shown++
				}
			}
			more := ""
			if shown < n {
				more = v.Many("card.more-warnings", n-shown)
			}
			if got := words["more warnings"]; got != more {
				t.Errorf("%s: %d of %d warnings shown, and then %q", size.Name, shown, n, got)
			}
			last = shown
		}
		if last < 1 || last == 24 {
			t.Errorf("%s: %d of 24 warnings are shown", size.Name, last)
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
// card: the film, and how the edge is drawn.
func TestBladeStockShows(t *testing.T) {
	back := func(stock string) map[string]string {
		shop := plantest.Shop(t, "[[blade]]\nlayup = \"70\"\n"+stock)
		j, _ := plantest.Job(t, ".", "title = \"t\"\n[[location]]\n[[location.screen]]\nmesh = \"156-64\"\nfilm = \"20..60 um\"\nangle = \"15 deg\"\nstrokes = 1")
		p, v := plantest.Plan(t, j, shop)
		cards, err := card.All(p, page.Card132, v)
		if err != nil {
			t.Fatal(err)
		}
		out := drawn(cards[0].Back)
		for name, what := range drawn(cards[0].Front) {
			out[name] = what
		}
		return out
	}
	changes := func(words map[string]string) (all string) { // what the card says to change, in any order
		for name, text := range words {
			if strings.HasPrefix(name, "card.too-") {
				all += text + "\n"
			}
		}
		lines := strings.Split(all, "\n")
		slices.Sort(lines)
		return strings.Join(lines, "\n")
	}
	base := back("thickness = \"9.5 mm\"")
	for _, stock := range []string{"thickness = \"8 mm\"", "free-height = \"40 mm\"", "edge = \"worn\""} {
		got := back(stock)
		for _, name := range []string{"cured film", "film over angle"} {
			if base[name] == "" || got[name] == base[name] {
				t.Errorf("%s: %s still reads %q", stock, name, got[name])
			}
		}
		if changes(got) == changes(base) {
			t.Errorf("%s: the changes still read %q", stock, changes(got))
		}
		if drawn := got["blade section"] != base["blade section"]; strings.HasPrefix(stock, "edge") && !drawn {
			t.Errorf("%s: the section is drawn the same", stock)
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
		for _, size := range page.Sizes {
			words := joined(sound(t, p, v, size)[0].Back)
			for _, name := range []string{"film over angle", "film over hardness"} {
				if !strings.Contains(words[name], screen.Blade.Name) {
					t.Errorf("%s: %s reads %q", size.Name, name, words[name])
				}
			}
		}
	}
}
