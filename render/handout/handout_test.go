package handout_test

import (
	"bytes"
	"fmt"
	"image"
	"image/png"
	"os"
	"slices"
	"strings"
	"sync"
	"testing"

	"bladecard/calc/file"
	"bladecard/calc/job"
	"bladecard/calc/lesson"
	"bladecard/render/canvas"
	"bladecard/render/canvas/pdf"
	"bladecard/render/handout"
	"bladecard/render/page"
	"bladecard/render/pagecheck"
	"bladecard/render/say"
	"bladecard/templates"
)

func made(t *testing.T, shop *job.Shop) *lesson.Lesson {
	t.Helper()
	l, err := lesson.Make(shop)
	if err != nil {
		t.Fatal(err)
	}
	return l
}

// builtIn is the lesson of the built-in shop, which many tests print. It is computed once.
var builtIn = sync.OnceValues(func() (*lesson.Lesson, error) { return lesson.Make(file.BuiltInShop()) })

func ofBuiltIn(t *testing.T) *lesson.Lesson {
	t.Helper()
	l, err := builtIn()
	if err != nil {
		t.Fatal(err)
	}
	return l
}

func voice(t *testing.T, language, units string) *say.Voice {
	t.Helper()
	v, err := say.New(language, units)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

func sampleShop(t *testing.T) *job.Shop {
	t.Helper()
	src, err := os.ReadFile("../../samples/shop.toml")
	if err != nil {
		t.Fatal(err)
	}
	shop, errs := file.DecodeShop("shop.toml", src)
	if errs != nil {
		t.Fatal(errs)
	}
	return shop
}

// crowded is a shop with twelve blades of long names, some of which fold over.
func crowded(t *testing.T) *job.Shop {
	t.Helper()
	var b strings.Builder
	b.WriteString("name = \"" + strings.Repeat("Harbour and Lighthouse Garment Decorators ", 4) + "\"\nunits = \"inch\"\n")
	for i, layup := range []string{"50", "55", "60", "65", "70", "75", "80", "85", "60/90/60", "65/90/65", "70/90/70", "75/90/75"} {
		fmt.Fprintf(&b, "[[blade]]\nname = \"the long one from the %s drawer, number %d, Żółć ñandú\"\nlayup = %q\nfree-height = \"%d mm\"\n",
			strings.Repeat("uppermost ", 1+i%3), i+1, layup, 24+i%4)
	}
	shop, errs := file.DecodeShop("shop.toml", []byte(b.String()))
	if errs != nil {
		t.Fatal(errs)
	}
	return shop
}

// twelve is a shop with twelve blades of different layups.
func twelve(t *testing.T) *job.Shop {
	t.Helper()
	var b strings.Builder
	for _, layup := range []string{"50", "55", "60", "65", "70", "75", "80", "85", "60/90/60", "65/90/65", "70/90/70", "75/90/75"} {
		fmt.Fprintf(&b, "[[blade]]\nlayup = %q\n", layup)
	}
	shop, errs := file.DecodeShop("shop.toml", []byte(b.String()))
	if errs != nil {
		t.Fatal(errs)
	}
	return shop
}

// logo is a small picture.
func logo(t *testing.T) *canvas.Picture {
	t.Helper()
	var b bytes.Buffer
	if err := png.Encode(&b, image.NewGray(image.Rect(0, 0, 60, 20))); err != nil {
		t.Fatal(err)
	}
	p, err := canvas.ReadPicture(b.Bytes())
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// TestLayout: of every shop and level, in every language, on both papers and with a logo and without, nothing
// overlaps, leaves the page, is cut or set too small; 6 to 11 pages; no heading ends a page and no page but the
// last is half empty; the answers stand on the last page alone; two runs give the same bytes.
func TestLayout(t *testing.T) {
	p := logo(t)
	for name, shop := range map[string]*job.Shop{
		"built-in": file.BuiltInShop(), "samples": sampleShop(t), "crowded": crowded(t), "twelve": twelve(t),
	} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			l := ofBuiltIn(t)
			if name != "built-in" {
				l = made(t, shop)
			}
			for _, language := range templates.Bases() {
				v := voice(t, language, shop.Units)
				for _, paper := range []page.Paper{page.A4, page.Letter} {
					whole := 0
					for _, o := range []handout.Options{{}, {Level: handout.Press, Logo: p, Accent: "#1c3f6e"}, {Level: handout.Intro, Logo: p}} {
						t.Run(fmt.Sprint(language, " ", paper.Name, " ", o.Level, o.Logo != nil), func(t *testing.T) {
							faces, err := handout.Pages(l, paper, v, o)
							if err != nil {
								t.Fatal(err)
							}
							if n := len(faces); n < 6 || n > 11 {
								t.Errorf("%d pages; 6 to 11 are wanted", n)
							}
							switch {
							case o.Level != handout.Intro:
								whole = len(faces)
							case len(faces) >= whole:
								t.Errorf("%d pages for a new hand, %d in all", len(faces), whole)
							}
							for i, f := range faces {
								for _, err := range pagecheck.Check(f, handout.FootPT) {
									t.Error(err)
								}
								sizes(t, f)
								foot(t, f, i == len(faces)-1)
							}
							answers(t, v, faces)
							if paper == page.A4 {
								same(t, faces, l, v, paper, o)
							}
						})
					}
				}
			}
		})
	}
}

// foot: what stands lowest on a page is no heading and no caption, and it stands in the lower part.
func foot(t *testing.T, f page.Face, last bool) {
	t.Helper()
	low, face := 0.0, canvas.Font{}
	for _, b := range f.Boxes {
		if b.Name == "page number" {
			continue
		}
		if y := b.Y + b.H; y > low && b.Name != "" {
			low = y
			if b.Text != "" {
				face = b.Font
			} else {
				face = canvas.Font{}
			}
		}
	}
	if face.Face == canvas.Bold && face.SizePT >= handout.BodyPT {
		t.Errorf("%s ends with a heading", f.Name)
	}
	if low < 0.7*f.H && !last {
		t.Errorf("%s is filled to %.0f of %.0f mm only", f.Name, low, f.H)
	}
}

// sizes: body text is 9 pt and more, a text that is not filled in shows as a brace.
func sizes(t *testing.T, f page.Face) {
	t.Helper()
	for _, b := range f.Boxes {
		if strings.HasPrefix(b.Name, "text") && b.Font.SizePT < 9 {
			t.Errorf("%s: %q is body text of %g pt", f.Name, b.Text, b.Font.SizePT)
		}
		texts := []string{b.Text}
		for _, x := range b.Art.Texts() {
			texts = append(texts, x.Text)
		}
		for _, s := range texts {
			if strings.ContainsAny(s, "{}") || strings.Contains(s, "NaN") {
				t.Errorf("%s: %s: a figure is missing in %q", f.Name, b.Name, s)
			}
		}
	}
}

func answers(t *testing.T, v *say.Voice, faces []page.Face) {
	t.Helper()
	lines := 0
	for _, f := range faces {
		for _, b := range f.Boxes {
			if strings.HasPrefix(b.Name, "answer line") {
				lines++
			}
		}
	}
	if lines < 10 {
		t.Errorf("%d exercises; ten and more are wanted", lines)
	}
	heads := 0
	for i, f := range faces {
		for _, b := range f.Boxes {
			if b.Font == (canvas.Font{Face: canvas.Bold, SizePT: handout.HeadPT}) && strings.HasSuffix(b.Text, v.T("handout.answers.head")) {
				heads++
				if i != len(faces)-1 {
					t.Errorf("the answers begin on page %d of %d", i+1, len(faces))
				}
			}
		}
	}
	if heads != 1 {
		t.Errorf("%d headings of answers", heads)
	}
	last := words(faces[len(faces)-1:])
	if !strings.Contains(last, fmt.Sprintf("%d.", lines)) || strings.Contains(last, v.T("handout.sheet.head")) {
		t.Error("the last page does not hold the answers alone")
	}
}

func same(t *testing.T, faces []page.Face, l *lesson.Lesson, v *say.Voice, paper page.Paper, o handout.Options) {
	t.Helper()
	again, err := handout.Pages(l, paper, v, o)
	if err != nil {
		t.Fatal(err)
	}
	var a, b bytes.Buffer
	if err := page.Write(&a, pdf.Meta{Title: "t"}, page.Pages(faces...)); err != nil {
		t.Fatal(err)
	}
	if err := page.Write(&b, pdf.Meta{Title: "t"}, page.Pages(again...)); err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(a.Bytes(), b.Bytes()) {
		t.Error("two runs give different bytes")
	}
}

// words are all texts of pages.
func words(faces []page.Face) string {
	var out []string
	for _, f := range faces {
		for _, b := range f.Boxes {
			out = append(out, b.Text)
		}
	}
	return strings.Join(out, "\n")
}

// TestFollowsTheRack: another rack gives another paper, exercises and answers included.
func TestFollowsTheRack(t *testing.T) {
	t.Parallel()
	shop := sampleShop(t)
	shop.Blades, shop.Meshes = shop.Blades[:2], shop.Meshes[:3]
	l, v := made(t, shop), voice(t, "en", shop.Units)
	faces, err := handout.Pages(l, page.A4, v, handout.Options{})
	if err != nil {
		t.Fatal(err)
	}
	all := words(faces)
	for _, want := range []string{"Kiln Lane Print Works", "65/90/65", "83-100", v.T("handout.miss.film-heavy")} {
		if !strings.Contains(all, want) {
			t.Errorf("the paper does not say %q", want)
		}
	}
	for _, gone := range []string{"156-64", "70/90/70", "75 graphics"} {
		if strings.Contains(all, gone) {
			t.Errorf("the paper says %q, which the rack has not", gone)
		}
	}
}

// TestLook: the logo stands on the first page alone, the accent colours the rules under the headings and nothing
// else, and a shop that has neither gets black rules.
func TestLook(t *testing.T) {
	t.Parallel()
	l, v := ofBuiltIn(t), voice(t, "en", "metric")
	for _, c := range []struct {
		o    handout.Options
		want canvas.Color
	}{
		{handout.Options{}, canvas.Black},
		{handout.Options{Accent: "no colour"}, canvas.Black},
		{handout.Options{Accent: "#1c3f6e", Logo: logo(t)}, canvas.Color{R: 0x1c, G: 0x3f, B: 0x6e}},
	} {
		faces, err := handout.Pages(l, page.A4, v, c.o)
		if err != nil {
			t.Fatal(err)
		}
		rules := 0
		for i, f := range faces {
			for _, b := range f.Boxes {
				if (b.Name == "logo") != (c.o.Logo != nil && i == 0) && b.Name == "logo" {
					t.Errorf("a logo on page %d", i+1)
				}
				if b.Text != "" && b.Color != canvas.Black {
					t.Errorf("the text %q is coloured", b.Text)
				}
				if b.Pen.Color == c.want && b.Pen.WidthMM == 0.4 {
					rules++
				} else if b.Pen.WidthMM == 0.4 {
					t.Errorf("a rule under a heading has the colour %v", b.Pen.Color)
				}
			}
		}
		if has := strings.Contains(names(faces[0]), "logo"); has != (c.o.Logo != nil) {
			t.Errorf("a logo on the first page: %v", has)
		}
		if rules != 14 {
			t.Errorf("%d rules under the 14 headings", rules)
		}
	}
}

// names are the names of the boxes of a page.
func names(f page.Face) string {
	var out []string
	for _, b := range f.Boxes {
		out = append(out, b.Name)
	}
	return strings.Join(out, "\n")
}

// TestLevels: what each level holds, and that the paper points to the right section.
func TestLevels(t *testing.T) {
	t.Parallel()
	l, v := ofBuiltIn(t), voice(t, "en", "metric")
	for _, c := range []struct {
		level   handout.Level
		section string
		film    bool
	}{{"", "9", true}, {handout.Press, "9", true}, {handout.Intro, "6", false}} {
		faces, err := handout.Pages(l, page.A4, v, handout.Options{Level: c.level})
		if err != nil {
			t.Fatal(err)
		}
		all := words(faces)
		for _, key := range []string{"hardness", "mark", "rack", "angle", "strokes", "choice", "wipe", "wear", "safety", "sheet", "answers"} {
			if !strings.Contains(all, "\u00a0"+v.T("handout."+key+".head")) {
				t.Errorf("%q: no section %s", c.level, key)
			}
		}
		for _, key := range []string{"film", "load", "mesh"} {
			if strings.Contains(all, v.T("handout."+key+".head")) != c.film {
				t.Errorf("%q: section %s: %v is wanted", c.level, key, c.film)
			}
		}
		if !strings.Contains(all, c.section+"\u00a0\u00a0"+v.T("handout.choice.head")) || !strings.Contains(strings.ReplaceAll(all, "\n", " "), "section "+c.section+" ") {
			t.Errorf("%q: the choices do not stand in section %s, or the paper points elsewhere", c.level, c.section)
		}
	}
	if _, err := handout.Pages(l, page.A4, v, handout.Options{Level: "expert"}); err == nil || !strings.Contains(err.Error(), "intro, press") {
		t.Errorf("error %v; the levels that are accepted are wanted in it", err)
	}
}

// TestFills: a rack that gives few exercises for a new hand has others on its work sheet.
func TestFills(t *testing.T) {
	t.Parallel()
	l, v := ofBuiltIn(t), voice(t, "en", "metric")
	few := *l
	few.Exercises = slices.Clone(l.Exercises)
	for i := range few.Exercises {
		few.Exercises[i].Intro = i < 3
	}
	faces, err := handout.Pages(&few, page.A4, v, handout.Options{Level: handout.Intro})
	if err != nil {
		t.Fatal(err)
	}
	n := 0
	for _, f := range faces {
		n += strings.Count(names(f), "answer line")
	}
	if n != 10 {
		t.Errorf("%d exercises; 10 are wanted", n)
	}
}

// TestSaysWhatIsShown: where the racks hold more than the paper shows or the setups were chosen from, it tells how
// much of them; where they do not, it says nothing of it.
func TestSaysWhatIsShown(t *testing.T) {
	t.Parallel()
	l := ofBuiltIn(t)
	for _, language := range templates.Bases() {
		v := voice(t, language, "metric")
		for _, many := range []bool{false, true} {
			some := *l
			if many {
				some.BladesAtHand, some.BladesTried, some.MeshesRacked, some.MeshesTried = 251, 41, 252, 42
			}
			faces, err := handout.Pages(&some, page.A4, v, handout.Options{})
			if err != nil {
				t.Fatal(err)
			}
			all := strings.ReplaceAll(words(faces), "\n", " ")
			for _, want := range []string{
				v.T("handout.rack.some", "shown", fmt.Sprint(len(l.Blades)), "all", "251"),
				v.T("handout.mesh.some", "shown", fmt.Sprint(len(l.Meshes)), "all", "252"),
				v.T("handout.choice.some", "blades", "41", "all-blades", "251", "meshes", "42", "all-meshes", "252"),
			} {
				if strings.Contains(all, want) != many {
					t.Errorf("%s: %q on the paper: %v is wanted", language, want, many)
				}
			}
		}
	}
}
