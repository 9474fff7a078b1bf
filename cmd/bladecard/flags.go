package main

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"

	"bladecard/calc/job"
	"bladecard/calc/unit"
	"bladecard/cmd/bladecard/internal/disk"
)

// flags declares the flags of a command. Package flag reads them; what is wrong with a value is said
// in the words of this package, never in those of the library.
type flags struct {
	set   *flag.FlagSet
	kinds map[string]string   // the word that stands for a flag's value; none: the flag stands alone
	words map[string][]string // what a flag accepts, where that is a closed list
	wrong error               // what is wrong with the value that was read last
}

func newFlags(name string) *flags {
	f := &flags{set: flag.NewFlagSet(name, flag.ContinueOnError), kinds: map[string]string{}, words: map[string][]string{}}
	f.set.SetOutput(io.Discard)
	return f
}

// value declares a flag whose value, for which a word in capitals stands, is read by a function.
func (f *flags) value(name, kind string, read func(string) error) {
	f.kinds[name] = kind
	f.set.Func(name, "", func(text string) error {
		if err := read(text); err != nil {
			f.wrong = fmt.Errorf("%s %q: %w", dashed(name), text, err)
		}
		return f.wrong
	})
}

// yes declares a flag that stands alone.
func (f *flags) yes(to *bool, name string) {
	f.set.BoolFunc(name, "", func(text string) error {
		var err error
		if *to, err = strconv.ParseBool(text); err != nil {
			f.wrong = fmt.Errorf("%s=%s: the flag stands alone; nothing, =true or =false is accepted behind it", dashed(name), text)
		}
		return f.wrong
	})
}

// text declares a flag that takes any text that is not empty.
func (f *flags) text(to *string, name, kind string) {
	f.value(name, kind, func(text string) error {
		if text == "" {
			return errors.New("nothing is named")
		}
		*to = text
		return nil
	})
}

// word declares a flag that takes one of some words, in capitals or not.
func (f *flags) word(to *string, name, kind, what string, accepted ...string) {
	f.words[name] = accepted
	f.value(name, kind, func(text string) error {
		for _, w := range accepted {
			if strings.EqualFold(w, text) {
				*to = w
				return nil
			}
		}
		return fmt.Errorf("not %s; %saccepted: %s", what, didYouMean(text, accepted), strings.Join(accepted, ", "))
	})
	f.set.Lookup(name).DefValue = *to
}

// didYouMean asks whether the nearest of the known words was meant; it is empty where none is near.
func didYouMean(word string, known []string) string {
	if near := job.Nearest(word, known); near != "" {
		return "did you mean " + near + "? "
	}
	return ""
}

// count declares a flag that takes a whole number from 1.
func (f *flags) count(to *int, name string) {
	f.value(name, "N", func(text string) error {
		n, err := strconv.Atoi(text)
		if err != nil || n < 1 {
			return errors.New("not a whole number from 1; accepted: 1, 2, 3 and so on")
		}
		*to = n
		return nil
	})
	f.set.Lookup(name).DefValue = strconv.Itoa(*to)
}

// length declares a flag that takes a length of at most so many mm either way. A number alone is mm.
func (f *flags) length(to *float64, name string, mostMM float64) {
	f.value(name, "LENGTH", func(text string) error {
		mm, err := unit.Parse(text, "mm")
		if err != nil {
			mm, err = unit.Parse(text+" mm", "mm")
		}
		if err != nil || !(mm >= -mostMM && mm <= mostMM) {
			return fmt.Errorf("not a length from %g to %g mm; accepted: such as 0.5, \"0.5 mm\" or \"0.02 in\"", -mostMM, mostMM)
		}
		*to = mm
		return nil
	})
}

// folder declares -o of a command that writes several files for each job: the folder for them.
func (f *flags) folder(to *string) {
	f.value("o", "DIR", func(text string) error {
		switch {
		case text == disk.Stdout:
			return errors.New("standard output takes one file, and each job makes two; accepted: a folder")
		case text == "" || namesFile(text):
			return errors.New("not a folder; accepted: a folder, in which each job gets its own PDFs")
		}
		*to = text
		return nil
	})
}

// namesFile tells whether a name is that of a file by its ending, and not of a folder that is there.
func namesFile(path string) bool {
	info, err := os.Stat(path)
	ending := strings.ToLower(filepath.Ext(path))
	return (err != nil || !info.IsDir()) && slices.Contains([]string{".pdf", ".csv", ".svg", ".png", ".json", ".toml"}, ending)
}

// screenFlags declares --location and --screen, which name one screen of a job.
func screenFlags(f *flags, location, screen *int) {
	*location, *screen = 1, 1
	f.count(location, "location")
	f.count(screen, "screen")
}

// file declares -o of a command that writes one file.
func (f *flags) file(to *string) {
	*to = disk.Stdout
	f.text(to, "o", "FILE")
}

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
