package main

import (
	"errors"
	"fmt"
	"io"
	"runtime"
	"strings"

	"bladecard/calc/job"
	"bladecard/cmd/bladecard/internal/disk"
	"bladecard/cmd/bladecard/internal/exit"
	"bladecard/render/say"
)

// Exit codes.
const (
	exitDone  = exit.Done
	exitJob   = exit.Job
	exitUsage = exit.Usage
	exitFile  = exit.File
)

// command is one word of the command line. What it does stands under [command] of each language.
type command struct {
	name   string
	args   string // what follows the name; a word in capitals stands for a value
	hidden bool   // not for people
	run    func(*call) int
}

// commands in the order of the help.
func commands() []command {
	return []command{
		newCommand, checkCommand, showCommand, cardsCommand, sheetCommand, handoutCommand, buildCommand,
		logCommand, fitCommand, trialCommand, dayCommand, correctCommand, sweepCommand, schemaCommand, completionCommand, versionCommand,
		completeCommand,
	}
}

// commandNames are the words that people may begin with, help last.
func commandNames(all []command) []string {
	var names []string
	for _, c := range all {
		if !c.hidden {
			names = append(names, c.name)
		}
	}
	return append(names, "help")
}

// call is one run of a command.
type call struct {
	command
	args   []string // what is not a flag
	lang   string   // --lang; empty: the shop's language
	shop   string   // --shop; empty: the job's, the nearest, or the built-in one
	quiet  bool     // --quiet: no notes and no lists of what was written
	force  bool     // --force
	floors map[string]*floor
	told   map[string]bool // shops that were named, and faults of shops that were told
	cores  int             // that one job may be planned on

	logs      *logs
	startsLog bool // the press log of the shop is written, and not read

	stdin          io.Reader // nil once it was read
	stdout, stderr io.Writer // for words: what they quote is escaped
	data           io.Writer // standard output for files: nothing is escaped

	spoken   *say.Voice // errors and hints; nil: in English, or not searched for yet
	searched bool       // for a language while no shop was read
	words    []string   // of the command line

	all      []command    // of the program
	describe func(*flags) // not nil: the command only tells of its flags
}

// run is the program: it reads a command line and returns the exit code.
func run(args []string, stdin io.Reader, stdout, stderr io.Writer) int {
	sink := &sink{Writer: stdout}
	out, errs := &plainText{w: sink}, &plainText{w: stderr}
	c := &call{words: args, stdin: stdin, stdout: out, data: sink, all: commands(), told: map[string]bool{}, logs: &logs{}, cores: runtime.GOMAXPROCS(0)}
	c.stderr = &teller{errs, c}
	code := c.start(args)
	out.close()
	if sink.err != nil {
		code = c.fail(fmt.Errorf("%w; what was printed is not whole", disk.Named("standard output", sink.err)))
	}
	errs.close()
	return code
}

// start runs the command that the first word names.
func (c *call) start(args []string) int {
	if len(args) == 0 {
		usage(c.stderr, c.voice())
		return exitUsage
	}
	word, rest := args[0], args[1:]
	switch word {
	case "help", "-h", "-help", "--help":
		if rest = withoutLang(rest); len(rest) == 0 || rest[0] == "help" {
			usage(c.stdout, c.voice())
			return exitDone
		}
		word, rest = rest[0], []string{"--help"}
	case "-version", "--version":
		word = "version"
	}
	for _, known := range c.all {
		if known.name == word {
			c.command, c.args = known, rest
			return known.run(c)
		}
	}
	hint := "commands are " + strings.Join(commandNames(c.all), ", ")
	if near := job.Nearest(word, commandNames(c.all)); near != "" {
		hint = "did you mean " + near + "?"
	} else if strings.HasPrefix(word, "-") {
		hint = "the command comes first, its flags behind it; bladecard help lists the commands"
	}
	fmt.Fprintf(c.stderr, "error: there is no command %q\nhint: %s\n", word, hint)
	return exitUsage
}

// fail reports a file that could not be read or written.
func (c *call) fail(err error) int {
	var refused *disk.Refusal
	if errors.As(err, &refused) {
		err = fmt.Errorf("%w; it is left as it is", err)
	}
	disk.Say(c.stderr, err)
	return exitFile
}
