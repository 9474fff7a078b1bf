package main

import (
	"errors"
	"fmt"
	"io"
	"strings"

	"bladecard/calc/fit"
	"bladecard/render/report"
	"bladecard/render/say"
)

// mostOutliers is how many prints are named that do not agree with the others.
const mostOutliers = 20

// learned tells in words what a fit says, in lines of so many letters.
func learned(w io.Writer, v *say.Voice, r fit.Result, all, wide int) {
	line := func(key string, pairs ...string) {
		for _, l := range report.Wrap(v.T("fit."+key, pairs...), 0, 2, wide) {
			fmt.Fprintln(w, l)
		}
	}
	pct := func(share float64) string { return v.SignedPercent(100 * share) }
	plain := func(share float64) string { return strings.TrimLeft(pct(share), "+") }
	line("used", "all", fmt.Sprint(all), "n", fmt.Sprint(r.Count))
	for _, m := range r.Meshes {
		line("mesh", "mesh", m.Name, "factor", v.Number(m.Factor, 2), "error", plain(m.Error), "n", fmt.Sprint(m.Count))
	}
	line("other", "factor", v.Number(r.Shop.Value, 2), "error", plain(r.Shop.Error))
	for _, t := range []struct {
		key, value, error string
		e                 fit.Estimate
		over              fit.Spread
		unit              string
	}{
		{"angle", pct(r.Angle.Value), plain(r.Angle.Error), r.Angle, r.AngleDeg, "°"},
		{"hardness", pct(r.Hardness.Value), plain(r.Hardness.Error), r.Hardness, r.ShoreA, "\u00a0Shore A"},
		{"stroke", v.Number(r.NextStroke.Value, 2), v.Number(r.NextStroke.Error, 2), r.NextStroke, r.Strokes, ""},
	} {
		if t.e.Told {
			line(t.key, "value", t.value, "error", t.error)
		} else {
			line("no-"+t.key, "spread", spreadOf(v, t.over, t.unit))
		}
	}
	line("scatter", "scatter", plain(r.Scatter), "left", plain(r.LeaveOut))
	for i, o := range r.Outliers {
		if i == mostOutliers {
			line("more-outliers", "n", fmt.Sprint(len(r.Outliers)-i))
			break
		}
		line("outlier", "n", fmt.Sprint(o.Line), "measured", v.FilmUM(o.MeasuredUM), "expected", v.FilmUM(o.FittedUM))
	}
}

// linesOf is a sentence of some lines of the log; empty where there are none.
func linesOf(v *say.Voice, key string, lines []int) string {
	if lines == nil {
		return ""
	}
	var list []string
	for _, n := range lines[:min(len(lines), mostOutliers)] {
		list = append(list, fmt.Sprint(n))
	}
	if len(lines) > mostOutliers {
		list = append(list, "…")
	}
	return v.Many(key, len(lines), "lines", strings.Join(list, ", "))
}

// spreadOf says over which angles, hardnesses or strokes the prints go.
func spreadOf(v *say.Voice, s fit.Spread, unit string) string {
	low, high := v.Number(s.Low, 1)+unit, v.Number(s.High, 1)+unit
	if low == high {
		return v.T("fit.all-at", "at", low)
	}
	return v.T("fit.from-to", "low", low, "high", high)
}

// noFit says why measured prints tell nothing of a shop, and what to look at.
func noFit(v *say.Voice, err error, prints int) string {
	var unit fit.WrongUnit
	switch {
	case errors.As(err, &unit) && unit.Mesh != "":
		return v.T("fit.wrong-mesh", "mesh", unit.Mesh, "factor", v.Number(unit.Times, 2))
	case errors.As(err, &unit):
		return v.T("fit.wrong-unit", "factor", v.Number(unit.Times, 2))
	case errors.Is(err, fit.ErrFew):
		return v.Many("fit.few", prints, "least", fmt.Sprint(fit.Least))
	case errors.Is(err, fit.ErrDisagree):
		return v.T("fit.disagree")
	case errors.Is(err, fit.ErrScattered):
		return v.T("fit.scattered")
	}
	return err.Error()
}
