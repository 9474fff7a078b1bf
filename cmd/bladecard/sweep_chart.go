package main

import (
	"cmp"
	"math"
	"slices"

	"bladecard/calc/choose"
	"bladecard/calc/plan"
	"bladecard/render/charts"
	"bladecard/render/figure"
	"bladecard/render/say"
)

// sweepChart is the film of a screen over the last axis, a line for each value of the first. Of more lines
// than a chart takes it draws an even choice; some says so, on the chart too.
func sweepChart(axes []choose.Axis, points []choose.Swept, s plan.Screen, v *say.Voice) (ch figure.Chart, some string) {
	last := len(axes) - 1
	across := axes[last].Values
	order := byValue(across)
	first := []float64{0}
	if last > 0 {
		first = axes[0].Values
	}
	lines := byValue(first)
	some = drawn(v, "sweep.drawn-lines", len(lines), figure.MostLines)
	ch = figure.Chart{
		X: figure.Axis{Title: titled(v.T("sweep."+axes[last].What), some), Low: across[order[0]], High: across[order[len(order)-1]],
			Whole: axes[last].What == "strokes"},
		Y: charts.Film(v, s), SizePT: 9, Format: v.Number, Ends: charts.Ends(v),
	}
	for n, k := range evenly(len(lines), figure.MostLines) {
		line := lines[k]
		cv := plan.Curve{Chosen: last == 0}
		for _, i := range order {
			if p := points[line*len(across)+i]; p.Fault == "" {
				cv.Points = append(cv.Points, plan.Point{X: p.At[last], UM: p.CuredUM, Fails: p.Fails})
			} else {
				cv.Points = append(cv.Points, plan.Point{X: p.At[last], UM: math.NaN()})
			}
		}
		l := charts.Line(cv, "", n)
		l.Step = 0
		if last > 0 {
			l.Label = v.T("sweep.line-"+axes[0].What, "n", v.Number(first[line], 2))
		}
		ch.Lines = append(ch.Lines, l)
	}
	return ch, some
}

// byValue are the indexes of values, the least first.
func byValue(values []float64) []int {
	order := make([]int, len(values))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(values[a], values[b]) })
	return order
}
