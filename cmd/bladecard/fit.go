package main

import (
	"errors"
	"fmt"
	"runtime/debug"

	"bladecard/calc/choose"
	"bladecard/calc/file"
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
		c.forceFlag(f)
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
	if errs := file.CheckCalibration(cal); len(errs) > 0 {
		for _, e := range errs {
			fmt.Fprintf(c.stderr, "error: %s: the prints say what a shop file does not take: %s: %s; %s\n", path, e.Key, e.Wrong, e.Accepted)
		}
		fmt.Fprintln(c.stderr, "hint: check the units, films and days of the rows")
		return exitJob
	}
	to := c.writer(c.args[0], use.path)
	if chart != "" {
		ch, some := fitChart(prints, r, f.voice)
		c.noteText(some)
		if err := writeChart(to, chart, ch); err != nil {
			return c.fail(err)
		}
	}
	if write {
		text, err := file.WithCalibration(use.path, f.src, cal)
		if err == nil {
			err = to.Edit(use.path, f.src, text)
		}
		if err != nil {
			return c.failed(err)
		}
	}
	if asJSON {
		return c.json(newFitted(r, len(prints), cal))
	}
	learned(c.stdout, f.voice, r, len(prints))
	if write {
		fmt.Fprintf(c.stdout, "\nwritten to %s\n", use.path)
	} else {
		fmt.Fprintf(c.stdout, "\n%s", file.CalibrationText(cal))
	}
	return exitDone
}
