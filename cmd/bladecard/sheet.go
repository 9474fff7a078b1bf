package main

import (
	"flag"
	"fmt"
	"io"
)

var sheetCommand = command{
	name: "sheet", args: "JOB... -o DIR",
	does: "print the setup sheet of each job, for another shop, a PDF a job",
	more: `
The sheet stands alone: every screen with its figures, the press order, what must be held and
what may vary, the other blades and meshes that give the same film, ink, dryer and cautions.`,
	run: setupSheet,
}

func setupSheet(c *call) int {
	var dir string
	var d documents
	if code, ok := c.parse(func(fs *flag.FlagSet) {
		c.language(fs)
		fs.StringVar(&dir, "o", "", "folder `DIR` for the PDFs (needed)")
		fs.StringVar(&d.paper, "paper", "", "`PAPER` a4 or letter; left out: the shop's")
		fs.BoolVar(&d.noCustomer, "no-customer", false, "leave the customer's name out")
	}); !ok {
		return code
	}
	if dir == "" {
		return c.wrong("-o is missing: the folder to write to")
	}
	if wrong := wrongPaper(d.paper); wrong != "" {
		return c.wrong(wrong)
	}
	out := newOutputs(dir, "-sheet.pdf")
	return c.each(func(l loaded) int {
		path, ok := out.path(c, l.path)
		if !ok {
			return exitUsage
		}
		if err := writeFile(path, func(w io.Writer) error { return d.sheet(w, l) }); err != nil {
			return c.failed(err)
		}
		fmt.Fprintln(c.stdout, path)
		return exitDone
	})
}
