package report

import (
	"io"
	"math"
	"slices"
	"strings"
	"unicode/utf8"

	"bladecard/render/say"
)

// Parts writes headings with their lines, or rows, for a terminal of so many letters.
func Parts(w io.Writer, parts []say.Part, wide int) error {
	t := &table{Options: Options{Wide: wide}, w: w}
	for _, p := range parts {
		t.text(0, p.Title)
		for _, line := range p.Lines {
			t.text(2, line)
		}
		t.rows(p.Rows)
	}
	return t.err
}

// rows sets rows in columns where the lines take them, else each as a text.
func (t *table) rows(rows [][]string) {
	if len(rows) == 0 {
		return
	}
	columns := make([][]string, len(rows[0]))
	for _, r := range rows {
		for k, cell := range r {
			columns[k] = append(columns[k], cell)
		}
	}
	columns = slices.DeleteFunc(columns, func(c []string) bool { return strings.Join(c, "") == "" })
	lines := tabled(columns, 0, 2, math.MaxInt)
	if !slices.ContainsFunc(lines, func(l string) bool { return utf8.RuneCountInString(l) > t.Wide }) {
		for _, l := range lines {
			t.line(l)
		}
		return
	}
	for _, r := range rows {
		var cells []string
		for _, cell := range r {
			if utf8.RuneCountInString(cell) < t.Wide/2 { // a line ends between cells
				cell = strings.ReplaceAll(cell, " ", glue)
			}
			cells = append(cells, cell)
		}
		text := strings.Join(slices.DeleteFunc(cells, func(cell string) bool { return cell == "" }), ", ")
		for _, l := range Wrap(text, 2, hangs, t.Wide) {
			t.line(strings.ReplaceAll(l, glue, " "))
		}
	}
}

// glue is a space that does not break.
const glue = "\u00a0"
