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
	run: fitShop,
}

// fitting is what the command line says of a fit, and what it is made from.
type fitting struct {
	write, asJSON bool
	when          job.Date // zero: the latest day of the log
	chart         string

	log     string // as messages call it
	prints  []fit.Print
	unwiped []int // lines of prints that are left out
	rises   []int // lines of gauged prints that may have risen
	floor   *floor
	use     shopUse
}

func (o *fitting) declare(f *flags) {
	f.yes(&o.write, "write")
	f.value("date", "DAY", func(day string) error {
		var ok bool
		if o.when, ok = presslog.ParseDay(day); !ok {
			return errors.New("not a day; accepted: from 2000 to 2099, such as 2026-11-20")
		}
		return nil
	})
	chartFlag(f, &o.chart)
	f.yes(&o.asJSON, "json")
}

func fitShop(c *call) int {
	var o fitting
	if code, ok := c.parse(func(f *flags) {
		o.declare(f)
		c.langFlag(f)
		c.writeFlags(f)
	}); !ok {
		return code
	}
	if len(c.args) < 1 || len(c.args) > 2 {
		return c.wrong("a press log is wanted, and at most one shop file")
	}
	defer debug.SetGCPercent(debug.SetGCPercent(50)) // the longest logs take a quarter less memory for a little more time
	if code := o.read(c); code != exitDone {
		return code
	}
	r, err := fit.Shop(o.prints, fit.Expected())
	if err != nil {
		fmt.Fprintf(c.stderr, "error: %s: %s\n", o.log, noFit(o.floor.voice, err, len(o.prints)))
		return exitJob
	}
	cal := choose.CalibrationOf(r, o.when)
	if errs := file.CheckCalibration(cal); len(errs) > 0 {
		for _, e := range errs {
			fmt.Fprintf(c.stderr, "error: %s: the prints say what a shop file does not take: %s: %s; %s\n", o.log, e.Key, e.Wrong, e.Accepted)
		}
		fmt.Fprintln(c.stderr, "hint: check the units, films and days of the rows")
		return exitJob
	}
	return o.tell(c, r, cal)
}

// read reads the shop and the log.
func (o *fitting) read(c *call) int {
	var src []byte
	var err error
	if o.log, src, err = c.read(c.args[0], presslog.MaxBytes); err != nil {
		return c.fail(err)
	}
	if o.floor, o.use, err = c.shopArg(c.args[1:], o.log); err != nil {
		return c.failed(err)
	}
	if o.write && o.use.path == "" {
		return c.wrong("--write needs a shop file to write to, and there is no shop.toml beside the log or above it")
	}
	c.tellShop(o.use, o.floor.voice)
	logged, errs := choose.Prints(o.log, src, o.floor.shop)
	if len(errs) > 0 {
		return c.jobErrors(errs)
	}
	o.prints, o.unwiped, o.rises = logged.Prints, logged.Unwiped, logged.Rises
	if o.when == (job.Date{}) {
		o.when = logged.Last
	}
	c.noteText(linesOf(o.floor.voice, "fit.unwiped", o.unwiped))
	c.noteText(linesOf(o.floor.voice, "fit.rises", o.rises))
	return exitDone
}

// tell draws the chart, writes the calibration into the shop file, and prints what was learned.
func (o *fitting) tell(c *call, r fit.Result, cal *job.Calibration) int {
	to := c.writer(c.args[0], o.use.path)
	if o.chart != "" {
		ch, some := fitChart(o.prints, r, o.floor.voice)
		c.noteText(some)
		if err := writeChart(to, o.chart, ch); err != nil {
			return c.fail(err)
		}
	}
	if o.write {
		text, err := file.WithCalibration(o.use.path, o.floor.src, cal)
		if err == nil {
			err = to.Edit(o.use.path, o.floor.src, text)
		}
		if err != nil {
			return c.failed(err)
		}
	}
	if o.asJSON {
		return c.json(newFitted(r, o, cal))
	}
	learned(c.stdout, o.floor.voice, r, len(o.prints), columns(c.stdout))
	if o.write {
		fmt.Fprintf(c.stdout, "\n%s\n", c.word("written to "+o.use.path))
	} else {
		fmt.Fprintf(c.stdout, "\n%s", file.CalibrationText(cal))
	}
	return exitDone
}
