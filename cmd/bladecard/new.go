package main

import (
	"cmp"
	"fmt"
	"path/filepath"
	"strings"

	"bladecard/calc/file"
	"bladecard/cmd/bladecard/internal/disk"
	"bladecard/templates"
)

var newCommand = command{
	name: "new", args: "[DIR] [--from ORDERS.csv]",
	run: startNew,
}

func startNew(c *call) int {
	var from string
	if code, ok := c.parse(func(f *flags) {
		f.text(&from, "from", "FILE")
		f.text(&c.shop, "shop", "FILE")
		c.langFlag(f)
		c.writeFlags(f)
	}); !ok {
		return code
	}
	dir := "."
	switch {
	case len(c.args) > 1:
		return c.wrong(fmt.Sprintf("%d folders are named; one is accepted", len(c.args)))
	case len(c.args) == 1:
		dir = c.args[0]
	}
	if from != "" {
		return c.newFrom(from, dir)
	}
	files, err := starterFiles(cmp.Or(c.lang, "en"))
	if err != nil {
		return c.fail(err)
	}
	if err := c.writer().Files(dir, files...); err != nil {
		return c.fail(err)
	}
	for _, f := range files {
		c.wrote(filepath.Join(dir, f.Name))
	}
	if !c.quiet {
		fmt.Fprintf(c.stderr, "hint: next, bladecard check %s\n", quoteArg(filepath.Join(dir, "job.toml")))
	}
	return exitDone
}

// starterFiles are the files of a folder to start in.
func starterFiles(lang string) ([]disk.Claim, error) {
	var files []disk.Claim
	for _, kind := range []string{"shop", "job"} {
		text, err := templates.Starter(lang, kind)
		if err != nil {
			return nil, err
		}
		schema, err := file.Schema(kind, lang)
		if err != nil {
			return nil, err
		}
		files = append(files, disk.Claim{File: disk.File{Name: kind + ".toml", Data: text}}, disk.Claim{File: disk.File{Name: kind + ".schema.json", Data: schema}})
	}
	return files, nil
}

// quoteArg writes a path as a shell takes it.
func quoteArg(path string) string {
	if strings.ContainsAny(path, " \t\"'$&;()*?") {
		return "'" + strings.ReplaceAll(path, "'", `'\''`) + "'"
	}
	return path
}
