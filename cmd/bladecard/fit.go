package main

import (
	"cmp"
	"errors"
	"fmt"
	"io"
	"math"
	"slices"
	"strings"

	"bladecard/calc/choose"
	"bladecard/calc/fit"
	"bladecard/calc/job"
	"bladecard/calc/presslog"
	"bladecard/render/figure"
	"bladecard/render/say"
)

var fitCommand = command{
	name: "fit", args: "LOG.csv [SHOP] [--write]",
	does: "learn from a filled-in press log how your shop prints",
	more: `
Prints what the measured prints say of the shop, and a calibration block for the shop file. With
--write the block is put into the shop file in place of the one there; all else in it stays.
Without SHOP the nearest shop.toml upward from the log is meant, or the built-in example shop. LOG
may be -, which reads standard input.`,
	run: fitShop,
}

func fitShop(c *call) int {
	var write, asJSON bool
	var when job.Date
	var chart string
	if code, ok := c.parse(func(f *flags) {
		f.yes(&write, "write", "put the block into the shop file")
		f.value("date", "`DAY` day of the last measurement, such as 2026-11-20; default: the latest in the log", func(day string) error {
			var ok bool
			if when, ok = parseDay(day); !ok || day == "" {
				return errors.New("not a day; accepted: such as 2026-11-20")
			}
			return nil
		})
		chartFlag(f, &chart, "measured against expected films")
		f.yes(&asJSON, "json", "print what was learned as JSON")
		c.langFlag(f)
		c.quietFlag(f)
	}); !ok {
		return code
	}
	if len(c.args) < 1 || len(c.args) > 2 {
		return c.wrong("a press log is wanted, and at most one shop file")
	}
	path, src, err := c.read(c.args[0], presslog.MaxBytes)
	if err != nil {
		return c.fail(err)
	}
	rows, errs := presslog.Read(path, src)
	if len(errs) > 0 {
		return c.jobErrors(errs)
	}
	f, use, err := c.shopArg(c.args[1:], path)
	if err != nil {
		return c.failed(err)
	}
	if write && use.path == "" {
		return c.wrong("--write needs a shop file to write to, and there is no shop.toml beside the log or above it")
	}
	c.tellShop(use, f.voice)
	if when == (job.Date{}) {
		when, _ = parseDay(lastDay(rows))
	}
	prints, errs := choose.Prints(path, rows, f.shop)
	if len(errs) > 0 {
		return c.jobErrors(errs)
	}
	r, err := fit.Shop(prints, fit.Expected())
	switch {
	case errors.Is(err, fit.ErrFew):
		fmt.Fprintf(c.stderr, "error: %s: %d measured prints; at least %d are needed, and ten tell much more\nhint: `bladecard log JOB` writes a log to fill in\n", path, len(prints), fit.Least)
		return exitJob
	case err != nil:
		fmt.Fprintf(c.stderr, "error: %s: %v\nhint: check units, films and strokes of the rows\n", path, err)
		return exitJob
	}
	cal := choose.CalibrationOf(r, when)
	if chart != "" {
		if err := writeChart(chart, fitChart(prints, r, f.voice)); err != nil {
			return c.fail(err)
		}
	}
	block := calibrationBlock(cal)
	if write {
		text, err := withCalibration(use.path, f.src, block)
		if err == nil {
			err = writeFile(use.path, func(w io.Writer) error { _, err := w.Write(text); return err })
		}
		if err != nil {
			return c.fail(err)
		}
	}
	if asJSON {
		return c.json(newFitted(r, len(prints), cal))
	}
	learned(c.stdout, f.voice, r, len(prints))
	if write {
		fmt.Fprintf(c.stdout, "\nwritten to %s\n", use.path)
	} else {
		fmt.Fprintf(c.stdout, "\n%s", block)
	}
	return exitDone
}

// fitChart is the measured film over the one that the fit expects, a dot a print, with the line
// on which both are the same.
func fitChart(prints []fit.Print, r fit.Result, v *say.Voice) figure.Chart {
	type dot struct{ x, y float64 }
	var dots []dot
	low, high := math.Inf(1), 0.0
	for i, p := range prints {
		dots = append(dots, dot{r.FittedUM[i], p.MeasuredUM})
		low, high = min(low, r.FittedUM[i], p.MeasuredUM), max(high, r.FittedUM[i], p.MeasuredUM)
	}
	slices.SortFunc(dots, func(a, b dot) int { return cmp.Compare(a.x, b.x) })
	line := figure.Line{Label: v.T("fit.dots"), Strong: true}
	for _, d := range dots {
		gap := figure.XY{X: math.NaN()} // breaks the line: each point stands alone
		line.Points = append(line.Points, figure.XY{X: d.x, Y: d.y}, gap)
	}
	same := figure.Line{Label: v.T("fit.same"), Points: []figure.XY{{X: low, Y: low}, {X: high, Y: high}}}
	return figure.Chart{
		X: figure.Axis{Title: v.T("fit.x"), Low: 0.95 * low, High: 1.05 * high}, Y: figure.Axis{Title: v.T("fit.y"), Low: 0.95 * low, High: 1.05 * high},
		Lines: []figure.Line{same, line}, SizePT: 9, Format: v.Number,
	}
}

// learned tells in words what a fit says.
func learned(w io.Writer, v *say.Voice, r fit.Result, all int) {
	line := func(key string, pairs ...string) { fmt.Fprintln(w, v.T("fit."+key, pairs...)) }
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
	}{
		{"angle", pct(r.Angle.Value), plain(r.Angle.Error), r.Angle}, {"hardness", pct(r.Hardness.Value), plain(r.Hardness.Error), r.Hardness},
		{"stroke", v.Number(r.NextStroke.Value, 2), v.Number(r.NextStroke.Error, 2), r.NextStroke},
	} {
		if t.e.Told {
			line(t.key, "value", t.value, "error", t.error)
		} else {
			line("no-" + t.key)
		}
	}
	line("scatter", "scatter", plain(r.Scatter), "left", plain(r.LeaveOut))
	for _, o := range r.Outliers {
		line("outlier", "at", o.At, "measured", v.FilmUM(o.MeasuredUM), "expected", v.FilmUM(o.FittedUM))
	}
}

// lastDay is the latest day in a log; days that are none are passed over.
func lastDay(rows []presslog.Row) string {
	last := ""
	for _, r := range rows {
		if _, ok := parseDay(r.Date); ok && r.Date > last {
			last = r.Date
		}
	}
	return last
}

// calibrationBlock is the block of a shop file.
func calibrationBlock(c *job.Calibration) string {
	var b strings.Builder
	p := func(format string, args ...any) { fmt.Fprintf(&b, format+"\n", args...) }
	p("[calibration]")
	p("factor = %g\nerror = %g\nscatter = %g\ncount = %d", c.Factor, c.Error, c.Scatter, c.Count)
	if c.Date != (job.Date{}) {
		p("date = %04d-%02d-%02d", c.Date.Year, c.Date.Month, c.Date.Day)
	}
	p("mean-angle = %g\nmean-hardness = %g\nmean-slope = %g", c.MeanDeg, c.MeanShoreA, c.MeanSlope)
	p("angle = %g\nangle-error = %g\nhardness = %g\nhardness-error = %g", c.Angle, c.AngleError, c.Hardness, c.HardnessError)
	p("next-stroke = %g\nnext-stroke-error = %g", c.NextStroke, c.NextStrokeError)
	var blades []string
	for _, name := range c.Blades {
		blades = append(blades, tomlText(name))
	}
	p("blades = [%s]", strings.Join(blades, ", "))
	for _, m := range c.Meshes {
		p("[[calibration.mesh]]\nmesh = %s\nfactor = %g\nerror = %g\ncount = %d", tomlText(m.Name), m.Factor, m.Error, m.Count)
	}
	return b.String()
}
