package halftone

import "math"

// DotDiameterUM is the diameter in micrometres of a round dot that covers a share of its cell,
// D = 2 s sqrt(a/pi), with the cell side s = 25 400/lines um.
//
// Range: lines 1 to 1000 per inch; share 0.0001 to 0.785 (pi/4), where round dots begin to
// touch; an error outside. Kind: derived.
func DotDiameterUM(linesPerInch, share float64) (float64, error) {
	if err := first(checkLines(linesPerInch), within("dot", share, 1e-4, math.Pi/4, "of the cell (a share)")); err != nil {
		return 0, err
	}
	return 2 * umPerInch / linesPerInch * math.Sqrt(share/math.Pi), nil
}

// BlockedShare is the share of round dots that fall wholly on threads and print nothing, when
// dots lie anywhere on the cloth with equal chance. With the opening w = pitch - thread, the
// dot diameter D and the thread d:
//
//	D up to d:       1 - (w^2 + 2 w D + pi D^2/4)/p^2
//	up to 1.4142 d:  only the crossings hide the dot,
//	                 (d^2 - pi r^2 + 2 lens)/p^2, r = D/2,
//	                 lens = 2 r^2 acos(d/2r) - d/2 sqrt(4 r^2 - d^2)
//	larger:          0
//
// Range: dot 0.1 to 20 000 um, pitch 10 to 20 000 um, thread 1 um to the pitch; an error
// outside. Kind: derived (a disc meets a lattice of squares); a Monte Carlo test confirms it.
func BlockedShare(dotUM, threadUM, pitchUM float64) (float64, error) {
	if err := first(
		within("dot", dotUM, 0.1, 20000, "um"),
		within("pitch", pitchUM, 10, 20000, "um"),
		within("thread", threadUM, 1, pitchUM, "um")); err != nil {
		return 0, err
	}
	w, p2, r := pitchUM-threadUM, pitchUM*pitchUM, dotUM/2
	switch {
	case dotUM <= threadUM:
		return 1 - (w*w+2*w*dotUM+math.Pi*r*r)/p2, nil
	case dotUM < math.Sqrt2*threadUM:
		lens := 2*r*r*math.Acos(threadUM/dotUM) - threadUM/2*math.Sqrt(dotUM*dotUM-threadUM*threadUM)
		return math.Max(0, threadUM*threadUM-math.Pi*r*r+2*lens) / p2, nil
	}
	return 0, nil
}

// SmallestDotUM is the smallest dot in micrometres that a cloth holds dependably: two threads
// and one opening, so that stencil is held on both sides.
//
// Range: thread 1 to 10 000 um, opening 1 to 20 000 um; an error outside. Kind: common
// practice.
func SmallestDotUM(threadUM, openingUM float64) (float64, error) {
	if err := first(within("thread", threadUM, 1, 10000, "um"), within("opening", openingUM, 1, 20000, "um")); err != nil {
		return 0, err
	}
	return 2*threadUM + openingUM, nil
}
