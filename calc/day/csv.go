package day

import (
	"io"

	"bladecard/calc/cells"
	"bladecard/calc/rows"
)

// WriteCSV writes a row a screen, press by press in the order of the jobs, for a spreadsheet: the place in the order,
// the changes before the job and its minutes, then the columns of package rows.
func WriteCSV(w io.Writer, d Day) error {
	out := cells.NewWriter(w, ';')
	var head []cells.Cell
	for _, h := range []string{"order", "changes", "setup (min)", "run (min)"} {
		head = append(head, cells.Text(h))
	}
	if err := out.Row(append(head, rows.Head()...)...); err != nil {
		return err
	}
	for _, p := range d.Presses {
		for i, j := range p.Jobs {
			setup, run := cells.Text(""), cells.Text("")
			if j.Time != nil {
				setup, run = cells.Fixed(j.Time.SetupMin, 0), cells.Fixed(j.Time.RunMin, 0)
			}
			for _, l := range j.Plan.Locations {
				for _, s := range l.Screens {
					row := []cells.Cell{cells.Number(float64(i + 1)), cells.Number(float64(j.Changes)), setup, run}
					if err := out.Row(append(row, rows.Of(j.Plan, l, s)...)...); err != nil {
						return err
					}
				}
			}
		}
	}
	return out.Flush()
}
