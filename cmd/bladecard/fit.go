package main

import (
	"flag"
	"fmt"
	"io"
	"strings"

	"bladecard/calc/choose"
	"bladecard/calc/file"
	"bladecard/calc/fit"
	"bladecard/calc/job"
	"bladecard/calc/presslog"
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
	src, err := readFile(path, presslog.MaxBytes)
	if err != nil {
		return c.fail(err)
	}
	var errs job.Errors
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
	when, ok := presslog.ParseDay(day)
	if !ok && day != "" {
		return c.wrong(fmt.Sprintf("--date %q is not a day; accepted: 2026-11-20", day))
	}
	prints, last, errs := choose.Prints(path, src, shop)
	if len(errs) > 0 {
		return c.jobErrors(errs)
	}
	if day == "" {
		when = last
	}
	voice, code := c.voiceOf(shop)
	if code != exitDone {
		return code
	}
	r, err := fit.Shop(prints, fit.Expected())
	if err != nil {
		fmt.Fprintf(c.stderr, "error: %s: %s\n", path, noFit(voice, err, len(prints)))
		return exitJob
	}
	cal := choose.CalibrationOf(r, when)
	learned(c.stdout, voice, r, len(prints))
	if chart != "" {
		ch, some := fitChart(prints, r, voice)
		c.noteDrawn(some)
		if err := writeChart(chart, ch); err != nil {
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
