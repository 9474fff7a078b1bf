package choose

import (
	"bytes"
	"cmp"
	"fmt"
	"math"
	"strings"

	"bladecard/calc/fit"
	"bladecard/calc/internal/sure"
	"bladecard/calc/job"
	"bladecard/calc/plan"
	"bladecard/calc/presslog"
)

// Logged is what a press log has for a fit.
type Logged struct {
	Prints  []fit.Print
	Last    job.Date // the latest day of them
	Unwiped []int    // lines of measured prints that are left out, since ink stayed in the screen
	Rises   []int    // lines of gauged prints of an ink that rises: nothing tells whether they were flat
}

// Prints reads a press log and predicts the film of each of its measured rows on the uncalibrated shop,
// for a fit. A print whose screen did not come clean is left out: its film is not what the screen meters. What
// the shop does not know (a blade, a mesh, an ink, a press) is an error at its cell, as is a setup that folds
// over or floats.
func Prints(file string, src []byte, shop *job.Shop) (log Logged, errs job.Errors) {
	p := predictor{shop: shop, known: map[setting]foretold{}}
	days := map[job.Date]string{}
	log.Prints = make([]fit.Print, 0, min(bytes.Count(src, []byte("\n")), presslog.MaxRows)) // room for all at once
	errs = presslog.Read(file, src, func(r presslog.Row) presslog.Fault {
		switch {
		case !r.Measured():
			return presslog.Fault{}
		case r.Wiped == presslog.No:
			log.Unwiped = append(log.Unwiped, r.Line)
			return presslog.Fault{}
		}
		f := p.of(r)
		if f.fault != (presslog.Fault{}) {
			return f.fault
		}
		um, doubt, fault := r.Film(f.ink.Solids, f.ink.DensityKgPerL)
		if fault != (presslog.Fault{}) {
			return fault
		}
		if f.ink.Rise > 1 && r.CuredUM > 0 {
			log.Rises = append(log.Rises, r.Line)
		}
		if log.Last.Before(r.Date) {
			log.Last = r.Date
		}
		if days[r.Date] == "" {
			days[r.Date] = r.Date.ISO()
		}
		log.Prints = append(log.Prints, fit.Print{
			Line: r.Line, Day: days[r.Date], Mesh: f.mesh, Blade: f.blade, AngleDeg: r.AngleDeg, HardnessShoreA: f.shoreA,
			Strokes: r.Strokes, PredictedUM: f.curedUM, MeasuredUM: um, Doubt: doubt,
		})
		return presslog.Fault{}
	})
	if errs != nil {
		return Logged{}, errs
	}
	return log, nil
}

// setting is all of a row that its prediction depends on.
type setting struct {
	mesh, blade, ink, press             string
	eomUM, featureMM, angleDeg, loadNCM float64 // an EOM of NaN: that of the test patch
	strokes, hits                       int     // hits: 0 is 1
}

// foretold is a prediction, or why there is none.
type foretold struct {
	fault       presslog.Fault
	mesh, blade string
	ink         *job.Ink
	shoreA      float64
	curedUM     float64
	eomUM       float64
	clears      bool
	press       string
}

// mostForetold is how many predictions are kept for further rows of the same setting: more than a
// shop has settings, and some MB.
const mostForetold = 4096

type predictor struct {
	shop  *job.Shop
	known map[setting]foretold
}

// of is the prediction for a row. Rows of one setting share it.
func (p predictor) of(r presslog.Row) foretold {
	s := setting{mesh: r.Mesh, blade: r.Blade, ink: r.Ink, press: r.Press, eomUM: r.EOMUM, angleDeg: r.AngleDeg, strokes: r.Strokes, hits: r.Hits}
	if !math.IsNaN(r.FeatureMM) {
		s.featureMM = r.FeatureMM
	}
	if !math.IsNaN(r.LoadNCM) {
		s.loadNCM = r.LoadNCM
	}
	f, known := p.known[s]
	if !known {
		f = p.foretell(s)
		if len(p.known) >= mostForetold {
			clear(p.known)
		}
		p.known[s] = f
	}
	return f
}

func (p predictor) foretell(s setting) foretold {
	fail := func(key, wrong, accepted string) foretold {
		return foretold{fault: presslog.Fault{Column: key, Wrong: strings.TrimPrefix(wrong, key+": "), Accepted: accepted}}
	}
	eom := &job.EOM{UM: s.eomUM}
	if math.IsNaN(s.eomUM) {
		eom = &job.EOM{Share: patchEOMShare}
	}
	j := &job.Job{Title: "log", Press: s.press, Locations: []job.Location{{Screens: []job.Screen{{
		MeshName: s.mesh, BladeName: s.blade, InkName: s.ink, EOM: eom, FeatureMM: s.featureMM,
		AngleDeg: &s.angleDeg, LoadNCM: s.loadNCM, Strokes: s.strokes,
	}}}}}
	errs := job.Resolve(j, p.shop)
	if errs != nil {
		return fail(errs[0].Key, errs[0].Wrong, errs[0].Accepted)
	}
	sc := j.Locations[0].Screens[0]
	uncalibrated := work{Planner: &Planner{shop: p.shop}, job: j, press: pressOf(j, p.shop)}
	var g given
	if err := sure.Try(func() { g = uncalibrated.maker(0, 0).given(*sc.Mesh, demand{}) }); err != nil {
		return fail("mesh", err.Error(), "a mesh whose threads leave an opening, such as 156-64")
	}
	b := sc.Blades[0]
	var o outlook
	if err := sure.Try(func() {
		o = g.try(setup{stock: stock{Blade: b}, angleDeg: s.angleDeg, strokes: s.strokes, hits: s.hits}, slip{})
	}); err != nil {
		return fail("row", err.Error(), "a setup inside the ranges of the formulas")
	}
	if o.fault != "" {
		return fail("angle", "this setup gives no figure: "+o.why.Error(), "a setup that stands on its edge and clears the screen")
	}
	return foretold{
		mesh: g.meshName, blade: b.Name, ink: sc.Ink, shoreA: b.Hardness[0], curedUM: o.curedUM,
		eomUM: g.eomUM, clears: o.clears, press: uncalibrated.press.Name,
	}
}

// LogOf is an empty log of a plan: a row a screen with its setup, to fill in what was measured. A job
// without a number goes by its title.
func LogOf(p *plan.Plan) []presslog.Row {
	var out []presslog.Row
	for _, l := range p.Locations {
		for _, s := range l.Screens {
			r := presslog.Empty()
			r.Job, r.Location, r.Screen, r.Color, r.Press = cmp.Or(p.Job, p.Title), l.Name, fmt.Sprint(s.Number), s.Color, p.Press.Name
			r.Mesh, r.EOMUM, r.FeatureMM = s.Mesh.Name, math.Round(10*s.Stencil.EOMUM)/10, s.Stencil.FeatureMM
			r.Ink, r.Blade, r.AngleDeg, r.LoadNCM, r.Strokes, r.Hits, r.Cloth = s.Ink, s.Blade.Name, s.AngleDeg.Set, s.LoadNPerCM, s.Strokes, s.Hits, s.SinksIn
			if s.Pressure != nil {
				r.AirBar = math.Round(100*s.Pressure.Bar) / 100
			}
			if s.Flash.Needed && s.Flash.StartS != nil {
				r.FlashS = math.Round(10**s.Flash.StartS) / 10
			}
			out = append(out, r)
		}
	}
	return out
}

// CalibrationOf is what a shop file keeps of a fit.
func CalibrationOf(r fit.Result, day job.Date) *job.Calibration {
	t := r.Terms
	round := func(v float64) float64 { return math.Round(1e4*v) / 1e4 }
	c := &job.Calibration{
		Factor: round(t.Shop.Value), Error: round(t.Shop.Error), Scatter: math.Max(0.01, round(t.Scatter)), Day: round(t.Day), Count: t.Count, Date: day,
		MeanDeg: round(t.MeanDeg), MeanShoreA: round(t.MeanShoreA), MeanSlope: round(t.MeanSlope),
		Angle: round(t.Angle.Value), AngleError: round(t.Angle.Error), Hardness: round(t.Hardness.Value), HardnessError: round(t.Hardness.Error),
		NextStroke: round(t.NextStroke.Value), NextStrokeError: round(t.NextStroke.Error), Blades: t.Blades,
	}
	for _, m := range t.Meshes {
		c.Meshes = append(c.Meshes, job.MeshFactor{Name: m.Name, Factor: round(m.Factor), Error: round(m.Error), Own: round(m.Own), Count: m.Count})
	}
	return c
}
