package handout_test

import (
	"bytes"
	"fmt"
	"os"
	"strings"
	"testing"

	"bladecard/calc/job"
	"bladecard/calc/lesson"
	"bladecard/render/canvas"
	"bladecard/render/handout"
	"bladecard/render/page"
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
	shop, errs := job.DecodeShop("shop.toml", src)
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
	shop, errs := job.DecodeShop("shop.toml", []byte(b.String()))
	if errs != nil {
		t.Fatal(errs)
	}
	return shop
}

// TestLayout: in every language, on both papers nothing overlaps, leaves the page, is cut or set too small; the
// answers stand on the last page alone; two runs give the same bytes.
func TestLayout(t *testing.T) {
	for _, c := range []struct {
		name  string
		shop  *job.Shop
		least int
		most  int
	}{
		{"built-in", job.BuiltInShop(), 6, 10},
		{"samples", sampleShop(t), 6, 10},
		{"crowded", crowded(t), 6, 14},
	} {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			l := made(t, c.shop)
			for i, language := range append(templates.Languages(), templates.Languages()...) {
				paper := []page.Paper{page.A4, page.Letter}[i/len(templates.Languages())]
				v := voice(t, language, c.shop.Units)
				faces, err := handout.Pages(l, paper, v, handout.Options{})
				if err != nil {
					t.Fatal(err)
				}
				if n := len(faces); n < c.least || n > c.most {
					t.Errorf("%s %s: %d pages; %d to %d are wanted", language, paper.Name, n, c.least, c.most)
				}
				for _, f := range faces {
					for _, err := range page.Check(f, handout.Rules) {
						t.Errorf("%s %s: %v", language, paper.Name, err)
					}
					sizes(t, f)
				}
				answers(t, l, v, faces)
				same(t, faces, l, v, paper)
			}
		})
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

func answers(t *testing.T, l *lesson.Lesson, v *say.Voice, faces []page.Face) {
	t.Helper()
	if len(l.Exercises) < 10 {
		t.Errorf("%d exercises; ten and more are wanted", len(l.Exercises))
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
	if !strings.Contains(last, fmt.Sprintf("%d.", len(l.Exercises))) || strings.Contains(last, v.T("handout.sheet.head")) {
		t.Error("the last page does not hold the answers alone")
	}
}

func same(t *testing.T, faces []page.Face, l *lesson.Lesson, v *say.Voice, paper page.Paper) {
	t.Helper()
	again, err := handout.Pages(l, paper, v, handout.Options{})
	if err != nil {
		t.Fatal(err)
	}
	var a, b bytes.Buffer
	if err := page.Write(&a, page.Meta{Title: "t"}, page.Pages(faces...)); err != nil {
		t.Fatal(err)
	}
	if err := page.Write(&b, page.Meta{Title: "t"}, page.Pages(again...)); err != nil {
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
