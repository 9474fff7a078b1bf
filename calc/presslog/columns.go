package presslog

import (
	"fmt"
	"strings"

	"bladecard/calc/unit"
)

// column is one thing that a log may hold.
type column struct {
	name string
	unit string // "" for words; "1" for a plain number
	need bool
	most float64 // the largest accepted number, in unit
	low  float64
}

// columns in the order in which a log is written.
var columns = []column{
	{name: "date"}, {name: "job"}, {name: "location"}, {name: "screen"},
	{name: "press"}, {name: "mesh", need: true}, {name: "eom", unit: "um", need: true, most: 2000}, {name: "feature", unit: "mm", most: 2000, low: 0.05},
	{name: "ink"}, {name: "blade", need: true}, {name: "angle", unit: "deg", need: true, most: 60}, {name: "load", unit: "N/cm", most: 20, low: 0.5},
	{name: "strokes", unit: "1", most: 6, low: 1},
	{name: "wet", unit: "um", most: 3000, low: 0.5}, {name: "cured", unit: "um", most: 3000, low: 0.5},
	{name: "before", unit: "g", most: 100000}, {name: "after", unit: "g", most: 100000}, {name: "area", unit: "cm2", most: 100000, low: 0.1},
	{name: "density", unit: "kg/L", most: 3, low: 0.5}, {name: "note"},
}

// title is the column's head in a log that is written.
func (c column) title() string {
	if c.unit == "" || c.unit == "1" {
		return c.name
	}
	return c.name + " (" + c.unit + ")"
}

func find(name string) (column, bool) {
	for _, c := range columns {
		if c.name == name {
			return c, true
		}
	}
	return column{}, false
}

func names() string {
	var out []string
	for _, c := range columns {
		out = append(out, c.title())
	}
	return strings.Join(out, ", ")
}

// head is a column of a file: what it is and the factor from its unit to the column's own.
type head struct {
	column
	from string // its unit in the file
}

// areas are not among the units of job files; a log has few of them.
var areas = map[string]float64{"cm2": 1, "cm²": 1, "mm2": 0.01, "mm²": 0.01, "in2": 6.4516, "in²": 6.4516, "m2": 1e4, "m²": 1e4}

// readHead takes a cell of the header apart.
func readHead(cell string) (head, string) {
	text := strings.TrimSpace(cell)
	name, rest, hasUnit := strings.Cut(text, "(")
	name = strings.ToLower(strings.TrimSpace(name))
	c, ok := find(name)
	if !ok {
		return head{}, fmt.Sprintf("%q is not a column; accepted are %s", cell, names())
	}
	h := head{column: c, from: c.unit}
	if !hasUnit {
		if c.unit != "" && c.unit != "1" {
			return head{}, fmt.Sprintf("column %q has no unit; accepted is %s or another unit in brackets", cell, c.title())
		}
		return h, ""
	}
	h.from = strings.TrimSpace(strings.TrimSuffix(strings.TrimSpace(rest), ")"))
	if c.unit == "" || c.unit == "1" {
		return head{}, fmt.Sprintf("column %q has a unit; accepted is %q", cell, c.name)
	}
	if _, err := h.to(1); err != nil {
		accepted := unit.Accepted(c.unit)
		if c.unit == "cm2" {
			accepted = "cm2, mm2, in2 or m2"
		}
		return head{}, fmt.Sprintf("column %q: %q is not a unit of it; accepted: %s", cell, h.from, accepted)
	}
	return h, ""
}

// to converts a number of the file to the column's unit.
func (h head) to(v float64) (float64, error) {
	switch {
	case h.unit == "1":
		return v, nil
	case h.unit == "cm2":
		k, ok := areas[h.from]
		if !ok {
			return 0, fmt.Errorf("%q is not an area", h.from)
		}
		return k * v, nil
	}
	return unit.Convert(v, h.from, h.unit)
}
