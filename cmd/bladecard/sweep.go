package main

import (
	"encoding/csv"
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
	does: "vary one or two settings of a screen; CSV and chart",
	more: `
The setup is the one that the plan chooses; WHAT is angle (deg), hardness (Shore A), load (N/cm),
strokes, eom (um), free-height (mm) or speed (m/s). FROM..TO takes the usual step, FROM..TO:STEP its
own, and 60,70,80 stands for itself. Give --vary twice to vary two things at once: the chart then
has a line for each value of the first.`,
	run: sweep,
}

func sweep(c *call) int {
	var o struct {
		axes             []choose.Axis
		location, screen int
		file, chart      string
	}
	if code, ok := c.parse(func(f *flags) {
		c.jobFlags(f)
		f.value("vary", "`WHAT=FROM..TO` what to vary and how far; once or twice (needed)", func(s string) error {
			a, err := parseAxis(s)
			o.axes = append(o.axes, a)
			return err
		})
		screenFlags(f, &o.location, &o.screen)
		f.file(&o.file, "CSV")
		chartFlag(f, &o.chart, "the films")
		c.quietFlag(f)
	}); !ok {
		return code
	}
	switch {
	case len(c.args) != 1:
		return c.wrong("one job file is wanted")
	case len(o.axes) < 1 || len(o.axes) > 2:
		return c.wrong("--vary is wanted once or twice, such as --vary angle=0..45")
	case o.chart != "" && len(o.axes[len(o.axes)-1].Values) < 2:
		return c.wrong("a chart over one value has no line; --chart wants two values or more of the last --vary, such as angle=0..45")
	}
	return c.each(func(l loaded) int {
		c.tellShop(l.use, l.voice)
		points, err := choose.Sweep(l.job, l.shop, o.location, o.screen, o.axes)
		if err != nil {
			return c.wrong(err.Error())
		}
		write := func(w io.Writer) error { return writeSweep(w, o.axes, points) }
		if o.file == "" {
			err = write(c.data)
		} else {
			err = writeFile(o.file, write)
		}
		if err == nil && o.chart != "" {
			err = writeChart(o.chart, sweepChart(o.axes, points, l.voice))
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
	wrong := fmt.Errorf("not a range of %s; accepted: %[1]s=%g..%g, %[1]s=%[2]g..%[3]g:%g or %[1]s=%[2]g,%[3]g", what, v.Low, v.High, v.Step)
	from, to, ranged := strings.Cut(values, "..")
	if !ranged {
		for _, part := range strings.Split(values, ",") {
			x, err := strconv.ParseFloat(strings.TrimSpace(part), 64)
			if err != nil {
				return a, wrong
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
			return a, wrong
		}
	}
	n := math.Floor((high-low)/by + 1e-9)
	switch {
	case err1 != nil || err2 != nil || !(low <= high) || !(by > 0):
		return a, wrong
	case !(n < choose.MostSwept):
		return a, fmt.Errorf("%.0f values of %s; at most %d are accepted: take a larger step", n+1, what, choose.MostSwept)
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
		X: figure.Axis{Title: v.T("sweep." + last.What), Low: low, High: high}, Y: figure.Axis{Title: v.T("card.y-film")},
		SizePT: 9, Format: v.Number,
	}
	for i := 0; i < len(points); i += len(last.Values) {
		l := figure.Line{Label: v.T("show.cured"), Strong: i == 0, Dash: max(0, len(ch.Lines)-1) % figure.Dashes}
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
