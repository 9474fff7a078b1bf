package plan

import (
	"math"

	"bladecard/calc/halftone"
	"bladecard/calc/job"
)

// demand is what a screen must do: a film and a cut.
type demand struct {
	target   Target
	finestMM float64
	coverMM  float64 // spread of an edge that is hidden by what is printed over it
	limitDeg float64 // most bent edge angle; noLimitDeg: none
	heavy    bool
	hard     bool // hard smooth stock
}

// noLimitDeg is above every edge angle that a blade can have without folding over.
const noLimitDeg = 90.0

// use is the screen's use, or solid where the job says none.
func use(s job.Screen) string {
	switch {
	case s.Use != "":
		return s.Use
	case s.Halftone != nil || s.BitmapDPI > 0:
		return "halftone"
	}
	return "solid"
}

// newDemand reads what the screen must do from the job, the ink class and the customs of the trade.
func newDemand(s job.Screen, hardStock bool) (demand, error) {
	rule := useRules[use(s)]
	d := demand{heavy: rule.heavy, hard: hardStock, coverMM: rule.coverMM, target: target(s)}
	var err error
	if d.finestMM, err = finestMM(s, rule); err != nil {
		return d, err
	}
	d.limitDeg = d.limitFor(d.finestMM)
	return d, nil
}

// limitFor is the most bent edge angle for the given smallest feature.
func (d demand) limitFor(finestMM float64) float64 {
	limit := edgeLimitDeg(finestMM + d.coverMM)
	switch {
	case d.hard:
		return math.Min(hardStockEdgeDeg, limit)
	case d.heavy:
		return noLimitDeg
	}
	return limit
}

// finestMM is the smallest feature that must hold: stated, or the smallest dot of the halftone,
// or the bitmap's dot, or what the use usually holds.
func finestMM(s job.Screen, rule useRule) (float64, error) {
	switch {
	case s.FinestMM > 0:
		return s.FinestMM, nil
	case s.Halftone != nil:
		share := s.Halftone.Smallest
		if share == 0 {
			share = rule.smallest
		}
		um, err := halftone.DotDiameterUM(s.Halftone.LinesPerInch, share)
		return um / 1000, err
	case s.BitmapDPI > 0:
		um, err := halftone.BitmapDotUM(s.BitmapDPI)
		return um / 1000, err
	}
	return rule.finestMM, nil
}

// target is the cured film that is asked for: the job's own, or the ink class's for the use, or
// for a solid where the class states none for the use.
func target(s job.Screen) Target {
	if s.FilmUM != nil {
		return Target{Low: s.FilmUM.Low, High: s.FilmUM.High, From: "job"}
	}
	if c := custom(s); c != nil && c.FilmUM != nil {
		return Target{Low: c.FilmUM.Low, High: c.FilmUM.High, From: "class"}
	}
	return Target{}
}

// custom is what the ink class says of the use; nil where it says nothing.
func custom(s job.Screen) *job.Custom {
	if c := s.Ink.Uses[use(s)]; c != nil {
		return c
	}
	return s.Ink.Uses["solid"]
}

// featureMM is the width of the typical feature, for the share of the stencil that counts.
func featureMM(s job.Screen) float64 {
	switch {
	case s.FeatureMM > 0:
		return s.FeatureMM
	case s.Halftone != nil || s.BitmapDPI > 0:
		return halftoneFeatureMM
	}
	return useRules[use(s)].featureMM
}

// eomUM is the emulsion over mesh: stated, or the class's for the use, or the use's customary share.
func eomUM(s job.Screen, fabricUM float64) float64 {
	e := s.EOM
	if e == nil {
		if c := custom(s); c != nil {
			e = c.EOM
		}
	}
	switch {
	case e == nil:
		return useRules[use(s)].eomShare * fabricUM
	case e.UM > 0:
		return e.UM
	}
	return e.Share * fabricUM
}
