package main

import (
	"flag"
	"fmt"
	"io"
	"regexp"
	"strings"

	"bladecard/render/report"
	"bladecard/render/say"
)

// The pages of the help: their width in letters, and how far in they say what a command and a flag does. The words
// stand under [help], [command], [flag] and [argument] of a language.
const (
	usageWide = 80
	usageDoes = 14
	helpDoes  = 24
)

// voice speaks the help: that of the errors, in English where nothing names a language.
func (c *call) voice() *say.Voice {
	if v := c.language(); v != nil {
		return v
	}
	v, err := say.New("en", "")
	if err != nil {
		panic("bladecard: " + err.Error()) // embedded: cannot fail at run time
	}
	return v
}

// doesOf is what a command does, in a line.
func doesOf(v *say.Voice, of command) string { return v.T("command." + of.name + ".does") }

// usageOf is how a command is written, without its first word.
func usageOf(v *say.Voice, of command) string {
	return strings.TrimSpace(of.name + " " + arguments(v, of.args))
}

var standsFor = regexp.MustCompile(`\b[A-Z]+\b`)

// arguments are the arguments of a command, or the value of a flag, as a language calls them: DIR, in Spanish CARPETA.
func arguments(v *say.Voice, args string) string {
	return standsFor.ReplaceAllStringFunc(args, func(word string) string {
		if key := "argument." + word; v.Has(key) {
			return v.T(key)
		}
		return word
	})
}

// does is what a flag does: as its command says it, else as all that take it do.
func (f *flags) does(v *say.Voice, name string) string {
	key := "command." + f.set.Name() + ".flag." + name
	if !v.Has(key) {
		key = "flag." + name
	}
	words := f.words[name]
	return v.T(key, "default", f.set.Lookup(name).DefValue, "words", strings.Join(words, ", "), "list", strings.Join(words, " "+v.T("list.or")+" "))
}

// usage prints the page of all commands.
func usage(w io.Writer, v *say.Voice) {
	line := func(key string, pairs ...string) {
		for _, l := range report.Wrap(v.T("help."+key, pairs...), 0, 0, usageWide) {
			fmt.Fprintln(w, l)
		}
	}
	command := arguments(v, "bladecard COMMAND")
	line("about")
	fmt.Fprintln(w)
	line("usage", "usage", command+" ...")
	fmt.Fprintln(w)
	for _, c := range commands() {
		if !c.hidden {
			aside(w, c.name, usageDoes, doesOf(v, c))
		}
	}
	fmt.Fprintln(w)
	line("details", "usage", command+" --help")
	line("start", "new", "bladecard new", "check", "bladecard check job.toml")
	line("codes")
}

// help prints what a command does and takes.
func (c *call) help(f *flags) {
	v := c.voice()
	fmt.Fprintf(c.stdout, "%s\n\n%s\n", v.T("help.usage", "usage", "bladecard "+usageOf(v, c.command)), strings.Join(report.Wrap(doesOf(v, c.command)+".", 0, 0, usageWide), "\n"))
	for _, paragraph := range c.paragraphs(v) {
		if !toType(paragraph) {
			paragraph = strings.Join(report.Wrap(paragraph, 0, 0, usageWide), "\n")
		}
		fmt.Fprintf(c.stdout, "\n%s\n", paragraph)
	}
	head := "\n" + v.T("help.flags") + "\n"
	f.set.VisitAll(func(known *flag.Flag) {
		fmt.Fprint(c.stdout, head)
		aside(c.stdout, strings.TrimSpace(dashed(known.Name)+" "+arguments(v, f.kinds[known.Name])), helpDoes, f.does(v, known.Name))
		head = ""
	})
}

// paragraphs are what the help of a command adds to the line that says what it does.
func (of command) paragraphs(v *say.Voice) []string {
	key := "command." + of.name + ".more"
	if !v.Has(key) {
		return nil
	}
	return strings.Split(v.T(key, "faults", faultsHelp(v)), "\n\n")
}

// toType tells whether a paragraph has lines to be typed as they stand.
func toType(paragraph string) bool {
	return strings.HasPrefix(paragraph, "    ") || strings.Contains(paragraph, "\n    ")
}

// aside prints a word and beside it, so many letters in, what it means.
func aside(w io.Writer, word string, in int, means string) {
	for i, l := range report.Wrap(means, 0, 0, usageWide-in) {
		if i > 0 {
			word = ""
		}
		fmt.Fprintf(w, "  %-*s %s\n", in-3, word, l)
	}
}
