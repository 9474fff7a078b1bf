package presslog

import (
	"fmt"
	"io"

	"bladecard/calc/cells"
	"bladecard/calc/job"
)

// Write writes a log: the header, then the rows, cells parted by semicolons so that either
// decimal sign may be filled in. What is not stated is an empty cell.
func Write(w io.Writer, rows []Row) error {
	out := cells.NewWriter(w, ';')
	line := make([]cells.Cell, len(columns))
	for i, c := range columns {
		line[i] = cells.Text(c.title())
	}
	if err := out.Row(line...); err != nil {
		return err
	}
	for _, r := range rows {
		for i, c := range columns {
			line[i] = cellOf(c.of(&r))
		}
		if err := out.Row(line...); err != nil {
			return err
		}
	}
	return out.Flush()
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
