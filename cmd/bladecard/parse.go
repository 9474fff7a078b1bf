package main

import (
	"errors"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"bladecard/calc/job"
)

// parse reads flags and other arguments in any order. It returns false with the exit code when
// the command is over: help was asked for, or the usage is wrong.
func (c *call) parse(declare func(*flags)) (code int, ok bool) {
	f := newFlags(c.name)
	declare(f)
	if c.describe != nil {
		c.describe(f)
		return exitDone, false
	}
	rest := c.args
	c.args = nil
	for {
		err := f.set.Parse(rest)
		switch {
		case errors.Is(err, flag.ErrHelp):
			c.help(f)
			return exitDone, false
		case f.wrong != nil:
			return c.wrong(f.wrong.Error()), false
		case err != nil:
			return c.wrongFlag(err, f), false
		case f.set.NArg() == 0:
			c.args = expanded(c.args)
			return exitDone, true
		}
		if n := len(rest) - f.set.NArg(); n > 0 && rest[n-1] == "--" {
			c.args = expanded(append(c.args, f.set.Args()...))
			return exitDone, true
		}
		c.args = append(c.args, f.set.Arg(0))
		rest = f.set.Args()[1:]
	}
}

// expanded puts the names that fit in the place of a pattern such as *.toml, for shells that leave
// that to the program. A pattern that is the name of a file, or that nothing fits, stays.
func expanded(args []string) []string {
	var out []string
	for _, arg := range args {
		var fit []string
		if _, err := os.Lstat(arg); err != nil && strings.ContainsAny(arg, "*?[") {
			fit, _ = filepath.Glob(arg) // what is no pattern is a name that is not there
		}
		fit = slices.DeleteFunc(fit, func(path string) bool {
			return strings.HasPrefix(filepath.Base(path), ".") && !strings.HasPrefix(filepath.Base(arg), ".")
		})
		if fit == nil {
			fit = []string{arg}
		}
		out = append(out, fit...)
	}
	return out
}

// wrongFlag reports a flag that cannot be read, with the one that may have been meant.
func (c *call) wrongFlag(err error, f *flags) int {
	if name, lacks := strings.CutPrefix(err.Error(), "flag needs an argument: -"); lacks {
		return c.wrong(fmt.Sprintf("%s has nothing behind it; %s is wanted", dashed(name), arguments(c.voice(), f.kinds[name])))
	}
	word, _ := strings.CutPrefix(err.Error(), "flag provided but not defined: ")
	word, _ = strings.CutPrefix(word, "bad flag syntax: ")
	word = strings.TrimLeft(word, "-")
	var names []string
	f.set.VisitAll(func(known *flag.Flag) { names = append(names, known.Name) })
	if near := job.Nearest(word, names); near != "" {
		fmt.Fprintf(c.stderr, "error: %s has no flag %s\nhint: did you mean %s?\n", c.name, shown(dashed(word)), dashed(near))
		return exitUsage
	}
	return c.wrong("there is no flag " + shown(dashed(word)))
}

// wrong reports wrong usage.
func (c *call) wrong(text string) int {
	fmt.Fprintf(c.stderr, "error: %s\nhint: usage is bladecard %s\n", text, usageOf(c.voice(), c.command))
	return exitUsage
}

func dashed(name string) string {
	if len(name) == 1 {
		return "-" + name
	}
	return "--" + name
}
