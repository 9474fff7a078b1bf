package presslog

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"time"
	"unicode/utf8"

	"bladecard/calc/cells"
	"bladecard/calc/internal/charset"
	"bladecard/calc/job"
	"bladecard/calc/unit"
)

// The limits of a log.
const (
	MaxBytes   = 32 << 20
	MaxRows    = 200_000 // that were measured
	mostFaults = 20
)

// Fault is what is wrong with a row: the column whose cell it is, or "row" for all of it, what is
// wrong, and what would be accepted. The zero Fault is none.
type Fault struct{ Column, Wrong, Accepted string }

// Read reads a log and hands each of its rows to take, in their order, the rows in which nothing was
// measured too; none of them is kept. What take finds wrong with a row comes back with what Read
// finds itself, each fault at the line and the column of its cell: all of a file's at once, up to twenty.
func Read(file string, src []byte, take func(Row) Fault) job.Errors {
	r := reader{file: file, src: charset.Text(src), take: take}
	if r.open() {
		r.read()
	}
	return r.errs
}

// ReadNamed reads a log as Read does, and asks for the columns job, location and screen that tell its rows apart.
func ReadNamed(file string, src []byte, take func(Row) Fault) job.Errors {
	r := reader{file: file, src: charset.Text(src), take: take}
	if r.open() {
		r.tellsApart()
	}
	if r.errs == nil {
		r.read()
	}
	return r.errs
}

// reader reads one log.
type reader struct {
	file  string
	src   []byte
	take  func(Row) Fault
	comma rune
	csv   *csv.Reader
	heads []head
	cells []string // of the row
	errs  job.Errors
}

// fail adds an error at an offset.
func (r *reader) fail(offset int, key, wrong, accepted string) {
	before := r.src[:offset]
	start := bytes.LastIndexByte(before, '\n') + 1
	e := job.Error{
		Pos: job.Pos{File: r.file, Line: 1 + bytes.Count(before, []byte("\n")), Col: 1 + utf8.RuneCount(before[start:])},
		Key: key, Wrong: wrong, Accepted: accepted,
	}
	if key == "header" { // a place, as people call it, and no key
		e.Where, e.Key = key, ""
	}
	r.errs = append(r.errs, e)
}

// failCell adds an error at the i-th cell of the row.
func (r *reader) failCell(i int, key, wrong, accepted string) {
	line, column := r.csv.FieldPos(i)
	r.fail(r.offset(line, column), key, wrong, accepted)
}

// offset finds a byte of a line, both counted from 1.
func (r *reader) offset(line, column int) int {
	at := 0
	for range line - 1 {
		at += bytes.IndexByte(r.src[at:], '\n') + 1
	}
	return min(at+column-1, len(r.src))
}

func (r *reader) read() {
	measured := 0
	for r.next("row") {
		if row := r.row(); row.Measured() {
			measured++
		}
		if measured > MaxRows {
			r.failCell(0, "file", fmt.Sprintf("has more than %d measured rows", MaxRows), "a shorter log")
		}
		if len(r.errs) >= mostFaults || measured > MaxRows {
			return
		}
	}
}

// open checks the text of a log and reads its header; false where there is an error.
func (r *reader) open() bool {
	const aTable = "a CSV file with a header row"
	offset, wrong, accepted := charset.Fault(r.src)
	switch {
	case len(r.src) > MaxBytes:
		r.fail(0, "file", fmt.Sprintf("has %d bytes", len(r.src)), fmt.Sprintf("at most %d", MaxBytes))
	case wrong != "":
		r.fail(offset, "", wrong, accepted)
	case len(bytes.TrimSpace(r.src)) == 0:
		r.fail(0, "file", "is empty", aTable+": "+names())
	}
	if r.errs != nil {
		return false
	}
	first, _, _ := bytes.Cut(r.src, []byte("\n"))
	r.comma = ','
	if bytes.Count(first, []byte(";")) > bytes.Count(first, []byte(",")) {
		r.comma = ';'
	}
	r.csv = csv.NewReader(bytes.NewReader(r.src))
	r.csv.Comma, r.csv.ReuseRecord, r.csv.FieldsPerRecord, r.csv.TrimLeadingSpace = r.comma, true, -1, true
	if r.next("header") {
		r.header()
	}
	return r.errs == nil
}

// next reads the cells of the next row; false where there is none, or none that can be read.
func (r *reader) next(key string) bool {
	start := int(r.csv.InputOffset())
	var err error
	r.cells, err = r.csv.Read()
	var fault *csv.ParseError
	switch {
	case err == nil:
		return true
	case !errors.As(err, &fault):
		if err != io.EOF {
			r.fail(start, key, err.Error(), "")
		}
	case errors.Is(err, csv.ErrBareQuote):
		r.fail(r.offset(fault.Line, fault.Column), key, "a quote stands inside a cell that does not begin with one", `a cell in quotes, with the quotes inside it doubled: "12"" print"`)
	default:
		r.fail(start+len(goodCells[r.comma].Find(r.src[start:])), key, "the quote that opens here is not closed at the end of its cell", "a quote at both ends of the cell, with the quotes inside it doubled")
	}
	return false
}

// goodCells matches cells whose quotes are closed at their end, by what parts the cells.
var goodCells = map[rune]*regexp.Regexp{
	',': regexp.MustCompile(`^(?:[ \t\r\n]*(?:"(?:[^"]|"")*"|[^" \t\r\n,][^\n,]*)?(?:,|\r?\n))*[ \t\r\n]*`),
	';': regexp.MustCompile(`^(?:[ \t\r\n]*(?:"(?:[^"]|"")*"|[^" \t\r\n;][^\n;]*)?(?:;|\r?\n))*[ \t\r\n]*`),
}

// header reads the names of the columns.
func (r *reader) header() {
	for i, cell := range r.cells {
		h, wrong, accepted := readHead(cell)
		switch {
		case wrong != "":
			r.failCell(i, "header", wrong, accepted)
		case r.has(h.name):
			r.failCell(i, "header", fmt.Sprintf("column %q stands twice", h.name), "each column once")
		default:
			r.heads = append(r.heads, h)
		}
	}
	if r.errs != nil {
		return
	}
	for _, c := range columns {
		if c.need && !r.has(c.name) {
			r.failCell(0, "header", fmt.Sprintf("there is no column %q", c.title()), "the setup of each print: mesh, eom (um), blade, angle (deg)")
		}
	}
	if !r.has("wet") && !r.has("cured") && !(r.has("before") && r.has("after") && r.has("area")) {
		r.failCell(0, "header", "no column holds a measurement", "wet (um), cured (um), or before (g), after (g) and area (cm2)")
	}
}

func (r *reader) has(name string) bool { return r.place(name) >= 0 }

// place returns the index of a column in the file, -1 where the file has none of that name.
func (r *reader) place(name string) int {
	return slices.IndexFunc(r.heads, func(h head) bool { return h.name == name })
}

// row reads the cells of a row and hands it on where it has no fault. An empty line of a spreadsheet
// is none.
func (r *reader) row() Row {
	row := Empty()
	if !slices.ContainsFunc(r.cells, func(cell string) bool { return strings.TrimSpace(cell) != "" }) {
		return row
	}
	row.Line, _ = r.csv.FieldPos(0)
	if len(r.cells) != len(r.heads) {
		wrong := fmt.Sprintf("has %d cells; the header has %d", len(r.cells), len(r.heads))
		if len(r.cells) > len(r.heads) && r.comma == ',' {
			wrong += " (a decimal comma parts cells here)"
		}
		r.failCell(0, "row", wrong, "a cell for each column; decimals with a point where commas part the cells")
		return row
	}
	good := true
	for i, h := range r.heads {
		if wrong, accepted := h.read(&row, strings.TrimSpace(r.cells[i]), r.comma); wrong != "" {
			r.failCell(i, h.name, wrong, accepted)
			good = false
		}
	}
	if !good {
		return row
	}
	var fault Fault
	if row.AfterG <= row.BeforeG {
		fault = Fault{"after", fmt.Sprintf("%g g is no more than the %g g before", row.AfterG, row.BeforeG), "a print that weighs more"}
	} else {
		fault = r.take(row)
	}
	if fault != (Fault{}) {
		r.failCell(max(0, r.place(fault.Column)), fault.Column, fault.Wrong, fault.Accepted)
	}
	return row
}

// read reads a cell into its place in a row.
func (h head) read(row *Row, text string, comma rune) (wrong, accepted string) {
	switch to := h.of(row).(type) {
	case *string:
		*to = cells.TextOf(text)
		if text == "" && h.need {
			return "is empty", "its name"
		}
		if h.marks != nil && text != "" {
			mark, known := h.marks[strings.ToLower(*to)]
			if *to = mark; !known {
				return fmt.Sprintf("%q is not known", text), h.accepted()
			}
		}
	case *job.Date:
		day, ok := ParseDay(text)
		if *to = day; !ok && text != "" {
			return fmt.Sprintf("%q is not a day", text), acceptedDay
		}
	case *int:
		v := 1.0
		if wrong, accepted = h.number(&v, text, comma); wrong != "" {
			return wrong, accepted
		}
		if *to = int(v); float64(*to) != v {
			return fmt.Sprintf("%s is no whole number", text), fmt.Sprintf("%g to %g", h.low, h.most)
		}
	case *float64:
		return h.number(to, text, comma)
	}
	return "", ""
}

// number reads a number with its unit; an empty cell leaves it as it is.
func (h head) number(to *float64, text string, comma rune) (wrong, accepted string) {
	if text == "" {
		if h.need {
			return "is empty", "a number in " + h.from
		}
		return "", ""
	}
	v, wrong := decimal(text, comma)
	if wrong != "" {
		return wrong, "a number without its unit, such as 42.5"
	}
	var err error
	if h.from != h.unit {
		v, err = unit.Convert(v, h.from, h.unit)
	}
	if err != nil || !(v >= h.low && v <= h.most) {
		return fmt.Sprintf("%s is out of range", text), strings.TrimSuffix(fmt.Sprintf("%g to %g %s", h.low, h.most, strings.TrimPrefix(h.unit, "1")), " ")
	}
	*to = v
	return "", ""
}

// decimal reads a number with a point, or with a comma where semicolons part the cells.
func decimal(text string, comma rune) (v float64, wrong string) {
	plain := text
	if strings.ContainsRune(text, ',') {
		if comma == ',' {
			return 0, fmt.Sprintf("%q has a comma in a file whose cells are parted by commas", text)
		}
		if strings.ContainsRune(text, '.') || strings.Count(text, ",") > 1 {
			return 0, fmt.Sprintf("%q has more than one decimal sign", text)
		}
		plain = strings.Replace(text, ",", ".", 1)
	}
	v, err := strconv.ParseFloat(plain, 64)
	if err != nil || math.IsNaN(v) || math.IsInf(v, 0) || strings.ContainsAny(plain, "xX_pP") {
		return 0, fmt.Sprintf("%q is not a number", text)
	}
	return v, ""
}

const acceptedDay = "a day from 2000 to 2099, written as 2026-11-20"

// ParseDay reads a day from 2000 to 2099 that is written as 2026-11-20. Other orders of day, month and
// year are not guessed at: they mean different days in different countries.
func ParseDay(text string) (day job.Date, ok bool) {
	t, err := time.Parse(time.DateOnly, text)
	if err != nil || t.Year() < 2000 || t.Year() > 2099 {
		return job.Date{}, false
	}
	return job.Date{Year: t.Year(), Month: int(t.Month()), Day: t.Day()}, true
}
