package orders

import (
	"encoding/json"
	"fmt"
	"regexp"
	"strings"

	"bladecard/calc/job"
)

// orders groups the rows by job and writes each.
func (r *reader) orders(rows []row) []Order {
	var out []Order
	var group []row
	seen := map[string]bool{}
	flush := func() {
		if len(group) > 0 {
			out = append(out, r.order(group))
		}
		group = nil
	}
	for _, x := range rows {
		number, title := r.at(x, "job"), r.at(x, "title")
		if len(group) > 0 && (number != "" && number == r.at(group[0], "job") || number == "" && (title == "" || title == r.at(group[0], "title"))) {
			group = append(group, x)
			continue
		}
		flush()
		if number == "" && title == "" {
			r.fail(x.at, "job", "the first row names no job", "job or title in the first row of each order")
			continue
		}
		if key := number + "\x00" + title; seen[key] {
			r.fail(x.at, "job", fmt.Sprintf("%q stands above already, with other jobs between", strings.TrimSpace(number+" "+title)), "the rows of an order one below the other")
		} else {
			seen[key] = true
		}
		group = append(group, x)
	}
	flush()
	return out
}

// writer writes one job file and remembers which cell each line comes from.
type writer struct {
	*reader
	text strings.Builder
	line int
	out  Order
}

func (r *reader) order(rows []row) Order {
	w := writer{reader: r, out: Order{Number: r.at(rows[0], "job"), Title: r.at(rows[0], "title"), cells: map[int]cell{}, first: rows[0].at}}
	for _, l := range []level{ofJob, ofGarment, ofStock} {
		w.table(l, w.joined(l, rows))
	}
	for i, location := range w.locations(rows) {
		w.table(ofLocation, w.joined(ofLocation, location))
		if i == 0 && len(w.cellsOf(ofLocation, location[0])) == 0 {
			w.print("\n[[location]]")
		}
		for _, x := range location {
			if len(w.cellsOf(ofScreen, x)) == 0 {
				w.print("\n[[location.screen]]")
			}
			w.table(ofScreen, x)
			w.table(ofHalftone, x)
		}
	}
	w.out.TOML = []byte(w.text.String())
	return w.out
}

// locations parts the rows of a job by location.
func (w *writer) locations(rows []row) [][]row {
	var out [][]row
	name := ""
	for _, x := range rows {
		if n := w.at(x, "location.name"); len(out) == 0 || n != "" && n != name {
			name = n
			out = append(out, nil)
		}
		out[len(out)-1] = append(out[len(out)-1], x)
	}
	return out
}

// joined is what rows of one table say together; two that say different things are an error.
func (w *writer) joined(l level, rows []row) row {
	out := row{at: rows[0].at, cells: make([]string, len(w.columns)), pos: make([]job.Pos, len(w.columns))}
	for i, c := range w.columns {
		if c.level != l {
			continue
		}
		for _, x := range rows {
			switch {
			case x.cells[i] == "" || x.cells[i] == out.cells[i]:
			case out.cells[i] == "":
				out.cells[i], out.pos[i] = x.cells[i], x.pos[i]
			default:
				w.fail(x.pos[i], c.name, fmt.Sprintf("%q here and %q in line %d, of one order", x.cells[i], out.cells[i], out.pos[i].Line), "one value for all rows of it, or empty cells below the first")
			}
		}
	}
	return out
}

// cellsOf are the columns of a table that a row fills.
func (w *writer) cellsOf(l level, x row) []int {
	var out []int
	for i, c := range w.columns {
		if c.level == l && x.cells[i] != "" {
			out = append(out, i)
		}
	}
	return out
}

// table writes a table, if the row fills any of it.
func (w *writer) table(l level, x row) {
	filled := w.cellsOf(l, x)
	if len(filled) == 0 {
		return
	}
	if head := levels[l].table; head != "" {
		w.print("\n" + head)
	}
	for _, i := range filled {
		c := w.columns[i]
		w.print(c.key + " = " + w.value(c, x.cells[i]))
		w.out.cells[w.line] = cell{x.pos[i], c.name}
	}
}

func (w *writer) print(text string) {
	w.text.WriteString(text + "\n")
	w.line += 1 + strings.Count(text, "\n")
}

var (
	number = regexp.MustCompile(`^[+-]?\d+([.,]\d+)?$`)
	isDay  = regexp.MustCompile(`^\d{4}-\d{2}-\d{2}$`)
)

// value writes a cell as TOML: a text where the key takes one, else a number, a day, true or false bare, a number of a
// column with a unit with that unit, and everything else as a text.
func (w *writer) value(c column, text string) string {
	isNumber := number.MatchString(text) && (w.comma == ';' || !strings.Contains(text, ","))
	switch {
	case c.text:
		return quoted(text)
	case isNumber && c.unit != "":
		return quoted(strings.Replace(text, ",", ".", 1) + " " + c.unit)
	case isNumber:
		return strings.TrimPrefix(strings.Replace(text, ",", ".", 1), "+")
	case isDay.MatchString(text), strings.EqualFold(text, "true"), strings.EqualFold(text, "false"):
		return strings.ToLower(text)
	}
	return quoted(text)
}

// quoted is a basic string of TOML. Its escapes are those of JSON.
func quoted(text string) string {
	var b strings.Builder
	enc := json.NewEncoder(&b)
	enc.SetEscapeHTML(false)
	_ = enc.Encode(text) // a text always has a JSON form
	return strings.TrimSuffix(b.String(), "\n")
}
