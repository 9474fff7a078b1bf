package main

import (
	"strings"

	"bladecard/calc/job"
	"bladecard/calc/lesson"
	"bladecard/render/handout"
)

var handoutCommand = command{
	name: "handout", args: "[SHOP] -o FILE",
	does: "make a lesson of one hour on choosing a blade, or a wall chart",
	more: `
Its pictures, tables and exercises are computed from the racks of the shop file SHOP, or else of the
nearest shop.toml in this folder or above it, or else of the built-in example shop. The answers
stand on the last page, never on the back of the work sheet. For a new hand, --level intro leaves
out why, the tables of the racks, and the exercises on them. --level wall is one page to hang up:
what is printed, and for it the blade of this rack, its angle, the strokes and what to look for.`,
	run: printHandout,
}

func printHandout(c *call) int {
	var target, paperName string
	level := string(handout.Press)
	if code, ok := c.parse(func(f *flags) {
		f.text(&target, "o", "`FILE` writes the PDF to this file; - is standard output (needed)")
		paperFlag(f, &paperName)
		f.word(&level, "level", "a level", "`LEVEL` intro for a new hand, press, the whole lesson (default), or wall, one page to hang up", strings.Split(handout.Levels(), ", ")...)
		c.langFlag(f)
		c.forceFlag(f)
		c.quietFlag(f)
	}); !ok {
		return code
	}
	if target == "" {
		return c.wrong("-o is missing: the PDF to write")
	}
	f, use, code := c.oneShop()
	if code != exitDone {
		return code
	}
	l, err := lesson.Make(f.shop)
	if err != nil {
		return c.jobErrors(job.Errors{{Pos: job.Pos{File: f.shop.File}, Wrong: err.Error(), Accepted: "racks with a blade at hand and a mesh that it prints through"}})
	}
	logo, err := f.picture()
	if err != nil {
		return c.failed(err)
	}
	file := use.file()
	if f.shop.Name != "" {
		file = "" // people know their shop by its name
	}
	faces, err := handout.Pages(l, paperOf(paperName, f.shop), f.voice, handout.Options{Logo: logo, Accent: f.shop.Accent, Level: handout.Level(level), Shop: f.voice.Shop(use.from, f.shop.Name, file)})
	if err == nil {
		err = c.putPages(c.writer(use.path), target, f, "handout", faces)
	}
	return c.failed(err)
}
