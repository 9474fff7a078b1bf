package main

import (
	"flag"
	"fmt"
	"io"

	"bladecard/render/page"
	"bladecard/render/sheet"
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
	var dir, paper string
	var o sheet.Options
	if code, ok := c.parse(func(fs *flag.FlagSet) {
		c.language(fs)
		fs.StringVar(&dir, "o", "", "folder `DIR` for the PDFs (needed)")
		fs.StringVar(&paper, "paper", "", "`PAPER` a4 or letter; left out: the shop's")
		fs.BoolVar(&o.NoCustomer, "no-customer", false, "leave the customer's name out")
	}); !ok {
		return code
	}
	if dir == "" {
		return c.wrong("-o is missing: the folder to write to")
	}
	if wrong := wrongPaper(paper); wrong != "" {
		return c.wrong(wrong)
	}
	out := newOutputs(dir, "-sheet.pdf")
	return c.each(func(l loaded) int {
		path, ok := out.path(c, l.path)
		if !ok {
			return exitUsage
		}
		logo, code := c.logo(l.shop)
		if code != exitDone {
			return code
		}
		o := o
		o.Logo, o.Accent = logo, l.shop.Accent
		faces, err := sheet.Pages(l.plan, paperOf(paper, l.shop), l.voice, o)
		if err != nil {
			return c.fail(fmt.Errorf("%s: %w", l.path, err))
		}
		about := meta(l)
		about.Subject = l.voice.T("sheet-doc.subject")
		if err := writeFile(path, func(w io.Writer) error { return page.Write(w, about, page.Pages(faces...)) }); err != nil {
			return c.fail(err)
		}
		fmt.Fprintln(c.stdout, path)
		return exitDone
	})
}
