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
		l := Line{Label: label, Strong: strong, Dash: dash, Step: 2.5}
		for x := 5.0; x <= end; x += 2.5 {
			l.Points = append(l.Points, XY{x, k * (30 + 6*math.Exp(x/30))})
		}
		return l
	}
	return Chart{
		X:   Axis{Title: "angle from vertical, °"},
		Y:   Axis{Title: "cured film, µm"},
		Top: &TopAxis{Title: "to the screen, °", Label: func(x float64) string { return strconv.Itoa(int(90 - x)) }},
		Lines: []Line{
			line("60 worn", 1.09, false, 1, 35), line("65/90/65", 1.03, true, 0, 45), line("70 A", 1, false, 2, 45),
			line("70/90/70", 0.98, false, 3, 45), line("80 A", 0.94, false, 4, 45),
		},
		Band:  &Interval{38, 55},
		Range: &Interval{10, 20},
		Mark:  &Mark{15, 1.03 * (30 + 6*math.Exp(0.5)), 32, 50},
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
			ch = ch.Fit(rec, r)
			if err := ch.Draw(rec, r); err != nil {
				t.Fatal(err)
			}
			rec.clean(t, r, SmallestPT)
			if tt.h >= 50 && len(ch.Lines) != 5 {
				t.Errorf("%d lines kept of 5", len(ch.Lines))
			}
			for _, l := range ch.Lines { // no legend: every label once, at the end of its line
				if at := rec.find(t, l.Label).x; at < r.X+tt.w/3 {
					t.Errorf("label %q at %v", l.Label, at)
				}
			}
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

// gap tells where the runs of a line lie, as the compact geometry of its paths.
func runsOf(t *testing.T, l Line) []string {
	t.Helper()
	ch := Chart{Lines: []Line{l}, X: Axis{Low: 0, High: 10}, Y: Axis{Low: 0, High: 10}}
	rec := &recorder{}
	lay, err := ch.layout(rec, Rect{0, 0, 60, 60})
	if err != nil {
		t.Fatal(err)
	}
	lay.plot = Rect{0, 0, 10, 10} // a millimetre a unit
	if err := lay.drawLines(); err != nil {
		t.Fatal(err)
	}
	var out []string
	for _, p := range rec.paths {
		s := p.String()
		if p.fill != nil {
			b := p.box()
			s = fmt.Sprintf("dot %.1f,%.1f", b.X+b.W/2, b.Y+b.H/2)
		}
		out = append(out, strings.TrimSuffix(s, " pen0.30[]"))
	}
	return out
}

func TestGapsBreakLines(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for _, tt := range []struct {
		name string
		line Line
		want string
	}{
		{"whole", Line{Points: []XY{{0, 1}, {2, 2}, {4, 3}}}, "M0.0,9.0 L2.0,8.0 L4.0,7.0"},
		{"NaN", Line{Points: []XY{{0, 1}, {2, 2}, {4, nan}, {6, 4}, {8, 5}}}, "M0.0,9.0 L2.0,8.0; M6.0,6.0 L8.0,5.0"},
		{"infinite", Line{Points: []XY{{0, 1}, {2, 2}, {4, inf}, {6, 4}, {8, 5}}}, "M0.0,9.0 L2.0,8.0; M6.0,6.0 L8.0,5.0"},
		{"missing sample", Line{Step: 2, Points: []XY{{0, 1}, {2, 2}, {6, 4}, {8, 5}}}, "M0.0,9.0 L2.0,8.0; M6.0,6.0 L8.0,5.0"},
		{"wide spacing without a step", Line{Points: []XY{{0, 1}, {2, 2}, {6, 4}}}, "M0.0,9.0 L2.0,8.0 L6.0,6.0"},
		{"alone", Line{Points: []XY{{3, 1}, {4, nan}, {6, 4}, {8, 5}}}, "dot 3.0,9.0; M6.0,6.0 L8.0,5.0"},
		{"cut at the plot", Line{Points: []XY{{-2, 4}, {2, 8}, {6, 12}}}, "M0.0,4.0 L2.0,2.0 L4.0,0.0"},
		{"out and in again", Line{Points: []XY{{0, 8}, {4, 12}, {8, 8}}}, "M0.0,2.0 L2.0,0.0; M6.0,0.0 L8.0,2.0"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			if got := strings.Join(runsOf(t, tt.line), "; "); got != tt.want {
				t.Errorf("got  %s\nwant %s", got, tt.want)
			}
		})
	}
}

func TestLinesDifferByPen(t *testing.T) {
	seen := map[string]int{}
	for i := range Dashes {
		seen[fmt.Sprint(Line{Dash: i}.pen())]++
	}
	strong := Line{Strong: true, Dash: 2}.pen()
	seen[fmt.Sprint(strong)]++
	if len(seen) != Dashes+1 {
		t.Errorf("%d pens for %d lines", len(seen), Dashes+1)
	}
	if strong.DashMM != nil || strong.WidthMM < 2*(Line{}).pen().WidthMM {
		t.Errorf("the chosen line is drawn with %v", strong)
	}
	for _, i := range []int{-1, Dashes, 1 << 40} {
		if w := (Line{Dash: i}).pen().WidthMM; w != plainMM {
			t.Errorf("dash %d is %v wide", i, w)
		}
	}
	rec := &recorder{}
	if err := full().Draw(rec, Rect{0, 0, 120, 80}); err != nil {
		t.Fatal(err)
	}
	for _, p := range rec.paths { // every colour is a grey
		cs := []canvas.Color{p.pen.Color}
		if p.fill != nil {
			cs = append(cs, *p.fill)
		}
		for _, c := range cs {
			if c.R != c.G || c.G != c.B {
				t.Errorf("colour %v in %s", c, p)
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
		{"band of NaN", Chart{Lines: simple().Lines, Band: &Interval{nan, 1}}, nil, true},
		{"band turned round", Chart{Lines: simple().Lines, Band: &Interval{2, 1}}, nil, true},
		{"range of infinity", Chart{Lines: simple().Lines, Range: &Interval{1, math.Inf(1)}}, nil, true},
		{"mark of NaN", Chart{Lines: simple().Lines, Mark: &Mark{nan, 1, 0, 2}}, nil, true},
		{"mark outside its bar", Chart{Lines: simple().Lines, Mark: &Mark{1, 5, 0, 2}}, nil, true},
		{"mark outside the axes", Chart{Lines: simple().Lines, Y: Axis{Low: 0, High: 3}, Mark: &Mark{1, 5, 5, 5}}, nil, true},
		{"axis turned round", Chart{Lines: simple().Lines, X: Axis{Low: 3, High: 1}}, nil, true},
		{"axis of NaN", Chart{Lines: simple().Lines, X: Axis{Low: nan, High: 1}}, nil, true},
		{"tick of NaN", Chart{Lines: simple().Lines, X: Axis{Ticks: []Tick{{nan, "x"}}}}, nil, true},
		{"line outside the axes", Chart{Lines: simple().Lines, X: Axis{Low: 50, High: 60}}, nil, false},
		{"band outside the axes", Chart{Lines: simple().Lines, Y: Axis{Low: 0, High: 50}, Band: &Interval{60, 70}}, nil, false},
		{"range of one value", Chart{Lines: simple().Lines, Range: &Interval{3, 3}}, nil, false},
		{"band of one value", Chart{Lines: simple().Lines, Band: &Interval{3, 3}}, nil, false},
		{"mark without a bar", Chart{Lines: simple().Lines, Mark: &Mark{10, 40, 40, 40}}, nil, false},
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
	many := full()
	for i := range 12 {
		many.Lines = append(many.Lines, Line{Label: fmt.Sprint("blade ", i), Points: []XY{{5, 40}, {45, 50 + float64(i)}}})
	}
	for name, tt := range map[string]struct {
		ch Chart
		r  Rect
	}{
		"low":         {full(), Rect{0, 0, 60, 15}},
		"narrow":      {full(), Rect{0, 0, 25, 60}},
		"many labels": {many, Rect{0, 0, 60, 40}},
	} {
		if err := tt.ch.Draw(&recorder{}, tt.r); !errors.Is(err, ErrNoRoom) {
			t.Errorf("%s: error %v, want %v", name, err, ErrNoRoom)
		}
	}
	for _, r := range []Rect{{0, 0, 0, 10}, {0, 0, math.NaN(), 10}, {math.Inf(1), 0, 50, 50}, {0, 0, 50, -1}} {
		if err := full().Draw(&recorder{}, r); err == nil || errors.Is(err, ErrNoRoom) {
			t.Errorf("in %+v: error %v", r, err)
		}
	}
}

// On a low plot an axis with round ends may waste half of it: then it ends at the data, with two
// labelled ticks within.
func TestLowPlotIsUsed(t *testing.T) {
	for _, y := range [][2]float64{{36, 65}, {10, 45}, {101, 140}, {0.2, 0.55}, {52, 53}} {
		ch := Chart{Lines: []Line{{Points: []XY{{0, y[0]}, {45, y[1]}}}}, Y: Axis{Title: "up"}, X: Axis{Title: "across"}}
		r := Rect{0, 0, 60, 20}
		rec, l := drawn(t, ch, r)
		rec.clean(t, r, SmallestPT)
		if used := (y[1] - y[0]) / (l.y.hi - l.y.lo); used < 0.65 {
			t.Errorf("%v: the data take %.2f of the axis from %v to %v", y, used, l.y.lo, l.y.hi)
		}
		labels := 0
		for _, tick := range l.y.ticks {
			if tick.Label != "" {
				labels++
			}
		}
		if labels < 2 {
			t.Errorf("%v: %d labelled ticks", y, labels)
		}
	}
}

func TestFitKeepsTheChosen(t *testing.T) {
	ch := Chart{}
	for i := range 15 {
		ch.Lines = append(ch.Lines, Line{Label: fmt.Sprint("blade ", i), Strong: i == 7, Points: []XY{{5, 40}, {45, 50 + float64(i)}}})
	}
	rec := &recorder{}
	r := Rect{0, 0, 60, 40}
	fit := ch.Fit(rec, r)
	if n := len(fit.Lines); n < 4 || n > 14 {
		t.Fatalf("%d lines kept", n)
	}
	if err := fit.Draw(rec, r); err != nil {
		t.Fatal(err)
	}
	rec.clean(t, r, SmallestPT)
	rec.find(t, "blade 7")
	rec.find(t, "blade 0") // and the extremes
	rec.find(t, "blade 14")
	if len(ch.Lines) != 15 {
		t.Error("the chart itself was changed")
	}
	if same := ch.Fit(rec, Rect{0, 0, 120, 120}); len(same.Lines) != 15 {
		t.Errorf("with room %d lines are kept", len(same.Lines))
	}
}

// Where the scale above leaves no room for the plot, Fit gives it up, and nothing else.
func TestFitGivesUpTheUpperScale(t *testing.T) {
	rec := &recorder{}
	ch := full()
	r := Rect{0, 0, 40, 24}
	if err := ch.Draw(rec, r); !errors.Is(err, ErrNoRoom) {
		t.Fatalf("error %v", err)
	}
	fit := ch.Fit(rec, r)
	rec = &recorder{}
	if err := fit.Draw(rec, r); err != nil {
		t.Fatal(err)
	}
	rec.clean(t, r, SmallestPT)
	if fit.Top != nil || len(fit.Lines) < 1 || ch.Top == nil {
		t.Errorf("upper scale %v, %d lines", fit.Top, len(fit.Lines))
	}
	if full().Fit(rec, Rect{0, 0, 60, 40}).Top == nil {
		t.Error("with room the upper scale is left out")
	}
}

func TestChartAlwaysCleanOrError(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		num := rapid.OneOf(rapid.Float64Range(-5, 90), rapid.Float64Range(-1e6, 1e6), rapid.Float64Range(0, 0.01),
			rapid.SampledFrom([]float64{0, 15, math.NaN(), math.Inf(1)}))
		text := rapid.OneOf(rapid.StringMatching(`[a-z0-9/µ° ]{0,24}`), rapid.SampledFrom([]string{"", "70", "65/90/65"}))
		var ch Chart
		for i := range rapid.IntRange(1, 6).Draw(t, "lines") {
			l := Line{Label: text.Draw(t, "label"), Strong: i == 0, Dash: i, Step: rapid.SampledFrom([]float64{0, 5}).Draw(t, "step")}
			for range rapid.IntRange(0, 8).Draw(t, "points") {
				l.Points = append(l.Points, XY{num.Draw(t, "x"), num.Draw(t, "y")})
			}
			ch.Lines = append(ch.Lines, l)
		}
		ch.X.Title, ch.Y.Title = text.Draw(t, "x title"), text.Draw(t, "y title")
		if rapid.Bool().Draw(t, "top") {
			ch.Top = &TopAxis{Title: text.Draw(t, "top title"), Label: func(x float64) string { return format(90-x, 3) }}
		}
		if rapid.Bool().Draw(t, "band") {
			ch.Band = &Interval{num.Draw(t, "low"), num.Draw(t, "high")}
		}
		if rapid.Bool().Draw(t, "range") {
			ch.Range = &Interval{num.Draw(t, "low"), num.Draw(t, "high")}
		}
		if rapid.Bool().Draw(t, "mark") {
			y := num.Draw(t, "y")
			ch.Mark = &Mark{num.Draw(t, "x"), y, y - 1, y + 2}
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
