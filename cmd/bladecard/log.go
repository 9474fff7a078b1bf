package main

import (
	"fmt"
	"io"
	"os"

	"bladecard/calc/choose"
	"bladecard/calc/presslog"
	"bladecard/cmd/bladecard/internal/disk"
)

var logCommand = command{
	name: "log", args: "JOB... [-o FILE]",
	does: "start a press log of the jobs, to fill in what was measured",
	more: `
A CSV file with a row a screen: its setup stands there, what was measured is filled in: the wet
film by comb, the cured film by gauge, or the weight of a garment before and after with the inked
area. Add a row for each further print; correct the setup where the press differed. The film of a
screen with several hits is that of all of them. To sign the first print off there are wiped (yes
or no), cure, the heat that the film reached, wash (pass or fail), and name. Rows without a
measurement are left out by fit, and so are those whose screen did not come clean. Cells are parted
as a spreadsheet in the shop's language wants it. Where FILE is a press log already, it gets the
rows of the screens that it has none of, behind its own; nothing that stands in it changes.

With log = FILE in the shop file, what a screen ran with last stands on its papers.`,
	run: pressLog,
}

func pressLog(c *call) int {
	var path string
	if code, ok := c.parse(func(f *flags) {
		c.jobFlags(f)
		f.file(&path, "log")
		c.quietFlag(f)
	}); !ok {
		return code
	}
	c.startsLog = true
	var rows []presslog.Row
	comma := false // the decimal sign of the first job's language
	if code := c.each(func(l loaded) int {
		c.tellShop(l.use, l.voice)
		comma = rows == nil && l.voice.DecimalComma() || comma
		rows = append(rows, choose.LogOf(l.plan)...)
		return exitDone
	}); code != exitDone {
		return code
	}
	to := c.writer(c.args...)
	var err error
	if info, there := os.Stat(path); path != disk.Stdout && there == nil && info.Mode().IsRegular() {
		err = c.addRows(to, path, rows)
	} else {
		err = c.put(to, path, func(w io.Writer) error { return presslog.Write(w, rows, comma) })
	}
	return c.failed(err)
}

// addRows writes those rows behind a log that it lacks.
func (c *call) addRows(to *disk.Writer, path string, rows []presslog.Row) error {
	if err := to.NotInput(path); err != nil {
		return err
	}
	src, err := disk.Read(path, presslog.MaxBytes)
	if err != nil {
		return err
	}
	text, lacking, errs := presslog.Append(path, src, rows)
	if len(errs) > 0 {
		c.jobErrors(errs)
		return &disk.Refusal{Path: path, Why: "is not a press log that rows can be added to", Hint: "name another file"}
	}
	note := "has a row of every screen; nothing is added"
	if lacking > 0 {
		if err := to.Edit(path, src, append(src, text...)); err != nil {
			return err
		}
		note = fmt.Sprintf("%d rows added", lacking)
		if lacking == 1 {
			note = "1 row added"
		}
	}
	if !c.quiet {
		fmt.Fprintf(c.stdout, "%s: %s\n", path, c.word(note))
	}
	return nil
}
