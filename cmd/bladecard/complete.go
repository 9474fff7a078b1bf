package main

import (
	"flag"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"bladecard/render/say"
)

// completeCommand answers the Tab key: `bladecard __complete AT WORDS...`, where AT counts the words
// after bladecard up to the one that is typed, which may be missing when it is empty. The answer is
// a line a word, a tab and what it means, or one line that leaves names to the shell: `:files` with
// patterns, or `:folders`.
var completeCommand = command{
	name: "__complete", args: "AT WORD...", hidden: true,
	run: complete,
}

// offers are what may stand in a place: words with what they mean, or names.
type offers struct {
	words []string
	does  map[string]string
	names string // the line that leaves names to the shell
}

const anyFolder = ":folders"

func complete(c *call) int {
	if len(c.args) == 0 {
		return c.wrong("the number of the word is missing")
	}
	at, err := strconv.Atoi(c.args[0])
	if err != nil || at < 1 || at > 10_000 {
		return c.wrong(fmt.Sprintf("%q is not the number of a word; accepted: 1, 2, 3 and so on", c.args[0]))
	}
	words := c.args[1:min(len(c.args), at+1)]
	for len(words) < at {
		words = append(words, "")
	}
	typed := words[at-1]
	o, typed, before := c.offersFor(words[:at-1], typed)
	for _, w := range o.words {
		if strings.HasPrefix(w, typed) {
			fmt.Fprintln(c.stdout, strings.TrimSuffix(before+w+"\t"+o.does[w], "\t"))
		}
	}
	if o.names != "" && before == "" {
		fmt.Fprintln(c.stdout, o.names)
	}
	return exitDone
}

// offersFor are the offers for a typed word after others. Of a word --flag=value they are for the
// value, and before is what comes before that.
func (c *call) offersFor(words []string, typed string) (o offers, rest, before string) {
	if len(words) == 0 {
		return c.commandOffers(), typed, ""
	}
	if words[0] == "help" {
		if len(words) == 1 {
			o = c.commandOffers()
		}
		return o, typed, ""
	}
	i := slices.IndexFunc(c.all, func(k command) bool { return k.name == words[0] })
	if i < 0 {
		return o, typed, ""
	}
	of := c.all[i]
	flags := c.flagsOf(of)
	if flag, value, is := strings.Cut(typed, "="); is && strings.HasPrefix(flag, "-") {
		return flags.offers(flag), value, flag + "="
	}
	last := words[len(words)-1]
	switch { // bash takes an equals sign for a word
	case typed == "=":
		return flags.offers(last), "", ""
	case last == "=":
		return flags.offers(words[max(0, len(words)-2)]), typed, ""
	}
	switch {
	case flags.takesValue(last):
		return flags.offers(last), typed, ""
	case strings.HasPrefix(typed, "-"):
		return flags.all(c.voice()), typed, ""
	}
	return argOffers(of.args), typed, ""
}

func (c *call) commandOffers() offers {
	v := c.voice()
	o := offers{words: commandNames(c.all), does: map[string]string{"help": v.T("help.of-command")}}
	for _, k := range c.all {
		if !k.hidden {
			o.does[k.name] = doesOf(v, k)
		}
	}
	return o
}

// flagsOf are the flags that another command declares, with words in the language of the call.
func (c *call) flagsOf(of command) *flags {
	var out *flags
	of.run(&call{command: of, spoken: c.voice(), describe: func(f *flags) { out = f }})
	return out
}

// lookup finds a flag with its dashes, one or two.
func (f *flags) lookup(word string) *flag.Flag {
	if !strings.HasPrefix(word, "-") {
		return nil
	}
	return f.set.Lookup(strings.TrimLeft(word, "-"))
}

// takesValue tells whether the next word belongs to a flag.
func (f *flags) takesValue(word string) bool {
	known := f.lookup(word)
	return known != nil && f.kinds[known.Name] != ""
}

// all are the flags themselves.
func (f *flags) all(v *say.Voice) offers {
	o := offers{words: []string{"--help"}, does: map[string]string{"--help": v.T("help.of-this")}}
	f.set.VisitAll(func(known *flag.Flag) {
		o.words = append(o.words, dashed(known.Name))
		o.does[dashed(known.Name)] = f.does(v, known.Name)
	})
	return o
}

// offers are what may follow a flag, by its words or by the word for its value.
func (f *flags) offers(word string) offers {
	known := f.lookup(word)
	if known == nil {
		return offers{}
	}
	if words := f.words[known.Name]; words != nil {
		return offers{words: words}
	}
	return offers{names: map[string]string{"DIR": anyFolder, "FILE": ":files *"}[f.kinds[known.Name]]}
}

// argOffers reads what a command takes off the words of its usage; what flags take is left out.
func argOffers(usage string) offers {
	var o offers
	var patterns []string
	ofFlag := false
	for _, word := range strings.Fields(usage) {
		if ofFlag || strings.HasPrefix(strings.Trim(word, "["), "-") {
			ofFlag = !ofFlag && !strings.HasSuffix(word, "]")
			continue
		}
		switch word = strings.Trim(word, "[]."); {
		case strings.Contains(word, "|"):
			o.words = strings.Split(word, "|")
		case word == "DIR":
			o.names = anyFolder
		case strings.HasSuffix(word, ".csv"):
			patterns = append(patterns, "*.csv")
		default:
			patterns = append(patterns, "*.toml")
		}
	}
	if patterns != nil {
		o.names = ":files " + strings.Join(patterns, " ")
	}
	return o
}
