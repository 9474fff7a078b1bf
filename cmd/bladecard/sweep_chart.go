package main

import (
	"cmp"
	"math"
	"slices"

	"bladecard/calc/choose"
	"bladecard/render/figure"
	"bladecard/render/say"
)

// sweepChart is the cured film over the last axis, a line for each value of the first. Of more lines
// than a chart takes it draws an even choice; some says so, on the chart too.
func sweepChart(axes []choose.Axis, points []choose.Swept, v *say.Voice) (ch figure.Chart, some string) {
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
		Y: figure.Axis{Title: v.T("card.y-film")}, SizePT: 9, Format: v.Number,
	}
	for n, k := range evenly(len(lines), figure.MostLines) {
		line := lines[k]
		l := figure.Line{Strong: n == 0, Dash: max(0, n-1) % figure.Dashes}
		if last > 0 {
			l.Label = v.Number(first[line], 2)
		}
		for _, i := range order {
			p := points[line*len(across)+i]
			um := p.CuredUM
			if p.Fault != "" {
				um = math.NaN()
			}
			l.Points = append(l.Points, figure.XY{X: p.At[last], Y: um})
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
