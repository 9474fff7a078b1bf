package tension

import (
	"fmt"
	"math"
)

// steepest is the largest gap over the distance to the frame that the small-angle formulas
// take: at 1/4 they are 1.5 % above the exact path.
const steepest = 0.25

// membrane checks a blade at a and b from the ends of its span.
func membrane(offContactMM, aMM, bMM float64) error {
	if err := first(
		within("off-contact", offContactMM, 0, 50, "mm"),
		within("distance to the frame", aMM, 1, 5000, "mm"),
		within("distance to the other side of the frame", bMM, 1, 5000, "mm")); err != nil {
		return err
	}
	if near := math.Min(aMM, bMM); offContactMM > steepest*near {
		return fmt.Errorf("tension: the blade is %g mm from the frame at %g mm off-contact, too near for a membrane; %g mm or more is accepted", near, offContactMM, offContactMM/steepest)
	}
	return nil
}

// ImageShiftMM is how far from its place in the resting cloth a point prints when the blade
// stands on it, in mm:
//
//	(h^2 / 2) (1/a - 1/b)
//
// Above zero the print lies nearer to the end that a is measured from; in mid-span it is zero.
// Each end of an image shifts outward, so the image prints longer.
//
// Range: off-contact 0 to 50 mm, distances 1 to 5000 mm and at least 4 times the off-contact; an error
// outside. Kind: derived (small angles, at most 1.5 % above the exact path).
func ImageShiftMM(offContactMM, aMM, bMM float64) (float64, error) {
	if err := membrane(offContactMM, aMM, bMM); err != nil {
		return 0, err
	}
	return offContactMM * offContactMM / 2 * (1/aMM - 1/bMM), nil
}

// StretchMM is how much longer than its film an image prints, in mm, when it stands in the
// middle of the span with the same margin to the frame at both ends: twice ImageShiftMM,
//
//	h^2 (1/m - 1/(L - m))   with the margin m
//
// Range: off-contact 0 to 50 mm, margin 1 mm to half the span and at least 4 times the
// off-contact, span to 5000 mm; an error outside. Kind: derived.
func StretchMM(offContactMM, spanMM, marginMM float64) (float64, error) {
	if err := first(
		within("span", spanMM, 2, 5000, "mm"),
		within("margin", marginMM, 1, spanMM/2, "mm")); err != nil {
		return 0, err
	}
	shift, err := ImageShiftMM(offContactMM, marginMM, spanMM-marginMM)
	return 2 * shift, err
}

// TouchForceNPerCM is the line load in N per cm of blade that it takes to bring the cloth down
// to the stock; only what is left of the blade's load presses on the print:
//
//	T h (1/a + 1/b)   with the tension T
//
// Range: tension 1 to 100 N/cm, the rest as ImageShiftMM; an error outside. Kind: derived; the
// cloth beside the ends of the blade and the change of tension are left out.
func TouchForceNPerCM(tensionNPerCM, offContactMM, aMM, bMM float64) (float64, error) {
	if err := first(
		within("tension", tensionNPerCM, 1, 100, "N/cm"),
		membrane(offContactMM, aMM, bMM)); err != nil {
		return 0, err
	}
	return tensionNPerCM * offContactMM * (1/aMM + 1/bMM), nil
}

// PeelAngleDeg is the angle in degrees at which the cloth leaves the stock behind the blade,
// atan(h/a), with the distance a from the blade to the frame behind it. It is largest near the
// start of the stroke and falls as the blade goes on.
//
// Range: off-contact 0 to 50 mm, distance 1 to 5000 mm; an error outside. Kind: derived.
func PeelAngleDeg(offContactMM, aMM float64) (float64, error) {
	if err := first(
		within("off-contact", offContactMM, 0, 50, "mm"),
		within("distance to the frame", aMM, 1, 5000, "mm")); err != nil {
		return 0, err
	}
	return math.Atan2(offContactMM, aMM) * 180 / math.Pi, nil
}
