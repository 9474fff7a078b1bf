package main

import (
	"io"
)

var sheetCommand = command{
	name: "sheet", args: "JOB... -o DIR",
	does: "make the setup sheet of each job, to send to another shop",
	more: `
The sheet stands alone: every screen with its figures, the press order, what must be held and
what may vary, the other blades and meshes that give the same film, ink, dryer and cautions.`,
	run: setupSheet,
}

func setupSheet(c *call) int {
	var dir string
	var d documents
	if code, ok := c.parse(func(f *flags) {
		c.jobFlags(f)
		f.folder(&dir)
		paperFlag(f, &d.paper)
		f.yes(&d.noCustomer, "no-customer", "leave the customer's name out")
		c.quietFlag(f)
	}); !ok {
		return code
	}
	if dir == "" {
		return c.wrong("-o is missing: the folder to write to")
	}
	out := newOutputs(dir, "-sheet.pdf")
	return c.each(func(l loaded) int {
		c.tellShop(l.use, l.voice)
		path, ok := out.path(c, l.path)
		if !ok {
			return exitUsage
		}
		if err := writeFile(path, func(w io.Writer) error { return d.sheet(w, l) }); err != nil {
			return c.failed(err)
		}
		c.wrote(path)
		return exitDone
	})
}
