package main

import (
	"fmt"

	"bladecard/render/report"
)

var showCommand = command{
	name: "show", args: "JOB... [--why]",
	does: "print the setups of the jobs in the terminal",
	more: `
A table of what to set and what comes of it. With --why also how each setup came about: what fell
short, which step was taken and what it brought, what every other blade lost on, and what would
change the film. With --json the whole plan of each job, one object a line: films are in um, angles
in degrees from vertical, loads in newtons per centimeter of blade. JOB may be -, which reads
standard input.`,
	run: show,
}

func show(c *call) int {
	var asJSON, why bool
	if code, ok := c.parse(func(f *flags) {
		c.jobFlags(f)
		f.yes(&why, "why", "also print how each setup came about and what would change it")
		f.yes(&asJSON, "json", "print JSON, one object per job and line")
	}); !ok {
		return code
	}
	first := true
	return c.each(func(l loaded) int {
		if asJSON {
			return c.json(l.plan)
		}
		if !first {
			fmt.Fprintln(c.stdout)
		}
		first = false
		return c.failed(report.Table(c.stdout, l.plan, l.voice, report.Options{Wide: columns(c.stdout), Shop: l.use.say(l.voice), Why: why}))
	})
}
