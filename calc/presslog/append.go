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
	var keys []int // columns of job, location and screen
	for _, name := range []string{"job", "location", "screen"} {
		if !r.has(name) {
			r.failCell(0, "header", "there is no column "+strconv.Quote(name)+" to tell the rows by", "job, location, screen")
		}
		keys = append(keys, r.place(name))
	}
	if r.errs != nil {
		return nil, 0, r.errs
	}
	keyOf := func(row []string) (key [3]string) {
		for i, k := range keys {
			if k < len(row) {
				key[i] = cells.TextOf(strings.TrimSpace(row[k]))
			}
		}
		return key
	}
	there := map[[3]string]bool{}
	commas, points := 0, 0
	for r.next("row") {
		there[keyOf(r.cells)] = true
		for i, cell := range r.cells[:min(len(r.cells), len(r.heads))] {
			if r.heads[i].unit != "" && strings.ContainsRune(cell, ',') {
				commas++
			} else if r.heads[i].unit != "" && strings.ContainsRune(cell, '.') {
				points++
			}
		}
	}
	if r.errs != nil {
		return nil, 0, r.errs
	}
	var out bytes.Buffer
	w := csv.NewWriter(&out)
	w.Comma = r.comma
	first, _, _ := bytes.Cut(src, []byte("\n"))
	w.UseCRLF = bytes.HasSuffix(first, []byte("\r"))
	for _, row := range rows {
		line := row.under(r.heads, r.comma == ';' && commas > points)
		if key := keyOf(line); !there[key] {
			there[key] = true
			lacking++
			if row.Hits > 1 && !r.has("hits") {
				r.fail(1, 1, "header", "there is no column \"hits\", and a screen that is added has several", "a column hits, empty for one hit")
				return nil, 0, r.errs
			}
			w.Write(line)
		}
	}
	w.Flush()
	if end := "\n"; lacking > 0 && !bytes.HasSuffix(src, []byte(end)) {
		if w.UseCRLF {
			end = "\r\n"
		}
		return append([]byte(end), out.Bytes()...), lacking, nil
	}
	return out.Bytes(), lacking, nil
}

// under are the cells of a row under the columns of a log, in their units.
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
	if h.unit == "cm2" {
		v /= areas[h.from]
	} else if v, err = unit.Convert(v, h.unit, h.from); err != nil {
		return cell
	}
	v, _ = strconv.ParseFloat(strconv.FormatFloat(v, 'g', 6, 64), 64)
	return strconv.FormatFloat(v, 'f', -1, 64)
}
