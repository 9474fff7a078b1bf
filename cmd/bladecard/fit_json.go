package main

import (
	"math"

	"bladecard/calc/file"
	"bladecard/calc/fit"
	"bladecard/calc/job"
)

// fitted is what a fit says, as JSON. Factors are measured over computed film; errors are standard
// errors, those of factors relative.
type fitted struct {
	Prints      int             `json:"prints"`
	Used        int             `json:"used"`
	Date        string          `json:"date,omitempty"` // of the last measurement
	Meshes      []fittedMesh    `json:"meshes"`
	Other       fittedTerm      `json:"other_mesh"` // of any other mesh
	Angle       fittedTerm      `json:"angle_per_10_deg"`
	Hardness    fittedTerm      `json:"hardness_per_10_shore_a"`
	NextStroke  fittedTerm      `json:"next_stroke"`
	Scatter     float64         `json:"scatter"`
	LeaveOut    float64         `json:"leave_out"` // how far each print lies from what the others tell
	Outliers    []fittedOutlier `json:"outliers"`
	Unwiped     []int           `json:"unwiped"`     // lines of prints that are left out, since ink stayed in the screen
	Calibration string          `json:"calibration"` // the block of a shop file
}

type fittedMesh struct {
	Mesh   string  `json:"mesh"`
	Factor float64 `json:"factor"`
	Error  float64 `json:"error"`
	Count  int     `json:"count"`
}

type fittedTerm struct {
	Value float64 `json:"value"`
	Error float64 `json:"error"`
	Told  bool    `json:"told"` // false: the prints do not tell, and the value is the usual one
}

type fittedOutlier struct {
	Line       int     `json:"line"` // of the log
	MeasuredUM float64 `json:"measured_um"`
	ExpectedUM float64 `json:"expected_um"`
}

func newFitted(r fit.Result, o *fitting, cal *job.Calibration) fitted {
	round := func(x float64) float64 { return math.Round(1e6*x) / 1e6 }
	term := func(e fit.Estimate) fittedTerm { return fittedTerm{round(e.Value), round(e.Error), e.Told} }
	out := fitted{
		Prints: len(o.prints), Used: r.Count, Other: term(r.Shop), Angle: term(r.Angle), Hardness: term(r.Hardness), NextStroke: term(r.NextStroke),
		Scatter: round(r.Scatter), LeaveOut: round(r.LeaveOut), Meshes: []fittedMesh{}, Outliers: []fittedOutlier{}, Unwiped: append([]int{}, o.unwiped...), Date: cal.Date.ISO(), Calibration: file.CalibrationText(cal),
	}
	for _, m := range r.Meshes {
		out.Meshes = append(out.Meshes, fittedMesh{m.Name, round(m.Factor), round(m.Error), m.Count})
	}
	for _, o := range r.Outliers {
		out.Outliers = append(out.Outliers, fittedOutlier{o.Line, round(o.MeasuredUM), round(o.FittedUM)})
	}
	return out
}
