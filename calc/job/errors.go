package job

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"bladecard/calc/internal/words"
)

// Error is one thing that is wrong in a file.
type Error struct {
	Pos             // the key or value that is wrong
	Where    string // the place in words: location "full front", screen 2
	Key      string // the key, with its tables inside Where: mesh, halftone.lines
	Wrong    string // what is wrong
	Accepted string // what would be accepted
}

// Error prints FILE:LINE:COL: WHERE: KEY: what is wrong; what is accepted. Parts that are
// empty are left out.
func (e Error) Error() string {
	parts := []string{e.Pos.String(), e.Where, e.Key, e.Wrong}
	text := strings.Join(slices.DeleteFunc(parts, func(part string) bool { return part == "" }), ": ")
	if e.Accepted != "" {
		text += "; " + e.Accepted
	}
	return text
}

// String prints FILE:LINE:COL, or FILE alone when the line is not known.
func (p Pos) String() string {
	if p.Line == 0 {
		return p.File
	}
	return p.File + ":" + strconv.Itoa(p.Line) + ":" + strconv.Itoa(p.Col)
}

// Errors is all that is wrong in a file, in the order of the file.
type Errors []Error

// Error prints one error a line.
func (es Errors) Error() string {
	lines := make([]string, len(es))
	for i, e := range es {
		lines[i] = e.Error()
	}
	return strings.Join(lines, "\n")
}

// Err returns the errors as an error, nil when there are none.
func (es Errors) Err() error {
	if len(es) == 0 {
		return nil
	}
	return es
}

// Sort puts the errors into the order of the file.
func (es Errors) Sort() {
	slices.SortStableFunc(es, func(a, b Error) int {
		return cmp.Or(cmp.Compare(a.Line, b.Line), cmp.Compare(a.Col, b.Col),
			cmp.Compare(a.Where, b.Where), cmp.Compare(a.Key, b.Key), cmp.Compare(a.Wrong, b.Wrong))
	})
}

// Nearest returns the word that is closest to text in edits, "" when none is close. A word
// that differs in the case of letters only is always the closest.
func Nearest(text string, among []string) string { return words.Nearest(text, among) }
