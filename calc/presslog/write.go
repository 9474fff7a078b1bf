package presslog

import (
	"fmt"
	"io"
	"strings"

	"bladecard/calc/cells"
	"bladecard/calc/job"
)

// Write writes a log: the header, then the rows, as a spreadsheet reads it whose decimals have a comma
// or a point: with a comma cells are parted by semicolons, else by commas. What is not stated is an empty
// cell.
func Write(w io.Writer, rows []Row, decimalComma bool) error {
	comma := ','
	if decimalComma {
		comma = ';'
	}
	out := cells.NewWriter(w, comma)
	line := make([]cells.Cell, len(columns))
	for i, c := range columns {
		line[i] = cells.Text(c.title())
	}
	if err := out.Row(line...); err != nil {
		return err
	}
	for _, r := range rows {
		for i, c := range columns {
			line[i] = c.cell(&r, decimalComma)
		}
		if err := out.Row(line...); err != nil {
			return err
		}
	}
	return out.Flush()
}

// cell is what a row has in a column.
func (c column) cell(r *Row, decimalComma bool) cells.Cell {
	cell := cellOf(c.of(r))
	if decimalComma && c.unit != "" {
		return cells.Cell(strings.Replace(string(cell), ".", ",", 1))
	}
	return cell
}

// cellOf makes the cell of what a column keeps.
func cellOf(at any) cells.Cell {
	switch v := at.(type) {
	case *string:
		return cells.Text(*v)
	case *job.Date:
		return cells.Text(v.ISO())
	case *int:
		return cells.Number(float64(*v))
	case *float64:
		return cells.Number(*v)
	}
	panic(fmt.Sprintf("presslog: no cell for a %T", at)) // a column of another kind was added
}
