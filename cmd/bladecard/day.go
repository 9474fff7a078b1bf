package main

import (
	"fmt"
	"io"

	"bladecard/calc/day"
	"bladecard/calc/file"
	"bladecard/calc/plan"
	"bladecard/cmd/bladecard/internal/disk"
	"bladecard/render/daysheet"
	"bladecard/render/report"
)

var dayCommand = command{
	name: "day", args: "PATH... [--due FROM..TO] [-o FILE]",
	run: layOutDay,
}

func layOutDay(c *call) int {
	var target, table, paperName string
	var span dueSpan
	var asJSON bool
	if code, ok := c.parse(func(f *flags) {
		c.jobFlags(f)
		f.value("due", "FROM..TO", span.read)
		f.text(&target, "o", "FILE")
		f.text(&table, "csv", "FILE")
		paperFlag(f, &paperName)
		f.yes(&asJSON, "json")
		c.writeFlags(f)
	}); !ok {
		return code
	}
	if len(c.args) == 0 {
		return c.wrong("no job file or folder is named")
	}
	jobs, code := c.jobsOf(span)
	if len(jobs) == 0 {
		if code == exitDone {
			fmt.Fprintln(c.stderr, "error: no job is due then")
			code = exitJob
		}
		return code
	}
	first := jobs[0]
	var plans []*plan.Plan
	for _, l := range jobs {
		if l.use.path != first.use.path {
			fmt.Fprintf(c.stderr, "error: %s is a job of another shop than %s; jobs of one shop are accepted\n", l.path, first.path)
			return exitJob
		}
		plans = append(plans, l.plan)
	}
	c.tellShop(first.use, first.voice)
	d, v := day.Of(first.shop, plans), first.voice
	to := c.writer(c.args...)
	var err error
	if table != "" {
		err = c.put(to, table, func(w io.Writer) error { return day.WriteCSV(w, d) })
	}
	if err == nil && target != "" {
		faces, wrong := daysheet.Pages(d, first.shop.Name, span.say(v), paperOf(paperName, first.shop), v)
		if err = wrong; err == nil {
			err = c.putPages(to, target, first.floor, "day", faces)
		}
	}
	if err != nil {
		return c.fail(err)
	}
	if asJSON {
		return max(code, c.json(d))
	}
	if target != disk.Stdout && table != disk.Stdout {
		return max(code, c.failed(report.Parts(c.stdout, v.Day(d), columns(c.stdout))))
	}
	return code
}

// jobsOf loads the jobs that the arguments name, folders searched, shop files left out, that are due in the span.
func (c *call) jobsOf(span dueSpan) (jobs []loaded, worst int) {
	c.eachFile(func(path string, inFolder bool, err error) {
		var src []byte
		if err == nil {
			path, src, err = c.read(path, file.MaxFileBytes)
		}
		if err == nil && inFolder && file.IsShop(src) {
			return
		}
		var l loaded
		if err == nil {
			l, err = c.plan(path, src)
		}
		if err != nil {
			worst = max(worst, c.failed(err))
		} else if span.holds(l.job.Due) {
			jobs = append(jobs, l)
		}
	})
	return jobs, worst
}
