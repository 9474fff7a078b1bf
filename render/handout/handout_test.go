package handout_test

import (
	"bytes"
	"fmt"
	"image"
	"image/png"
	"math"
	"os"
	"regexp"
	"slices"
	"strconv"
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
	b.WriteString("name = \"" + strings.Repeat("Harbor and Lighthouse Garment Decorators ", 4) + "\"\nunits = \"inch\"\n")
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

// TestLayout: of every shop and level, in every language, on both papers, with a logo and without, nothing
// overlaps, leaves the page, is cut or set too small; 6 to 12 pages; no heading ends a page, no page of the lesson is
// under six tenths full and no other but the last under a third; the answers stand on the last page alone, and not on a leaf of the work sheet; two runs
// give the same bytes. The wall chart: see wall.
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
			wall(t, l)
			for _, language := range templates.Bases() {
				for units, papers := range map[string][]page.Paper{"metric": {page.A4, page.Letter}, "inch": {page.Letter}} {
					v := voice(t, language, units)
					for _, paper := range papers {
						whole := 0
						for _, o := range []handout.Options{{Logo: p, Accent: "#1c3f6e"}, {Level: handout.Intro}} {
							t.Run(fmt.Sprint(language, " ", units, " ", paper.Name, " ", o.Level, o.Logo != nil), func(t *testing.T) {
								faces, err := handout.Pages(l, paper, v, o)
								if err != nil {
									t.Fatal(err)
								}
								if n := len(faces); n < 6 || n > 12 {
									t.Errorf("%d pages; 6 to 12 are wanted", n)
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
									least := 1.0 / 3
									if i < 5 {
										least = 0.6
									}
									if i == len(faces)-1 {
										least = 0
									}
									foot(t, f, least)
								}
								answers(t, v, faces)
								if paper == page.A4 && units == "metric" {
									same(t, faces, l, v, paper, o)
								}
							})
						}
					}
				}
			}
		})
	}
}

// wall: the wall chart is one page across, of either paper, with a row for each typical print: blade, angle and mesh as
// the planner chose them, in type that is read at 2 m.
func wall(t *testing.T, l *lesson.Lesson) {
	t.Helper()
	for _, language := range templates.Bases() {
		for _, units := range []string{"metric", "inch"} {
			for _, paper := range []page.Paper{page.A4, page.Letter} {
				v := voice(t, language, units)
				faces, err := handout.Pages(l, paper, v, handout.Options{Level: handout.Wall})
				if err != nil {
					t.Fatal(err)
				}
				if len(faces) != 1 || faces[0].W != paper.H || faces[0].H != paper.W {
					t.Fatalf("%d pages, %g by %g mm", len(faces), faces[0].W, faces[0].H)
				}
				for _, err := range pagecheck.Check(faces[0], handout.WallPT) {
					t.Errorf("%s %s %s: %v", language, units, paper.Name, err)
				}
				sizes(t, faces[0])
				all := words(faces)
				figures := 0
				for _, b := range faces[0].Boxes {
					if b.Text != "" && b.Font.SizePT >= handout.WallHeadPT {
						figures++
					}
					if strings.HasSuffix(b.Text, "…") && b.Align != page.Right { // the name of the shop may be
						t.Errorf("%s %s: %q is cut", language, paper.Name, b.Text)
					}
				}
				for _, c := range l.Prints {
					if s := c.Setup; s != nil {
						hold := v.T("handout.wall.exact")
						if s.AngleDeg.Low < s.AngleDeg.High {
							hold = v.AngleRange(s.AngleDeg.Low, s.AngleDeg.High)
						}
						want := []string{s.Mesh.Name, v.Angle(s.AngleDeg.Set), hold}
						if look, _, _ := strings.Cut(v.T("handout.look."+c.Print), " {"); len(c.Misses) == 0 {
							want = append(want, strings.Split(look, ". ")...) // a sentence a line
						}
						for _, want := range want {
							if !strings.Contains(all, want) {
								t.Errorf("%s %s: the wall chart lacks %q, whole, for %s", language, paper.Name, want, c.Print)
							}
						}
					}
				}
				if figures < 2*len(l.Prints) {
					t.Errorf("%d figures of %g pt for %d prints", figures, handout.WallHeadPT, len(l.Prints))
				}
			}
		}
	}
}

// TestIntroIsPlain: a new hand is told of no modulus and no rigidity, and sees no chart of films.
func TestIntroIsPlain(t *testing.T) {
	t.Parallel()
	for _, language := range templates.Languages() {
		v := voice(t, language, "metric")
		faces, err := handout.Pages(ofBuiltIn(t), page.A4, v, handout.Options{Level: handout.Intro})
		if err != nil {
			t.Fatal(err)
		}
		all := words(faces)
		for _, no := range []string{"MPa", "N·m", v.T("handout.why.head"), v.T("handout.rack.head"), v.T("handout.choice.film"), v.T("card.y-film")} {
			if strings.Contains(all, no) {
				t.Errorf("%s: the paper for a new hand says %q", language, no)
			}
		}
	}
}

// TestHour: the minutes of the sections are an hour at each level, and where the racks print no practice job.
func TestHour(t *testing.T) {
	t.Parallel()
	v := voice(t, "en", "metric")
	bare := *ofBuiltIn(t)
	bare.Worked, bare.Faults = nil, nil
	for i, level := range []handout.Level{handout.Press, handout.Intro, handout.Press, handout.Intro} {
		l := &bare
		if i < 2 {
			l = ofBuiltIn(t)
		}
		faces, err := handout.Pages(l, page.A4, v, handout.Options{Level: level})
		if err != nil {
			t.Fatal(err)
		}
		sum, column := 0, 0.0
		for _, b := range faces[0].Boxes {
			if b.Text == v.T("handout.aims.minutes") {
				column = b.Right()
			}
			if n, err := strconv.Atoi(b.Text); err == nil && column > 0 && math.Abs(b.Right()-column) < 0.01 {
				sum += n
			}
		}
		if sum != 60 {
			t.Errorf("%s: the hour has %d minutes", level, sum)
		}
	}
}

// foot: what stands lowest on a page is no heading and no caption, and without lines for notes the page is filled to a share.
func foot(t *testing.T, f page.Face, least float64) {
	t.Helper()
	low, filled, face := 0.0, 0.0, canvas.Font{}
	for _, b := range f.Boxes {
		y := b.Y + b.H
		if b.Name == "page number" || y <= low {
			continue
		}
		if low = y; !strings.HasPrefix(b.Name, "line") {
			filled = y
		}
		face = canvas.Font{}
		if b.Text != "" {
			face = b.Font
		}
	}
	if face.Face == canvas.Bold && face.SizePT >= handout.BodyPT {
		t.Errorf("%s ends with a heading", f.Name)
	}
	if filled < least*f.H {
		t.Errorf("%s is filled to %.0f of %.0f mm only", f.Name, filled, f.H)
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
	for i, f := range faces {
		for _, b := range f.Boxes {
			if strings.HasPrefix(b.Name, "answer line") {
				if lines++; i/2 == (len(faces)-1)/2 {
					t.Errorf("the answers are the back of page %d, a work sheet", i+1)
				}
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
	for _, want := range []string{"Kiln Lane Print Works", "65/90/65", "83-100", v.T("handout.choice.misses")} {
		if !strings.Contains(all, want) {
			t.Errorf("the paper does not say %q", want)
		}
	}
	for _, gone := range []string{"225-40", "70/90/70", "75 graphics"} {
		if strings.Contains(all, gone) {
			t.Errorf("the paper says %q, which the rack has not", gone)
		}
	}
}

// TestFewBlades: a rack of one blade and of two is not asked for its softest, usual and stiffest one, a picture alone is
// not told to be set like others, and a bar is said to be missing only where one is.
func TestFewBlades(t *testing.T) {
	t.Parallel()
	for n, say := range map[int]struct{ bring, picture string }{1: {"bring-one", "picture-one"}, 2: {"bring-few", "picture"}, 5: {"bring-blades", "picture"}} {
		shop := sampleShop(t)
		shop.Blades = shop.Blades[max(0, 3-n):][:n]
		l, v := made(t, shop), voice(t, "en", shop.Units)
		faces, err := handout.Pages(l, page.A4, v, handout.Options{})
		if err != nil {
			t.Fatal(err)
		}
		all := strings.ReplaceAll(words(faces), "\n", " ")
		missing := slices.ContainsFunc(l.Blades, func(b lesson.Blade) bool { return slices.Contains(b.Largest, nil) })
		for text, is := range map[string]bool{
			v.T("handout.aims." + say.bring): true, v.T("handout.angle."+say.picture, "load", v.Load(l.Press.LoadNPerCM)): true, v.T("handout.lean.missing"): missing,
		} {
			if strings.Contains(all, strings.ReplaceAll(text, "\u00a0", " ")) != is && strings.Contains(all, text) != is {
				t.Errorf("%d blades: %q: %v is wanted", n, text, is)
			}
		}
	}
}

// TestDotsOfAnotherScreen: what mends the dots of the second screen of the worked job names its mesh, since the card that is
// read is of the first; and the wall chart promises no dot that the mesh does not hold.
func TestDotsOfAnotherScreen(t *testing.T) {
	t.Parallel()
	l, v := ofBuiltIn(t), voice(t, "en", "metric")
	lost := slices.IndexFunc(l.Faults, func(f lesson.Fault) bool { return f.Seen == "dots-lost" })
	if mesh := l.Worked.Locations[0].Screens[1].Mesh.Name; lost < 0 || l.Faults[lost].Mesh != mesh {
		t.Fatalf("the lost dots are not those of mesh %s", mesh)
	}
	faces, err := handout.Pages(l, page.A4, v, handout.Options{})
	if err != nil {
		t.Fatal(err)
	}
	if all := words(faces); strings.Count(all, "red screen, mesh") != 2 { // lost and plugged
		t.Error("a fault of the dots does not name its screen")
	}
	wall, err := handout.Pages(l, page.A4, v, handout.Options{Level: handout.Wall})
	if err != nil {
		t.Fatal(err)
	}
	all := words(wall)
	for _, c := range l.Prints {
		if t0 := c.Setup.Halftone; t0 != nil && (c.DotsFrom < t0.HoldsFrom || !strings.Contains(all, "Dots from "+v.Percent(c.DotsFrom)+" are there.")) {
			t.Errorf("%g lpi: dots from %g are told, the mesh holds them from %g", c.LinesPerInch, c.DotsFrom, t0.HoldsFrom)
		}
	}
}

// TestWords: a language that is not English has the English words of the trade beside its own, English has none twice, and
// no answer says a percentage of doubt.
func TestWords(t *testing.T) {
	t.Parallel()
	for _, language := range templates.Languages() {
		faces, err := handout.Pages(ofBuiltIn(t), page.A4, voice(t, language, "metric"), handout.Options{})
		if err != nil {
			t.Fatal(err)
		}
		all := words(faces)
		for _, term := range []string{"dye migration", "wet on wet", "Shore A"} {
			if n := strings.Count("\n"+all+"\n", "\n"+term+"\n"); n != 1 {
				t.Errorf("%s: the word %q stands %d times in the list", language, term, n)
			}
		}
		if strings.Contains(all, "±") {
			t.Errorf("%s: the paper says ±", language)
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
				if b.Text != "" && b.Color != canvas.Black && b.Color != canvas.White {
					t.Errorf("the text %q is coloured", b.Text)
				}
				heads := strings.HasPrefix(b.Name, "rule") && b.Pen.WidthMM == 0.4
				if heads && b.Pen.Color == c.want {
					rules++
				} else if heads {
					t.Errorf("a rule under a heading has the colour %v", b.Pen.Color)
				}
			}
		}
		if has := strings.Contains(names(faces[0]), "logo"); has != (c.o.Logo != nil) {
			t.Errorf("a logo on the first page: %v", has)
		}
		if rules != 13 {
			t.Errorf("%d rules under the 13 headings", rules)
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
	for _, level := range []handout.Level{"", handout.Press, handout.Intro} {
		faces, err := handout.Pages(l, page.A4, v, handout.Options{Level: level})
		if err != nil {
			t.Fatal(err)
		}
		all := words(faces)
		for _, key := range []string{"safety", "wipe", "faults", "angle", "choice", "card", "practice", "care", "sheet", "glossary", "answers"} {
			if !strings.Contains(all, "\u00a0"+v.T("handout."+key+".head")) {
				t.Errorf("%q: no section %s", level, key)
			}
		}
		if why := v.T("handout.why.head"); strings.Contains(all, why) == (level == handout.Intro) {
			t.Errorf("%q: section %q", level, why)
		}
		at := regexp.MustCompile(`(\d+)\x{a0}\x{a0}` + v.T("handout.safety.head")).FindStringSubmatch(all)
		if at == nil || !strings.Contains(strings.ReplaceAll(all, "\n", " "), "section "+at[1]+".") {
			t.Errorf("%q: the log does not point to the section on safety", level)
		}
		if safety, press := strings.Index(all, v.T("handout.safety.head")), strings.Index(all, v.T("handout.wipe.head")); safety > press {
			t.Errorf("%q: a press is touched before its dangers are told", level)
		}
		if has := strings.Contains(all, v.T("handout.rack.head")); has == (level == handout.Intro) {
			t.Errorf("%q: tables of the racks: %v", level, has)
		}
	}
	if _, err := handout.Pages(l, page.A4, v, handout.Options{Level: "expert"}); err == nil || !strings.Contains(err.Error(), "intro, press, wall") {
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
