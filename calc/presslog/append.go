package presslog

import (
	"bytes"
	"encoding/csv"
	"strconv"
	"strings"

	"bladecard/calc/cells"
	"bladecard/calc/internal/charset"
	"bladecard/calc/job"
	"bladecard/calc/unit"
)

// Append returns what is to be written behind a log so that it has all of the rows, and how many
// of them it lacks. A row is there when one of the same job, location and screen is, whatever else
// it says. The new rows take the log's own columns, units, separator, decimal sign and line ends;
// what the log has no column for is left out. Errors tell that the text is not a press log, or that
// its rows cannot be told apart.
func Append(file string, src []byte, rows []Row) (text []byte, lacking int, errs job.Errors) {
	r := reader{file: file, src: charset.Text(src)}
	if !r.open() {
		return nil, 0, r.errs
	}
	there, comma := r.survey()
	if r.errs != nil {
		return nil, 0, r.errs
	}
	var out bytes.Buffer
	w := csv.NewWriter(&out)
	w.Comma = r.comma
	first, _, _ := bytes.Cut(src, []byte("\n"))
	w.UseCRLF = bytes.HasSuffix(first, []byte("\r"))
	for _, row := range rows {
		line := row.under(r.heads, comma)
		if key := r.key(line); !there[key] {
			there[key] = true
			lacking++
			if row.Hits > 1 && !r.has("hits") {
				r.fail(0, "header", "there is no column \"hits\", and a screen that is added has several", "a column hits, empty for one hit")
				return nil, 0, r.errs
			}
			w.Write(line)
		}
	}
	w.Flush()
	if lacking == 0 || bytes.HasSuffix(src, []byte("\n")) {
		return out.Bytes(), lacking, nil
	}
	end := "\n"
	if w.UseCRLF {
		end = "\r\n"
	}
	return append([]byte(end), out.Bytes()...), lacking, nil
}

// rowKey tells the rows of a log apart.
var rowKey = [...]string{"job", "location", "screen"}

// key is what tells a row apart.
func (r *reader) key(row []string) (key [len(rowKey)]string) {
	for i, name := range rowKey {
		if at := r.place(name); at >= 0 && at < len(row) {
			key[i] = cells.TextOf(strings.TrimSpace(row[at]))
		}
	}
	return key
}

// tellsApart asks for the columns that tell the rows apart.
func (r *reader) tellsApart() {
	for _, name := range rowKey {
		if !r.has(name) {
			r.failCell(0, "header", "there is no column "+strconv.Quote(name)+" to tell the rows by", strings.Join(rowKey[:], ", "))
		}
	}
}

// survey reads on: which rows there are, and whether decimals are written with a comma: between semicolons they
// are, where the log does not show the opposite.
func (r *reader) survey() (there map[[len(rowKey)]string]bool, comma bool) {
	r.tellsApart()
	there = map[[len(rowKey)]string]bool{}
	commas, points := 0, 0
	for r.errs == nil && r.next("row") {
		there[r.key(r.cells)] = true
		for i, cell := range r.cells[:min(len(r.cells), len(r.heads))] {
			if r.heads[i].unit != "" && strings.ContainsRune(cell, ',') {
				commas++
			} else if r.heads[i].unit != "" && strings.ContainsRune(cell, '.') {
				points++
			}
		}
	}
	return there, r.comma == ';' && commas >= points
}

// under writes the cells of a row for the columns of a log, in their units.
func (r Row) under(heads []head, comma bool) []string {
	var out []string
	for _, h := range heads {
		cell := string(cellOf(h.of(&r)))
		if h.unit != "" && cell != "" {
			cell = h.inUnit(cell)
			if comma {
				cell = strings.Replace(cell, ".", ",", 1)
			}
		}
		out = append(out, cell)
	}
	return out
}

// inUnit turns a number of the column's unit into one of the file's, to six digits.
func (h head) inUnit(cell string) string {
	v, err := strconv.ParseFloat(cell, 64)
	if err != nil || h.from == h.unit {
		return cell
	}
	if v, err = unit.Convert(v, h.unit, h.from); err != nil {
		return cell
	}
	v, _ = strconv.ParseFloat(strconv.FormatFloat(v, 'g', 6, 64), 64)
	return strconv.FormatFloat(v, 'f', -1, 64)
}
