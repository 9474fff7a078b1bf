package figure

import (
	"fmt"
	"math"
	"reflect"
	"testing"

	"github.com/wcharczuk/go-chart/v2"
	"pgregory.net/rapid"

	"bladecard/render/canvas"
)

func TestGapsBreakLines(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for _, tt := range []struct {
		name string
		line Line
		want [][]XY
	}{
		{"whole", Line{Points: []XY{{0, 1}, {2, 2}, {4, 3}}}, [][]XY{{{0, 1}, {2, 2}, {4, 3}}}},
		{"NaN", Line{Points: []XY{{0, 1}, {2, 2}, {4, nan}, {6, 4}, {8, 5}}}, [][]XY{{{0, 1}, {2, 2}}, {{6, 4}, {8, 5}}}},
		{"infinite", Line{Points: []XY{{0, 1}, {2, 2}, {4, inf}, {6, 4}, {8, 5}}}, [][]XY{{{0, 1}, {2, 2}}, {{6, 4}, {8, 5}}}},
		{"missing sample", Line{Step: 2, Points: []XY{{0, 1}, {2, 2}, {6, 4}, {8, 5}}}, [][]XY{{{0, 1}, {2, 2}}, {{6, 4}, {8, 5}}}},
		{"wide spacing without a step", Line{Points: []XY{{0, 1}, {2, 2}, {6, 4}}}, [][]XY{{{0, 1}, {2, 2}, {6, 4}}}},
		{"alone", Line{Points: []XY{{3, 1}, {4, nan}, {6, 4}, {8, 5}}}, [][]XY{{{3, 1}}, {{6, 4}, {8, 5}}}},
		{"none", Line{Points: []XY{{3, nan}}}, nil},
	} {
		if got := tt.line.runs(); !reflect.DeepEqual(got, tt.want) {
			t.Errorf("%s: got %v, want %v", tt.name, got, tt.want)
		}
	}
}

// A point that stands alone is a dot, the rest are lines of go-chart.
func TestLinesAreSeries(t *testing.T) {
	l := Line{Points: []XY{{3, 1}, {4, math.NaN()}, {6, 4}, {8, 5}}}
	var got []string
	for _, s := range l.series() {
		c, is := s.(chart.ContinuousSeries)
		if !is || c.YAxis != chart.YAxisSecondary || c.Validate() != nil {
			t.Fatalf("%#v", s)
		}
		got = append(got, fmt.Sprint(c.XValues, c.YValues, c.Style.DotWidth > 0, c.Style.ShouldDrawStroke()))
	}
	if want := []string{"[3] [1] true false", "[6 8] [4 5] false true"}; !reflect.DeepEqual(got, want) {
		t.Errorf("got %v, want %v", got, want)
	}
}

func TestLinesDifferByPen(t *testing.T) {
	seen := map[string]int{}
	for i := range len(dashes) {
		seen[fmt.Sprint(Line{Style: i}.style().StrokeDashArray)]++
	}
	if len(seen) != len(dashes) {
		t.Errorf("%d pens for %d lines", len(seen), len(dashes))
	}
	strong, plain := Line{Strong: true, Style: 2}.style(), Line{Style: 2}.style()
	if !reflect.DeepEqual(strong.StrokeDashArray, plain.StrokeDashArray) || strong.StrokeWidth < 1.5*plain.StrokeWidth {
		t.Errorf("the chosen line is drawn with %v", strong)
	}
	for _, i := range []int{-1, len(dashes), 1 << 40} {
		if w := (Line{Style: i}).style().StrokeWidth; !near(w, plainMM*pxPerMM) {
			t.Errorf("dash %d is %v wide", i, w)
		}
	}
	rec := &recorder{}
	if err := full().Draw(rec, Rect{0, 0, 120, 80}); err != nil {
		t.Fatal(err)
	}
	for _, p := range rec.paths { // every color is a gray
		cs := []canvas.Color{p.pen.Color}
		if p.fill != nil {
			cs = append(cs, *p.fill)
		}
		for _, c := range cs {
			if c.R != c.G || c.G != c.B {
				t.Errorf("color %v in %s", c, p)
			}
		}
	}
}

// A line of many points keeps its extremes, its order and its gaps, and draws MostPoints at most.
func TestManyPointsAreThinned(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(MostPoints+1, 20*MostPoints).Draw(t, "n")
		l := Line{Step: 1}
		for i := range n {
			l.Points = append(l.Points, XY{float64(i), math.Sin(float64(i) / 50)})
		}
		peak, dip, hole := rapid.IntRange(0, n-1).Draw(t, "peak"), rapid.IntRange(0, n-1).Draw(t, "dip"), rapid.IntRange(1, n-2).Draw(t, "hole")
		l.Points[peak].Y, l.Points[dip].Y = 9, -9
		l.Points[hole].Y = math.NaN()
		low, high, last, count := 0.0, 0.0, -1.0, 0
		runs := l.runs()
		for _, run := range runs {
			for _, p := range run {
				low, high = math.Min(low, p.Y), math.Max(high, p.Y)
				if p.X <= last || p != l.Points[int(p.X)] {
					t.Fatalf("%v comes after %v", p, last)
				}
				last = p.X
				count++
			}
		}
		if count > MostPoints || count < MostPoints/3 {
			t.Fatalf("%d points of %d", count, n)
		}
		if peak != hole && peak != dip && high != 9 || dip != hole && low != -9 {
			t.Fatalf("from %v to %v: a peak is lost", low, high)
		}
		if stretch := 2 * n / MostPoints; hole > stretch && hole < n-1-stretch && len(runs) != 2 {
			t.Fatalf("%d runs about a hole at %d of %d", len(runs), hole, n)
		}
	})
}

// Of many dots an even choice is drawn: as many of the left half as of the right.
func TestManyDotsAreSampled(t *testing.T) {
	for _, n := range []int{1, MostPoints, MostPoints + 1, 1000, 200_000} {
		l := Line{Dots: true}
		for i := range n {
			l.Points = append(l.Points, XY{float64(i), 1})
		}
		got := l.sample()
		if len(got) != min(n, MostPoints) {
			t.Fatalf("%d dots of %d", len(got), n)
		}
		left := 0
		for i, p := range got {
			if i > 0 && p.X <= got[i-1].X {
				t.Fatalf("of %d: %v after %v", n, p, got[i-1])
			}
			if p.X < float64(n)/2 {
				left++
			}
		}
		if d := 2*left - len(got); d < -2 || d > 2 {
			t.Errorf("of %d: %d of %d dots are from the left half", n, left, len(got))
		}
	}
}

func TestChoose(t *testing.T) {
	var lines []Line
	for i := range 15 {
		lines = append(lines, Line{Label: fmt.Sprint(i), Strong: i == 7, Points: []XY{{5, 40}, {45, 50 + float64(i*4%15)}}})
	}
	lines = append(lines, Line{Label: "empty"})
	for n, want := range map[int]string{1: "[7]", 2: "[0 7]", 3: "[0 7 11]", 5: "[0 1 2 7 11]", 99: "[0 1 2 3 4 5 6 7 8 9 10 11 12 13 14]"} {
		var got []string
		for _, l := range Choose(lines, n) {
			got = append(got, l.Label)
		}
		if fmt.Sprint(got) != want {
			t.Errorf("%d lines: %v, want %s", n, got, want)
		}
	}
}
