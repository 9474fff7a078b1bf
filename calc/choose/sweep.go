package choose

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"bladecard/calc/internal/sure"
	"bladecard/calc/job"
)

// Axis is one thing that a sweep varies, over values in its unit.
type Axis struct {
	What   string // see Variables
	Values []float64
}

// Variable is a thing that a sweep can vary, with its unit and range.
type Variable struct {
	What, Unit string
	Low, High  float64
	Step       float64 // between values where none is stated
	Unsure     bool    // which way it moves a film is not sure
}

// Variables are the things that a sweep can vary.
var Variables = []Variable{
	{What: "angle", Unit: "deg", Low: 0, High: 60, Step: 2.5},
	{What: "hardness", Unit: "Shore A", Low: 45, High: 90, Step: 2.5},
	{What: "load", Unit: "N/cm", Low: 0.5, High: 20, Step: 0.5, Unsure: true},
	{What: "strokes", Low: 1, High: 6, Step: 1},
	{What: "eom", Unit: "um", Low: 1, High: 400, Step: 5},
	{What: "free-height", Unit: "mm", Low: 5, High: 80, Step: 2.5},
	{What: "speed", Unit: "m/s", Low: 0.05, High: 2, Step: 0.05, Unsure: true},
}

// VariableOf finds a variable by its name; the error lists all.
func VariableOf(what string) (Variable, error) {
	var all []string
	for _, v := range Variables {
		if v.What == what {
			return v, nil
		}
		all = append(all, v.What)
	}
	return Variable{}, fmt.Errorf("%q cannot be varied; accepted are %s", what, strings.Join(all, ", "))
}

// Swept is one point of a sweep. Where the blade folds over or floats there is no film.
type Swept struct {
	At      []float64 `json:"at"` // a value an axis
	WetUM   float64   `json:"wet_um"`
	CuredUM float64   `json:"cured_um"`
	EdgeDeg float64   `json:"edge_angle_deg"`
	Clears  bool      `json:"clears"`
	Fails   string    `json:"fails,omitempty"` // detail, ink: how the setup prints badly
	Fault   string    `json:"fault,omitempty"` // folds, floats
}

// MostSwept is how many points a sweep may have.
const MostSwept = 100_000

// Sweep varies one or two things of the setup that the plan chooses for a screen (location and
// screen counted from 1), all else held, and computes the film of each combination; the last axis
// runs fastest.
func Sweep(j *job.Job, shop *job.Shop, location, screen int, axes []Axis) ([]Swept, error) {
	if err := checkAxes(axes); err != nil {
		return nil, err
	}
	m, err := makerOf(j, shop, location, screen)
	if err != nil {
		return nil, err
	}
	out := combinations(axes)
	var fail *job.Error
	err = sure.Try(func() {
		var c chooser
		var ch choice
		if c, ch, fail = m.choose(newDemand(m.screen, m.ground())); fail != nil {
			return
		}
		for i := range out {
			out[i].compute(c.given, ch.best.setup, axes)
		}
	})
	if fail != nil {
		err = fail
	}
	if err != nil {
		return nil, err
	}
	return out, nil
}

// combinations are the points of a sweep, the last axis running fastest.
func combinations(axes []Axis) []Swept {
	out := []Swept{{}}
	for _, a := range axes { // the points grow by an axis each round
		var longer []Swept
		for _, p := range out {
			for _, x := range a.Values {
				longer = append(longer, Swept{At: append(slices.Clone(p.At), x)})
			}
		}
		out = longer
	}
	return out
}

// checkAxes tells what is wrong with the axes of a sweep.
func checkAxes(axes []Axis) error {
	if len(axes) < 1 || len(axes) > 2 {
		return fmt.Errorf("%d things are varied; one or two are accepted", len(axes))
	}
	n := 1
	for _, a := range axes {
		v, err := VariableOf(a.What)
		if err != nil {
			return err
		}
		if len(a.Values) == 0 {
			return fmt.Errorf("%s has no values", a.What)
		}
		for _, x := range a.Values {
			if !(x >= v.Low && x <= v.High) || v.What == "strokes" && x != math.Trunc(x) {
				return fmt.Errorf("%s %g is out of range; %s is accepted", a.What, x, strings.TrimSpace(fmt.Sprintf("%g to %g %s", v.Low, v.High, v.Unit)))
			}
		}
		n *= len(a.Values)
	}
	if n > MostSwept {
		return fmt.Errorf("too many points: the sweep has %d; at most %d are accepted", n, MostSwept)
	}
	return nil
}

// compute fills in what the setup does with the point's values.
func (p *Swept) compute(g given, s setup, axes []Axis) {
	for i, a := range axes {
		vary(&g, &s, a.What, p.At[i])
	}
	o := g.try(s, slip{})
	p.EdgeDeg, p.Clears, p.Fault = o.edgeDeg, o.clears, string(o.fault)
	p.Fails = g.fails(o)
	if o.fault == "" {
		p.WetUM, p.CuredUM = o.wetUM, o.curedUM
	}
}

// makerOf is the maker of one screen of a resolved job.
func makerOf(j *job.Job, shop *job.Shop, location, screen int) (maker, error) {
	if location < 1 || location > len(j.Locations) {
		return maker{}, fmt.Errorf("location %d; the job has 1 to %d", location, len(j.Locations))
	}
	l := j.Locations[location-1]
	if screen < 1 || screen > len(l.Screens) {
		return maker{}, fmt.Errorf("screen %d; location %q has 1 to %d", screen, l.Name, len(l.Screens))
	}
	pl := NewPlanner(shop)
	if pl.broken != nil {
		return maker{}, pl.broken
	}
	return pl.work(j).maker(location-1, screen-1), nil
}

// vary sets one thing of a setup to a value.
func vary(g *given, s *setup, what string, x float64) {
	switch what {
	case "angle":
		s.angleDeg = x
	case "strokes":
		s.strokes = int(x)
	case "load":
		g.loadNCM = x
	case "speed":
		g.speedMPS = x
	case "eom":
		g.eomUM = x
	case "hardness":
		s.stock = s.stock.withOuter(x)
	case "free-height":
		s.stock.FreeHeightMM, s.stock.id = x, madeUp
	}
}
