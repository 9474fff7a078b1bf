package fit

import (
	"math"
	"slices"
)

// Foretell returns what a fit of prints that are still to be made is expected to know. Its terms have the values
// that are taken beforehand and the errors that such prints leave; the measured films are not looked at.
//
// Range: Least to 1 000 000 prints of at most MostMeshes meshes; ErrFew or an error below, beyond and for
// setups that Shop does not take. Kind: derived; the errors of penalised least squares depend on where
// is measured and on the scatter, not on what is measured (textbook; Atkinson, Donev and Tobias 2007,
// Optimum Experimental Designs, chapter 9, from memory).
func Foretell(prints []Print, pr Priors) (Result, error) {
	planned := slices.Clone(prints)
	for i := range planned {
		planned[i].MeasuredUM = planned[i].PredictedUM
	}
	if err := check(planned); err != nil {
		return Result{}, err
	}
	f := newFitter(planned, pr)
	if err := f.step(); err != nil {
		return Result{}, err
	}
	f.free = f.freedom()
	return f.result(nil)
}

// NewDay is one sigma of how far the film of a setup may be off on a day that is not among the prints,
// on the logarithm: what the fit leaves open, the day and the scatter of a print.
//
// Range: any setup that Shop takes; 0 strokes or more than 20 are an error. Kind: derived, the
// fitted terms with all of their covariances.
func (r Result) NewDay(p Print) (float64, error) {
	_, slope, err := strokes(p.Strokes, r.NextStroke.Value)
	if err != nil {
		return 0, err
	}
	at := entry{angle: (p.AngleDeg - r.MeanDeg) / 10, hardness: (p.HardnessShoreA - r.MeanShoreA) / 10, slope: slope}
	unseen := 0.0
	if c, known := r.index[p.Mesh]; known {
		at.mesh = c
	} else {
		unseen = r.prior.Mesh
	}
	return math.Sqrt(square(r.Scatter)*(1+r.sol.spread(at)) + square(unseen) + square(r.Day)), nil
}
