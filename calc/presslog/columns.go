package presslog

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"bladecard/calc/cells"
	"bladecard/calc/unit"
)

// column is one thing that a log may hold.
type column struct {
	name      string
	unit      string // of a number; "1": it has none
	low, most float64
	need      bool
	of        func(*Row) any // where a row keeps it: *string, *job.Date, *int or *float64
}

// columns in the order in which a log is written.
var columns = []column{
	{name: "date", of: func(r *Row) any { return &r.Date }},
	{name: "job", of: func(r *Row) any { return &r.Job }},
	{name: "location", of: func(r *Row) any { return &r.Location }},
	{name: "screen", of: func(r *Row) any { return &r.Screen }},
	{name: "press", of: func(r *Row) any { return &r.Press }},
	{name: "mesh", need: true, of: func(r *Row) any { return &r.Mesh }},
	{name: "eom", need: true, unit: "um", most: 2000, of: func(r *Row) any { return &r.EOMUM }},
	{name: "feature", unit: "mm", low: 0.05, most: 2000, of: func(r *Row) any { return &r.FeatureMM }},
	{name: "ink", of: func(r *Row) any { return &r.Ink }},
	{name: "blade", need: true, of: func(r *Row) any { return &r.Blade }},
	{name: "angle", need: true, unit: "deg", most: 60, of: func(r *Row) any { return &r.AngleDeg }},
	{name: "load", unit: "N/cm", low: 0.5, most: 20, of: func(r *Row) any { return &r.LoadNCM }},
	{name: "strokes", unit: "1", low: 1, most: 6, of: func(r *Row) any { return &r.Strokes }},
	{name: "hits", unit: "1", low: 1, most: 6, of: func(r *Row) any { return &r.Hits }},
	{name: "wet", unit: "um", low: leastFilmUM, most: mostFilmUM, of: func(r *Row) any { return &r.WetUM }},
	{name: "cured", unit: "um", low: leastFilmUM, most: mostFilmUM, of: func(r *Row) any { return &r.CuredUM }},
	{name: "before", unit: "g", most: 100000, of: func(r *Row) any { return &r.BeforeG }},
	{name: "after", unit: "g", most: 100000, of: func(r *Row) any { return &r.AfterG }},
	{name: "area", unit: "cm2", low: 0.1, most: 100000, of: func(r *Row) any { return &r.AreaCM2 }},
	{name: "cloth", of: func(r *Row) any { return &r.Cloth }},
	{name: "density", unit: "kg/L", low: 0.5, most: 3, of: func(r *Row) any { return &r.DensityKgPerL }},
	{name: "note", of: func(r *Row) any { return &r.Note }},
}

// The least and the most that a film may measure, in um, and the least of a wet one that has dried.
const leastFilmUM, mostFilmUM, leastCuredUM = 0.5, 3000.0, 0.01

// title is the column's head in a log that is written.
func (c column) title() string {
	if c.unit == "" || c.unit == "1" {
		return c.name
	}
	return c.name + " (" + c.unit + ")"
}

func names() string {
	var out []string
	for _, c := range columns {
		out = append(out, c.title())
	}
	return strings.Join(out, ", ")
}

// head is a column of a file: what it holds, and in which unit.
type head struct {
	column
	from string // its unit in the file
}

// readHead takes a cell of the header apart.
func readHead(cell string) (h head, wrong, accepted string) {
	name, rest, hasUnit := strings.Cut(cells.TextOf(strings.TrimSpace(cell)), "(")
	name = strings.ToLower(strings.TrimSpace(name))
	at := slices.IndexFunc(columns, func(c column) bool { return c.name == name })
	if at < 0 {
		return h, fmt.Sprintf("%q is not a column", cell), "the columns are " + names()
	}
	c := columns[at]
	bare := c.unit == "" || c.unit == "1"
	h = head{column: c, from: c.unit}
	switch {
	case !hasUnit && bare:
		return h, "", ""
	case !hasUnit:
		return h, fmt.Sprintf("column %q has no unit", cell), c.title() + " or another unit in brackets"
	case bare:
		return h, fmt.Sprintf("column %q has a unit", cell), strconv.Quote(c.name)
	}
	h.from = strings.TrimSpace(strings.TrimSuffix(strings.TrimSpace(rest), ")"))
	if _, err := unit.Convert(1, h.from, c.unit); err != nil {
		return h, fmt.Sprintf("column %q: %q is not a unit of it", cell, h.from), unit.Accepted(c.unit)
	}
	return h, "", ""
}
