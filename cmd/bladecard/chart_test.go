package main

import (
	"bytes"
	"testing"

	"bladecard/calc/choose"
	"bladecard/calc/fit"
	"bladecard/render/canvas"
	"bladecard/render/export"
	"bladecard/render/figure"
	"bladecard/render/say"
)

// TestFitChartSaysWhatItDraws: of more prints than a chart draws dots, the chart says how many
// are drawn, in both languages, and its file stays small.
func TestFitChartSaysWhatItDraws(t *testing.T) {
	for lang, want := range map[string]string{"en": "measured (400 of 50000)", "es": "medida (400 de 50000)"} {
		v, err := say.New(lang, "metric")
		if err != nil {
			t.Fatal(err)
		}
		for _, n := range []int{10, 50_000} {
			prints, r := make([]fit.Print, n), fit.Result{}
			for i := range prints {
				prints[i].MeasuredUM = 20 + float64(i%977)/50
				r.FittedUM = append(r.FittedUM, 20+float64(i%991)/50)
			}
			var out bytes.Buffer
			ch := fitChart(prints, r, v)
			if err := export.SVG(&out, chartWidthMM, chartHeightMM, func(c canvas.Canvas) error {
				return ch.Draw(c, figure.Rect{W: chartWidthMM, H: chartHeightMM})
			}); err != nil {
				t.Fatal(err)
			}
			if said := ch.Lines[1].Label == want; said != (n > figure.MostPoints) {
				t.Errorf("%s: %d prints are labelled %q", lang, n, ch.Lines[1].Label)
			}
			if out.Len() > 300_000 {
				t.Errorf("%s: %d prints make a file of %d bytes", lang, n, out.Len())
			}
		}
	}
}

// TestSweepChart: one thing varied has one line, which needs no label; strokes are counted in
// whole numbers.
func TestSweepChart(t *testing.T) {
	v, err := say.New("en", "metric")
	if err != nil {
		t.Fatal(err)
	}
	one := []choose.Swept{{At: []float64{1}, CuredUM: 30}, {At: []float64{2}, CuredUM: 40}}
	if ch := sweepChart([]choose.Axis{{What: "strokes", Values: []float64{1, 2}}}, one, v); len(ch.Lines) != 1 || ch.Lines[0].Label != "" || !ch.X.Whole {
		t.Errorf("one thing varied: %+v", ch)
	}
	two := []choose.Swept{{At: []float64{60, 0}, CuredUM: 30}, {At: []float64{60, 10}, CuredUM: 31}, {At: []float64{80, 0}, CuredUM: 28}, {At: []float64{80, 10}, CuredUM: 29}}
	ch := sweepChart([]choose.Axis{{What: "hardness", Values: []float64{60, 80}}, {What: "angle", Values: []float64{0, 10}}}, two, v)
	if len(ch.Lines) != 2 || ch.Lines[0].Label != "60" || ch.Lines[1].Label != "80" || ch.X.Whole {
		t.Errorf("two things varied: %+v", ch)
	}
}
