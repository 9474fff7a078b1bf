package pagecheck

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"bladecard/render/canvas"
	"bladecard/render/page"

	"pgregory.net/rapid"
)

var (
	small = canvas.Font{SizePT: 9}
	large = canvas.Font{Face: canvas.Bold, SizePT: 20}
)

// dummy is a sound side of a card: a title, a frame, a paragraph, a drawing with turned text.
func dummy(size page.Size, name string) page.Face {
	f := page.Face{Name: name, W: size.W, H: size.H, Safe: page.Rect{X: 5, Y: 13, W: size.W - 10, H: size.H - 18}}
	gray := canvas.Gray(225)
	f.Boxes = append(f.Boxes,
		page.Fill("panel", 5, 14, size.W-10, 14, &gray, canvas.Pen{Color: canvas.Black, WidthMM: 0.3}))
	f.Boxes = append(f.Boxes, page.Fit("title", page.Rect{X: 7, Y: 15, W: size.W - 14, H: 12}, name, page.Style{Font: large}, 14).Boxes...)
	f.Boxes = append(f.Boxes, page.Rule("rule", 5, 31, size.W-10, 0, canvas.Pen{Color: canvas.Black, WidthMM: 0.4}))
	f.Boxes = append(f.Boxes, page.Paragraph("words", 5, 33, 50, "Ścisła próba: the film stays 45 µm ±9, wipe once and look. Ứng dụng.", page.Style{Font: small}, 0).Boxes...)
	f.Boxes = append(f.Boxes, page.Drawing("dial", 62, 33, 40, 40, func(c canvas.Canvas) {
		var p canvas.Path
		p.Move(1, 20)
		p.Curve(1, 5, 39, 5, 39, 20)
		p.Line(20, 39)
		p.Close()
		fill := canvas.Gray(200)
		c.Draw(p, &fill, canvas.Pen{Color: canvas.Color{R: 180}, WidthMM: 0.5, DashMM: []float64{2, 1}})
		c.Text(10, 30, "turned", small, canvas.Color{B: 200}, 90)
		c.Text(18, 25, "level", small, canvas.Black, 0)
	}))
	return f
}

func errorsText(errs []error) string { return fmt.Sprint(errs) }

// Whatever the words, a fit that was not cut holds all of them, and every line passes Check.
func TestFitHolds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := rapid.StringMatching(`[A-Za-zÄÖŻ0-9/%µ ]{0,80}`).Draw(t, "s")
		w := rapid.Float64Range(20, 150).Draw(t, "w")
		h := rapid.Float64Range(6, 30).Draw(t, "h")
		face := canvas.Face(rapid.Bool().Draw(t, "bold"))
		got := page.Fit("fit", page.Rect{X: 5, Y: 5, W: w, H: h}, s, page.Style{Font: canvas.Font{Face: face, SizePT: 24}}, 14)
		words := ""
		for _, b := range got.Boxes {
			words += b.Text
		}
		f := page.Face{Name: "fit", W: w + 10, H: h + 10, Safe: page.Rect{X: 5, Y: 5, W: w, H: h}, Boxes: got.Boxes}
		if errs := Check(f, 14); len(errs) > 0 {
			t.Fatal(errorsText(errs))
		}
		strip := strings.NewReplacer(" ", "", "…", "")
		have, want := strip.Replace(words), strip.Replace(s)
		if !got.Cut && have != want || !strings.HasPrefix(want, have) {
			t.Fatalf("%q became %q, cut %v", s, words, got.Cut)
		}
	})
}

func TestSoundFaceHasNoFault(t *testing.T) {
	for _, s := range page.Sizes {
		if errs := Check(dummy(s, "sound "+s.Name), 9); len(errs) > 0 {
			t.Errorf("%s: %s", s.Name, errorsText(errs))
		}
	}
}

// Each planted fault is found, and named with its box.
func TestPlantedFaults(t *testing.T) {
	line := func(name string, x, y, w float64, s string, f canvas.Font) page.Box {
		return page.Text(name, x, y, w, 0, s, f, canvas.Black, page.Left)
	}
	art := func(draw func(canvas.Canvas)) page.Box { return page.Drawing("chart", 62, 76, 40, 14, draw) }
	path := func(pen float64, xy ...float64) canvas.Path {
		var p canvas.Path
		p.Move(xy[0], xy[1])
		for i := 2; i < len(xy); i += 2 {
			p.Line(xy[i], xy[i+1])
		}
		return p
	}
	ink := canvas.Pen{WidthMM: 0.3}
	for _, c := range []struct {
		name string
		add  []page.Box
		box  string // in the error
		want string // in the error
	}{
		{"text on text", []page.Box{line("late", 6, 34, 20, "late", small)}, "late", `lies 2.71 mm on box "words"`},
		{"text on a drawing", []page.Box{line("late", 90, 40, 20, "late", small)}, "late", `on box "dial"`},
		{"text on a rule", []page.Box{line("late", 90, 29, 20, "late", small)}, "late", `on box "rule"`},
		{"outside the safe area", []page.Box{line("low", 6, 90, 20, "low", small)}, "low", "out of the safe area"},
		{"in the clip strip", []page.Box{line("high", 6, 5, 20, "high", small)}, "high", "out of the safe area"},
		{"drawing outside the safe area", []page.Box{page.Drawing("far", 110, 70, 20, 5, nil)}, "far", "out of the safe area"},
		{"outside the face", []page.Box{page.Fill("ground", -1, 0, 20, 5, nil, ink)}, "ground", "1.00 mm out of the face"},
		{"small type", []page.Box{line("tiny", 6, 80, 20, "tiny", canvas.Font{SizePT: 7})}, "tiny", "7 pt; 9 pt and more"},
		{"wide text", []page.Box{line("wide", 6, 80, 20, "much too wide for it", small)}, "wide", "the box takes 20.00 mm"},
		{"flat box", []page.Box{page.Text("flat", 6, 80, 20, 1, "flat", small, canvas.Black, page.Left)}, "flat", "above or below its box"},
		{"missing glyph", []page.Box{line("kanji", 6, 80, 20, "漢", small)}, "kanji", "U+6F22"},
		{"above U+FFFF", []page.Box{line("smile", 6, 80, 20, "😀", small)}, "smile", "U+1F600"},
		{"newline", []page.Box{line("two", 6, 80, 20, "a\nb", small)}, "two", "U+000A"},
		{"not a number", []page.Box{line("nan", math.NaN(), 80, 20, "a", small)}, "nan", "NaN"},
		{"infinite", []page.Box{line("inf", 6, math.Inf(1), 20, "a", small)}, "inf", "Inf"},
		{"size not a number", []page.Box{line("nan", 6, 80, 20, "a", canvas.Font{SizePT: math.NaN()})}, "nan", "is NaN"},
		{"negative size", []page.Box{page.Rule("back", 6, 80, -5, 0, ink)}, "back", "0 or more"},
		{"no kind", []page.Box{{Name: "odd", Kind: 9}}, "odd", "kind 9"},
		{"label small", []page.Box{art(func(c canvas.Canvas) { c.Text(2, 8, "x", canvas.Font{SizePT: 5}, canvas.Black, 0) })}, "chart", "5 pt; 9 pt"},
		{"label outside", []page.Box{art(func(c canvas.Canvas) { c.Text(36, 8, "micrometers", small, canvas.Black, 0) })}, "chart", "out of the drawing"},
		{"turned label outside", []page.Box{art(func(c canvas.Canvas) { c.Text(10, 8, "micrometers", small, canvas.Black, 90) })}, "chart", "out of the drawing"},
		{"label on label", []page.Box{art(func(c canvas.Canvas) {
			c.Text(2, 8, "one", small, canvas.Black, 0)
			c.Text(4, 9, "two", small, canvas.Black, 0)
		})}, "chart", `on label "one"`},
		{"label glyph", []page.Box{art(func(c canvas.Canvas) { c.Text(2, 8, "漢", small, canvas.Black, 0) })}, "chart", "U+6F22"},
		{"label place", []page.Box{art(func(c canvas.Canvas) { c.Text(2, math.NaN(), "x", small, canvas.Black, 0) })}, "chart", "NaN"},
		{"path outside", []page.Box{art(func(c canvas.Canvas) { c.Draw(path(0, 2, 2, 41, 2), nil, ink) })}, "chart", "1.15 mm out of the drawing"},
		{"path not a number", []page.Box{art(func(c canvas.Canvas) { c.Draw(path(0, 2, 2, math.NaN(), 2), nil, ink) })}, "chart", "NaN"},
		{"path without a start", []page.Box{art(func(c canvas.Canvas) { var p canvas.Path; p.Line(1, 1); c.Draw(p, nil, ink) })}, "chart", "M is accepted"},
		{"pen not a number", []page.Box{art(func(c canvas.Canvas) { c.Draw(path(0, 2, 2, 3, 2), nil, canvas.Pen{WidthMM: math.NaN()}) })}, "chart", "line width is NaN"},
		{"dash of nothing", []page.Box{art(func(c canvas.Canvas) {
			c.Draw(path(0, 2, 2, 3, 2), nil, canvas.Pen{WidthMM: 1, DashMM: []float64{0, 0}})
		})}, "chart", "add up to nothing"},
		{"text on the label of a ground", []page.Box{
			{Name: "ground", Kind: page.KindDrawing, Rect: page.Rect{X: 6, Y: 76, W: 40, H: 14}, Under: true, Art: canvas.Record(func(c canvas.Canvas) { c.Text(2, 8, "label", small, canvas.Black, 0) })},
			line("on", 8, 80, 20, "on", small)}, "on", `on label "label" of box "ground"`},
	} {
		t.Run(c.name, func(t *testing.T) {
			f := dummy(page.Card132, "38 % planted")
			f.Boxes = append(f.Boxes, c.add...)
			got := errorsText(Check(f, 9))
			if !strings.Contains(got, c.want) || !strings.Contains(got, `face "38 % planted": box "`+c.box+`"`) {
				t.Errorf("got %q, want box %q and %q", got, c.box, c.want)
			}
		})
	}
}

func TestGroundsCarryOthers(t *testing.T) {
	f := dummy(page.Card132, "grounds")
	f.Boxes = append(f.Boxes, page.Text("on", 8, 80, 20, 0, "on", small, canvas.Black, page.Left),
		page.Fill("ground", 6, 78, 40, 12, nil, canvas.Pen{WidthMM: 0.2}))
	if errs := Check(f, 9); len(errs) > 0 {
		t.Error(errorsText(errs))
	}
}

func TestQuadOverlap(t *testing.T) {
	at := func(x, y, w, h, deg float64) quad {
		sin, cos := math.Sincos(deg * math.Pi / 180)
		p := func(u, v float64) canvas.Point { return canvas.Point{X: x + u*cos - v*sin, Y: y + u*sin + v*cos} }
		return quad{p(0, 0), p(w, 0), p(w, h), p(0, h)}
	}
	for _, c := range []struct {
		name string
		a, b quad
		want float64 // exact, derived by hand
	}{
		{"apart", at(0, 0, 2, 2, 0), at(3, 0, 2, 2, 0), -1},
		{"touching", at(0, 0, 2, 2, 0), at(2, 0, 2, 2, 0), 0},
		{"half on", at(0, 0, 2, 2, 0), at(1, 0, 2, 2, 0), 1},
		{"a turned corner just short of a side", at(0, 0, 2, 2, 0), at(2.5+math.Sqrt2, 0, 2, 2, 45), -0.5},
		// The upright rectangles around these two overlap; they do not.
		{"side by side at 45 degrees", at(0, 0, 4, 1, 45), at(0, -1, 4, 0.5, 45), 0.5 - math.Sqrt2/2},
	} {
		got := c.a.overlap(c.b)
		if math.Abs(got-c.want) > 1e-9 || math.Abs(c.b.overlap(c.a)-c.want) > 1e-9 {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
		}
	}
	for _, a := range []page.Rect{{X: 0, Y: 0, W: 2, H: 2}, {X: 1, Y: 1, W: 2, H: 3}, {X: 0.5, Y: 0.5, W: 1, H: 1}, {X: 1, Y: 1, W: 0, H: 1}} {
		for _, b := range []page.Rect{{X: 3, Y: 0, W: 2, H: 2}, {X: 2, Y: 0, W: 2, H: 2}, {X: 1, Y: 0.5, W: 2, H: 5}, {X: -1, Y: 0, W: 9, H: 0}} {
			if got, want := overlap(a, b), rectQuad(a).overlap(rectQuad(b)); math.Abs(got-want) > 1e-9 {
				t.Errorf("%v on %v: %v as rectangles, %v as quads", a, b, got, want)
			}
		}
	}
}
