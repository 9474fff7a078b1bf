package page

import (
	"math"
	"strings"
	"testing"

	"bladecard/render/canvas"
)

func TestSoundFaceHasNoFault(t *testing.T) {
	for _, s := range Sizes {
		if errs := Check(dummy(s, "sound "+s.Name), Rules{SmallestPT: 9}); len(errs) > 0 {
			t.Errorf("%s: %s", s.Name, errorsText(errs))
		}
	}
}

// Each planted fault is found, and named with its box.
func TestPlantedFaults(t *testing.T) {
	line := func(name string, x, y, w float64, s string, f canvas.Font) Box {
		return Text(name, x, y, w, 0, s, f, canvas.Black, Left)
	}
	art := func(draw func(canvas.Canvas)) Box { return Drawing("chart", 62, 76, 40, 14, draw) }
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
		add  []Box
		box  string // in the error
		want string // in the error
	}{
		{"text on text", []Box{line("late", 6, 34, 20, "late", small)}, "late", `lies 2.71 mm on box "words"`},
		{"text on a drawing", []Box{line("late", 90, 40, 20, "late", small)}, "late", `on box "dial"`},
		{"text on a rule", []Box{line("late", 90, 29, 20, "late", small)}, "late", `on box "rule"`},
		{"outside the safe area", []Box{line("low", 6, 90, 20, "low", small)}, "low", "out of the safe area"},
		{"in the clip strip", []Box{line("high", 6, 5, 20, "high", small)}, "high", "out of the safe area"},
		{"drawing outside the safe area", []Box{Drawing("far", 110, 70, 20, 5, nil)}, "far", "out of the safe area"},
		{"outside the face", []Box{Fill("ground", -1, 0, 20, 5, nil, ink)}, "ground", "1.00 mm out of the face"},
		{"small type", []Box{line("tiny", 6, 80, 20, "tiny", canvas.Font{SizePT: 7})}, "tiny", "7 pt; 9 pt and more"},
		{"wide text", []Box{line("wide", 6, 80, 20, "much too wide for it", small)}, "wide", "the box takes 20.00 mm"},
		{"flat box", []Box{Text("flat", 6, 80, 20, 1, "flat", small, canvas.Black, Left)}, "flat", "above or below its box"},
		{"missing glyph", []Box{line("kanji", 6, 80, 20, "漢", small)}, "kanji", "U+6F22"},
		{"above U+FFFF", []Box{line("smile", 6, 80, 20, "😀", small)}, "smile", "U+1F600"},
		{"newline", []Box{line("two", 6, 80, 20, "a\nb", small)}, "two", "U+000A"},
		{"not a number", []Box{line("nan", math.NaN(), 80, 20, "a", small)}, "nan", "NaN"},
		{"infinite", []Box{line("inf", 6, math.Inf(1), 20, "a", small)}, "inf", "Inf"},
		{"size not a number", []Box{line("nan", 6, 80, 20, "a", canvas.Font{SizePT: math.NaN()})}, "nan", "is NaN"},
		{"negative size", []Box{Rule("back", 6, 80, -5, 0, ink)}, "back", "0 or more"},
		{"no kind", []Box{{Name: "odd", Kind: 9}}, "odd", "kind 9"},
		{"label small", []Box{art(func(c canvas.Canvas) { c.Text(2, 8, "x", canvas.Font{SizePT: 5}, canvas.Black, 0) })}, "chart", "5 pt; 9 pt"},
		{"label outside", []Box{art(func(c canvas.Canvas) { c.Text(36, 8, "micrometres", small, canvas.Black, 0) })}, "chart", "out of the drawing"},
		{"turned label outside", []Box{art(func(c canvas.Canvas) { c.Text(10, 8, "micrometres", small, canvas.Black, 90) })}, "chart", "out of the drawing"},
		{"label on label", []Box{art(func(c canvas.Canvas) {
			c.Text(2, 8, "one", small, canvas.Black, 0)
			c.Text(4, 9, "two", small, canvas.Black, 0)
		})}, "chart", `on label "one"`},
		{"label glyph", []Box{art(func(c canvas.Canvas) { c.Text(2, 8, "漢", small, canvas.Black, 0) })}, "chart", "U+6F22"},
		{"label place", []Box{art(func(c canvas.Canvas) { c.Text(2, math.NaN(), "x", small, canvas.Black, 0) })}, "chart", "NaN"},
		{"path outside", []Box{art(func(c canvas.Canvas) { c.Draw(path(0, 2, 2, 41, 2), nil, ink) })}, "chart", "1.15 mm out of the drawing"},
		{"path not a number", []Box{art(func(c canvas.Canvas) { c.Draw(path(0, 2, 2, math.NaN(), 2), nil, ink) })}, "chart", "NaN"},
		{"path without a start", []Box{art(func(c canvas.Canvas) { var p canvas.Path; p.Line(1, 1); c.Draw(p, nil, ink) })}, "chart", "M is accepted"},
		{"pen not a number", []Box{art(func(c canvas.Canvas) { c.Draw(path(0, 2, 2, 3, 2), nil, canvas.Pen{WidthMM: math.NaN()}) })}, "chart", "line width is NaN"},
		{"dash of nothing", []Box{art(func(c canvas.Canvas) {
			c.Draw(path(0, 2, 2, 3, 2), nil, canvas.Pen{WidthMM: 1, DashMM: []float64{0, 0}})
		})}, "chart", "add up to nothing"},
		{"text on the label of a ground", []Box{
			{Name: "ground", Kind: KindDrawing, Rect: Rect{6, 76, 40, 14}, Under: true, Art: canvas.Record(func(c canvas.Canvas) { c.Text(2, 8, "label", small, canvas.Black, 0) })},
			line("on", 8, 80, 20, "on", small)}, "on", `on label "label" of box "ground"`},
	} {
		t.Run(c.name, func(t *testing.T) {
			f := dummy(Card132, "38 % planted")
			f.Boxes = append(f.Boxes, c.add...)
			got := errorsText(Check(f, Rules{SmallestPT: 9}))
			if !strings.Contains(got, c.want) || !strings.Contains(got, `face "38 % planted": box "`+c.box+`"`) {
				t.Errorf("got %q, want box %q and %q", got, c.box, c.want)
			}
		})
	}
}

func TestGroundsCarryOthers(t *testing.T) {
	f := dummy(Card132, "grounds")
	f.Boxes = append(f.Boxes, Text("on", 8, 80, 20, 0, "on", small, canvas.Black, Left),
		Fill("ground", 6, 78, 40, 12, nil, canvas.Pen{WidthMM: 0.2}))
	if errs := Check(f, Rules{SmallestPT: 9}); len(errs) > 0 {
		t.Error(errorsText(errs))
	}
}

func TestSmallestSizeOfABoxWins(t *testing.T) {
	f := dummy(Card132, "sizes")
	f.Boxes = append(f.Boxes, Text("fact", 6, 80, 20, 0, "12", small, canvas.Black, Left))
	f.Boxes[len(f.Boxes)-1].SmallestPT = 14
	if got := errorsText(Check(f, Rules{SmallestPT: 9})); !strings.Contains(got, "14 pt and more") {
		t.Errorf("got %q", got)
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
	for _, a := range []Rect{{0, 0, 2, 2}, {1, 1, 2, 3}, {0.5, 0.5, 1, 1}, {1, 1, 0, 1}} {
		for _, b := range []Rect{{3, 0, 2, 2}, {2, 0, 2, 2}, {1, 0.5, 2, 5}, {-1, 0, 9, 0}} {
			if got, want := a.overlap(b), rectQuad(a).overlap(rectQuad(b)); math.Abs(got-want) > 1e-9 {
				t.Errorf("%v on %v: %v as rectangles, %v as quads", a, b, got, want)
			}
		}
	}
}
