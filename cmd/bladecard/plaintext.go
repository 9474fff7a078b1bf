package main

import (
	"fmt"
	"io"
	"os"
	"strings"
	"unicode"
	"unicode/utf16"
	"unicode/utf8"

	"golang.org/x/term"
)

// sink is standard output. It remembers the first error, so that no command has to look for one.
type sink struct {
	io.Writer
	err error
}

func (s *sink) Write(data []byte) (int, error) {
	if s.err == nil {
		_, s.err = s.Writer.Write(data)
	}
	return len(data), nil
}

// plainText is a terminal's writer for words. File names, flags and the texts of jobs come from
// other people; whatever could move the cursor, turn the direction of reading or hide is written as
// an escape, \u001b, and a byte that is not UTF-8 as \xff. Inside a JSON text the escapes mean what
// they stand for.
type plainText struct {
	w    io.Writer
	rest []byte // the start of a rune whose end has not come yet
}

func (p *plainText) Write(data []byte) (int, error) {
	out := make([]byte, 0, len(data)+16)
	p.rest = append(p.rest, data...)
	for len(p.rest) > 0 && utf8.FullRune(p.rest) {
		r, size := utf8.DecodeRune(p.rest)
		if r == utf8.RuneError && size == 1 {
			out = fmt.Appendf(out, `\x%02x`, p.rest[0])
		} else {
			out = appendPlain(out, r)
		}
		p.rest = p.rest[size:]
	}
	_, err := p.w.Write(out)
	return len(data), err
}

// close writes what is left of a rune that never ended.
func (p *plainText) close() {
	for _, b := range p.rest {
		fmt.Fprintf(p.w, `\x%02x`, b)
	}
	p.rest = nil
}

// appendPlain appends a rune as it is, or its escape.
func appendPlain(out []byte, r rune) []byte {
	if r == '\n' || r == '\t' || !acts(r) {
		return utf8.AppendRune(out, r)
	}
	for _, half := range utf16.Encode([]rune{r}) {
		out = fmt.Appendf(out, `\u%04x`, half)
	}
	return out
}

// acts tells whether a rune does something other than being seen: control characters, format
// characters such as those of bidirectional text, and the separators of lines and paragraphs.
func acts(r rune) bool { return unicode.In(r, unicode.Cc, unicode.Cf, unicode.Zl, unicode.Zp) }

// shown is a name as a message shows it: with its line breaks escaped too, so that a name cannot
// pass for a line of its own.
func shown(name string) string {
	return strings.NewReplacer("\n", `\n`, "\t", `\t`).Replace(name)
}

// terminal is the terminal that a writer of words writes to, if it does.
func terminal(w io.Writer) (*os.File, bool) {
	if t, is := w.(*teller); is {
		w = t.w
	}
	if p, is := w.(*plainText); is {
		w = p.w
	}
	if s, is := w.(*sink); is {
		w = s.Writer
	}
	f, is := w.(*os.File)
	return f, is && term.IsTerminal(int(f.Fd()))
}

// columns is how wide a line may be: as wide as the terminal, or eighty letters where the words go
// to a file or another program.
func columns(w io.Writer) int {
	if f, is := terminal(w); is {
		if wide, _, err := term.GetSize(int(f.Fd())); err == nil && wide >= 40 {
			return wide
		}
	}
	return 80
}
