package rows

import (
	"fmt"
	"io"
	"strings"

	"bladecard/calc/cells"
	"bladecard/calc/plan"
)

// column is a head and what stands below it for a screen.
type column struct {
	head string
	of   func(p *plan.Plan, l plan.Location, s plan.Screen) cells.Cell
}

var columns = []column{
	{"job", func(p *plan.Plan, _ plan.Location, _ plan.Screen) cells.Cell { return cells.Text(p.Job) }},
	{"title", func(p *plan.Plan, _ plan.Location, _ plan.Screen) cells.Cell { return cells.Text(p.Title) }},
	{"quantity", func(p *plan.Plan, _ plan.Location, _ plan.Screen) cells.Cell { return some(float64(p.Quantity)) }},
	{"due", func(p *plan.Plan, _ plan.Location, _ plan.Screen) cells.Cell { return cells.Text(p.Due) }},
	{"press", func(p *plan.Plan, _ plan.Location, _ plan.Screen) cells.Cell { return cells.Text(p.Press.Name) }},
	{"location.name", func(_ *plan.Plan, l plan.Location, _ plan.Screen) cells.Cell { return cells.Text(l.Name) }},
	{"screen", func(_ *plan.Plan, _ plan.Location, s plan.Screen) cells.Cell { return cells.Number(float64(s.Number)) }},
	{"head", func(_ *plan.Plan, _ plan.Location, s plan.Screen) cells.Cell { return cells.Text(Heads(s)) }},
	{"screen.color", func(_ *plan.Plan, _ plan.Location, s plan.Screen) cells.Cell { return cells.Text(s.Color) }},
	{"screen.ink", func(_ *plan.Plan, _ plan.Location, s plan.Screen) cells.Cell { return cells.Text(s.Ink) }},
	{"screen.use", func(_ *plan.Plan, _ plan.Location, s plan.Screen) cells.Cell { return cells.Text(s.Use) }},
	{"screen.mesh", func(_ *plan.Plan, _ plan.Location, s plan.Screen) cells.Cell { return cells.Text(s.Mesh.Name) }},
	{"screen.eom (um)", func(_ *plan.Plan, _ plan.Location, s plan.Screen) cells.Cell { return cells.Fixed(s.Stencil.EOMUM, 0) }},
	{"coats", func(_ *plan.Plan, _ plan.Location, s plan.Screen) cells.Cell { return some(float64(s.Stencil.Coats)) }},
	{"lines (1/in)", func(_ *plan.Plan, _ plan.Location, s plan.Screen) cells.Cell {
		if s.Halftone == nil {
			return cells.Text("")
		}
		return some(s.Halftone.LinesPerInch)
	}},
	{"dot angle (deg)", func(_ *plan.Plan, _ plan.Location, s plan.Screen) cells.Cell {
		if s.Halftone == nil || !s.Halftone.HasAngle {
			return cells.Text("")
		}
		return cells.Number(s.Halftone.AngleDeg)
	}},
	{"screen.blade", func(_ *plan.Plan, _ plan.Location, s plan.Screen) cells.Cell { return cells.Text(s.Blade.Name) }},
	{"blade length (mm)", func(_ *plan.Plan, _ plan.Location, s plan.Screen) cells.Cell { return some(s.Blade.LengthMM) }},
	{"screen.angle (deg)", func(_ *plan.Plan, _ plan.Location, s plan.Screen) cells.Cell { return cells.Number(s.AngleDeg.Set) }},
	{"angle from (deg)", func(_ *plan.Plan, _ plan.Location, s plan.Screen) cells.Cell { return cells.Number(s.AngleDeg.Low) }},
	{"angle to (deg)", func(_ *plan.Plan, _ plan.Location, s plan.Screen) cells.Cell { return cells.Number(s.AngleDeg.High) }},
	{"load (N/cm)", func(_ *plan.Plan, _ plan.Location, s plan.Screen) cells.Cell { return cells.Fixed(s.LoadNPerCM, 1) }},
	{"screen.strokes", func(_ *plan.Plan, _ plan.Location, s plan.Screen) cells.Cell { return cells.Number(float64(s.Strokes)) }},
	{"screen.hits", func(_ *plan.Plan, _ plan.Location, s plan.Screen) cells.Cell {
		return cells.Number(float64(max(1, s.Hits)))
	}},
	{"wet (um)", func(_ *plan.Plan, _ plan.Location, s plan.Screen) cells.Cell { return cells.Fixed(s.WetUM.Value, 1) }},
	{"cured (um)", func(_ *plan.Plan, _ plan.Location, s plan.Screen) cells.Cell { return cells.Fixed(s.CuredUM.Value, 1) }},
	{"cured from (um)", func(_ *plan.Plan, _ plan.Location, s plan.Screen) cells.Cell { return cells.Fixed(s.CuredUM.Low, 1) }},
	{"cured to (um)", func(_ *plan.Plan, _ plan.Location, s plan.Screen) cells.Cell { return cells.Fixed(s.CuredUM.High, 1) }},
	{"flash (s)", func(_ *plan.Plan, _ plan.Location, s plan.Screen) cells.Cell {
		if s.Flash.StartS == nil {
			return cells.Text("")
		}
		return cells.Fixed(*s.Flash.StartS, 1)
	}},
	{"ink (g)", func(_ *plan.Plan, _ plan.Location, s plan.Screen) cells.Cell {
		if s.InkGRun == nil {
			return cells.Text("")
		}
		return cells.Fixed(*s.InkGRun, 0)
	}},
	{"warnings", func(_ *plan.Plan, _ plan.Location, s plan.Screen) cells.Cell {
		var texts []string
		for _, w := range s.Warnings {
			texts = append(texts, w.Text)
		}
		return cells.Text(strings.Join(texts, "; "))
	}},
}

// Head is the heads of the columns.
func Head() []cells.Cell {
	var out []cells.Cell
	for _, c := range columns {
		out = append(out, cells.Text(c.head))
	}
	return out
}

// Of is the row of a screen.
func Of(p *plan.Plan, l plan.Location, s plan.Screen) []cells.Cell {
	var out []cells.Cell
	for _, c := range columns {
		out = append(out, c.of(p, l, s))
	}
	return out
}

// Write writes the plans, cells parted by semicolons.
func Write(w io.Writer, plans []*plan.Plan) error {
	out := cells.NewWriter(w, ';')
	if err := out.Row(Head()...); err != nil {
		return err
	}
	for _, p := range plans {
		for _, l := range p.Locations {
			for _, s := range l.Screens {
				if err := out.Row(Of(p, l, s)...); err != nil {
					return err
				}
			}
		}
	}
	return out.Flush()
}

// Heads is the heads of the press that print a screen, such as 1+3.
func Heads(s plan.Screen) string {
	if len(s.Heads) == 0 {
		return fmt.Sprint(s.Head)
	}
	var texts []string
	for _, h := range s.Heads {
		texts = append(texts, fmt.Sprint(h))
	}
	return strings.Join(texts, "+")
}

// some is a number that 0 says nothing of.
func some(x float64) cells.Cell {
	if x == 0 {
		return cells.Text("")
	}
	return cells.Number(x)
}
