package mesh

import "fmt"

// OpeningUM is the clear width between two threads in micrometres, pitch - thread, on the
// nominal thread diameter.
//
// Range: pitch 25 to 20 000 um, thread 5 to 10 000 um and thinner than the pitch; an error
// outside. Geometry only: measured openings lie 0 to 15 % below it, on tight twill 27 %.
// Source: weaver's screen specifications, nt-jp.com [13]; ASTM E11-01 [19] Table 1 [19] (published).
func OpeningUM(pitchUM, threadUM float64) (float64, error) {
	if err := first(
		within("pitch", pitchUM, 25, 20000, "um"),
		within("thread", threadUM, 5, 10000, "um")); err != nil {
		return 0, err
	}
	if threadUM >= pitchUM {
		return 0, fmt.Errorf("mesh: thread %g um fills the whole pitch of %g um, no opening is left; a thread thinner than the pitch is accepted", threadUM, pitchUM)
	}
	return pitchUM - threadUM, nil
}

// OpenArea is the share of the cloth that is open, (opening/pitch)^2, 0 to 1.
//
// Range: pitch 25 to 20 000 um, opening above 0 and below the pitch; an error outside.
// Source: weaver's screen specifications, nt-jp.com [13]; wire-cloth makers [17] (published).
func OpenArea(openingUM, pitchUM float64) (float64, error) {
	if err := within("pitch", pitchUM, 25, 20000, "um"); err != nil {
		return 0, err
	}
	if !(openingUM > 0 && openingUM < pitchUM) {
		return 0, fmt.Errorf("mesh: opening %g um does not fit a pitch of %g um; above 0 and below the pitch is accepted", openingUM, pitchUM)
	}
	r := openingUM / pitchUM
	return r * r, nil
}

// Coefficients of the thickness fit.
const (
	fabricBase  = 1.156
	fabricSlope = 0.845
	twillExcess = 1.07
)

// FabricUM is the thickness of the woven cloth in micrometres when no measured one is given:
// thread x (1.156 + 0.845 thread/pitch), 7 % more for a twill.
//
// Range: thread 5 to 10 000 um, thread/pitch 0.1 to 0.8; an error outside. Good to about 6 %
// on plain polyester from thread/pitch 0.29 to 0.48. Kind: derived, a straight line through
// five published plain meshes (among them nt-jp.com [13] 225-40: 59 um, 225-48: 72 um; Screen
// Printing, June 2009 [15], 305-40: 63 um); twill after one published cloth (AGH Krakow [14], 480-31:
// 55 um).
func FabricUM(threadUM, pitchUM float64, twill bool) (float64, error) {
	if err := first(
		within("pitch", pitchUM, 25, 20000, "um"),
		within("thread", threadUM, 5, 10000, "um"),
		within("thread/pitch", threadUM/pitchUM, 0.1, 0.8, "(a ratio)")); err != nil {
		return 0, err
	}
	f := threadUM * (fabricBase + fabricSlope*threadUM/pitchUM)
	if twill {
		f *= twillExcess
	}
	return f, nil
}

// VolumeUM is the theoretical ink volume, open area x fabric thickness. A volume per area,
// it reads as micrometres or as cm3/m2 alike.
//
// Range: open area above 0 to 1, thickness 5 to 20 000 um; an error outside. Source: weaver's
// screen specifications, nt-jp.com [13] (published).
func VolumeUM(openArea, fabricUM float64) (float64, error) {
	if !(openArea > 0 && openArea <= 1) {
		return 0, fmt.Errorf("mesh: open area %g is out of range; a share above 0 and up to 1 is accepted", openArea)
	}
	if err := within("fabric thickness", fabricUM, 5, 20000, "um"); err != nil {
		return 0, err
	}
	return openArea * fabricUM, nil
}
