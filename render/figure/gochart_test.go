package figure

import (
	"io"
	"math"
	"reflect"
	"strconv"
	"strings"
	"testing"

	"github.com/wcharczuk/go-chart/v2"

	"bladecard/render/canvas"
)

// drawn is the chart on a recorder, with its places after drawing.
func drawn(t *testing.T, ch Chart, r Rect) (*recorder, *layout) {
	t.Helper()
	rec := &recorder{}
	l, err := ch.layout(rec, r)
	if err != nil {
		t.Fatal(err)
	}
	if err := l.draw(); err != nil {
		t.Fatal(err)
	}
	return rec, l
}

func TestYAxisStandsOnTheLeftOnly(t *testing.T) {
	r := Rect{0, 0, 80, 50}
	rec, l := drawn(t, simple(), r)
	left, right := 0, 0
	for _, p := range rec.paths {
		b := p.box()
		if p.fill == nil && b.W < 0.3 && b.H > 0.95*l.plot.H && p.pen.WidthMM >= axisMM-1e-9 {
			if b.X < l.plot.X {
				left++
			}
			if b.Right() > l.plot.Right()-0.1 {
				right++
			}
		}
	}
	if left != 1 || right != 0 {
		t.Errorf("%d axes on the left, %d on the right", left, right)
	}
	for _, s := range []string{"10", "20", "30", "40"} {
		for _, w := range rec.texts {
			if w.s == s && w.y < l.plot.Bottom() && w.x > l.plot.X {
				t.Errorf("tick %q of y stands at %v, right of the axis", s, w.x)
			}
		}
	}
}

// The range of the secondary axis is read from the ticks of the primary one: with other ticks
// there the curve would stand at other heights.
func TestBothYAxesCarryTheSameTicks(t *testing.T) {
	l, err := simple().layout(&recorder{}, Rect{0, 0, 80, 50})
	if err != nil {
		t.Fatal(err)
	}
	g := l.goChart()
	if len(g.YAxisSecondary.Ticks) < 3 || !reflect.DeepEqual(g.YAxis.Ticks, g.YAxisSecondary.Ticks) {
		t.Errorf("primary %v, secondary %v", g.YAxis.Ticks, g.YAxisSecondary.Ticks)
	}
	if !g.YAxis.Style.Hidden || g.YAxisSecondary.Style.Hidden {
		t.Error("the wrong axis is hidden")
	}
	for _, s := range g.Series {
		if s.GetYAxis() != chart.YAxisSecondary {
			t.Errorf("series %s is on the primary axis", s.GetName())
		}
	}
}

// go-chart puts the ticks where this package puts the data: a tick mark stands at the place
// of its value, to a unit of go-chart's grid.
func TestTicksAgreeWithTheData(t *testing.T) {
	rec, l := drawn(t, full(), Rect{5, 5, 120, 80})
	found := 0
	for _, tick := range l.y.ticks {
		want := l.at(XY{l.x.lo, tick.At}).Y
		for _, w := range rec.texts {
			middle := w.y - capEM*em(w.font)/2
			if w.s == tick.Label && w.x < l.plot.X && math.Abs(middle-want) < 1.5/pxPerMM {
				found++
			}
		}
	}
	if found != len(l.y.ticks) || found < 3 {
		t.Errorf("%d of %d labels of y in the middle of their tick", found, len(l.y.ticks))
	}
	found = 0
	for _, tick := range l.x.ticks {
		want := l.at(XY{tick.At, l.y.lo}).X
		for _, w := range rec.texts {
			if w.s == tick.Label && w.y > l.plot.Bottom() && math.Abs(w.x+w.w/2-want) < 2/pxPerMM {
				found++
			}
		}
	}
	if found != len(l.x.ticks) || found < 3 {
		t.Errorf("%d of %d labels of x under their tick", found, len(l.x.ticks))
	}
}

func TestAxisWidthIsInMM(t *testing.T) {
	rec, l := drawn(t, simple(), Rect{0, 0, 80, 50})
	for _, p := range rec.paths {
		if b := p.box(); p.fill == nil && b.H < 0.5 && math.Abs(b.W-l.plot.W) < 0.5 && math.Abs(b.Y+b.H/2-l.plot.Bottom()) < 0.01 {
			if math.Abs(p.pen.WidthMM-axisMM) > 1e-9 {
				t.Errorf("the x axis is %v mm wide, want %v", p.pen.WidthMM, axisMM)
			}
			return
		}
	}
	t.Error("no x axis")
}

func TestTitlesStandLevelAboveAndBelow(t *testing.T) {
	r := Rect{2, 3, 80, 50}
	rec, l := drawn(t, full(), r)
	y, x, top := rec.find(t, "cured film, µm"), rec.find(t, "angle from vertical, °"), rec.find(t, "to the screen, °")
	if y.angle != 0 || y.x != r.X || y.box().Bottom() > l.plot.Y {
		t.Errorf("title of y at %+v", y)
	}
	if x.box().Y < l.plot.Bottom() || top.box().Bottom() > l.plot.Y {
		t.Errorf("titles of x at %v and %v, plot from %v to %v", x.y, top.y, l.plot.Y, l.plot.Bottom())
	}
}

func TestTopAxisTurnsTheLowerOne(t *testing.T) {
	rec, l := drawn(t, full(), Rect{0, 0, 120, 80})
	pairs := 0
	for _, a := range rec.texts {
		for _, b := range rec.texts {
			x, err1 := strconv.ParseFloat(a.s, 64)
			u, err2 := strconv.ParseFloat(b.s, 64)
			if err1 == nil && err2 == nil && a.y > l.plot.Bottom() && b.y < l.plot.Y &&
				math.Abs(a.x+a.w/2-b.x-b.w/2) < 3/pxPerMM {
				pairs++
				if x+u != 90 {
					t.Errorf("%v stands over %v", u, x)
				}
			}
		}
	}
	if pairs < 5 {
		t.Errorf("%d ticks of the upper axis over ticks of the lower", pairs)
	}
	ch := full()
	ch.Top = &TopAxis{Title: "up", Ticks: []Tick{{20, "b"}, {10, "a"}, {400, "never"}}}
	rec, l = drawn(t, ch, Rect{0, 0, 120, 80})
	if a, b := rec.find(t, "a"), rec.find(t, "b"); a.x >= b.x || a.y > l.plot.Y {
		t.Errorf("ticks at %v and %v", a.x, b.x)
	}
	if strings.Contains(strings.Join(rec.words(), " "), "never") {
		t.Error("a tick off the axis is drawn")
	}
}

func TestFontsAreTokens(t *testing.T) {
	l, err := simple().layout(&recorder{}, Rect{0, 0, 80, 50})
	if err != nil {
		t.Fatal(err)
	}
	g := l.goChart()
	if g.Font != tokenRegular || g.XAxis.Style.Font != tokenBelow || g.YAxisSecondary.Style.Font != tokenRegular {
		t.Error("a font is not a token: go-chart would parse its own")
	}
	// Without the token the renderer refuses what go-chart brings along.
	g.Font = nil
	g.XAxis.Style.Font = nil
	r := newRenderer(l.c, 0, 0)
	if err := g.Render(func(int, int) (chart.Renderer, error) { return r, nil }, io.Discard); err == nil {
		t.Error("go-chart's own font was taken")
	}
	if tokenRegular == tokenBold || tokenRegular == tokenBelow {
		t.Error("the tokens are one")
	}
}

func TestNumberFormat(t *testing.T) {
	ch := simple()
	ch.Lines[0].Points = []XY{{0, 0}, {1, 1}}
	ch.Format = func(v float64, d int) string { return strings.Replace(format(v, d), ".", ",", 1) }
	rec, _ := drawn(t, ch, Rect{0, 0, 80, 50})
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

func TestBandIsTintedAndEdged(t *testing.T) {
	rec, l := drawn(t, full(), Rect{0, 0, 120, 80})
	low, high := l.at(XY{5, 38}).Y, l.at(XY{5, 55}).Y
	tint, edges := 0, 0
	for _, p := range rec.paths {
		b := p.box()
		if p.fill != nil && *p.fill == canvas.Gray(224) && near(b.Y, high) && near(b.Bottom(), low) && near(b.W, l.plot.W) {
			tint++
		}
		if y := b.Y + b.H/2; len(p.pen.DashMM) == 2 && (near(y, low) || near(y, high)) && b.W > l.plot.W {
			edges++
		}
	}
	if tint != 1 || edges != 2 {
		t.Errorf("%d tints, %d edges", tint, edges)
	}
}

func TestSuppliedTicksOfYAreThinned(t *testing.T) {
	ch := simple()
	for v := 0.0; v <= 40; v++ {
		ch.Y.Ticks = append(ch.Y.Ticks, Tick{v, format(v, 0) + " u"})
	}
	r := Rect{0, 0, 80, 50}
	rec, _ := drawn(t, ch, r)
	rec.clean(t, r, SmallestPT)
	n := 0
	for _, w := range rec.words() {
		if strings.HasSuffix(w, " u") {
			n++
		}
	}
	if n < 4 || n > 14 {
		t.Errorf("%d labels of 41 are left", n)
	}
	rec.find(t, "0 u")
}
