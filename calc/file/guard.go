package file

import (
	"bytes"
	"fmt"

	"bladecard/calc/job"
)

// guard refuses, in one pass and before any parser sees the file, what parsers take
// quadratic time, memory or a deep stack for: dotted keys of many parts, very long keys, and
// deep nesting. It follows the lexical rules of TOML up to the first syntax error, where a
// parser stops too.
func guard(src *source) job.Errors {
	g := guarding{src: src, inKey: true}
	for g.at < len(src.text) && !g.done {
		g.step()
	}
	return g.errs
}

type guarding struct {
	src   *source
	at    int
	open  []byte // the brackets that are open, of values
	inKey bool   // in a key or a table header, not in a value
	parts int    // points in this key
	size  int    // bytes of this key
	done  bool   // the parser will stop here, or an error was found
	errs  job.Errors
}

func (g *guarding) step() {
	text, start := g.src.text, g.at
	c := text[start]
	g.at++
	switch {
	case c == '#':
		for g.at < len(text) && text[g.at] != '\n' {
			g.at++
		}
		return
	case c == '\n':
		if len(g.open) == 0 {
			g.key()
		}
		return
	case c == ' ' || c == '\t' || c == '\r':
		return
	case c == '"' || c == '\'':
		if g.inKey && bytes.HasPrefix(text[start:], []byte{c, c, c}) {
			g.fail(start, "a key is a text of several lines", "keys on one line are accepted")
			return
		}
		g.text(start, c)
	case g.inKey && c == '=':
		g.inKey = false
	case g.inKey && c == '}':
		g.close('{')
	case g.inKey && c == '.':
		g.parts++
	case g.inKey:
	case c == '[':
		g.nest(c)
	case c == '{':
		g.nest(c)
		g.key()
	case c == ']':
		g.close('[')
	case c == '}':
		g.close('{')
	case c == ',' && len(g.open) > 0 && g.open[len(g.open)-1] == '{':
		g.key()
	}
	if g.inKey {
		g.size += g.at - start
		if g.parts >= maxParts {
			g.fail(start, fmt.Sprintf("a key has more than %d parts", maxParts), fmt.Sprintf("at most %d parts are accepted", maxParts))
		} else if g.size > maxKey {
			g.fail(start, fmt.Sprintf("a key has more than %d bytes", maxKey), fmt.Sprintf("at most %d bytes are accepted", maxKey))
		}
	}
}

// key starts a new key.
func (g *guarding) key() { g.inKey, g.parts, g.size = true, 0, 0 }

func (g *guarding) nest(c byte) {
	g.open = append(g.open, c)
	if len(g.open) > maxNest {
		g.fail(g.at-1, fmt.Sprintf("lists and tables stand more than %d deep inside one another", maxNest), fmt.Sprintf("a depth of %d is accepted", maxNest))
	}
}

func (g *guarding) close(c byte) {
	if len(g.open) == 0 || g.open[len(g.open)-1] != c {
		g.done = true
		return
	}
	g.open = g.open[:len(g.open)-1]
	g.inKey = false
}

// text skips a text in quotes that opens at start; g.at is behind the first quote. One that is not closed
// is told where it opens: the parsers tell it where they lose patience.
func (g *guarding) text(start int, quote byte) {
	text := g.src.text
	long := bytes.HasPrefix(text[g.at:], []byte{quote, quote})
	if long {
		g.at += 2
	}
	for g.at < len(text) {
		c := text[g.at]
		g.at++
		switch {
		case c == '\\' && quote == '"':
			g.at++
		case c == '\n' && !long:
			g.fail(start, "this quote is not closed on its line", "a text with a quote at each end is accepted")
			return
		case c == quote && !long:
			return
		case c == quote && bytes.HasPrefix(text[g.at:], []byte{quote, quote}):
			g.at += 2
			for n := 0; n < 2 && g.at < len(text) && text[g.at] == quote; n++ {
				g.at++ // up to two quotes belong to the text
			}
			return
		}
	}
	g.fail(start, "this quote is never closed", "a text with a quote at each end is accepted")
}

func (g *guarding) fail(offset int, wrong, accepted string) {
	g.errs = g.src.fail(offset, wrong, accepted)
	g.done = true
}
