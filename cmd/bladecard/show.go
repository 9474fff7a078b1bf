package main

import (
	"fmt"

	"bladecard/calc/plan"
	"bladecard/calc/rows"
	"bladecard/render/report"
)

var showCommand = command{
	name: "show", args: "JOB... [--why]",
	run: show,
}

func show(c *call) int {
	var asJSON, asCSV, why bool
	if code, ok := c.parse(func(f *flags) {
		c.jobFlags(f)
		f.yes(&why, "why")
		f.yes(&asJSON, "json")
		f.yes(&asCSV, "csv")
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
