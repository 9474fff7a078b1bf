package figure

import (
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"bladecard/render/canvas"
)

// full is a chart that uses everything: five blades over the angle.
func full() Chart {
	line := func(label string, k float64, strong bool, dash int, end float64) Line {
		l := Line{Label: label, Strong: strong, Style: dash, Step: 2.5}
		for x := 5.0; x <= end; x += 2.5 {
			l.Points = append(l.Points, XY{x, k * (30 + 6*math.Exp(x/30))})
		}
		return l
	}
	return Chart{
		X:      Axis{Title: "angle from vertical, °"},
		Y:      Axis{Title: "cured film, µm"},
		Second: &Scale{Title: "° to screen", Label: func(x float64) string { return strconv.Itoa(int(90 - x)) }},
		Lines: []Line{
			line("60 worn", 1.09, false, 1, 35), line("65/90/65", 1.03, true, 0, 45), line("70 A", 1, false, 2, 45),
			line("70/90/70", 0.98, false, 3, 45), line("80 A", 0.94, false, 4, 45),
		},
		Band:  &Band{Interval: Interval{38, 55}, Label: "target", Inside: "inside target"},
		Range: &Interval{10, 20},
		Mark:  &XY{15, 1.03 * (30 + 6*math.Exp(0.5))},
		Known: &Band{Interval: Interval{0.8, 1.3}, Label: "expected", Inside: "inside expected"},
		Ends:  [2]string{Detail: "detail lost", Ink: "ink left"},
	}
}

// simple is one line over 0 to 10.
func simple() Chart {
	return Chart{X: Axis{Title: "across"}, Y: Axis{Title: "up"},
		Lines: []Line{{Label: "only", Points: []XY{{0, 0}, {5, 30}, {10, 40}}}}}
}

func TestChartSizes(t *testing.T) {
	for _, tt := range []struct{ w, h, pt float64 }{
		{50, 30, 0}, {60, 40, 7.5}, {62, 42, 8}, {80, 50, 9}, {120, 80, 7.5}, {120, 80, 12}, {120, 60, 14},
	} {
		t.Run(fmt.Sprintf("%vx%v at %v", tt.w, tt.h, tt.pt), func(t *testing.T) {
			rec := &recorder{}
			ch := full()
			ch.SizePT = tt.pt
			r := Rect{7, 11, tt.w, tt.h}
			if err := ch.Draw(rec, r); err != nil {
				t.Fatal(err)
			}
			rec.clean(t, r, SmallestPT)
			kept := 0
			for _, w := range rec.texts { // every label once, right of the plot
				for _, l := range ch.Lines {
					if w.s == l.Label {
						kept++
						if w.x < r.X+tt.w/3 {
							t.Errorf("label %q at %v", l.Label, w.x)
						}
					}
				}
			}
			if kept == 0 || tt.h >= 50 && kept != 5 {
				t.Errorf("%d lines are labeled of 5", kept)
			}
			rec.find(t, "65/90/65")
			rec.find(t, "target")
		})
	}
}

func TestChartTypeSizes(t *testing.T) {
	for pt, want := range map[float64]float64{0: 7.5, 3: 7.5, 7.5: 7.5, 9: 9, math.NaN(): 7.5} {
		rec := &recorder{}
		ch := simple()
		ch.SizePT = pt
		if err := ch.Draw(rec, Rect{0, 0, 80, 60}); err != nil {
			t.Fatal(err)
		}
		for _, w := range rec.texts {
			if w.font.SizePT != want {
				t.Errorf("asked for %v: %q is %v pt, want %v", pt, w.s, w.font.SizePT, want)
			}
		}
	}
}

func TestChartDegenerate(t *testing.T) {
	nan := math.NaN()
	for _, tt := range []struct {
		name string
		ch   Chart
		want error // nil: a chart
		some bool  // any error
	}{
		{"nothing", Chart{}, ErrNoData, true},
		{"empty line", Chart{Lines: []Line{{Label: "a"}}}, ErrNoData, true},
		{"all NaN", Chart{Lines: []Line{{Points: []XY{{nan, 1}, {1, nan}}}}}, ErrNoData, true},
		{"one point", Chart{Lines: []Line{{Label: "a", Points: []XY{{15, 40}}}}}, nil, false},
		{"one point at zero", Chart{Lines: []Line{{Label: "a", Points: []XY{{0, 0}}}}}, nil, false},
		{"all equal", Chart{Lines: []Line{{Label: "a", Points: []XY{{5, 40}, {10, 40}, {15, 40}}}}}, nil, false},
		{"one x", Chart{Lines: []Line{{Label: "a", Points: []XY{{5, 40}, {5, 50}}}}}, nil, false},
		{"tiny", Chart{Lines: []Line{{Label: "a", Points: []XY{{1e-9, 1e-9}, {2e-9, 3e-9}}}}}, nil, false},
		{"equal but for rounding", Chart{Lines: []Line{{Points: []XY{{5, 40}, {10, 40 + 1e-13}}}}}, nil, false},
		{"negative", Chart{Lines: []Line{{Points: []XY{{-5, -40}, {5, 40}}}}}, nil, false},
		{"too large", Chart{Lines: []Line{{Points: []XY{{0, 0}, {1, 1e300}}}}}, nil, true},
		{"whole range of floats", Chart{Lines: []Line{{Points: []XY{{0, -1.7e308}, {1, 1.7e308}}}}}, nil, true},
		{"band of NaN", Chart{Lines: simple().Lines, Band: &Band{Interval: Interval{nan, 1}}}, nil, true},
		{"band turned round", Chart{Lines: simple().Lines, Band: &Band{Interval: Interval{2, 1}}}, nil, true},
		{"range of infinity", Chart{Lines: simple().Lines, Range: &Interval{1, math.Inf(1)}}, nil, true},
		{"mark of NaN", Chart{Lines: simple().Lines, Mark: &XY{nan, 1}}, nil, true},
		{"known turned round", Chart{Lines: simple().Lines, Known: &Band{Interval: Interval{2, 1}}}, nil, true},
		{"mark outside the axes", Chart{Lines: simple().Lines, Y: Axis{Low: 0, High: 3}, Mark: &XY{1, 5}}, nil, false},
		{"axis turned round", Chart{Lines: simple().Lines, X: Axis{Low: 3, High: 1}}, nil, true},
		{"axis of NaN", Chart{Lines: simple().Lines, X: Axis{Low: nan, High: 1}}, nil, true},
		{"line outside the axes", Chart{Lines: simple().Lines, X: Axis{Low: 50, High: 60}}, nil, false},
		{"band outside the axes", Chart{Lines: simple().Lines, Y: Axis{Low: 0, High: 50}, Band: &Band{Interval: Interval{60, 70}}}, nil, false},
		{"range of one value", Chart{Lines: simple().Lines, Range: &Interval{3, 3}}, nil, false},
		{"band of one value", Chart{Lines: simple().Lines, Band: &Band{Interval: Interval{3, 3}}}, nil, false},
	} {
		t.Run(tt.name, func(t *testing.T) {
			rec := &recorder{}
			r := Rect{0, 0, 60, 40}
			err := tt.ch.Draw(rec, r)
			if tt.some {
				if err == nil || tt.want != nil && !errors.Is(err, tt.want) {
					t.Fatalf("error %v", err)
				}
				return
			}
			if err != nil {
				t.Fatal(err)
			}
			rec.clean(t, r, SmallestPT)
		})
	}
}

func TestChartNoRoom(t *testing.T) {
	for name, r := range map[string]Rect{"low": {0, 0, 60, 13}, "narrow": {0, 0, 25, 60}} {
		if err := full().Draw(&recorder{}, r); !errors.Is(err, ErrNoRoom) {
			t.Errorf("%s: error %v, want %v", name, err, ErrNoRoom)
		}
	}
	for _, r := range []Rect{{0, 0, 0, 10}, {0, 0, math.NaN(), 10}, {math.Inf(1), 0, 50, 50}, {0, 0, 50, -1}} {
		if err := full().Draw(&recorder{}, r); err == nil || errors.Is(err, ErrNoRoom) {
			t.Errorf("in %+v: error %v", r, err)
		}
	}
}

// A low plot has two labeled ticks all the same, and the data take most of its height.
func TestLowPlotIsUsed(t *testing.T) {
	for _, y := range [][2]float64{{36, 65}, {10, 45}, {101, 140}, {0.2, 0.55}, {52, 53}} {
		ch := Chart{Lines: []Line{{Points: []XY{{0, y[0]}, {45, y[1]}}}}, Y: Axis{Title: "up"}, X: Axis{Title: "across"}}
		r := Rect{0, 0, 60, 20}
		rec, p, _ := drawn(t, ch, r)
		rec.clean(t, r, SmallestPT)
		if used := (y[1] - y[0]) / p.y.GetDelta(); used < 0.65 {
			t.Errorf("%v: the data take %.2f of the axis from %v to %v", y, used, p.y.Min, p.y.Max)
		}
		if n := len(p.y.ticks); n < 2 {
			t.Errorf("%v: %d labeled ticks", y, n)
		}
	}
}

// many is a chart of n lines with n points each, the middle one chosen.
func many(lines, points int) Chart {
	ch := Chart{}
	for i := range lines {
		l := Line{Label: fmt.Sprint("blade ", i), Strong: i == lines/2, Style: i}
		for k := range points {
			l.Points = append(l.Points, XY{float64(k), float64(50 + i)})
		}
		ch.Lines = append(ch.Lines, l)
	}
	return ch
}

func TestDrawKeepsTheChosen(t *testing.T) {
	r := Rect{0, 0, 60, 40}
	kept := func(r Rect) int {
		ch, rec := many(15, 5), &recorder{}
		if err := ch.Draw(rec, r); err != nil {
			t.Fatal(err)
		}
		rec.clean(t, r, SmallestPT)
		rec.find(t, "blade 7")
		rec.find(t, "blade 0") // and the extremes
		rec.find(t, "blade 14")
		if len(ch.Lines) != 15 {
			t.Error("the chart itself was changed")
		}
		return strings.Count(strings.Join(rec.words(), " "), "blade")
	}
	if n := kept(r); n < 4 || n > 14 {
		t.Errorf("%d lines kept", n)
	}
	if n := kept(Rect{0, 0, 120, 120}); n != 15 {
		t.Errorf("with room %d lines are kept", n)
	}
	for n, refused := range map[int]bool{MostLines: false, MostLines + 1: true} {
		err := many(n, 2).Draw(&recorder{}, r)
		if refused != (err != nil) || refused && !strings.Contains(err.Error(), "25 lines; accepted are up to 24") {
			t.Errorf("%d lines: error %v", n, err)
		}
	}
}

// Where the second scale leaves no room for the plot, it is given up, and nothing else.
func TestSecondScaleIsGivenUp(t *testing.T) {
	for _, tt := range []struct {
		r      Rect
		second bool
	}{{Rect{0, 0, 60, 18}, false}, {Rect{0, 0, 60, 40}, true}} {
		rec := &recorder{}
		if err := full().Draw(rec, tt.r); err != nil {
			t.Fatal(err)
		}
		rec.clean(t, tt.r, SmallestPT)
		words := strings.Join(rec.words(), "|")
		if strings.Contains(words, "° to screen") != tt.second || !strings.Contains(words, "angle from vertical") {
			t.Errorf("in %v: %s", tt.r, words)
		}
	}
}

// A chart grows with its lines and its points, and with these no further than MostPoints.
func TestChartGrowsLinearly(t *testing.T) {
	pieces := func(ch Chart) int {
		rec := &recorder{}
		if err := ch.Draw(rec, Rect{0, 0, 140, 200}); err != nil {
			t.Fatal(err)
		}
		n := 0
		for _, p := range rec.paths {
			n += len(p.path.Pieces)
		}
		return n
	}
	six, twelve, most := pieces(many(6, 100)), pieces(many(12, 100)), pieces(many(MostLines, 100))
	if a, b := twelve-six, most-twelve; b > 2*a+a/5 {
		t.Errorf("6, 12 and %d lines take %d, %d and %d pieces", MostLines, six, twelve, most)
	}
	for _, n := range []int{MostPoints, 10_000, 100_000} {
		if got := pieces(many(MostLines, n)); got > MostLines*(MostPoints+20)+200 {
			t.Errorf("%d lines of %d points take %d pieces", MostLines, n, got)
		}
	}
	dots := many(1, 200_000)
	dots.Lines[0].Dots = true
	if got := pieces(dots); got > 6*MostPoints+200 {
		t.Errorf("200000 dots take %d pieces", got)
	}
}

// Lines that have no room are found out without measuring any label twice.
func TestChoiceMeasuresLabelsOnce(t *testing.T) {
	count := func(lines int) int {
		c := &measuring{}
		if err := many(lines, 3).Draw(c, Rect{0, 0, 140, 24}); err != nil {
			t.Fatal(err)
		}
		return c.texts
	}
	if six, twelve, most := count(6), count(12), count(24); most > 2*twelve || twelve <= six {
		t.Errorf("6, 12 and 24 lines are measured %d, %d and %d times", six, twelve, most)
	}
}

// measuring counts how often a text is measured.
type measuring struct {
	recorder
	texts int
}

func (m *measuring) TextWidth(s string, f canvas.Font) float64 {
	m.texts++
	return m.recorder.TextWidth(s, f)
}

func BenchmarkChart(b *testing.B) {
	for _, tt := range []struct {
		name string
		ch   Chart
	}{{"card", full()}, {"24x400", many(MostLines, MostPoints)}, {"24x100000", many(MostLines, 100_000)}} {
		b.Run(tt.name, func(b *testing.B) {
			for b.Loop() {
				if err := tt.ch.Draw(&recorder{}, Rect{0, 0, 140, 200}); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func TestChartAlwaysCleanOrError(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		num := rapid.OneOf(rapid.Float64Range(-5, 90), rapid.Float64Range(-1e6, 1e6), rapid.Float64Range(0, 0.01),
			rapid.SampledFrom([]float64{0, 15, math.NaN(), math.Inf(1)}))
		text := rapid.OneOf(rapid.StringMatching(`[a-z0-9/µ° ]{0,24}`), rapid.SampledFrom([]string{"", "70", "65/90/65"}))
		var ch Chart
		for i := range rapid.IntRange(1, 6).Draw(t, "lines") {
			l := Line{Label: text.Draw(t, "label"), Strong: i == 0, Style: i, Step: rapid.SampledFrom([]float64{0, 5}).Draw(t, "step")}
			for range rapid.IntRange(0, 8).Draw(t, "points") {
				l.Points = append(l.Points, XY{num.Draw(t, "x"), num.Draw(t, "y")})
			}
			ch.Lines = append(ch.Lines, l)
		}
		ch.X.Title, ch.Y.Title = text.Draw(t, "x title"), text.Draw(t, "y title")
		if rapid.Bool().Draw(t, "second") {
			ch.Second = &Scale{Title: text.Draw(t, "second title"), Label: func(x float64) string { return Chart{}.number(90-x, 3) }}
		}
		if rapid.Bool().Draw(t, "band") {
			ch.Band = &Band{Interval: Interval{num.Draw(t, "low"), num.Draw(t, "high")}, Label: text.Draw(t, "band"), Inside: text.Draw(t, "inside")}
		}
		if rapid.Bool().Draw(t, "known") {
			ch.Known = &Band{Interval: Interval{rapid.Float64Range(0, 1).Draw(t, "less"), rapid.Float64Range(1, 3).Draw(t, "more")}, Label: text.Draw(t, "known")}
		}
		ch.Title, ch.Ends, ch.Y.Apart = text.Draw(t, "title"), [2]string{text.Draw(t, "detail"), text.Draw(t, "ink")}, rapid.SampledFrom([]float64{0, 2}).Draw(t, "apart")
		if rapid.Bool().Draw(t, "range") {
			ch.Range = &Interval{num.Draw(t, "low"), num.Draw(t, "high")}
		}
		if rapid.Bool().Draw(t, "mark") {
			y := num.Draw(t, "y")
			ch.Mark = &XY{num.Draw(t, "x"), y}
		}
		ch.SizePT = rapid.Float64Range(7.5, 14).Draw(t, "size")
		r := Rect{3, 4, rapid.Float64Range(50, 120).Draw(t, "w"), rapid.Float64Range(30, 80).Draw(t, "h")}
		rec := &recorder{}
		if err := ch.Draw(rec, r); err != nil {
			if strings.Contains(err.Error(), "go-chart") {
				t.Fatal(err)
			}
			return
		}
		if f := rec.faults(r, SmallestPT); len(f) > 0 {
			t.Fatal(strings.Join(f, "\n"))
		}
	})
}
