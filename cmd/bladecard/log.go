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
	run: pressLog,
}

func pressLog(c *call) int {
	var path string
	if code, ok := c.parse(func(f *flags) {
		c.jobFlags(f)
		f.file(&path)
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
		rows = append(rows, rowsOf(l)...)
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

// rowsOf are the empty rows of a job. Those of an ink that rises say that the flat film is wanted.
func rowsOf(l loaded) []presslog.Row {
	rows, i := choose.LogOf(l.plan), 0
	for _, at := range l.plan.Locations {
		for _, s := range at.Screens {
			if s.HeightMM != nil {
				rows[i].Note = l.voice.T("log.flat")
			}
			i++
		}
	}
	return rows
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
