package main

import (
	"cmp"
	"errors"
	"flag"
	"fmt"
	"io"
	"math"
	"os"
	"slices"
	"strings"

	"bladecard/calc/choose"
	"bladecard/calc/file"
	"bladecard/calc/fit"
	"bladecard/calc/job"
	"bladecard/calc/presslog"
	"bladecard/render/figure"
	"bladecard/render/say"
)

var fitCommand = command{
	name: "fit", args: "LOG.csv [SHOP] [--write]",
	does: "learn from measured films how the shop prints",
	more: `
Prints what the measured prints say of the shop, and a calibration block for the shop file. With
--write the block is put into the shop file SHOP in place of the one there; all else in it stays.
Without SHOP the built-in shop is meant.`,
	run: fitShop,
}

func fitShop(c *call) int {
	var write bool
	var day, chart string
	if code, ok := c.parse(func(fs *flag.FlagSet) {
		fs.BoolVar(&write, "write", false, "put the block into the shop file")
		fs.StringVar(&day, "date", "", "`DAY` of the last measurement, 2026-11-20; left out: the latest in the log")
		fs.StringVar(&chart, "chart", "", "also draw measured over expected films to `FILE`, .svg or .png")
		c.language(fs)
	}); !ok {
		return code
	}
	switch {
	case chart != "" && !isChart(chart):
		return c.wrong(wrongChart(chart))
	case len(c.args) < 1 || len(c.args) > 2:
		return c.wrong("a press log is wanted, and at most one shop file")
	case write && len(c.args) < 2:
		return c.wrong("--write needs the shop file to write to")
	}
	path := c.args[0]
	src, err := readLog(path)
	if err != nil {
		return c.fail(err)
	}
	rows, errs := presslog.Read(path, src)
	if len(errs) > 0 {
		return c.jobErrors(errs)
	}
	shop, shopSrc := file.BuiltInShop(), []byte(nil)
	if len(c.args) == 2 {
		var code int
		if shopSrc, code = c.read(c.args[1]); code != exitDone {
			return code
		}
		if shop, errs = file.DecodeShop(c.args[1], shopSrc); len(errs) > 0 {
			return c.jobErrors(errs)
		}
	}
	if day == "" {
		day = lastDay(rows)
	}
	when, ok := parseDay(day)
	if !ok {
		return c.wrong(fmt.Sprintf("--date %q is not a day; accepted: 2026-11-20", day))
	}
	prints, errs := choose.Prints(path, rows, shop)
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
	voice, code := c.voiceOf(shop)
	if code != exitDone {
		return code
	}
	learned(c.stdout, voice, r, len(prints))
	if chart != "" {
		if err := writeChart(chart, fitChart(prints, r, voice)); err != nil {
			return c.fail(err)
		}
	}
	block := calibrationBlock(cal)
	if !write {
		fmt.Fprintf(c.stdout, "\n%s", block)
		return exitDone
	}
	text, err := withCalibration(c.args[1], shopSrc, block)
	if err == nil {
		err = writeFile(c.args[1], func(w io.Writer) error { _, err := w.Write(text); return err })
	}
	if err != nil {
		return c.fail(err)
	}
	fmt.Fprintf(c.stdout, "\nwritten to %s\n", c.args[1])
	return exitDone
}

// fitChart is the measured film over the one that the fit expects, a dot a print, with the line
// on which both are the same.
func fitChart(prints []fit.Print, r fit.Result, v *say.Voice) figure.Chart {
	dots := figure.Line{Label: v.T("fit.dots"), Strong: true, Dots: true}
	low, high := math.Inf(1), 0.0
	for i, p := range prints {
		dots.Points = append(dots.Points, figure.XY{X: r.FittedUM[i], Y: p.MeasuredUM})
		low, high = min(low, r.FittedUM[i], p.MeasuredUM), max(high, r.FittedUM[i], p.MeasuredUM)
	}
	slices.SortFunc(dots.Points, func(a, b figure.XY) int { return cmp.Compare(a.X, b.X) })
	if n := len(prints); n > figure.MostPoints {
		dots.Label = v.T("fit.some-dots", "drawn", fmt.Sprint(figure.MostPoints), "all", fmt.Sprint(n))
	}
	same := figure.Line{Label: v.T("fit.same"), Points: []figure.XY{{X: low, Y: low}, {X: high, Y: high}}}
	axis := func(title string) figure.Axis {
		return figure.Axis{Title: v.T(title), Low: 0.95 * low, High: 1.05 * high}
	}
	return figure.Chart{X: axis("fit.x"), Y: axis("fit.y"), Lines: []figure.Line{same, dots}, SizePT: 9, Format: v.Number}
}

// readLog reads a log that is not larger than one may be.
func readLog(path string) ([]byte, error) {
	f, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	return io.ReadAll(io.LimitReader(f, presslog.MaxBytes+1))
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
