package main

import "fmt"

var checkCommand = command{
	name: "check", args: "JOB...",
	does: "read and compute the jobs, report errors and warnings; write nothing",
	run:  check,
}

func check(c *call) int {
	if code, ok := c.parse(c.language); !ok {
		return code
	}
	return c.each(func(l loaded) int {
		n := 0
		for _, w := range l.plan.Warnings {
			n++
			fmt.Fprintf(c.stdout, "%s: %s\n", l.path, w.Text)
		}
		for _, loc := range l.plan.Locations {
			for _, w := range loc.Warnings {
				n++
				fmt.Fprintf(c.stdout, "%s: %s: %s\n", l.path, l.voice.T("check.location", "location", loc.Name), w.Text)
			}
			for _, s := range loc.Screens {
				for _, w := range s.Warnings {
					n++
					fmt.Fprintf(c.stdout, "%s: %s: %s\n", l.path, l.voice.T("check.place", "location", loc.Name, "n", fmt.Sprint(s.Number)), w.Text)
				}
			}
		}
		fmt.Fprintln(c.stdout, l.voice.Many("check.ok", n, "file", l.path))
		return exitDone
	})
}
