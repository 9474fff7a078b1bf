package day

import (
	"fmt"
	"io"

	"bladecard/calc/cells"
)

// WriteCSV writes a row a screen, press by press in the order of the jobs, for a spreadsheet. The heads of the
// columns name their units.
func WriteCSV(w io.Writer, d Day) error {
	out := cells.NewWriter(w, ';')
	var head []cells.Cell
	for _, h := range []string{
		"press", "order", "job", "title", "due", "pieces", "location", "screen", "head", "color", "ink", "mesh", "eom (um)", "coats",
		"lines (1/in)", "dot angle (deg)", "blade", "length (mm)", "angle (deg)", "strokes", "hits", "cured (um)", "ink (g)", "changes", "setup (min)", "run (min)",
	} {
		head = append(head, cells.Text(h))
	}
	if err := out.Row(head...); err != nil {
		return err
	}
	for _, p := range d.Presses {
		for i, j := range p.Jobs {
			for _, l := range j.Plan.Locations {
				for _, s := range l.Screens {
					row := []cells.Cell{
						cells.Text(p.Name), cells.Number(float64(i + 1)), cells.Text(j.Job), cells.Text(j.Title), cells.Text(j.Due), cells.Number(float64(j.Pieces)),
						cells.Text(l.Name), cells.Number(float64(s.Number)), cells.Text(headText(s.Heads, s.Head)), cells.Text(s.Color), cells.Text(s.Ink), cells.Text(s.Mesh.Name),
						cells.Fixed(s.Stencil.EOMUM, 0), cells.Number(float64(s.Stencil.Coats)),
					}
					lines, dots := cells.Text(""), cells.Text("")
					if h := s.Halftone; h != nil && h.LinesPerInch > 0 {
						lines = cells.Number(h.LinesPerInch)
						if h.HasAngle {
							dots = cells.Number(h.AngleDeg)
						}
					}
					row = append(row, lines, dots, cells.Text(s.Blade.Name), some(s.Blade.LengthMM), cells.Number(s.AngleDeg.Set), cells.Number(float64(s.Strokes)),
						cells.Number(float64(s.Hits)), cells.Fixed(s.CuredUM.Value, 1))
					ink := cells.Text("")
					if s.InkGRun != nil {
						ink = cells.Fixed(*s.InkGRun, 0)
					}
					setup, run := cells.Text(""), cells.Text("")
					if j.Time != nil {
						setup, run = cells.Fixed(j.Time.SetupMin, 0), cells.Fixed(j.Time.RunMin, 0)
					}
					if err := out.Row(append(row, ink, cells.Number(float64(j.Changes)), setup, run)...); err != nil {
						return err
					}
				}
			}
		}
	}
	return out.Flush()
}

// some is a number that 0 says nothing of.
func some(x float64) cells.Cell {
	if x == 0 {
		return cells.Text("")
	}
	return cells.Number(x)
}

func headText(heads []int, head int) string {
	if len(heads) < 2 {
		return fmt.Sprint(head)
	}
	text := ""
	for i, h := range heads {
		if i > 0 {
			text += "+"
		}
		text += fmt.Sprint(h)
	}
	return text
}
