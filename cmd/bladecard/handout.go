package main

import (
	"strings"

	"bladecard/calc/job"
	"bladecard/calc/lesson"
	"bladecard/render/handout"
)

var handoutCommand = command{
	name: "handout", args: "[SHOP] -o FILE",
	run: printHandout,
}

func printHandout(c *call) int {
	var target, paperName string
	level := string(handout.Press)
	if code, ok := c.parse(func(f *flags) {
		f.text(&target, "o", "FILE")
		paperFlag(f, &paperName)
		f.word(&level, "level", "LEVEL", "a level", strings.Split(handout.Levels(), ", ")...)
		c.langFlag(f)
		c.writeFlags(f)
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
