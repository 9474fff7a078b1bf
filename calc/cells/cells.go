// Package cells writes the cells of CSV files that people open in a spreadsheet, and reads its own
// guard back.
package cells

import (
	"encoding/csv"
	"io"
	"math"
	"strconv"
	"strings"
	"unicode"
)

// Cell is what stands in a cell, safe to open in a spreadsheet.
type Cell string

// Text is a cell that holds a text. A text that a spreadsheet would run as a formula, since it begins
// with = + - @, a tab or a carriage return, is guarded by an apostrophe.
func Text(s string) Cell {
	if runs(s) {
		return Cell("'" + s)
	}
	return Cell(s)
}

// TextOf is the text that Text made a cell of.
func TextOf(cell string) string {
	if rest, guarded := strings.CutPrefix(cell, "'"); guarded && runs(rest) {
		return rest
	}
	return cell
}

// runs tells whether a spreadsheet might run a text. Spaces before the sign are no protection, since
// some spreadsheets trim them. Apostrophes are looked through, so that TextOf undoes Text exactly.
func runs(s string) bool {
	rest := strings.TrimLeftFunc(s, func(r rune) bool { return unicode.IsSpace(r) || r == '\'' })
	return strings.ContainsAny(s[:len(s)-len(rest)], "\t\r") || rest != "" && strings.ContainsRune("=+-@", rune(rest[0]))
}

// Number is a cell that holds a number in as few digits as tell it; NaN leaves the cell empty.
func Number(v float64) Cell { return Fixed(v, -1) }

// Fixed is a cell that holds a number with so many decimals; NaN leaves the cell empty.
func Fixed(v float64, decimals int) Cell {
	if math.IsNaN(v) {
		return ""
	}
	return Cell(strconv.FormatFloat(v, 'f', decimals, 64))
}

// Writer writes rows of cells as CSV.
type Writer struct {
	csv *csv.Writer
	row []string
}

// NewWriter writes to w, the cells of a row parted by comma.
func NewWriter(w io.Writer, comma rune) *Writer {
	out := &Writer{csv: csv.NewWriter(w)}
	out.csv.Comma = comma
	return out
}

// Row writes a row.
func (w *Writer) Row(list ...Cell) error {
	w.row = w.row[:0]
	for _, c := range list {
		w.row = append(w.row, string(c))
	}
	return w.csv.Write(w.row)
}

// Flush writes what is still kept back; it comes last.
func (w *Writer) Flush() error {
	w.csv.Flush()
	return w.csv.Error()
}
