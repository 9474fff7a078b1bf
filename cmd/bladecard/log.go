package main

import (
	"io"

	"bladecard/calc/choose"
	"bladecard/calc/presslog"
)

var logCommand = command{
	name: "log", args: "JOB... [-o FILE]",
	does: "start a press log of the jobs, to fill in what was measured",
	more: `
A CSV file with a row a screen: its setup stands there, what was measured is filled in: the wet
film by comb, the cured film by gauge, or the weight of a garment before and after with the inked
area. Add a row for each further print; correct the setup where the press differed. Rows without
a measurement are left out by fit.`,
	run: pressLog,
}

func pressLog(c *call) int {
	var file string
	if code, ok := c.parse(func(f *flags) {
		c.jobFlags(f)
		f.file(&file, "log")
		c.quietFlag(f)
	}); !ok {
		return code
	}
	var rows []presslog.Row
	if code := c.each(func(l loaded) int {
		c.tellShop(l.use, l.voice)
		rows = append(rows, choose.LogOf(l.plan)...)
		return exitDone
	}); code != exitDone {
		return code
	}
	write := func(w io.Writer) error { return presslog.Write(w, rows) }
	var err error
	if file == "" {
		err = write(c.data)
	} else {
		err = writeFile(file, write)
	}
	if err != nil {
		return c.fail(err)
	}
	return exitDone
}
