package orders

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"strings"

	"bladecard/calc/cells"
	"bladecard/calc/internal/charset"
	"bladecard/calc/job"
)

// The limits of a file of orders.
const (
	MaxBytes = 8 << 20
	maxRows  = 20_000
	mostErrs = 20
)

// Order is one job of the file.
type Order struct {
	Number, Title string
	TOML          []byte // the job file
	cells         map[int]cell
	first         job.Pos // of its first row
}

// cell is where a value of the job file stands in the orders.
type cell struct {
	at     job.Pos
	column string
}

// Place is the cell of the orders that a line of the job file comes from; where none does, the order's first row.
func (o Order) Place(line int) (at job.Pos, column string) {
	if c, ok := o.cells[line]; ok {
		return c.at, c.column
	}
	return o.first, ""
}

// row is one row of the file: the cells that are not empty, by column.
type row struct {
	at    job.Pos
	cells []string
	pos   []job.Pos
}

// Read reads a file of orders. Columns are parted by commas or semicolons, whichever the header has more of; between
// semicolons a number may have a decimal comma. A row with a name in its column template is no order; every row that has
// the name in its column like takes from it what it leaves empty. A row whose job and title are empty, or
// those of the row above, is another screen of that job; where its location.name is empty or that of the row above,
// of the same location. Errors stand at their cells, up to twenty of them.
func Read(file string, src []byte) ([]Order, job.Errors) {
	r := reader{file: file, templates: map[string]row{}}
	src = charset.Text(src)
	r.open(src)
	var rows []row
	for len(r.errs) == 0 {
		x, more := r.next()
		if !more {
			break
		}
		if len(rows) == maxRows {
			r.fail(x.at, "row", fmt.Sprintf("more than %d rows", maxRows), "parts of the file, one after the other, are accepted")
			break
		}
		rows = append(rows, x)
	}
	if r.errs == nil {
		rows = r.inherit(rows)
	}
	orders := r.orders(rows)
	if len(r.errs) > mostErrs {
		r.errs = r.errs[:mostErrs]
	}
	return orders, r.errs
}

type reader struct {
	file      string
	csv       *csv.Reader
	columns   []column
	comma     rune
	templates map[string]row
	errs      job.Errors
}

func (r *reader) fail(at job.Pos, key, wrong, accepted string) {
	e := job.Error{Pos: at, Key: key, Wrong: wrong, Accepted: accepted}
	if key == "header" { // a place, as people call it, and no key
		e.Where, e.Key = key, ""
	}
	r.errs = append(r.errs, e)
}

// open reads the header.
func (r *reader) open(src []byte) {
	head, _, _ := bytes.Cut(src, []byte("\n"))
	r.comma = ','
	if bytes.Count(head, []byte(";")) > bytes.Count(head, []byte(",")) {
		r.comma = ';'
	}
	r.csv = csv.NewReader(bytes.NewReader(src))
	r.csv.Comma, r.csv.FieldsPerRecord = r.comma, -1
	names, err := r.csv.Read()
	if err != nil {
		r.fail(job.Pos{File: r.file, Line: 1}, "header", "is not there or cannot be read", "a header with the keys of a job file, such as job, title, location.name, screen.ink, is accepted")
		return
	}
	all, seen := known(), map[string]bool{}
	for i, name := range names {
		at := r.pos(i)
		c, accepted := find(cells.TextOf(name), all)
		switch {
		case accepted != "":
			r.fail(at, "header", fmt.Sprintf("%q is not a column", name), accepted)
		case seen[c.name]:
			r.fail(at, "header", fmt.Sprintf("column %q stands twice", c.name), "each column once")
		}
		seen[c.name] = true
		r.columns = append(r.columns, c)
	}
	if len(r.errs) == 0 && !seen["job"] && !seen["title"] {
		r.fail(job.Pos{File: r.file, Line: 1, Col: 1}, "header", "has neither job nor title", "a column that tells the orders apart")
	}
}

// pos is where a cell of the row that was read last stands.
func (r *reader) pos(i int) job.Pos {
	line, column := r.csv.FieldPos(i)
	return job.Pos{File: r.file, Line: line, Col: column}
}

// next reads a row that is not all empty.
func (r *reader) next() (row, bool) {
	for {
		list, err := r.csv.Read()
		var wrong *csv.ParseError
		switch {
		case errors.Is(err, io.EOF):
			return row{}, false
		case errors.As(err, &wrong):
			r.fail(job.Pos{File: r.file, Line: wrong.Line, Col: wrong.Column}, "row", wrong.Err.Error(), "cells with both of their quotes, or with none")
			return row{}, false
		case err != nil:
			r.fail(job.Pos{File: r.file}, "row", err.Error(), "a CSV file")
			return row{}, false
		}
		x := row{at: r.pos(0), cells: make([]string, len(r.columns)), pos: make([]job.Pos, len(r.columns))}
		some := false
		for i, text := range list {
			text = strings.TrimSpace(cells.TextOf(text))
			switch {
			case i < len(r.columns):
				x.cells[i], x.pos[i] = text, r.pos(i)
				some = some || text != ""
			case text != "":
				r.fail(r.pos(i), "row", fmt.Sprintf("%q stands beyond the last column", text), fmt.Sprintf("%d cells", len(r.columns)))
			}
		}
		if some {
			return x, true
		}
	}
}

// at is the cell of a column; empty where the file has no such column.
func (r *reader) at(x row, name string) string {
	for i, c := range r.columns {
		if c.name == name {
			return x.cells[i]
		}
	}
	return ""
}

// inherit takes the templates out and fills what the other rows leave empty from theirs.
func (r *reader) inherit(rows []row) []row {
	var out []row
	for _, x := range rows {
		name := r.at(x, template)
		if name == "" {
			out = append(out, x)
			continue
		}
		if _, twice := r.templates[name]; twice {
			r.fail(x.at, template, fmt.Sprintf("the template %q stands twice", name), "a name for each template")
		}
		r.templates[name] = x
	}
	for k, x := range out {
		name := r.at(x, like)
		if name == "" {
			continue
		}
		t, known := r.templates[name]
		if !known {
			r.fail(x.at, like, fmt.Sprintf("there is no template %q", name), "a name that stands in the column template")
			continue
		}
		for i := range x.cells {
			if x.cells[i] == "" {
				out[k].cells[i], out[k].pos[i] = t.cells[i], t.pos[i]
			}
		}
	}
	return out
}
