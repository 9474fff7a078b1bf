package choose

import (
	"fmt"
	"math"
	"strings"

	"bladecard/calc/fit"
	"bladecard/calc/job"
	"bladecard/calc/plan"
	"bladecard/calc/presslog"
)

// Prints predicts the film of every row of a press log on the uncalibrated shop, for a fit. What
// the shop does not know (a blade, a mesh, an ink, a press) is an error at its row, as is a setup
// that folds over or floats.
func Prints(file string, rows []presslog.Row, shop *job.Shop) ([]fit.Print, job.Errors) {
	p := predictor{shop: shop, known: map[setting]foretold{}}
	var out []fit.Print
	var errs job.Errors
	for _, r := range rows {
		s := setting{mesh: r.Mesh, blade: r.Blade, ink: r.Ink, press: r.Press, eomUM: r.EOMUM, angleDeg: r.AngleDeg, strokes: r.Strokes}
		if !math.IsNaN(r.FeatureMM) {
			s.featureMM = r.FeatureMM
		}
		if !math.IsNaN(r.LoadNCM) {
			s.loadNCM = r.LoadNCM
		}
		f, known := p.known[s]
		if !known {
			f = p.foretell(s)
			p.known[s] = f
		}
		if f.key != "" {
			errs = append(errs, job.Error{Pos: job.Pos{File: file, Line: r.Line, Col: 1}, Key: f.key, Wrong: f.wrong, Accepted: f.accepted})
			if len(errs) >= 20 {
				return nil, errs
			}
			continue
		}
		out = append(out, fit.Print{
			At: fmt.Sprintf("line %d", r.Line), Mesh: f.mesh, Blade: f.blade, AngleDeg: r.AngleDeg, HardnessShoreA: f.shoreA,
			Strokes: r.Strokes, PredictedUM: f.curedUM, MeasuredUM: r.Film(f.ink.Solids, f.ink.DensityKgPerL),
		})
	}
	return out, errs
}

// setting is all of a row that its prediction depends on.
type setting struct {
	mesh, blade, ink, press             string
	eomUM, featureMM, angleDeg, loadNCM float64
	strokes                             int
}

// foretold is a prediction; with a key, why there is none.
type foretold struct {
	key, wrong, accepted string
	mesh, blade          string
	ink                  *job.Ink
	shoreA               float64
	curedUM              float64
}

type predictor struct {
	shop  *job.Shop
	known map[setting]foretold
}

func (p predictor) foretell(s setting) foretold {
	fail := func(key, wrong, accepted string) foretold {
		return foretold{key: key, wrong: strings.TrimPrefix(wrong, key+": "), accepted: accepted}
	}
	j := &job.Job{Title: "log", Press: s.press, Locations: []job.Location{{Screens: []job.Screen{{
		MeshName: s.mesh, BladeName: s.blade, InkName: s.ink, EOM: &job.EOM{UM: s.eomUM}, FeatureMM: s.featureMM,
		AngleDeg: &s.angleDeg, LoadNCM: s.loadNCM, Strokes: s.strokes,
	}}}}}
	errs := job.Resolve(j, p.shop)
	if errs != nil {
		return fail(errs[0].Key, errs[0].Wrong, errs[0].Accepted)
	}
	sc, bare := j.Locations[0].Screens[0], *p.shop
	bare.Calibration = nil
	racked, err := newRack(sc.Blades[:1])
	if err != nil {
		return fail("blade", err.Error(), "a blade of the rack with a count of 1 or more")
	}
	b, err := newBench(sc, *sc.Mesh, &bare, pressOf(j, &bare), demand{}, 0, job.Date{})
	if err != nil {
		return fail("mesh", err.Error(), "a mesh whose threads leave an opening, such as 156-64")
	}
	o, err := b.try(setup{stock: racked.stocks[0], angleDeg: s.angleDeg, strokes: s.strokes}, slip{})
	switch {
	case err != nil:
		return fail("row", err.Error(), "a setup inside the ranges of the formulas")
	case o.fault != "":
		return fail("angle", "this setup gives no figure: "+o.why.Error(), "a setup that stands on its edge and clears the screen")
	}
	return foretold{mesh: b.meshName, blade: bladeName(racked.stocks[0]), ink: sc.Ink, shoreA: racked.stocks[0].Hardness[0], curedUM: o.curedUM}
}

// LogOf is an empty log of a plan: a row a screen with its setup, to fill in what was measured.
func LogOf(p *plan.Plan) []presslog.Row {
	var out []presslog.Row
	for _, l := range p.Locations {
		for _, s := range l.Screens {
			r := presslog.Empty()
			r.Job, r.Location, r.Screen, r.Press = p.Job, l.Name, fmt.Sprint(s.Number), p.Press.Name
			r.Mesh, r.EOMUM, r.FeatureMM = s.Mesh.Name, math.Round(10*s.Stencil.EOMUM)/10, s.Stencil.FeatureMM
			r.Ink, r.Blade, r.AngleDeg, r.LoadNCM, r.Strokes = s.Ink, s.Blade.Name, s.AngleDeg.Set, s.LoadNPerCM, s.Strokes
			out = append(out, r)
		}
	}
	return out
}

// CalibrationOf is what a shop file keeps of a fit.
func CalibrationOf(r fit.Result, day job.Date) *job.Calibration {
	t := r.Terms()
	round := func(v float64) float64 { return math.Round(1e4*v) / 1e4 }
	c := &job.Calibration{
		Factor: round(t.Shop.Value), Error: round(t.Shop.Error), Scatter: math.Max(0.01, round(t.Scatter)), Count: t.Count, Date: day,
		MeanDeg: round(t.MeanDeg), MeanShoreA: round(t.MeanShoreA), MeanSlope: round(t.MeanSlope),
		Angle: round(t.Angle.Value), AngleError: round(t.Angle.Error), Hardness: round(t.Hardness.Value), HardnessError: round(t.Hardness.Error),
		NextStroke: round(t.NextStroke.Value), NextStrokeError: round(t.NextStroke.Error), Blades: t.Blades,
	}
	for _, m := range t.Meshes {
		c.Meshes = append(c.Meshes, job.MeshFactor{Name: m.Name, Factor: round(m.Factor), Error: round(m.Error), Count: m.Count})
	}
	return c
}
