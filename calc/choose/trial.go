package choose

import (
	"fmt"
	"math"

	"bladecard/calc/fit"
	"bladecard/calc/job"
	"bladecard/calc/presslog"
	"bladecard/calc/trials"
)

// The test patch of a trial is a solid square (common practice: large enough to weigh, small enough for any
// frame and blade), printed at the usual angles with one wet stroke and with two.
const (
	PatchMM        = 100.0
	patchEOMShare  = 0.15 // of the cloth: a usual emulsion (common practice)
	mostPatchAtOne = 2    // wet strokes
)

var patchAnglesDeg = []float64{10, 20, 30}

// Patches are the setups in which a shop can print the test patch, with the films that they give before
// anything is measured.
type Patches struct {
	Press, Ink string
	SideMM     float64 // of the patch, a square: a whole number of inches in a shop that works in them
	Setups     []fit.Print
	EOMUM      map[string]float64 // by mesh
}

// PatchesOf tries the patch with every blade at hand on every mesh of the shop. A setup that folds over or leaves
// ink in the screen is left out. An empty press is the shop's first, an empty ink its usual one.
// A press or an ink that the shop does not have is an error that names its key.
func PatchesOf(shop *job.Shop, press, ink string) (Patches, job.Errors) {
	out := Patches{Press: press, Ink: ink, SideMM: PatchMM, EOMUM: map[string]float64{}}
	if shop.Units == "inch" {
		out.SideMM = 25.4 * math.Round(PatchMM/25.4)
	}
	p := predictor{shop: shop, known: map[setting]foretold{}}
	seen := map[string]bool{}
	for _, m := range shop.Meshes {
		if seen[m.Name] {
			continue // the same cloth on other frames
		}
		seen[m.Name] = true
		for _, b := range shop.Blades {
			if b.Count == 0 {
				continue
			}
			for _, deg := range patchAnglesDeg {
				for strokes := 1; strokes <= mostPatchAtOne; strokes++ {
					f := p.foretell(setting{
						mesh: m.Name, blade: b.Name, ink: ink, press: press, eomUM: math.NaN(), featureMM: out.SideMM, angleDeg: deg, strokes: strokes,
					})
					switch {
					case f.fault.Column == "angle" || f.fault.Column == "row", f.fault == (presslog.Fault{}) && !f.clears:
						continue
					case f.fault != (presslog.Fault{}):
						return Patches{}, job.Errors{{Key: f.fault.Column, Wrong: f.fault.Wrong, Accepted: f.fault.Accepted}}
					}
					out.Press, out.Ink, out.EOMUM[f.mesh] = f.press, f.ink.Name, math.Round(f.eomUM)
					out.Setups = append(out.Setups, fit.Print{
						Mesh: f.mesh, Blade: f.blade, AngleDeg: deg, HardnessShoreA: f.shoreA, Strokes: strokes, PredictedUM: f.curedUM, MeasuredUM: f.curedUM,
					})
				}
			}
		}
	}
	return out, nil
}

// LogOfTrial is the log of a trial: a row a print with its setup, to fill in what was measured.
func LogOfTrial(t trials.Trial, p Patches) []presslog.Row {
	var out []presslog.Row
	for i, x := range t.Prints {
		r := presslog.Empty()
		r.Job, r.Location, r.Screen, r.Press, r.Mesh, r.EOMUM = "trial", "patch", fmt.Sprint(i+1), p.Press, x.Mesh, p.EOMUM[x.Mesh]
		r.FeatureMM, r.Ink, r.Blade, r.AngleDeg, r.Strokes = p.SideMM, p.Ink, x.Blade, x.AngleDeg, x.Strokes
		r.AreaCM2 = p.SideMM * p.SideMM / 100
		out = append(out, r)
	}
	return out
}
