package main

import (
	"cmp"
	"math"
	"slices"

	"bladecard/calc/fit"
	"bladecard/render/figure"
	"bladecard/render/say"
)

// fitChart is the measured film over the one that the fit expects, a dot a print, with the line
// on which both are the same. Of more prints than a chart takes it draws an even choice from the thinnest
// film to the thickest; some says so.
func fitChart(prints []fit.Print, r fit.Result, v *say.Voice) (ch figure.Chart, some string) {
	type dot struct{ x, y float64 }
	dots := make([]dot, len(prints))
	low, high := math.Inf(1), 0.0
	for i, p := range prints {
		dots[i] = dot{r.FittedUM[i], p.MeasuredUM}
		low, high = min(low, r.FittedUM[i], p.MeasuredUM), max(high, r.FittedUM[i], p.MeasuredUM)
	}
	slices.SortFunc(dots, func(a, b dot) int { return cmp.Or(cmp.Compare(a.x, b.x), cmp.Compare(a.y, b.y)) })
	line := figure.Line{Label: v.T("fit.dots"), Strong: true}
	for _, i := range evenly(len(dots), mostPoints) {
		gap := figure.XY{X: math.NaN()} // breaks the line: each point stands alone
		line.Points = append(line.Points, figure.XY{X: dots[i].x, Y: dots[i].y}, gap)
	}
	same := figure.Line{Label: v.T("fit.same"), Points: []figure.XY{{X: low, Y: low}, {X: high, Y: high}}}
	some = drawn(v, "fit.drawn", len(dots), mostPoints)
	return figure.Chart{
		X: figure.Axis{Title: titled(v.T("fit.x"), some), Low: 0.95 * low, High: 1.05 * high}, Y: figure.Axis{Title: v.T("fit.y"), Low: 0.95 * low, High: 1.05 * high},
		Lines: []figure.Line{same, line}, SizePT: 9, Format: v.Number,
	}, some
}
