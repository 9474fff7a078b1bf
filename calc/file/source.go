package file

import (
	"errors"
	"fmt"
	"sort"
	"unicode/utf8"

	"github.com/BurntSushi/toml"

	"bladecard/calc/internal/charset"
	"bladecard/calc/internal/words"
	"bladecard/calc/job"
)

// Limits of a file, so that a slip or a hostile file costs no time.
const (
	MaxFileBytes = 1 << 20 // bytes
	maxText      = 200     // characters of a text value
	maxParts     = 8       // parts of a dotted key
	maxKey       = 200     // bytes of a dotted key
	maxNest      = 16      // inline tables and lists inside one another
)

// source is the text of a file with what is needed to turn an offset into line and column in
// constant time, however long its lines are.
type source struct {
	name  string
	text  []byte
	lines []int // offset of the start of each line
	runes []int // runes before each whole block
	twice []int // offsets of keys that a table has already
}

const block = 256

func newSource(name string, text []byte) *source {
	s := &source{name: name, text: text, lines: []int{0}}
	n := 0
	for i, c := range text {
		if i%block == 0 {
			s.runes = append(s.runes, n)
		}
		if utf8.RuneStart(c) {
			n++
		}
		if c == '\n' {
			s.lines = append(s.lines, i+1)
		}
	}
	if len(text)%block == 0 {
		s.runes = append(s.runes, n)
	}
	return s
}

// runesTo counts the runes that start before the offset.
func (s *source) runesTo(offset int) int {
	n := s.runes[offset/block]
	for _, c := range s.text[offset-offset%block : offset] {
		if utf8.RuneStart(c) {
			n++
		}
	}
	return n
}

// pos turns an offset into a place; columns count runes from 1.
func (s *source) pos(offset int) job.Pos {
	offset = min(max(offset, 0), len(s.text))
	line := sort.SearchInts(s.lines, offset+1) - 1
	return job.Pos{File: s.name, Line: line + 1, Col: s.runesTo(offset) - s.runesTo(s.lines[line]) + 1}
}

// fail is an error of the file as a whole, at an offset.
func (s *source) fail(offset int, wrong, accepted string) job.Errors {
	return job.Errors{{Pos: s.pos(offset), Wrong: wrong, Accepted: accepted}}
}

// open checks size, encoding and shape of a file and parses it.
func open(name string, text []byte) (*source, map[string]any, *place, job.Errors) {
	if len(text) > MaxFileBytes {
		return nil, nil, nil, job.Errors{{Pos: job.Pos{File: name, Line: 1, Col: 1}, Wrong: fmt.Sprintf("the file has %d bytes", len(text)),
			Accepted: fmt.Sprintf("at most %d bytes are accepted", MaxFileBytes)}}
	}
	text = charset.Text(text) // columns count after its mark
	src := newSource(name, text)
	if offset, wrong, accepted := charset.Fault(text); wrong != "" {
		return nil, nil, nil, src.fail(offset, wrong, accepted)
	}
	if errs := guard(src); errs != nil {
		return nil, nil, nil, errs
	}
	data, errs := parse(src)
	if errs != nil {
		return nil, nil, nil, errs
	}
	places, errs := findPlaces(src)
	if errs != nil {
		return nil, nil, nil, errs
	}
	return src, data, places, nil
}

// parse reads the values of a file.
func parse(src *source) (data map[string]any, errs job.Errors) {
	defer func() {
		if r := recover(); r != nil { // the parser panics on what it holds for its own bugs
			data, errs = nil, src.fail(0, "the file cannot be read as TOML", "TOML 1.0 is accepted")
		}
	}()
	_, err := toml.Decode(string(src.text), &data)
	var syntax toml.ParseError
	if errors.As(err, &syntax) { // of its position only Start is dependable: line and column are off at the start of a line
		return nil, src.fail(syntax.Position.Start, "this is not TOML: "+words.ParserSays(syntax.Message), "TOML 1.0 is accepted")
	}
	if err != nil {
		return nil, src.fail(0, "this is not TOML: "+words.ParserSays(err.Error()), "TOML 1.0 is accepted")
	}
	return data, nil
}
