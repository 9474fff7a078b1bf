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
	"bladecard/templates"
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

// jobFlags declares the flags that every command takes which reads jobs.
func (c *call) jobFlags(f *flags) {
	c.langFlag(f)
	f.text(&c.shop, "shop", "FILE")
}

// langFlag declares --lang.
func (c *call) langFlag(f *flags) {
	f.word(&c.lang, "lang", "CODE", "a language", templates.Languages()...)
}

// quietFlag declares --quiet.
func (c *call) quietFlag(f *flags) {
	f.yes(&c.quiet, "quiet")
}

// writeFlags declares --force and --quiet, which every command takes that may write over a file.
func (c *call) writeFlags(f *flags) {
	f.yes(&c.force, "force")
	c.quietFlag(f)
}
