package main

import (
	"flag"
	"fmt"
	"io"
	"sort"
	"strings"

	"bladecard/calc/choose"
	"bladecard/render/handout"
	"bladecard/render/page"
	"bladecard/templates"
)

var completionCommand = command{
	name: "completion", args: "bash|zsh|fish|powershell",
	does: "print what makes the Tab key of a shell know the commands",
	more: `
bash:        bladecard completion bash > ~/.local/share/bash-completion/completions/bladecard
zsh:         bladecard completion zsh > DIR/_bladecard, DIR being one of $fpath
fish:        bladecard completion fish > ~/.config/fish/completions/bladecard.fish
powershell:  bladecard completion powershell >> $PROFILE`,
	run: completion,
}

// shells are what completions are written for, in the order of the help.
var shells = []struct {
	name  string
	write func(io.Writer, []completed)
}{{"bash", bashCompletion}, {"zsh", zshCompletion}, {"fish", fishCompletion}, {"powershell", powershellCompletion}}

func completion(c *call) int {
	if code, ok := c.parse(func(*flag.FlagSet) {}); !ok {
		return code
	}
	if len(c.args) != 1 {
		return c.wrong("one shell is to be named: " + shellNames())
	}
	for _, s := range shells {
		if s.name == c.args[0] {
			s.write(c.stdout, allCompleted(c.all))
			return exitDone
		}
	}
	return c.wrong(fmt.Sprintf("%q is not a shell that is known; accepted: %s", c.args[0], shellNames()))
}

func shellNames() string {
	var out []string
	for _, s := range shells {
		out = append(out, s.name)
	}
	return strings.Join(out, ", ")
}

// completed is a command as a completion sees it.
type completed struct {
	name, does string
	flags      []completedFlag
	args       values
}

// completedFlag is a flag with its dashes.
type completedFlag struct {
	name, does string
	takes      bool
	values     values
}

// values are what may stand in a place: words, or names of folders or of files with an ending.
type values struct {
	words   []string
	folders bool
	files   []string // endings without the point; "*": any
}

// allCompleted reads commands and flags off the commands themselves.
func allCompleted(all []command) []completed {
	var out []completed
	for _, c := range all {
		k := completed{name: c.name, does: c.does, args: argValues(c.args)}
		c.run(&call{command: c, stdout: io.Discard, stderr: io.Discard, describe: func(fs *flag.FlagSet) {
			fs.VisitAll(func(f *flag.Flag) {
				kind, does := flag.UnquoteUsage(f)
				k.flags = append(k.flags, completedFlag{name: dashed(f.Name), does: does, takes: kind != "", values: flagValues(f.Name, kind)})
			})
		}})
		k.flags = append(k.flags, completedFlag{name: "--help", does: "say more of the command"})
		out = append(out, k)
	}
	return out
}

// argValues reads what a command takes off the words of its usage; what flags take is left out.
func argValues(usage string) values {
	var v values
	ofFlag := false
	for _, word := range strings.Fields(usage) {
		if ofFlag || strings.HasPrefix(strings.Trim(word, "["), "-") {
			ofFlag = !ofFlag && !strings.HasSuffix(word, "]")
			continue
		}
		switch word = strings.Trim(word, "[]."); {
		case strings.Contains(word, "|"):
			v.words = strings.Split(word, "|")
			continue
		case word == "DIR":
		case strings.HasSuffix(word, ".csv"):
			v.files = append(v.files, "csv")
		default:
			v.files = append(v.files, "toml")
		}
		v.folders = true
	}
	return v
}

// flagValues is what may follow a flag, by its name or by the word for its value.
func flagValues(name, kind string) values {
	switch name {
	case "lang":
		return values{words: templates.Languages()}
	case "paper":
		return values{words: []string{page.A4.Name, page.Letter.Name}}
	case "flip":
		return values{words: []string{"long", "short"}}
	case "size":
		return values{words: strings.Split(sizeNames(), ", ")}
	case "level":
		return values{words: strings.Split(handout.Levels(), ", ")}
	case "vary":
		var v values
		for _, w := range choose.Variables {
			v.words = append(v.words, w.What+"=")
		}
		return v
	}
	switch kind {
	case "DIR":
		return values{folders: true}
	case "FILE":
		return values{files: []string{"*"}, folders: true}
	}
	return values{}
}

func dashed(name string) string {
	if len(name) == 1 {
		return "-" + name
	}
	return "--" + name
}

// names are the flags of a command with a space between, sorted.
func (k completed) names() string {
	var out []string
	for _, f := range k.flags {
		out = append(out, f.name)
	}
	sort.Strings(out)
	return strings.Join(out, " ")
}
