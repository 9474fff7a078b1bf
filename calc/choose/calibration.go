package choose

import (
	"math"
	"time"

	"bladecard/calc/fit"
	"bladecard/calc/job"
	"bladecard/calc/plan"
)

// learned is what the shop's calibration says, ready to be laid on predicted films.
type learned struct {
	fit.Terms
	drift float64 // one sigma of what has changed since the last measurement
}

// staleYears is the age from which a calibration is old, and driftPerYear how far a shop's film
// may have moved for each year of it, relative, at one sigma (common practice: blades, people and
// cloth change).
const (
	staleYears   = 1.0
	driftPerYear = 0.10
)

// learn turns a calibration of the shop file into terms; nil where there is none. The day is the
// job's day of delivery: without one, the age is not judged.
func learn(c *job.Calibration, day job.Date) *learned {
	if c == nil {
		return nil
	}
	l := &learned{Terms: fit.Terms{
		Shop:       fit.Estimate{Value: c.Factor, Error: c.Error},
		MeanDeg:    c.MeanDeg,
		MeanShoreA: c.MeanShoreA,
		MeanSlope:  c.MeanSlope,
		Angle:      fit.Estimate{Value: c.Angle, Error: c.AngleError},
		Hardness:   fit.Estimate{Value: c.Hardness, Error: c.HardnessError},
		NextStroke: fit.Estimate{Value: c.NextStroke, Error: c.NextStrokeError},
		Blades:     c.Blades, Scatter: c.Scatter, Day: c.Day, Count: c.Count,
	}}
	for _, m := range c.Meshes {
		l.Meshes = append(l.Meshes, fit.MeshFactor{Name: m.Name, Factor: m.Factor, Error: m.Error, Own: m.Own, Count: m.Count})
	}
	if years := yearsBetween(c.Date, day); years > staleYears {
		l.drift = driftPerYear * years
	}
	return l
}

// yearsBetween is the time between two days in years; 0 where one is not given.
func yearsBetween(from, to job.Date) float64 {
	if from == (job.Date{}) || to == (job.Date{}) {
		return 0
	}
	day := func(d job.Date) time.Time { return time.Date(d.Year, time.Month(d.Month), d.Day, 0, 0, 0, 0, time.UTC) }
	return day(to).Sub(day(from)).Hours() / 24 / 365.25
}

// nextStroke is the share that a further wet stroke adds, the shop's own where it is known.
func (g given) nextStroke() float64 {
	if g.learned != nil {
		return g.learned.NextStroke.Value
	}
	return fit.NextStroke
}

// factor is measured over predicted film of a setup that is off by slip.
func (g given) factor(s setup, off slip) float64 {
	if g.learned == nil {
		return 1
	}
	return g.learned.Factor(g.meshName, math.Max(0, s.angleDeg+off.angleDeg), s.stock.Hardness[0]+off.hardnessShoreA)
}

// calibrated is what the Plan says of the shop's calibration.
func calibrated(c *job.Calibration, day job.Date) *plan.Calibrated {
	if c == nil {
		return nil
	}
	return &plan.Calibrated{Count: c.Count, Scatter: c.Scatter, Date: c.Date.ISO(), Old: yearsBetween(c.Date, day) > staleYears}
}

// measured tells what of a screen's setup the calibration knows; nil without one.
func (g given) measured(t trial) *plan.Measured {
	if g.learned == nil {
		return nil
	}
	return &plan.Measured{Mesh: g.learned.HasMesh(g.meshName), Blade: g.learned.HasBlade(t.stock.Name)}
}
