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
	all := make([]figure.XY, len(prints))
	low, high := math.Inf(1), 0.0
	for i, p := range prints {
		all[i] = figure.XY{X: r.FittedUM[i], Y: p.MeasuredUM}
		low, high = min(low, r.FittedUM[i], p.MeasuredUM), max(high, r.FittedUM[i], p.MeasuredUM)
	}
	slices.SortFunc(all, func(a, b figure.XY) int { return cmp.Or(cmp.Compare(a.X, b.X), cmp.Compare(a.Y, b.Y)) })
	dots := figure.Line{Label: v.T("fit.dots"), Strong: true, Dots: true}
	for _, i := range evenly(len(all), figure.MostPoints) {
		dots.Points = append(dots.Points, all[i])
	}
	same := figure.Line{Label: v.T("fit.same"), Style: -1, Points: []figure.XY{{X: low, Y: low}, {X: high, Y: high}}}
	some = drawn(v, "fit.drawn", len(all), figure.MostPoints)
	axis := func(title string) figure.Axis {
		return figure.Axis{Title: title, Low: 0.95 * low, High: 1.05 * high}
	}
	return figure.Chart{X: axis(titled(v.T("fit.x"), some)), Y: axis(v.T("fit.y")),
		Lines: []figure.Line{same, dots}, SizePT: 9, Format: v.Number}, some
}
