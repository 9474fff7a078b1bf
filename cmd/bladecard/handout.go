package main

import (
	"flag"
	"fmt"
	"io"

	"bladecard/calc/file"
	"bladecard/calc/job"
	"bladecard/calc/lesson"
	"bladecard/render/handout"
	"bladecard/render/page"
)

var handoutCommand = command{
	name: "handout", args: "[SHOP] -o FILE",
	does: "print a class paper on choosing a blade",
	more: `
Its tables, charts and exercises are computed from the racks of the shop file SHOP, or of the
built-in shop. The answers stand on the last page. For a new hand, --level intro leaves out film,
load, mesh and stencil, and the exercises on them.`,
	run: printHandout,
}

func printHandout(c *call) int {
	var output, paperName, levelName string
	if code, ok := c.parse(func(fs *flag.FlagSet) {
		fs.StringVar(&output, "o", "", "`FILE` for the PDF (needed)")
		fs.StringVar(&paperName, "paper", "", "`PAPER` a4 or letter; left out: the shop's")
		fs.StringVar(&levelName, "level", "", "`LEVEL` intro, for a new hand, or press, the whole paper; left out: press")
		c.language(fs)
	}); !ok {
		return code
	}
	level, known := handout.ParseLevel(levelName)
	switch {
	case output == "":
		return c.wrong("-o is missing: the PDF to write")
	case len(c.args) > 1:
		return c.wrong(fmt.Sprintf("%d shop files are named; one is accepted", len(c.args)))
	case !known:
		return c.wrong(notOneOf("--level", levelName, "a level", handout.Levels()))
	}
	if wrong := wrongPaper(paperName); wrong != "" {
		return c.wrong(wrong)
	}
	shop := file.BuiltInShop()
	if len(c.args) == 1 {
		src, code := c.read(c.args[0])
		if code != exitDone {
			return code
		}
		var errs job.Errors
		if shop, errs = file.DecodeShop(c.args[0], src); len(errs) > 0 {
			return c.jobErrors(errs)
		}
	}
	at := job.Pos{File: shop.File}
	voice, code := c.voiceOf(shop)
	if code != exitDone {
		return code
	}
	l, err := lesson.Make(shop)
	if err != nil {
		return c.jobErrors(job.Errors{{Pos: at, Wrong: err.Error(), Accepted: "racks with a blade at hand and a mesh that it prints through"}})
	}
	logo, err := readLogo(shop)
	if err != nil {
		return c.failed(err)
	}
	faces, err := handout.Pages(l, paperOf(paperName, shop), voice, handout.Options{Logo: logo, Accent: shop.Accent, Level: level})
	if err == nil {
		err = writeFile(output, func(w io.Writer) error {
			return page.Write(w, page.Meta{
				Title: voice.T("handout.title"), Author: shop.Name, Subject: voice.T("handout.subject"), Language: voice.Code,
			}, page.Pages(faces...))
		})
	}
	if err != nil {
		return c.fail(err)
	}
	fmt.Fprintln(c.stdout, output)
	return exitDone
}
