package figure

import (
	"io"
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/wcharczuk/go-chart/v2"

	"bladecard/render/canvas"
)

// drawn is the chart on a recorder, with its places and the plot's box in mm.
func drawn(t *testing.T, ch Chart, r Rect) (*recorder, *plot, Rect) {
	t.Helper()
	rec := &recorder{}
	p, err := ch.measure(rec, r)
	if err != nil {
		t.Fatal(err)
	}
	var in Rect
	g := p.goChart()
	g.Series = append(g.Series, layer(func(r *renderer, box chart.Box) {
		a, b := r.point(box.Left, box.Top), r.point(box.Right, box.Bottom)
		in = Rect{a.X, a.Y, b.X - a.X, b.Y - a.Y}
	}))
	own := newRenderer(rec, r)
	if err := g.Render(func(int, int) (chart.Renderer, error) { return own, nil }, io.Discard); err != nil {
		t.Fatal(err)
	}
	return rec, p, in
}

// unit is one of go-chart's, in mm: places agree to half of it.
const unit = 1 / pxPerMM

// at is where a value stands.
func (p *plot) at(in Rect, v XY) canvas.Point {
	share := func(s *scale, v float64) float64 { return (v - s.Min) / s.GetDelta() }
	return canvas.Point{X: in.X + share(p.x, v.X)*in.W, Y: in.Bottom() - share(p.y, v.Y)*in.H}
}

func TestYAxisStandsOnTheLeftOnly(t *testing.T) {
	rec, _, in := drawn(t, simple(), Rect{0, 0, 80, 50})
	left, right := 0, 0
	for _, p := range rec.paths {
		b := p.box()
		if p.fill == nil && b.W < 0.3 && b.H > 0.95*in.H && p.pen.WidthMM >= axisMM-1e-9 {
			if b.X < in.X {
				left++
			}
			if b.Right() > in.Right()-0.1 {
				right++
			}
		}
	}
	if left != 1 || right != 0 {
		t.Errorf("%d axes on the left, %d on the right", left, right)
	}
	for _, s := range []string{"20", "30", "40"} {
		if w := rec.find(t, s); w.x+w.w > in.X {
			t.Errorf("tick %q of y stands at %v, right of the axis", s, w.x)
		}
	}
}

// The lines, the ticks and the grid are go-chart's, by the same two ranges: the points of a line
// and the labels of its values stand at the same places.
func TestLinesAgreeWithTheTicks(t *testing.T) {
	ch := full()
	ch.Lines = ch.Lines[1:2]
	ch.Lines[0].Step = 0
	ch.Lines[0].Points = []XY{{0, 40}, {20, 60}, {40, 50}}
	rec, _, in := drawn(t, ch, Rect{5, 5, 120, 80})
	var line []canvas.Piece
	for _, p := range rec.paths {
		if near(p.pen.WidthMM, strongMM) && len(p.path.Pieces) == 3 {
			line = p.path.Pieces
		}
	}
	if line == nil {
		t.Fatal("the line is not drawn")
	}
	for i, want := range []struct{ x, y string }{{"0", "40"}, {"20", "60"}, {"40", "50"}} {
		for _, w := range rec.texts {
			if w.s == want.x && w.y > in.Bottom() && math.Abs(w.x+w.w/2-line[i].P.X) > 1.5*unit {
				t.Errorf("%s of x stands at %v, its point at %v", w.s, w.x+w.w/2, line[i].P.X)
			}
			if middle := w.y - capEM/2*em(w.font); w.s == want.y && w.x < in.X && math.Abs(middle-line[i].P.Y) > 1.5*unit {
				t.Errorf("%s of y stands at %v, its point at %v", w.s, middle, line[i].P.Y)
			}
		}
	}
}

func TestAxisTitlesStandLevel(t *testing.T) {
	r := Rect{5, 5, 120, 80}
	rec, _, in := drawn(t, full(), r)
	y, x, second := rec.find(t, "cured film, µm"), rec.find(t, "angle from vertical, °"), rec.find(t, "° to screen")
	if y.angle != 0 || y.x != r.X || y.box().Bottom() > in.Y {
		t.Errorf("title of y at %+v", y)
	}
	for title, figure := range map[written]string{x: "10", second: "80"} { // each behind its own figures
		if of := rec.find(t, figure); title.y <= in.Bottom() || !near(title.y, of.y) || title.x < in.Right() {
			t.Errorf("%q at %v, %v, its figures at %v, plot to %v, %v", title.s, title.x, title.y, of.y, in.Right(), in.Bottom())
		}
	}
	ch := full()
	ch.X.Title += strings.Repeat(" so long", 6) // below them
	rec, _, in = drawn(t, ch, r)
	rec.clean(t, r, SmallestPT)
	if x, of := rec.find(t, ch.X.Title), rec.find(t, "10"); x.y <= of.y || x.x > in.Right() {
		t.Errorf("a long title at %v, %v, its figures at %v", x.x, x.y, of.y)
	}
}

func TestSecondScaleTurnsTheFirst(t *testing.T) {
	rec, _, in := drawn(t, full(), Rect{0, 0, 120, 80})
	pairs := 0
	for _, a := range rec.texts {
		for _, b := range rec.texts {
			x, err1 := strconv.ParseFloat(a.s, 64)
			u, err2 := strconv.ParseFloat(b.s, 64)
			if err1 == nil && err2 == nil && a.y > in.Bottom() && b.y > a.y && math.Abs(a.x+a.w/2-b.x-b.w/2) < 2*unit {
				pairs++
				if x+u != 90 {
					t.Errorf("%v stands under %v", u, x)
				}
			}
		}
	}
	if pairs < 5 {
		t.Errorf("%d ticks of the second scale under ticks of the first", pairs)
	}
}

// Without the tokens go-chart would parse a font of its own, which the renderer refuses.
func TestFontsAreTokens(t *testing.T) {
	p, err := simple().measure(&recorder{}, Rect{0, 0, 80, 50})
	if err != nil {
		t.Fatal(err)
	}
	g := p.goChart()
	if g.Font != tokenRegular || g.XAxis.Style.Font != tokenBelow || g.YAxisSecondary.Style.Font != tokenBeside {
		t.Error("a font is not a token")
	}
	g.Font, g.XAxis.Style.Font = nil, nil
	r := newRenderer(p.c, p.r)
	if err := g.Render(func(int, int) (chart.Renderer, error) { return r, nil }, io.Discard); err == nil {
		t.Error("go-chart's own font was taken")
	}
	if tokenRegular == tokenBelow || tokenRegular == tokenBeside || tokenBelow == tokenBeside {
		t.Error("the tokens are one")
	}
}

func TestNumberFormat(t *testing.T) {
	ch := simple()
	ch.Lines[0].Points = []XY{{0, 0}, {1, 1}}
	ch.Format = func(v float64, d int) string { return strings.Replace(Chart{}.number(v, d), ".", ",", 1) }
	rec, _, _ := drawn(t, ch, Rect{0, 0, 80, 50})
	commas := 0
	for _, w := range rec.words() {
		if strings.Contains(w, ".") {
			t.Errorf("%q", w)
		}
		if strings.Contains(w, ",") {
			commas++
		}
	}
	if commas < 4 {
		t.Errorf("%d decimal commas in %q", commas, rec.words())
	}
}

// The band is tinted between its ends, these are drawn for a printer that loses the tint, and its
// label has a piece of the tint beside it.
func TestBandIsTintedEdgedAndLabeled(t *testing.T) {
	rec, p, in := drawn(t, full(), Rect{0, 0, 120, 80})
	low, high := p.at(in, XY{5, 38}).Y, p.at(in, XY{5, 55}).Y
	like := func(a, b float64) bool { return math.Abs(a-b) <= unit }
	tint, edges, samples := 0, 0, 0
	label := rec.find(t, "target")
	for _, s := range rec.paths {
		b := s.box()
		if s.fill != nil && *s.fill == bandGray {
			if like(b.Y, high) && like(b.Bottom(), low) && near(b.W, in.W) {
				tint++
			} else if b.Right() < label.x && b.X > in.Right() && b.Y < label.y && b.Bottom() > label.y-1 {
				samples++
			}
		}
		if y := b.Y + b.H/2; len(s.pen.DashMM) == 2 && (like(y, low) || like(y, high)) && b.W >= in.W {
			edges++
		}
	}
	if tint != 1 || edges != 2 || samples != 1 {
		t.Errorf("%d tints, %d edges, %d samples beside the label", tint, edges, samples)
	}
}

// The band goes under the grid, and the chosen line over the others.
func TestOrderOfTheLayers(t *testing.T) {
	rec, _, in := drawn(t, full(), Rect{0, 0, 120, 80})
	band, grid, plain, strong := -1, -1, -1, -1
	for i, p := range rec.paths {
		b := p.box()
		switch {
		case p.fill != nil && *p.fill == bandGray && band < 0:
			band = i
		case p.pen.Color == gridGray && grid < 0:
			grid = i
		case near(p.pen.WidthMM, plainMM) && b.X < in.Right()-1:
			plain = i
		case near(p.pen.WidthMM, strongMM) && b.X < in.Right()-1 && strong < 0:
			strong = i
		}
	}
	if !(0 <= band && band < grid && grid < plain && plain < strong) {
		t.Errorf("band, grid, lines and the chosen line are drawn as the %d, %d, %d and %d", band, grid, plain, strong)
	}
}

func TestDots(t *testing.T) {
	ch := Chart{Lines: []Line{{Label: "measured", Dots: true, Points: []XY{{1, 1}, {2, math.NaN()}, {3, 2}, {4, 5}}}}}
	rec, p, in := drawn(t, ch, Rect{0, 0, 80, 50})
	var got []canvas.Point
	for _, s := range rec.paths {
		if b := s.box(); s.fill != nil && b.X < in.Right() && b.X > in.X-2 {
			got = append(got, canvas.Point{X: b.X + b.W/2, Y: b.Y + b.H/2})
		}
	}
	want := []XY{{1, 1}, {3, 2}, {4, 5}}
	if len(got) != len(want) {
		t.Fatalf("%d dots, want %d", len(got), len(want))
	}
	for i, v := range want {
		if q := p.at(in, v); math.Hypot(q.X-got[i].X, q.Y-got[i].Y) > 2*unit {
			t.Errorf("the dot of %v stands at %v, want %v", v, got[i], q)
		}
	}
}
