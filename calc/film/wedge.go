package film

import "math"

// BeadMM is the radius of the ink roll before the blade in mm (from memory; it enters through
// its logarithm).
const BeadMM = 10.0

// WedgePressureFactor is G in the pressure of the ink wedge on the mesh, p(r) = 2 eta U G / r,
// for a wedge of the given angle between blade and mesh: G = sin^2 b / (b^2 - sin^2 b). It grows steeply
// as the blade leans: a flat wedge presses hard.
//
// Range: 1 to 180 deg; an error outside. Source: Taylor 1962 [6] (published).
func WedgePressureFactor(wedgeDeg float64) (float64, error) {
	if err := within("wedge angle", wedgeDeg, 1, 180, "deg"); err != nil {
		return 0, err
	}
	b := wedgeDeg * math.Pi / 180
	s2 := math.Sin(b) * math.Sin(b)
	return s2 / (b*b - s2), nil
}
