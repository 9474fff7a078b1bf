package main

import (
	"encoding/json"
	"flag"
	"fmt"

	"bladecard/render/report"
)

var showCommand = command{
	name: "show", args: "JOB... [--json]",
	does: "print the setups of the jobs",
	more: "With --json the whole plan of each job, one object a line. Film is in um, angles are in\ndegrees from vertical, loads in newtons per centimetre of blade.",
	run:  show,
}

func show(c *call) int {
	var asJSON bool
	if code, ok := c.parse(func(fs *flag.FlagSet) {
		c.language(fs)
		fs.BoolVar(&asJSON, "json", false, "print the plan as JSON, one object a job")
	}); !ok {
		return code
	}
	first := true
	return c.each(func(l loaded) int {
		if asJSON {
			enc := json.NewEncoder(c.stdout)
			enc.SetEscapeHTML(false)
			if err := enc.Encode(l.plan); err != nil {
				return c.fail(err)
			}
			return exitDone
		}
		if !first {
			fmt.Fprintln(c.stdout)
		}
		first = false
		if err := report.Table(c.stdout, l.plan, l.voice); err != nil {
			return c.fail(err)
		}
		return exitDone
	})
}
