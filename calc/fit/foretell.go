package fit

import "slices"

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
