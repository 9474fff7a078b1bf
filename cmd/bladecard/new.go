package main

import (
	"cmp"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"bladecard/calc/file"
	"bladecard/templates"
)

var newCommand = command{
	name: "new", args: "[DIR]",
	does: "write a shop file and a job file to start from",
	more: `
Into DIR, or into the folder where you are: shop.toml, job.toml, and a schema of each for the
editor. Shop and job are invented; put your own in their place. A file that is there already is
not written over: nothing is written then, unless --force is given.`,
	run: startNew,
}

// starterFile is a file that new writes.
type starterFile struct {
	path string
	text []byte
}

func startNew(c *call) int {
	force := false
	if code, ok := c.parse(func(f *flags) {
		c.langFlag(f)
		f.yes(&force, "force", "write over files that are there")
		c.quietFlag(f)
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
	files, err := starterFiles(dir, cmp.Or(c.lang, "en"))
	if err != nil {
		return c.fail(err)
	}
	there, err := existing(files)
	if err != nil {
		return c.fail(err)
	}
	if len(there) > 0 && !force {
		c.fail(fmt.Errorf("%s: there already; nothing was written", strings.Join(there, ", ")))
		fmt.Fprintln(c.stderr, "hint: name another folder, or write over them with --force")
		return exitFile
	}
	for _, f := range files {
		if err := writeFile(f.path, func(w io.Writer) error {
			_, err := w.Write(f.text)
			return err
		}); err != nil {
			return c.fail(err)
		}
		c.wrote(f.path)
	}
	if !c.quiet {
		fmt.Fprintf(c.stderr, "hint: next, bladecard check %s\n", quoteArg(filepath.Join(dir, "job.toml")))
	}
	return exitDone
}

// starterFiles are the files of a folder to start in.
func starterFiles(dir, lang string) ([]starterFile, error) {
	var files []starterFile
	for _, kind := range []string{"shop", "job"} {
		text, err := templates.Starter(lang, kind)
		if err != nil {
			return nil, err
		}
		schema, err := file.Schema(kind, lang)
		if err != nil {
			return nil, err
		}
		files = append(files, starterFile{filepath.Join(dir, kind+".toml"), text}, starterFile{filepath.Join(dir, kind+".schema.json"), schema})
	}
	return files, nil
}

// existing are the paths where something stands already, a dead link too.
func existing(files []starterFile) ([]string, error) {
	var there []string
	for _, f := range files {
		switch _, err := os.Lstat(f.path); {
		case err == nil:
			there = append(there, f.path)
		case !errors.Is(err, fs.ErrNotExist):
			return nil, err
		}
	}
	return there, nil
}

// quoteArg writes a path as a shell takes it.
func quoteArg(path string) string {
	if strings.ContainsAny(path, " \t\"'$&;()*?") {
		return "'" + strings.ReplaceAll(path, "'", `'\''`) + "'"
	}
	return path
}
