package main

import (
	"math"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"bladecard/calc/choose"
	"bladecard/calc/fit"
	"bladecard/calc/plan"
	"bladecard/cmd/bladecard/internal/disk"
	"bladecard/render/say"
	"bladecard/templates"
)

// TestEvenly: at most so many, the ends among them, in order, none twice.
func TestEvenly(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		count, most int
		want        []int
	}{{0, 3, []int{}}, {1, 3, []int{0}}, {3, 3, []int{0, 1, 2}}, {4, 3, []int{0, 1, 3}}, {101, 5, []int{0, 25, 50, 75, 100}}} {
		if got := evenly(c.count, c.most); !slices.Equal(got, c.want) {
			t.Errorf("evenly(%d, %d) = %v; %v is wanted", c.count, c.most, got, c.want)
		}
	}
}

// TestSweepChartIsThinned: a chart has at most 24 lines, from the least value to the greatest whatever the order of the
// values, and tells in every language what it leaves out. A fault breaks its line. Every line has its label in the file.
func TestSweepChartIsThinned(t *testing.T) {
	t.Parallel()
	var axes = []choose.Axis{{What: "hardness"}, {What: "angle"}}
	for i := range 49 {
		axes[0].Values = append(axes[0].Values, 90-0.5*float64(i)) // the hardest first
	}
	for i := range 1001 {
		axes[1].Values = append(axes[1].Values, 0.045*float64(i))
	}
	var points []choose.Swept
	for _, x := range axes[0].Values {
		for _, y := range axes[1].Values {
			p := choose.Swept{At: []float64{x, y}, CuredUM: x + y}
			if y == 0 {
				p.Fault = "folds"
			}
			points = append(points, p)
		}
	}
	for _, language := range templates.Bases() {
		v, err := say.New(language, "metric")
		if err != nil {
			t.Fatal(err)
		}
		ch, some := sweepChart(axes, points, plan.Screen{}, v)
		if len(ch.Lines) != 24 || ch.Lines[0].Label != v.Number(66, 2)+" Shore A" || ch.Lines[23].Label != "90 Shore A" {
			t.Fatalf("%s: %d lines, from %q to %q", language, len(ch.Lines), ch.Lines[0].Label, ch.Lines[len(ch.Lines)-1].Label)
		}
		for _, l := range ch.Lines {
			first, last := l.Points[0], l.Points[len(l.Points)-1]
			if len(l.Points) != 1001 || first.X != 0 || last.X != axes[1].Values[1000] || !math.IsNaN(first.Y) || math.IsNaN(last.Y) {
				t.Errorf("%s: line %s has %d points from %v to %v", language, l.Label, len(l.Points), first, last)
			}
		}
		if !strings.Contains(some, "24") || !strings.Contains(some, "49") || !strings.Contains(ch.X.Title, some) {
			t.Errorf("%s: the note %q, on the chart %q", language, some, ch.X.Title)
		}
		path := filepath.Join(t.TempDir(), "chart.svg")
		if err := writeChart(&disk.Writer{}, path, ch); err != nil {
			t.Fatal(err)
		}
		file := content(t, path)
		for _, l := range ch.Lines {
			if !strings.Contains(string(file), ">"+l.Label+"<") {
				t.Errorf("%s: line %s has no label", language, l.Label)
			}
		}
		if len(file) > 300_000 {
			t.Errorf("%s: a file of %d bytes", language, len(file))
		}
		one := axes[1:]
		ch, some = sweepChart([]choose.Axis{{What: "angle", Values: one[0].Values[:2]}}, []choose.Swept{{At: []float64{0}, CuredUM: 1}, {At: []float64{0.045}, CuredUM: 2}}, plan.Screen{}, v)
		if len(ch.Lines) != 1 || len(ch.Lines[0].Points) != 2 || some != "" || ch.Lines[0].Label != "" || ch.X.Title != v.T("sweep.angle") {
			t.Errorf("%s: a small sweep: %+v, %q", language, ch, some)
		}
	}
}

// TestFitChartIsThinned: of more prints than a chart takes, an even choice from the thinnest film to the thickest is drawn.
func TestFitChartIsThinned(t *testing.T) {
	t.Parallel()
	v, err := say.New("en", "metric")
	if err != nil {
		t.Fatal(err)
	}
	var prints []fit.Print
	var r fit.Result
	for i := range 5000 {
		um := float64(10 + (i*7919)%5000)
		prints = append(prints, fit.Print{MeasuredUM: um + 1})
		r.FittedUM = append(r.FittedUM, um)
	}
	ch, some := fitChart(prints, r, v)
	var dots []float64
	for _, p := range ch.Lines[1].Points {
		dots = append(dots, p.X)
	}
	if !ch.Lines[1].Dots || len(dots) != 400 || dots[0] != 10 || dots[399] != 5009 || !slices.IsSorted(dots) {
		t.Errorf("%d dots from %g to %g", len(dots), dots[0], dots[len(dots)-1])
	}
	if want := "400 of 5000 prints drawn, evenly chosen"; some != want || !strings.Contains(ch.X.Title, want) {
		t.Errorf("%q, %q on the chart; %q is wanted", some, ch.X.Title, want)
	}
	if ch.Lines[0].Style >= 0 {
		t.Error("the line has signs on it, which look like prints")
	}
	if _, some := fitChart(prints[:400], fit.Result{FittedUM: r.FittedUM[:400]}, v); some != "" {
		t.Errorf("all are drawn, and it says %q", some)
	}
}

// TestStrokesAreWhole: nobody prints one stroke and a half.
func TestStrokesAreWhole(t *testing.T) {
	t.Parallel()
	v, err := say.New("en", "metric")
	if err != nil {
		t.Fatal(err)
	}
	for what, want := range map[string]bool{"strokes": true, "angle": false} {
		ch, _ := sweepChart([]choose.Axis{{What: what, Values: []float64{1, 2}}}, []choose.Swept{{At: []float64{1}, CuredUM: 30}, {At: []float64{2}, CuredUM: 40}}, plan.Screen{}, v)
		if ch.X.Whole != want {
			t.Errorf("%s: whole numbers only: %v", what, ch.X.Whole)
		}
	}
}

// TestSweepOfRisingInk: the film of ink that rises is called as on the charts of its card.
func TestSweepOfRisingInk(t *testing.T) {
	t.Parallel()
	v, err := say.New("en", "metric")
	if err != nil {
		t.Fatal(err)
	}
	ch, _ := sweepChart([]choose.Axis{{What: "angle", Values: []float64{1, 2}}}, []choose.Swept{{At: []float64{1}, CuredUM: 30}, {At: []float64{2}, CuredUM: 40}}, plan.Screen{HeightMM: new(float64)}, v)
	if want := v.T("card.y-flat"); ch.Y.Title != want {
		t.Errorf("%q, %q is wanted", ch.Y.Title, want)
	}
}
