package presslog

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"math"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"bladecard/calc/job"
)

// Row is one measured print as the log states it. A number that is not stated is NaN.
type Row struct {
	Line                                int
	Date, Job, Location, Screen         string
	Press, Mesh, Ink, Blade, Note       string
	EOMUM, FeatureMM, AngleDeg, LoadNCM float64
	Strokes                             int
	WetUM, CuredUM, BeforeG, AfterG     float64
	AreaCM2, DensityKgPerL              float64
}

// The limits of a log.
const (
	MaxBytes = 32 << 20
	MaxRows  = 200_000
	mostErrs = 20
)

// Read reads a log. Rows in which nothing was measured are left out. Errors carry the line and
// the column, all of a file's at once, up to twenty.
func Read(file string, src []byte) ([]Row, job.Errors) {
	fail := func(line int, key, wrong, accepted string) job.Errors {
		return job.Errors{{Pos: job.Pos{File: file, Line: line, Col: 1}, Key: key, Wrong: wrong, Accepted: accepted}}
	}
	src = bytes.TrimPrefix(src, []byte("\uFEFF"))
	switch {
	case len(src) > MaxBytes:
		return nil, fail(1, "file", fmt.Sprintf("has %d bytes", len(src)), fmt.Sprintf("at most %d", MaxBytes))
	case bytes.IndexByte(src, 0) >= 0 || !utf8.Valid(src):
		return nil, fail(1, "file", "is not a text in UTF-8", "a CSV file with a header row")
	case len(bytes.TrimSpace(src)) == 0:
		return nil, fail(1, "file", "is empty", "a CSV file with a header row: "+names())
	}
	first, _, _ := bytes.Cut(src, []byte("\n"))
	comma := ','
	if bytes.Count(first, []byte(";")) > bytes.Count(first, []byte(",")) {
		comma = ';'
	}
	r := csv.NewReader(bytes.NewReader(src))
	r.Comma, r.ReuseRecord, r.FieldsPerRecord, r.TrimLeadingSpace = comma, true, -1, true
	cells, err := r.Read()
	if err != nil {
		return nil, fail(1, "header", err.Error(), "a row of column names")
	}
	heads, errs := header(file, cells)
	if errs != nil {
		return nil, errs
	}
	var rows []Row
	for {
		cells, err := r.Read()
		if err == io.EOF {
			break
		}
		if err != nil {
			line := 1
			var pe *csv.ParseError
			if errors.As(err, &pe) {
				line = pe.Line
			}
			return nil, append(errs, fail(line, "row", err.Error(), "cells parted by "+strconv.Quote(string(comma)))...)
		}
		line, _ := r.FieldPos(0)
		if len(cells) != len(heads) {
			wrong := fmt.Sprintf("has %d cells; the header has %d", len(cells), len(heads))
			if len(cells) > len(heads) && comma == ',' {
				wrong += " (a decimal comma parts cells here)"
			}
			errs = append(errs, fail(line, "row", wrong, "a cell for each column; decimals with a point where commas part the cells")...)
		} else if row, bad := readRow(file, line, cells, heads, comma); bad != nil {
			errs = append(errs, bad...)
		} else if row.Measured() {
			rows = append(rows, row)
		}
		if len(errs) >= mostErrs {
			return nil, errs
		}
		if len(rows) > MaxRows {
			return nil, append(errs, fail(line, "file", fmt.Sprintf("has more than %d measured rows", MaxRows), "a shorter log")...)
		}
	}
	if errs != nil {
		return nil, errs
	}
	return rows, nil
}

// header reads the names of the columns.
func header(file string, cells []string) ([]head, job.Errors) {
	var errs job.Errors
	bad := func(col int, wrong, accepted string) {
		errs = append(errs, job.Error{Pos: job.Pos{File: file, Line: 1, Col: col + 1}, Key: "header", Wrong: wrong, Accepted: accepted})
	}
	var out []head
	for i, cell := range cells {
		h, wrong := readHead(cell)
		if wrong != "" {
			wrong, accepted, _ := strings.Cut(wrong, "; ")
			bad(i, wrong, accepted)
			continue
		}
		if slices.ContainsFunc(out, func(o head) bool { return o.name == h.name }) {
			bad(i, fmt.Sprintf("column %q stands twice", h.name), "each column once")
		}
		out = append(out, h)
	}
	has := func(name string) bool { return slices.ContainsFunc(out, func(o head) bool { return o.name == name }) }
	if errs == nil {
		for _, c := range columns {
			if c.need && !has(c.name) {
				bad(0, fmt.Sprintf("there is no column %q", c.title()), "the setup of each print: mesh, eom (um), blade, angle (deg)")
			}
		}
		if !has("wet") && !has("cured") && !(has("before") && has("after") && has("area")) {
			bad(0, "no column holds a measurement", "wet (um), cured (um), or before (g), after (g) and area (cm2)")
		}
	}
	return out, errs
}

// readRow reads one row.
func readRow(file string, line int, cells []string, heads []head, comma rune) (Row, job.Errors) {
	row := Empty()
	row.Line = line
	words := map[string]*string{"date": &row.Date, "job": &row.Job, "location": &row.Location, "screen": &row.Screen, "press": &row.Press,
		"mesh": &row.Mesh, "ink": &row.Ink, "blade": &row.Blade, "note": &row.Note}
	numbers := map[string]*float64{"eom": &row.EOMUM, "feature": &row.FeatureMM, "angle": &row.AngleDeg, "load": &row.LoadNCM, "wet": &row.WetUM,
		"cured": &row.CuredUM, "before": &row.BeforeG, "after": &row.AfterG, "area": &row.AreaCM2, "density": &row.DensityKgPerL}
	var errs job.Errors
	for i, h := range heads {
		text := strings.TrimSpace(cells[i])
		fail := func(wrong, accepted string) {
			errs = append(errs, job.Error{Pos: job.Pos{File: file, Line: line, Col: i + 1}, Key: h.name, Wrong: wrong, Accepted: accepted})
		}
		if dst := words[h.name]; dst != nil {
			if *dst = text; text == "" && h.need {
				fail("is empty", "its name")
			}
			continue
		}
		if text == "" {
			if h.need {
				fail("is empty", "a number in "+h.from)
			}
			continue
		}
		v, wrong := number(text, comma)
		if wrong != "" {
			fail(wrong, "a number without its unit, such as 42.5")
			continue
		}
		v, err := h.to(v)
		if err != nil || !(v >= h.low && v <= h.most) {
			fail(fmt.Sprintf("%s is out of range", text), fmt.Sprintf("%g to %g %s", h.low, h.most, strings.TrimPrefix(h.unit, "1")))
			continue
		}
		if h.name == "strokes" {
			if row.Strokes = int(v); float64(row.Strokes) != v {
				fail(fmt.Sprintf("%s is no whole number", text), "1 to 6")
			}
			continue
		}
		*numbers[h.name] = v
	}
	if errs == nil && row.AfterG <= row.BeforeG {
		errs = append(errs, job.Error{Pos: job.Pos{File: file, Line: line, Col: 1}, Key: "after", Wrong: fmt.Sprintf("%g g is no more than the %g g before", row.AfterG, row.BeforeG), Accepted: "a print that weighs more"})
	}
	return row, errs
}

// number reads a decimal number with a point, or with a comma where semicolons part the cells.
func number(text string, comma rune) (float64, string) {
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

// Measured tells whether the row holds a measurement.
func (r Row) Measured() bool {
	return !math.IsNaN(r.WetUM) || !math.IsNaN(r.CuredUM) || r.weighed()
}

func (r Row) weighed() bool {
	return !math.IsNaN(r.BeforeG) && !math.IsNaN(r.AfterG) && !math.IsNaN(r.AreaCM2)
}

// Film is the cured film in um that the row's measurements say: gauge, comb, weight, or where
// there are several their geometric mean. Comb and weight are wet, and shrink by the ink's volume
// solids; the weight needs a density in kg/L, the row's own or the ink's. NaN where there is none.
func (r Row) Film(solids, densityKgPerL float64) float64 {
	sum, n := 0.0, 0.0
	add := func(um float64) {
		if um > 0 {
			sum += math.Log(um)
			n++
		}
	}
	add(r.CuredUM)
	add(r.WetUM * solids)
	if r.weighed() {
		if !math.IsNaN(r.DensityKgPerL) {
			densityKgPerL = r.DensityKgPerL
		}
		const umPerCM = 1e4
		add((r.AfterG - r.BeforeG) / (r.AreaCM2 * densityKgPerL) * umPerCM * solids)
	}
	if n == 0 {
		return math.NaN()
	}
	return math.Exp(sum / n)
}
