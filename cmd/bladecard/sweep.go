package main

import (
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"

	"bladecard/calc/cells"
	"bladecard/calc/choose"
	"bladecard/render/charts"
)

var sweepCommand = command{
	name: "sweep", args: "JOB --vary WHAT=FROM..TO",
	run: sweep,
}

// sweeping is what the command line says of a sweep.
type sweeping struct {
	axes             []choose.Axis
	location, screen int
	file, chart      string
}

func (o *sweeping) declare(f *flags) {
	for _, v := range choose.Variables {
		f.words["vary"] = append(f.words["vary"], v.What+"=")
	}
	f.value("vary", "WHAT=FROM..TO", func(s string) error {
		a, err := parseAxis(s)
		o.axes = append(o.axes, a)
		return err
	})
	screenFlags(f, &o.location, &o.screen)
	f.file(&o.file)
	chartFlag(f, &o.chart)
}

func sweep(c *call) int {
	var o sweeping
	if code, ok := c.parse(func(f *flags) {
		c.jobFlags(f)
		o.declare(f)
		c.writeFlags(f)
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
	return c.each(func(l loaded) int { return o.sweep(c, l) })
}

// sweep computes the points of a job's screen, and writes the chart and the CSV file of them.
func (o *sweeping) sweep(c *call, l loaded) int {
	c.tellShop(l.use, l.voice)
	for _, a := range o.axes {
		if v, _ := choose.VariableOf(a.What); v.Unsure {
			c.noteText(l.voice.T("sweep.unsure", "what", l.voice.T("sweep."+a.What)))
		}
	}
	points, err := choose.Sweep(l.job, l.shop, o.location, o.screen, o.axes)
	if err != nil {
		return c.wrong(err.Error())
	}
	to := c.writer(c.args...)
	if o.chart != "" {
		place := l.plan.Locations[o.location-1]
		s := place.Screens[o.screen-1]
		chart, some := sweepChart(o.axes, points, s, l.voice)
		chart.Title, chart.Band = charts.Title(l.voice, l.plan, place, s), charts.Target(l.voice, s)
		c.noteText(some)
		err = writeChart(to, o.chart, chart)
	}
	if err == nil {
		err = c.put(to, o.file, func(w io.Writer) error { return writeSweep(w, o.axes, points) })
	}
	return c.failed(err)
}

// parseAxis reads WHAT=FROM..TO, WHAT=FROM..TO:STEP or WHAT=A,B,C.
func parseAxis(s string) (choose.Axis, error) {
	what, values, _ := strings.Cut(s, "=")
	a := choose.Axis{What: what}
	v, err := choose.VariableOf(what)
	if err != nil {
		return a, err
	}
	wrong := fmt.Errorf("not a range of %s; accepted: %[1]s=%g..%g, %[1]s=%[2]g..%[3]g:%g or %[1]s=%[2]g,%[3]g", what, v.Low, v.High, v.Step)
	from, to, ranged := strings.Cut(values, "..")
	if !ranged {
		if a.Values, err = numbers(strings.Split(values, ",")...); err != nil {
			return a, wrong
		}
		return a, nil
	}
	to, step, own := strings.Cut(to, ":")
	if !own {
		step = fmt.Sprint(v.Step)
	}
	x, err := numbers(from, to, step)
	if err != nil || !(x[0] <= x[1]) || !(x[2] > 0) || math.IsInf(x[1]-x[0], 0) {
		return a, wrong
	}
	n := math.Floor((x[1]-x[0])/x[2] + 1e-9)
	if n >= choose.MostSwept {
		return a, fmt.Errorf("too many points: %.0f values of %s; at most %d are accepted: take a larger step", min(n+1, 1e15), what, choose.MostSwept)
	}
	for i := range int(n) + 1 {
		a.Values = append(a.Values, math.Round((x[0]+float64(i)*x[2])*1e6)/1e6)
	}
	return a, nil
}

// numbers reads texts as numbers.
func numbers(texts ...string) (out []float64, err error) {
	for _, text := range texts {
		x, err := strconv.ParseFloat(strings.TrimSpace(text), 64)
		if err != nil {
			return nil, err
		}
		out = append(out, x)
	}
	return out, nil
}

// writeSweep writes a row a point.
func writeSweep(w io.Writer, axes []choose.Axis, points []choose.Swept) error {
	out := cells.NewWriter(w, ',')
	var row []cells.Cell
	for _, a := range axes {
		v, err := choose.VariableOf(a.What)
		if err != nil {
			return err
		}
		name := a.What
		if v.Unit != "" {
			name += " (" + v.Unit + ")"
		}
		row = append(row, cells.Text(name))
	}
	for _, name := range []string{"wet (um)", "cured (um)", "edge (deg)", "clears", "fault"} {
		row = append(row, cells.Text(name))
	}
	if err := out.Row(row...); err != nil {
		return err
	}
	for _, p := range points {
		row = row[:0]
		for _, x := range p.At {
			row = append(row, cells.Number(x))
		}
		wet, cured, edge := cells.Fixed(p.WetUM, 2), cells.Fixed(p.CuredUM, 2), cells.Fixed(p.EdgeDeg, 1)
		if p.Fault != "" {
			wet, cured, edge = "", "", ""
		}
		if err := out.Row(append(row, wet, cured, edge, cells.Text(strconv.FormatBool(p.Clears)), cells.Text(p.Fault))...); err != nil {
			return err
		}
	}
	return out.Flush()
}
