package sheet_test

import (
	"bytes"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"bladecard/calc/plan"
	"bladecard/render/canvas"
	"bladecard/render/canvas/pdf"
	"bladecard/render/flow"
	"bladecard/render/internal/plantest"
	"bladecard/render/page"
	"bladecard/render/pagecheck"
	"bladecard/render/say"
	"bladecard/render/sheet"
	"bladecard/templates"
)

// planned computes a job text in a language and units; heads, if not 0, are those of the first press.
func planned(t *testing.T, dir, src, lang, units string, heads int) (*plan.Plan, *say.Voice) {
	t.Helper()
	j, shop := plantest.Job(t, dir, src)
	shop.Language, shop.Units = lang, units
	if heads > 0 {
		shop.Presses[0].Heads = heads
	}
	return plantest.Plan(t, j, shop)
}

// sound lays a plan out on both papers and checks every page; it returns the words by page.
func sound(t *testing.T, p *plan.Plan, v *say.Voice, o sheet.Options) [][]string {
	t.Helper()
	var words [][]string
	for _, paper := range []page.Paper{page.A4, page.Letter} {
		faces, err := sheet.Pages(p, paper, v, o)
		if err != nil {
			t.Fatal(err)
		}
		words = nil
		for i, f := range faces {
			for _, err := range pagecheck.Check(f, flow.SmallPT) {
				t.Errorf("%s: %v", paper.Name, err)
			}
			var texts []string
			for _, b := range f.Boxes {
				if b.Kind == page.KindText {
					texts = append(texts, b.Text)
				} else if strings.HasPrefix(b.Name, "chart") {
					for _, label := range b.Art.Texts() {
						texts = append(texts, label.Text)
					}
				}
			}
			if want := v.T("sheet-doc.page", "n", fmt.Sprint(i+1), "of", fmt.Sprint(len(faces))); texts[len(texts)-1] != want {
				t.Errorf("%s: page %d ends with %q; %q is wanted", paper.Name, i+1, texts[len(texts)-1], want)
			}
			words = append(words, texts)
		}
		var file bytes.Buffer
		if err := page.Write(&file, pdf.Meta{Title: "t"}, page.Pages(faces...)); err != nil {
			t.Fatal(err)
		}
	}
	return words
}

// TestSamples lays out every sample in every language and both systems of units; nothing is cut.
func TestSamples(t *testing.T) {
	t.Parallel()
	files, err := filepath.Glob("../../samples/jobs/*.toml")
	if err != nil || len(files) < 5 {
		t.Fatal(files, err)
	}
	for _, f := range files {
		src, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		p, _ := planned(t, filepath.Dir(f), string(src), "en", "metric", 0)
		for _, lang := range templates.Bases() {
			for _, units := range []string{"metric", "inch"} {
				v, err := say.New(lang, units)
				if err != nil {
					t.Fatal(err)
				}
				v.Fill(p)
				for _, texts := range sound(t, p, v, sheet.Options{}) {
					for _, s := range texts {
						if strings.Contains(s, "…") {
							t.Errorf("%s %s %s: %q is cut", f, lang, units, s)
						}
					}
				}
			}
		}
	}
}

// TestManyScreensLongNames lays out 1 to 16 screens whose names have 200 letters.
func TestManyScreensLongNames(t *testing.T) {
	t.Parallel()
	names := []string{"white", strings.Repeat("W", 200), strings.Repeat("il", 100), strings.Repeat("Ärger ", 33) + "!!"}
	inks := []string{"plastisol white", "water-based", "discharge", "plastisol puff"}
	for n := 1; n <= 16; n++ {
		for k, name := range names {
			if n%len(names) != k && n != 16 { // all names with most screens, else one
				continue
			}
			var src strings.Builder
			fmt.Fprintf(&src, "title = %q\njob = %q\ncustomer = %q\nquantity = 500\n[garment]\nname = %q\nfibre = \"polyester\"\nshade = \"dark\"\n", name, numbered(name), name, name)
			for _, place := range []string{"front ", "back "} {
				where := []rune(place + name)
				where = where[:min(len(where), 200)]
				fmt.Fprintf(&src, "[[location]]\nname = %q\nwidth = \"250 mm\"\nheight = \"300 mm\"\n", strings.TrimSpace(string(where)))
				for i := range n {
					fmt.Fprintf(&src, "[[location.screen]]\ncolor = %q\nink = %q\nswatch = \"#20%02x40\"\n", name, inks[(i+k)%len(inks)], 16*i)
					if i%3 == 1 {
						src.WriteString("halftone = { lines = \"65 lpi\", angle = 22.5, smallest = \"3 %\" }\n")
					}
					if i%4 == 3 {
						src.WriteString("film = \"300..320 um\"\nangle = 42.5\nblade = \"60\"\n")
					}
				}
			}
			p, v := planned(t, ".", src.String(), templates.Bases()[n%len(templates.Bases())], []string{"metric", "inch"}[k%2], 40)
			for i, l := range p.Locations {
				for s := range l.Screens {
					p.Locations[i].Screens[s].Blade.Name = name
					p.Locations[i].Screens[s].Mesh.Name = name
				}
			}
			sound(t, p, v, sheet.Options{})
			if t.Failed() {
				t.Fatalf("%d screens, name %q", n, name)
			}
		}
	}
}

// TestCustomer: the customer is printed, unless he is not to be.
func TestCustomer(t *testing.T) {
	t.Parallel()
	const src = "title = \"shirts\"\njob = \"7\"\ncustomer = \"Quayside Sails\"\n[[location]]\n[[location.screen]]\n"
	p, v := planned(t, ".", src, "en", "metric", 0)
	for _, c := range []struct {
		opt  sheet.Options
		want bool
	}{{sheet.Options{}, true}, {sheet.Options{NoCustomer: true}, false}} {
		got := false
		for _, texts := range sound(t, p, v, c.opt) {
			got = got || strings.Contains(strings.Join(texts, "\n"), "Quayside")
		}
		if got != c.want {
			t.Errorf("%+v: customer printed is %v", c.opt, got)
		}
	}
	if p.Customer == "" {
		t.Error("the plan lost its customer")
	}
}

// TestStandsAlone: every figure that another shop needs is on the sheet, as the plan has it.
func TestStandsAlone(t *testing.T) {
	t.Parallel()
	src, err := os.ReadFile("../../samples/jobs/lantern-scene.toml")
	if err != nil {
		t.Fatal(err)
	}
	p, v := planned(t, "../../samples/jobs", string(src), "en", "metric", 0)
	var all []string
	for _, texts := range sound(t, p, v, sheet.Options{}) {
		all = append(all, texts...)
	}
	text := strings.ReplaceAll(strings.Join(all, " "), "\u00a0", " ")
	has := func(s string) {
		t.Helper()
		if s = strings.ReplaceAll(s, "\u00a0", " "); s == "" || !strings.Contains(text, s) {
			t.Errorf("the sheet lacks %q", s)
		}
	}
	equivalents := 0
	for _, l := range p.Locations {
		for _, s := range l.Screens {
			for _, x := range []string{s.Color, s.Ink, s.Mesh.Name, v.Count(s.Mesh.CountPerInch, s.Mesh.CountPerCM), v.Fine(s.Stencil.EOMUM), s.Blade.Layup, v.Thickness(s.Blade.FreeHeightMM),
				v.Length(s.Blade.LengthMM), v.AngleRange(s.AngleDeg.Low, s.AngleDeg.High), v.Angle(s.AngleDeg.ToScreen), v.Load(s.LoadNPerCM),
				v.FilmRange(s.WetUM.Low, s.WetUM.High), v.FilmRange(s.CuredUM.Low, s.CuredUM.High), v.FilmRange(s.TargetUM.Low, s.TargetUM.High),
				v.Gap(s.OffContact.Low, s.OffContact.High), v.Mass(*s.InkGPerPrint), v.Mass(*s.InkGRun), v.BeltSpeed(s.Cure.BeltMPerMin.Low, s.Cure.BeltMPerMin.High)} {
				has(x)
			}
			for _, c := range s.Cautions {
				has(v.T("caution." + c))
			}
			for _, e := range s.Equivalents {
				equivalents++
				for _, x := range []string{e.Blade, e.Layup, e.Mesh, v.Thickness(e.ThicknessMM), v.Thickness(e.FreeHeightMM), v.Fine(e.EOMUM), v.Angle(e.AngleDeg),
					v.Angle(e.ToScreen), v.Load(e.LoadNPerCM), v.FilmUM(e.CuredUM), v.Number(math.Abs(e.DeltaPercent), 0) + " %"} {
					has(x)
				}
			}
		}
	}
	for _, m := range p.Mix {
		has(v.Mass(m.G))
		has(v.Volume(m.ML))
	}
	has(v.T("caution.defer"))
	if equivalents < 10 {
		t.Errorf("only %d equivalents were looked for", equivalents)
	}
}

// TestLogo: a picture of any shape stands beside the title and covers nothing.
func TestLogo(t *testing.T) {
	t.Parallel()
	data, err := os.ReadFile("../../samples/logo.png")
	if err != nil {
		t.Fatal(err)
	}
	logo, err := canvas.ReadPicture(data)
	if err != nil {
		t.Fatal(err)
	}
	p, v := planned(t, ".", "title = \""+strings.Repeat("a long title ", 12)+"\"\n[[location]]\n[[location.screen]]\n", "en", "metric", 0)
	sound(t, p, v, sheet.Options{Logo: logo, Accent: "#1c3f6e"})
	faces, err := sheet.Pages(p, page.A4, v, sheet.Options{Logo: logo})
	if err != nil {
		t.Fatal(err)
	}
	if faces[0].Boxes[0].Kind != page.KindImage {
		t.Errorf("the first box of the sheet is %q; the logo is wanted", faces[0].Boxes[0].Name)
	}
}

// TestEquivalentsOnPaper: screens that are set alike share a group; a miss that they share is
// said, and so is the lack of any.
func TestEquivalentsOnPaper(t *testing.T) {
	t.Parallel()
	screen := func(film string) string {
		return "[[location.screen]]\nmesh = \"156-64\"\nfilm = \"" + film + "\"\nstrokes = 1\n"
	}
	const head = "title = \"t\"\n[[location]]\nname = \"front\"\nwidth = \"20 cm\"\nheight = \"20 cm\"\n"
	for _, lang := range templates.Bases() {
		p, v := planned(t, ".", head+screen("20..60 um")+screen("90..95 um")+screen("20..60 um"), lang, "metric", 0)
		text := func() string {
			out := ""
			for _, texts := range sound(t, p, v, sheet.Options{}) {
				out += "\n" + strings.Join(texts, "\n") + "\n"
			}
			return strings.ReplaceAll(out, "\u00a0", " ")
		}
		got := text()
		if !strings.Contains(got, "\n1, 3\n") {
			t.Errorf("%s: screens 1 and 3 have no common group", lang)
		}
		miss, _, _ := strings.Cut(v.T("sheet-doc.share-miss", "list", "2"), ",")
		if !strings.Contains(got, "\n"+miss) {
			t.Errorf("%s: %q is not said", lang, miss)
		}
		p.Locations[0].Screens[1].Equivalents = nil
		got = text()
		if strings.Contains(got, "\n"+miss) || !strings.Contains(got, v.T("sheet-doc.none-for", "list", "2")) {
			t.Errorf("%s: screen 2 has no equivalents, and the sheet does not say so", lang)
		}
		for i := range p.Locations[0].Screens {
			p.Locations[0].Screens[i].Equivalents = nil
		}
		if got = text(); !strings.Contains(got, v.T("sheet-doc.none")) {
			t.Errorf("%s: no screen has equivalents, and the sheet does not say so", lang)
		}
	}
}

// numbered is a name as long as a job number may be.
func numbered(name string) string {
	return strings.TrimSpace(string([]rune(name)[:min(32, len([]rune(name)))]))
}
