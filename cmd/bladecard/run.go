package main

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"runtime"
	"strings"

	"bladecard/calc/job"
)

// Exit codes.
const (
	exitDone  = 0
	exitJob   = 1 // a job has errors; all of them were printed
	exitUsage = 2
	exitFile  = 3 // could not read or write
)

// command is one word of the command line.
type command struct {
	name string
	args string // what follows the name
	does string // one line
	more string // what --help adds
	run  func(*call) int
}

// commands in the order of the help.
func commands() []command {
	return []command{
		newCommand, checkCommand, showCommand, cardsCommand, sheetCommand, handoutCommand, buildCommand,
		logCommand, fitCommand, correctCommand, sweepCommand, schemaCommand, completionCommand, versionCommand,
	}
}

// call is one run of a command.
type call struct {
	command
	args   []string // what is not a flag
	lang   string   // --lang; empty: the shop's language
	floors map[string]*floor
	cores  int // that one job may be planned on
	stdout io.Writer
	stderr io.Writer

	all      []command           // of the program
	describe func(*flag.FlagSet) // not nil: the command only tells of its flags
}

func run(args []string, _ io.Reader, stdout, stderr io.Writer) int {
	if len(args) == 0 {
		usage(stderr)
		return exitUsage
	}
	switch args[0] {
	case "help", "-h", "-help", "--help":
		if len(args) > 1 {
			return help(args[1], stdout, stderr)
		}
		usage(stdout)
		return exitDone
	case "-version", "--version":
		args = append([]string{"version"}, args[1:]...)
	}
	for _, c := range commands() {
		if c.name == args[0] {
			return c.run(&call{command: c, args: args[1:], stdout: stdout, stderr: stderr, all: commands(), cores: runtime.GOMAXPROCS(0)})
		}
	}
	return noCommand(args[0], stderr)
}

// noCommand reports a word that is no command, with the one that may have been meant.
func noCommand(word string, stderr io.Writer) int {
	var names []string
	for _, c := range commands() {
		names = append(names, c.name)
	}
	hint := "commands are " + strings.Join(names, ", ")
	if near := job.Nearest(word, names); near != "" {
		hint = "did you mean " + near + "?"
	}
	fmt.Fprintf(stderr, "error: there is no command %q\nhint: %s\n", word, hint)
	return exitUsage
}

// The usage page: its width, and where it says what a command does.
const (
	usageWide = 100
	usageDoes = 45
)

// wrapped breaks a text between words into lines of at most so many letters.
func wrapped(text string, most int) []string {
	var lines []string
	line := ""
	for _, word := range strings.Fields(text) {
		if line != "" && len(line)+1+len(word) > most {
			lines = append(lines, line)
			line = ""
		}
		line = strings.TrimPrefix(line+" "+word, " ")
	}
	return append(lines, line)
}

func usage(w io.Writer) {
	fmt.Fprint(w, "bladecard computes squeegee setups for screen printing and prints them on cards.\n\nusage: bladecard COMMAND ...\n\n")
	for _, c := range commands() {
		lines := wrapped(c.does, usageWide-usageDoes)
		fmt.Fprintf(w, "  %-10s %-*s %s\n", c.name, usageDoes-14, c.args, lines[0])
		for _, l := range lines[1:] {
			fmt.Fprintf(w, "%*s%s\n", usageDoes, "", l)
		}
	}
	fmt.Fprint(w, "\n`bladecard COMMAND --help` says more of one.\nexit codes: 0 done, 1 a job has errors, 2 wrong usage, 3 could not read or write\n")
}

func help(name string, stdout, stderr io.Writer) int {
	for _, c := range commands() {
		if c.name == name {
			return c.run(&call{command: c, args: []string{"--help"}, stdout: stdout, stderr: stderr})
		}
	}
	return noCommand(name, stderr)
}

// parse reads flags and other arguments in any order. It returns false with the exit code when
// the command is over: help was asked for, or the usage is wrong.
func (c *call) parse(declare func(*flag.FlagSet)) (code int, ok bool) {
	fs := flag.NewFlagSet(c.name, flag.ContinueOnError)
	fs.SetOutput(io.Discard)
	declare(fs)
	if c.describe != nil {
		c.describe(fs)
		return exitDone, false
	}
	rest := c.args
	c.args = nil
	for {
		err := fs.Parse(rest)
		if errors.Is(err, flag.ErrHelp) {
			c.help(fs)
			return exitDone, false
		}
		if err != nil {
			return c.wrongFlag(err, fs), false
		}
		if fs.NArg() == 0 {
			return exitDone, true
		}
		if n := len(rest) - fs.NArg(); n > 0 && rest[n-1] == "--" {
			c.args = append(c.args, fs.Args()...)
			return exitDone, true
		}
		c.args = append(c.args, fs.Arg(0))
		rest = fs.Args()[1:]
	}
}

func (c *call) help(fs *flag.FlagSet) {
	fmt.Fprintf(c.stdout, "usage: bladecard %s %s\n\n%s.\n", c.name, c.command.args, c.does)
	if c.more != "" {
		fmt.Fprintf(c.stdout, "\n%s\n", strings.TrimSpace(c.more))
	}
	any := false
	fs.VisitAll(func(f *flag.Flag) {
		if !any {
			fmt.Fprint(c.stdout, "\nflags:\n")
			any = true
		}
		dash := "--"
		if len(f.Name) == 1 {
			dash = "-"
		}
		kind, text := flag.UnquoteUsage(f)
		if kind != "" {
			kind = " " + kind
		}
		fmt.Fprintf(c.stdout, "  %-16s %s\n", dash+f.Name+kind, text)
	})
}

// wrongFlag reports what the flags' reader says, with the flag that may have been meant.
func (c *call) wrongFlag(err error, fs *flag.FlagSet) int {
	word, unknown := strings.CutPrefix(err.Error(), "flag provided but not defined: ")
	if !unknown {
		return c.wrong(err.Error())
	}
	var names []string
	fs.VisitAll(func(f *flag.Flag) { names = append(names, f.Name) })
	word = strings.TrimLeft(word, "-")
	if near := job.Nearest(word, names); near != "" {
		fmt.Fprintf(c.stderr, "error: %s has no flag %s\nhint: did you mean %s?\n", c.name, dashed(word), dashed(near))
		return exitUsage
	}
	return c.wrong(fmt.Sprintf("there is no flag %s", dashed(word)))
}

// wrong reports wrong usage.
func (c *call) wrong(text string) int {
	fmt.Fprintf(c.stderr, "error: %s\nhint: usage is bladecard %s %s\n", text, c.name, c.command.args)
	return exitUsage
}

// fail reports a file that could not be read or written.
func (c *call) fail(err error) int {
	fmt.Fprintf(c.stderr, "error: %v\n", err)
	return exitFile
}
