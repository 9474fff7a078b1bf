package main

import (
	"encoding/csv"
	"flag"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"

	"bladecard/calc/choose"
	"bladecard/render/figure"
	"bladecard/render/say"
)

var sweepCommand = command{
	name: "sweep", args: "JOB --vary WHAT=FROM..TO",
	does: "vary one or two things of a screen's setup, to CSV and chart",
	more: `
The setup is the one that the plan chooses; WHAT is angle (deg), hardness (Shore A), load (N/cm),
strokes, eom (um), free-height (mm) or speed (m/s). FROM..TO takes the usual step, FROM..TO:STEP its
own, and 60,70,80 stands for itself. Give --vary twice to vary two things at once: the chart then
has a line for each value of the first.`,
	run: sweep,
}

func sweep(c *call) int {
	var f struct {
		axes             []choose.Axis
		location, screen int
		file, chart      string
	}
	if code, ok := c.parse(func(fs *flag.FlagSet) {
		c.language(fs)
		fs.Func("vary", "`WHAT=FROM..TO`, once or twice (needed)", func(s string) error {
			a, err := parseAxis(s)
			f.axes = append(f.axes, a)
			return err
		})
		fs.IntVar(&f.location, "location", 1, "`N` of the location, as the file orders them")
		fs.IntVar(&f.screen, "screen", 1, "`N` of the screen")
		fs.StringVar(&f.file, "o", "", "`FILE` for the CSV; left out: the terminal")
		fs.StringVar(&f.chart, "chart", "", "also draw a chart to `FILE`, .svg or .png")
	}); !ok {
		return code
	}
	switch {
	case len(c.args) != 1:
		return c.wrong("one job file is wanted")
	case len(f.axes) < 1 || len(f.axes) > 2:
		return c.wrong("--vary is wanted once or twice, such as --vary angle=0..45")
	case f.chart != "" && !isChart(f.chart):
		return c.wrong(wrongChart(f.chart))
	case f.chart != "" && len(f.axes) == 2 && len(f.axes[0].Values) > figure.MostLines:
		return c.wrong(fmt.Sprintf("--chart: %d lines, one for each value of the first --vary; accepted are up to %d",
			len(f.axes[0].Values), figure.MostLines))
	}
	return c.each(func(l loaded) int {
		points, err := choose.Sweep(l.job, l.shop, f.location, f.screen, f.axes)
		if err != nil {
			return c.wrong(err.Error())
		}
		write := func(w io.Writer) error { return writeSweep(w, f.axes, points) }
		if f.file == "" {
			err = write(c.stdout)
		} else {
			err = writeFile(f.file, write)
		}
		if err == nil && f.chart != "" {
			err = writeChart(f.chart, sweepChart(f.axes, points, l.voice))
		}
		if err != nil {
			return c.fail(err)
		}
		return exitDone
	})
}

// parseAxis reads WHAT=FROM..TO, WHAT=FROM..TO:STEP or WHAT=A,B,C.
func parseAxis(s string) (choose.Axis, error) {
	what, values, _ := strings.Cut(s, "=")
	v, err := choose.VariableOf(what)
	a := choose.Axis{What: what}
	if err != nil {
		return a, err
	}
	wrong := func(text string) (choose.Axis, error) {
		return a, fmt.Errorf("%q is not a range of %s; accepted: %s=%g..%g, %[2]s=%[4]g..%[5]g:%g or %[2]s=%[4]g,%[5]g", text, what, what, v.Low, v.High, v.Step)
	}
	from, to, ranged := strings.Cut(values, "..")
	if !ranged {
		for _, part := range strings.Split(values, ",") {
			x, err := strconv.ParseFloat(strings.TrimSpace(part), 64)
			if err != nil {
				return wrong(values)
			}
			a.Values = append(a.Values, x)
		}
		return a, nil
	}
	to, step, own := strings.Cut(to, ":")
	low, err1 := strconv.ParseFloat(from, 64)
	high, err2 := strconv.ParseFloat(to, 64)
	by := v.Step
	if own {
		var err error
		if by, err = strconv.ParseFloat(step, 64); err != nil {
			return wrong(values)
		}
	}
	n := math.Floor((high-low)/by + 1e-9)
	if err1 != nil || err2 != nil || !(low <= high) || !(by > 0) || !(n < choose.MostSwept) {
		return wrong(values)
	}
	for i := range int(n) + 1 {
		a.Values = append(a.Values, math.Round((low+float64(i)*by)*1e6)/1e6)
	}
	return a, nil
}

// writeSweep writes a row a point.
func writeSweep(w io.Writer, axes []choose.Axis, points []choose.Swept) error {
	out := csv.NewWriter(w)
	var head []string
	for _, a := range axes {
		v, err := choose.VariableOf(a.What)
		if err != nil {
			return err
		}
		name := a.What
		if v.Unit != "" {
			name += " (" + v.Unit + ")"
		}
		head = append(head, name)
	}
	if err := out.Write(append(head, "wet (um)", "cured (um)", "edge (deg)", "clears", "fault")); err != nil {
		return err
	}
	num := func(v float64, decimals int) string { return strconv.FormatFloat(v, 'f', decimals, 64) }
	for _, p := range points {
		var cells []string
		for _, x := range p.At {
			cells = append(cells, num(x, -1))
		}
		wet, cured, edge := num(p.WetUM, 2), num(p.CuredUM, 2), num(p.EdgeDeg, 1)
		if p.Fault != "" {
			wet, cured, edge = "", "", ""
		}
		if err := out.Write(append(cells, wet, cured, edge, strconv.FormatBool(p.Clears), p.Fault)); err != nil {
			return err
		}
	}
	out.Flush()
	return out.Error()
}

// sweepChart is the cured film over the last axis, a line for each value of the first.
func sweepChart(axes []choose.Axis, points []choose.Swept, v *say.Voice) figure.Chart {
	last := axes[len(axes)-1]
	low, high := math.Inf(1), math.Inf(-1)
	for _, x := range last.Values {
		low, high = math.Min(low, x), math.Max(high, x)
	}
	ch := figure.Chart{
		X: figure.Axis{Title: v.T("sweep." + last.What), Low: low, High: high, Whole: last.What == "strokes"}, Y: figure.Axis{Title: v.T("card.y-film")},
		SizePT: 9, Format: v.Number,
	}
	for i := 0; i < len(points); i += len(last.Values) {
		l := figure.Line{Strong: i == 0, Dash: max(0, len(ch.Lines)-1) % figure.Dashes}
		if len(axes) == 2 {
			l.Label = v.Number(points[i].At[0], 2)
		}
		for _, p := range points[i : i+len(last.Values)] {
			um := p.CuredUM
			if p.Fault != "" {
				um = math.NaN()
			}
			l.Points = append(l.Points, figure.XY{X: p.At[len(axes)-1], Y: um})
		}
		ch.Lines = append(ch.Lines, l)
	}
	return ch
}
