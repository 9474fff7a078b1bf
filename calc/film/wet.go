package film

// Tau is the share of the deposit of Lay that is measured as wet film: 0.76, the median of what
// the published wet-height rule asks of the reference blade over all choices
// of seven customary cloths from 110 to 305 per inch; the choices run from 0.67 to 0.87. A rig study
// found about half of the mesh volume filled (published, of which only the abstract was read: a
// doctoral thesis on the mechanics of screen printing, EThOS 422613 [10]). Kind: calibrated on a published
// rule, not on measurements. A shop's own factor comes on top. The wet film is Tau x deposit x Strokes x that
// factor, and the cured film wet film x volume solids.
const Tau = 0.76

// NextStrokeShare is the default share q of a stroke's deposit that the next wet stroke adds, and
// LeastNextStroke and MostNextStroke what it may be (from memory: no measurement was found).
const (
	NextStrokeShare = 0.4
	LeastNextStroke = 0.1
	MostNextStroke  = 0.8
)

// Strokes is the deposit of n wet strokes in a row over that of one, 1 + q + q^2 ... A stroke
// after a flash is not one of them: it starts a new row.
//
// Range: n 1 to 20, q 0 to 0.95; an error outside. Kind: from memory, see NextStrokeShare.
func Strokes(n int, q float64) (float64, error) {
	if err := first(
		within("number of strokes", float64(n), 1, 20, "strokes"),
		within("share of the next stroke", q, 0, 0.95, "(a share)")); err != nil {
		return 0, err
	}
	sum, term := 0.0, 1.0
	for range n {
		sum += term
		term *= q
	}
	return sum, nil
}

// CuredUM is the cured film in micrometres, wet film x volume solids.
//
// Range: wet film 0 to 1e5 um, volume solids 0.01 to 1; an error outside. Kind: derived; 100 %
// solids of plastisol are published, other solids come with the ink.
func CuredUM(wetUM, solids float64) (float64, error) {
	if err := first(
		within("wet film", wetUM, 0, 1e5, "um"),
		within("volume solids", solids, 0.01, 1, "(a share)")); err != nil {
		return 0, err
	}
	return wetUM * solids, nil
}
