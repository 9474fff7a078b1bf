package film

import (
	"fmt"
	"math"
)

// Prefill is the share of the column that a flood stroke leaves filled (from memory).
const Prefill = 0.5

// ductFactor is sqrt(8/56.9) = 0.375: Poiseuille flow in a square duct with f Re = 56.9 under
// the pressure 2 eta U G/r for the time dr/U.
const ductFactor = 0.375

// FillDepthUM is the depth in micrometres to which the wedge presses ink into an opening of
// this width while the blade passes, zw = 0.375 w sqrt(G ln(Rb/(w/2))). For a Newtonian ink
// viscosity and speed cancel: a thicker ink is pressed harder, a faster blade for less long.
//
// Range: opening 1 to 20 000 um, wedge 1 to 179 deg, bead radius 0.1 to 100 mm and larger than
// half the opening; an error outside. Kind: derived, Taylor's wedge pressure on Poiseuille
// flow in a square duct.
func FillDepthUM(openingUM, wedgeDeg, beadMM float64) (float64, error) {
	if err := first(
		within("opening", openingUM, 1, 20000, "um"),
		within("wedge angle", wedgeDeg, 1, 179, "deg"),
		within("bead radius", beadMM, 0.1, 100, "mm")); err != nil {
		return 0, err
	}
	half := openingUM / 2
	if !(beadMM*1e3 > half) {
		return 0, fmt.Errorf("film: a bead of %g mm radius is smaller than half an opening of %g um; above %g mm is accepted", beadMM, openingUM, half/1e3)
	}
	g, err := WedgePressureFactor(wedgeDeg)
	if err != nil {
		return 0, err
	}
	return ductFactor * openingUM * math.Sqrt(g*math.Log(beadMM*1e3/half)), nil
}

// Fill is the share of the column that is filled, 0 to 1: with z^2 = (prefill Dc)^2 + zw^2,
// (1 + (Dc/z)^4)^(-1/4), a smooth way from z/Dc (shallow) to 1 (deep).
//
// Range: column depth Dc 1 to 20 000 um, fill depth zw 0.001 to 1e6 um, prefill 0 to 1; an
// error outside. Kind: derived; the exponent 4 is from memory.
func Fill(columnUM, zwUM, prefill float64) (float64, error) {
	if err := first(
		within("column depth", columnUM, 1, 20000, "um"),
		within("fill depth", zwUM, 0.001, 1e6, "um"),
		within("prefill", prefill, 0, 1, "(a share)")); err != nil {
		return 0, err
	}
	z := math.Hypot(prefill*columnUM, zwUM)
	return math.Pow(1+math.Pow(columnUM/z, 4), -0.25), nil
}
