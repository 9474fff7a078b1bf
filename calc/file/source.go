package file

import (
	"bytes"
	"errors"
	"fmt"
	"regexp"
	"sort"
	"strings"
	"unicode/utf8"

	"github.com/BurntSushi/toml"

	"bladecard/calc/internal/charset"
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

// source is the text of a file with the offsets at which its lines start.
type source struct {
	name  string
	text  []byte
	lines []int
}

func newSource(name string, text []byte) *source {
	s := &source{name: name, text: text, lines: []int{0}}
	for i, c := range text {
		if c == '\n' {
			s.lines = append(s.lines, i+1)
		}
	}
	return s
}

// longLine is how far into a line columns count characters. Beyond they count bytes, so that a megabyte on one line with
// an error in every key takes no time.
const longLine = 4 << 10

// pos turns an offset into a place; columns count characters from 1.
func (s *source) pos(offset int) job.Pos {
	line := sort.SearchInts(s.lines, offset+1) - 1
	col := offset - s.lines[line]
	if col < longLine {
		col = utf8.RuneCount(s.text[s.lines[line]:offset])
	}
	return job.Pos{File: s.name, Line: line + 1, Col: col + 1}
}

// fail makes the one error of a file that cannot be read, at an offset.
func (s *source) fail(offset int, wrong, accepted string) job.Errors {
	return job.Errors{{Pos: s.pos(offset), Wrong: wrong, Accepted: accepted}}
}

// open checks size, encoding and shape of a file and reads its values and places.
func open(name string, text []byte) (map[string]any, *place, job.Errors) {
	if len(text) > MaxFileBytes {
		return nil, nil, job.Errors{{Pos: job.Pos{File: name, Line: 1, Col: 1}, Wrong: fmt.Sprintf("the file has %d bytes", len(text)),
			Accepted: fmt.Sprintf("at most %d bytes are accepted", MaxFileBytes)}}
	}
	text = charset.Text(text) // columns count after its mark
	src := newSource(name, text)
	if offset, wrong, accepted := charset.Fault(text); wrong != "" {
		return nil, nil, src.fail(offset, wrong, accepted)
	}
	places, twice, errs := findPlaces(src)
	if errs != nil {
		return nil, nil, errs
	}
	data, offset, says := parse(text)
	if says != "" {
		return nil, nil, src.told(offset, says)
	}
	if twice != nil {
		return nil, nil, twice
	}
	return data, places, nil
}

// parse reads the values of a text, or hands on what its reader says is wrong and where.
func parse(text []byte) (data map[string]any, offset int, says string) {
	defer func() {
		if r := recover(); r != nil { // the decoder panics on what it holds for its own bugs
			data, offset, says = nil, 0, "the reader gave up"
		}
	}()
	_, err := toml.Decode(string(text), &data)
	var syntax toml.ParseError
	if errors.As(err, &syntax) { // of its position only Start is dependable: line and column are off at the start of a line. It is -1 of a CR that begins the file
		return nil, max(0, syntax.Position.Start), syntax.Message
	}
	if err != nil {
		return nil, 0, err.Error()
	}
	return data, 0, ""
}

// told makes the error of what a reader says of a place.
func (s *source) told(offset int, says string) job.Errors {
	wrong, accepted := plainly(says, s.text[min(offset, len(s.text)):])
	return s.fail(offset, wrong, accepted)
}

// quotes matches texts and comments as a whole, and else a quote that opens a text without end.
var quotes = regexp.MustCompile(`"""(?s:\\.|[^\\])*?"""|'''(?s:.*?)'''|"""|'''|"(?s:\\.|[^"\\\n])*"|'[^'\n]*'|#[^\n]*|["']`)

// syntax words an error of syntax that the walk met at an offset, behind a last good line at from. A quote that is not
// closed is reported where it opens, which may be far before. For all else the decoder reads the same lines, since its
// words are plainer; the walk's own words stay where the decoder finds nothing or the lines are too long for it.
func (s *source) syntax(from, offset int, says string) job.Errors {
	from = lineStart(s.text, from)
	stretch := s.text[from:lineEnd(s.text, offset)]
	for _, at := range quotes.FindAllIndex(s.text[from:], -1) {
		if at[0] >= len(stretch) {
			break
		}
		switch string(s.text[from+at[0] : from+at[1]]) {
		case `"`, `'`, `"""`, `'''`:
			wrong := "this quote is never closed"
			if at[1]-at[0] == 1 && bytes.IndexByte(s.text[from+at[1]:], '\n') >= 0 {
				wrong = "this quote is not closed on its line"
			}
			return s.fail(from+at[0], wrong, acceptedQuotes)
		}
	}
	const short = 4 << 10                                                   // bytes
	if len(stretch) <= short && !strings.HasSuffix(says, "is incomplete") { // the decoder holds a bracket that is never closed for a missing value
		if _, at, plainer := parse(stretch); plainer != "" {
			return s.told(from+at, plainer)
		}
	}
	return s.told(offset, says)
}

// lineStart returns the offset at which the line of an offset starts, lineEnd the one behind its end.
func lineStart(text []byte, at int) int { return bytes.LastIndexByte(text[:at], '\n') + 1 }

func lineEnd(text []byte, at int) int {
	if i := bytes.IndexByte(text[at:], '\n'); i >= 0 {
		return at + i + 1
	}
	return len(text)
}
