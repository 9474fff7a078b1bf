package main

import (
	"fmt"

	"bladecard/calc/plan"
	"bladecard/calc/rows"
	"bladecard/render/report"
)

var showCommand = command{
	name: "show", args: "JOB... [--why]",
	does: "print the setups of the jobs in the terminal",
	more: `
A table of what to set and what comes of it. With --why also how each setup came about: what fell
short, which step was taken and what it brought, what every other blade lost on, and what would
change the film. With --json the whole plan of each job, one object a line: films are in um, angles
in degrees from vertical, loads in newtons per centimeter of blade. With --csv a table for a
spreadsheet, a row a screen. JOB may be -, which reads standard input.`,
	run: show,
}

func show(c *call) int {
	var asJSON, asCSV, why bool
	if code, ok := c.parse(func(f *flags) {
		c.jobFlags(f)
		f.yes(&why, "why", "also print how each setup came about and what would change it")
		f.yes(&asJSON, "json", "print JSON, one object per job and line")
		f.yes(&asCSV, "csv", "print a CSV table, a row a screen")
	}); !ok {
		return code
	}
	if asCSV && (asJSON || why) {
		return c.wrong("--csv and --json or --why together; one of them is accepted")
	}
	first := true
	var plans []*plan.Plan
	code := c.each(func(l loaded) int {
		if asCSV {
			plans = append(plans, l.plan)
			return exitDone
		}
		if asJSON {
			return c.json(l.plan)
		}
		if !first {
			fmt.Fprintln(c.stdout)
		}
		first = false
		return c.failed(report.Table(c.stdout, l.plan, l.voice, report.Options{Wide: columns(c.stdout), Shop: l.use.say(l.voice), Why: why}))
	})
	if asCSV && plans != nil {
		if err := rows.Write(c.data, plans); err != nil {
			return c.fail(err)
		}
	}
	return code
}
