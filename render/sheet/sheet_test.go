package sheet_test

import (
	"bytes"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"slices"
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

// sound lays a plan out on both papers and checks every page: page.Check, the page number, a third of each page but
// the last in use, nothing in the square for the code. All warnings stand on the paper. It returns the words by page, of both papers.
func sound(t *testing.T, p *plan.Plan, v *say.Voice, o sheet.Options) [][]string {
	t.Helper()
	var words [][]string
	for _, paper := range []page.Paper{page.A4, page.Letter} {
		faces, err := sheet.Pages(p, paper, v, o)
		if err != nil {
			t.Fatal(err)
		}
		var warned []string
		code := page.Rect{X: paper.W - flow.MarginMM - 24, Y: flow.MarginMM, W: 24, H: 24}
		for i, f := range faces {
			for _, err := range pagecheck.Check(f, flow.SmallPT) {
				t.Errorf("%s: %v", paper.Name, err)
			}
			var texts []string
			used := 0.0
			for k, b := range f.Boxes {
				if k+1 < len(f.Boxes) {
					used = max(used, b.Bottom())
				}
				if i == 0 && b.Name != "code" && b.X < code.Right() && b.Right() > code.X+0.01 && b.Y < code.Bottom() && b.Bottom() > code.Y {
					t.Errorf("%s: %s stands in the square for the code", paper.Name, b.Name)
				}
				if strings.HasPrefix(b.Name, "warning ") {
					warned = append(warned, b.Text)
				}
				if b.Kind == page.KindText {
					texts = append(texts, b.Text)
				} else if strings.HasPrefix(b.Name, "chart") {
					for _, label := range b.Art.Texts() {
						texts = append(texts, label.Text)
					}
				}
			}
			if i+1 < len(faces) && used < paper.H/3 {
				t.Errorf("%s: page %d of %d ends at %.0f mm", paper.Name, i+1, len(faces), used)
			}
			if want := v.T("sheet-doc.page", "n", fmt.Sprint(i+1), "of", fmt.Sprint(len(faces))); texts[len(texts)-1] != want {
				t.Errorf("%s: page %d ends with %q; %q is wanted", paper.Name, i+1, texts[len(texts)-1], want)
			}
			words = append(words, texts)
		}
		for _, w := range say.Tell(p.Warnings, p.Locations...) {
			if !strings.Contains(said(warned), plain(w.Text)) {
				t.Errorf("%s: the sheet lacks the warning %q", paper.Name, w.Text)
			}
		}
		var file bytes.Buffer
		if err := page.Write(&file, pdf.Meta{Title: "t"}, page.Pages(faces...)); err != nil {
			t.Fatal(err)
		}
	}
	return words
}

// said are the words of pages in one line, and plain is a text without what breaks its lines: so a text is found
// wherever its lines end.
func said(pages ...[]string) string {
	var all []string
	for _, texts := range pages {
		all = append(all, texts...)
	}
	return plain(strings.Join(all, " "))
}

func plain(s string) string {
	return strings.Join(strings.Fields(strings.ReplaceAll(s, "\u00a0", " ")), " ")
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
				pages := sound(t, p, v, sheet.Options{Contact: "the desk, 12"})
				all := said(pages...)
				whole := []string{v.T("sheet-doc.cut-limit"), v.T("sheet-doc.cured"), v.T("sheet-doc.bar"), v.T("sheet-doc.first-blade"), v.T("sheet-doc.move-hardness"), v.T("sheet-doc.share")}
				for _, l := range p.Locations {
					for _, s := range l.Screens {
						whole = append(whole, s.Color, v.InkName(s.Ink), s.Mesh.Name, v.T("sheet-doc.edge-"+s.Blade.Edge))
					}
				}
				for _, s := range whole {
					if !strings.Contains(all, plain(s)) {
						t.Errorf("%s %s %s: a word of %q is broken", f, lang, units, s)
					}
				}
				for _, texts := range pages {
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

// TestManyScreensLongNames lays out 1 to 8 and 16 screens, and with BLADECARD_FULL all between, whose names have 200
// letters.
func TestManyScreensLongNames(t *testing.T) {
	t.Parallel()
	names := []string{"white", strings.Repeat("W", 200), strings.Repeat("il", 100), strings.Repeat("Ärger ", 33) + "!!"}
	inks := []string{"plastisol white", "water-based", "discharge", "plastisol puff"}
	full := os.Getenv("BLADECARD_FULL") != ""
	for n := 1; n <= 16; n++ {
		if n > 8 && n < 16 && !full {
			continue
		}
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

// TestSevenScreensOnOnePage: in every edition, the first page of a job of seven screens holds all that a printer who
// never saw the shop needs at the press, as the plan has it.
func TestSevenScreensOnOnePage(t *testing.T) {
	t.Parallel()
	src, err := os.ReadFile("../../samples/jobs/lantern-scene.toml")
	if err != nil {
		t.Fatal(err)
	}
	for _, lang := range templates.Bases() {
		for _, units := range []string{"metric", "inch"} {
			p, v := planned(t, "../../samples/jobs", string(src), lang, units, 0)
			for _, paper := range []page.Paper{page.A4, page.Letter} {
				faces, err := sheet.Pages(p, paper, v, sheet.Options{Contact: "the desk, extension 12"})
				if err != nil {
					t.Fatal(err)
				}
				var texts []string
				rows, bars, garments, turned, kept := 0, 0, 0, 0, 0
				for _, b := range faces[0].Boxes {
					texts = append(texts, b.Text)
					switch {
					case strings.HasPrefix(b.Name, "first-screen row") && strings.HasSuffix(b.Name, "column 1"):
						rows++
					case strings.HasPrefix(b.Name, "screens row") && b.Kind == page.KindDrawing && b.W > 20:
						bars++
					case strings.HasPrefix(b.Name, "garment"):
						garments++
					}
					if strings.HasPrefix(b.Name, "swaps 0 row ") && strings.Contains(b.Text, "°\u00a0(") && !strings.Contains(b.Text, ",") { // all are within 10 %
						t.Errorf("%s %s %s: %q is no same film", lang, units, paper.Name, b.Text)
					}
					for _, e := range p.Locations[0].Screens[0].Equivalents { // only an angle that changes is bold
						if strings.HasPrefix(b.Name, "swaps 0 row 1 ") && e.Kind == "blade" && b.Text == v.Angle(e.AngleDeg) {
							if e.AngleDeg == 15 && b.Font.Face == canvas.Regular {
								kept++
							} else if e.AngleDeg != 15 && b.Font.Face == canvas.Bold {
								turned++
							} else {
								t.Errorf("%s %s %s: %q is bold: %v", lang, units, paper.Name, b.Text, b.Font.Face)
							}
						}
					}
				}
				if rows != 7 || bars != 7 || garments != 1 || turned < 2 || kept < 2 {
					t.Errorf("%s %s %s: %d rows to fill in, %d bars, %d garments, %d angles that change and %d that stay on the first page", lang, units, paper.Name, rows, bars, garments, turned, kept)
				}
				front := said(texts)
				want := []string{p.Job, p.Title, "the desk, extension 12", v.T("caution.defer"), v.T("sheet-doc.match"), v.PressTime(p.Locations[0].Time), v.Date(p.Due)}
				for _, s := range p.Locations[0].Screens {
					want = append(want, s.Color, v.InkName(s.Ink), s.Mesh.Name, v.T("sheet-doc.per-cm", "n", v.Number(s.Mesh.CountPerCM, 0)), v.Fine(s.Stencil.EOMUM), s.Blade.Layup,
						v.Thickness(s.Blade.FreeHeightMM), v.Length(s.Blade.LengthMM), v.AngleRange(s.AngleDeg.Low, s.AngleDeg.High), v.Load(s.LoadNPerCM),
						v.FilmUM(s.CuredUM.Value), v.FilmRange(s.CuredUM.Low, s.CuredUM.High), v.Gap(s.OffContact.Low, s.OffContact.High), v.Mass(*s.InkGRun))
					for _, e := range s.Equivalents {
						want = append(want, e.Blade, e.Mesh, v.Angle(e.AngleDeg))
						if math.Abs(e.DeltaPercent) > 10 {
							want = append(want, v.Number(math.Abs(e.DeltaPercent), 0)+" %")
						}
					}
					for _, w := range s.Warnings {
						want = append(want, w.Text)
					}
				}
				for _, s := range want {
					if s = plain(s); s == "" || !strings.Contains(front, s) {
						t.Errorf("%s %s %s: the first page lacks %q", lang, units, paper.Name, s)
					}
				}
			}
			all := said(sound(t, p, v, sheet.Options{})...)
			for _, m := range p.Mix {
				if !strings.Contains(all, plain(v.Mass(m.G))) || !strings.Contains(all, plain(v.Volume(m.ML))) {
					t.Errorf("%s %s: the sheet lacks the mix of %s", lang, units, m.Color)
				}
			}
		}
	}
}

// TestEveryWarning lays out a job that has every warning there is, spread over its screens.
func TestEveryWarning(t *testing.T) {
	t.Parallel()
	for _, lang := range templates.Bases() {
		p, v := planned(t, ".", "title = \"t\"\n[[location]]\n"+strings.Repeat("[[location.screen]]\n", 3), lang, "inch", 0)
		words, err := templates.Language(lang)
		if err != nil {
			t.Fatal(err)
		}
		n := 0
		for key, text := range words {
			if strings.HasPrefix(key, "warning.") {
				s := &p.Locations[0].Screens[n%3]
				s.Warnings = append(s.Warnings, plan.Warning{Code: key, Text: text})
				n++
			}
		}
		sound(t, p, v, sheet.Options{})
		if n < 30 {
			t.Errorf("%s: only %d warnings", lang, n)
		}
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
	if !slices.ContainsFunc(faces[0].Boxes, func(b page.Box) bool { return b.Kind == page.KindImage }) {
		t.Error("the sheet has no logo")
	}
}

// TestSwapsOnPaper: screens that are set alike share a row; a miss that they share is said, and so is the lack of any.
func TestSwapsOnPaper(t *testing.T) {
	t.Parallel()
	screen := func(film string) string {
		return "[[location.screen]]\nmesh = \"156-64\"\nfilm = \"" + film + "\"\nstrokes = 1\n"
	}
	const head = "title = \"t\"\n[[location]]\nname = \"front\"\nwidth = \"20 cm\"\nheight = \"20 cm\"\n"
	for _, lang := range templates.Bases() {
		p, v := planned(t, ".", head+screen("20..60 um")+screen("90..95 um")+screen("20..60 um"), lang, "metric", 0)
		text := func() string { return said(sound(t, p, v, sheet.Options{})...) }
		miss, none := plain(v.T("sheet-doc.share-miss", "list", "2")), plain(v.T("sheet-doc.none-for", "list", "2"))
		if got := text(); !strings.Contains(got, miss) || strings.Contains(got, none) || !strings.Contains(got, " 1, 3 ") {
			t.Errorf("%s: %q is not said, or 1 and 3 have no row of their own", lang, miss)
		}
		p.Locations[0].Screens[1].Equivalents = nil
		if got := text(); strings.Contains(got, miss) || !strings.Contains(got, none) {
			t.Errorf("%s: screen 2 has no equivalents, and the sheet does not say so", lang)
		}
		for i := range p.Locations[0].Screens {
			p.Locations[0].Screens[i].Equivalents = nil
		}
		if got := text(); !strings.Contains(got, plain(v.T("sheet-doc.none"))) {
			t.Errorf("%s: no screen has equivalents, and the sheet does not say so", lang)
		}
	}
}

// numbered is a name as long as a job number may be.
func numbered(name string) string {
	return strings.TrimSpace(string([]rune(name)[:min(32, len([]rune(name)))]))
}

// swapsOf are the swaps of a sample job's sheet, row by row.
func swapsOf(t *testing.T, name string) map[string]string {
	t.Helper()
	src, err := os.ReadFile("../../samples/jobs/" + name + ".toml")
	if err != nil {
		t.Fatal(err)
	}
	p, v := planned(t, "../../samples/jobs", string(src), "en", "metric", 0)
	faces, err := sheet.Pages(p, page.A4, v, sheet.Options{})
	if err != nil {
		t.Fatal(err)
	}
	rows := map[string]string{}
	for _, b := range faces[0].Boxes {
		if row, is := strings.CutPrefix(b.Name, "swaps 0 row "); is {
			n, _, _ := strings.Cut(row, " ")
			rows[n] += strings.ReplaceAll(b.Text, "\u00a0", " ") + " "
		}
	}
	return rows
}

// TestSwapsOfHits: a mesh that lays with one hit what is set with two says so, since "1 stroke" is what each hit has,
// and several hits on a screen that is set without a flash name it.
func TestSwapsOfHits(t *testing.T) {
	if row := swapsOf(t, "lantern-crew")["4"]; !strings.Contains(row, "83-100, 1 hit of 1 stroke") {
		t.Errorf("left chest, two hits through 125-70, swaps %q: 83-100, 1 hit of 1 stroke is wanted", row)
	}
	row := swapsOf(t, "lantern-title")["2"]
	if hits, told := strings.Count(row, "2 hits of"), strings.Count(row, "flash between"); hits == 0 || told != hits {
		t.Errorf("the puff of the title, swaps %q: %d of two hits, %d of them with a flash", row, hits, told)
	}
}
