package say

import (
	"cmp"
	"regexp"
	"slices"
	"strings"
	"sync"

	"bladecard/calc/job"
	"bladecard/templates"
)

// Errors and hints are written in English where they arise, each part as a whole sentence. The texts under [tell] are
// those sentences with {names} for what varies in them: a language that says them otherwise is found by the English
// one. What has no text there stays English. Those of [quantity] are what formulas name.

// sentence is an English text of [tell], ready to be found. A {figure} is a number, and {rest} may hold a colon
// or a semicolon, which else part two sentences.
type sentence struct {
	key   string
	match *regexp.Regexp
	names []string
	plain int // letters that do not vary
	first int // 1: what a line begins with
}

var name = regexp.MustCompile(`\{[a-z]+\}`)

// sentences are those of English, the ones with the most letters of their own first.
var sentences = sync.OnceValue(func() []sentence {
	w, err := templates.Language("en")
	if err != nil {
		panic("say: " + err.Error())
	}
	var out []sentence
	for key, text := range w {
		if !strings.HasPrefix(key, "tell.") && !strings.HasPrefix(key, "quantity.") {
			continue
		}
		s := sentence{key: key}
		switch key {
		case "tell.error", "tell.hint", "tell.note":
			s.first = 1
		}
		pattern, at := "", 0
		for _, m := range name.FindAllStringIndex(text, -1) {
			name := text[m[0]+1 : m[1]-1]
			value := `((?:[^;:]|[;:][^ ])+?)`
			switch {
			case name == "figure":
				value = `([-+]?[0-9][0-9.e+-]*|NaN|[-+]Inf)`
			case name == "rest", name == "why", name == "what" && strings.Contains(text, "; "):
				value = "(.+?)"
			}
			pattern += regexp.QuoteMeta(text[at:m[0]]) + value
			s.names = append(s.names, name)
			s.plain += m[0] - at
			at = m[1]
		}
		s.plain += len(text) - at
		s.match = regexp.MustCompile("^" + pattern + regexp.QuoteMeta(text[at:]) + "$")
		out = append(out, s)
	}
	slices.SortFunc(out, func(a, b sentence) int {
		return cmp.Or(b.first-a.first, b.plain-a.plain, strings.Compare(a.key, b.key))
	})
	return out
})

// Word says an error or a hint of the program in the language of the voice, as much of it as the language has.
func (v *Voice) Word(english string) string {
	told, _ := v.tell(english)
	return told
}

// WordError says an error of a file: its place, where that is, the key, what is wrong and what is accepted.
func (v *Voice) WordError(e job.Error) string {
	if v.Code == "en" {
		return e.Error()
	}
	e.File, e.Where, e.Wrong, e.Accepted = v.file(e.File), v.Word(e.Where), v.Word(e.Wrong), v.Word(e.Accepted)
	return e.Error()
}

func (v *Voice) tell(english string) (told string, known bool) {
	if v.Code == "en" || english == "" {
		return english, true
	}
	for _, s := range sentences() {
		values := s.match.FindStringSubmatch(english)
		if values == nil {
			continue
		}
		var pairs []string
		for i, name := range s.names {
			pairs = append(pairs, name, v.part(name, values[i+1]))
		}
		return v.T(s.key, pairs...), true
	}
	if before, after, is := strings.Cut(english, "; "); is {
		a, first := v.tell(before)
		b, second := v.tell(after)
		return a + "; " + b, first || second
	}
	if before, after, is := strings.Cut(english, ": "); is { // a file or a key before its fault
		if told, known := v.tell(after); known {
			return v.file(before) + ": " + told, true
		}
	}
	return english, false
}

// file is what stands for a file before its fault: its name, or a stream.
func (v *Voice) file(name string) string {
	switch name {
	case "standard input":
		return v.T("tell.standard-input")
	case "standard output":
		return v.T("tell.standard-output")
	}
	return name
}

// part is what stands for a name in a sentence: the parts called what and rest are sentences of their own, a list
// has the word before its last entry, and all else stands as it is.
func (v *Voice) part(name, english string) string {
	switch name {
	case "what", "rest":
		return v.Word(english)
	case "list":
		if i := strings.LastIndex(english, " or "); i >= 0 {
			return english[:i] + " " + v.T("list.or") + " " + english[i+len(" or "):]
		}
	}
	return english
}
