package main

import (
	"errors"
	"fmt"
	"io"
	"runtime/debug"
	"strings"

	"bladecard/calc/choose"
	"bladecard/calc/fit"
	"bladecard/calc/job"
	"bladecard/calc/presslog"
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
			if when, ok = presslog.ParseDay(day); !ok {
				return errors.New("not a day; accepted: from 2000 to 2099, such as 2026-11-20")
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
	defer debug.SetGCPercent(debug.SetGCPercent(50)) // the longest logs take a quarter less memory for a little more time
	path, src, err := c.read(c.args[0], presslog.MaxBytes)
	if err != nil {
		return c.fail(err)
	}
	f, use, err := c.shopArg(c.args[1:], path)
	if err != nil {
		return c.failed(err)
	}
	if write && use.path == "" {
		return c.wrong("--write needs a shop file to write to, and there is no shop.toml beside the log or above it")
	}
	c.tellShop(use, f.voice)
	prints, last, errs := choose.Prints(path, src, f.shop)
	if len(errs) > 0 {
		return c.jobErrors(errs)
	}
	if when == (job.Date{}) {
		when = last
	}
	r, err := fit.Shop(prints, fit.Expected())
	if err != nil {
		fmt.Fprintf(c.stderr, "error: %s: %s\n", path, noFit(f.voice, err, len(prints)))
		return exitJob
	}
	cal := choose.CalibrationOf(r, when)
	if chart != "" {
		ch, some := fitChart(prints, r, f.voice)
		c.noteDrawn(some)
		if err := writeChart(chart, ch); err != nil {
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

// calibrationBlock is the block of a shop file.
func calibrationBlock(c *job.Calibration) string {
	var b strings.Builder
	p := func(format string, args ...any) { fmt.Fprintf(&b, format+"\n", args...) }
	p("[calibration]")
	p("factor = %g\nerror = %g\nscatter = %g\nday = %g\ncount = %d", c.Factor, c.Error, c.Scatter, c.Day, c.Count)
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
		p("[[calibration.mesh]]\nmesh = %s\nfactor = %g\nerror = %g\nown-error = %g\ncount = %d", tomlText(m.Name), m.Factor, m.Error, m.Own, m.Count)
	}
	return b.String()
}
