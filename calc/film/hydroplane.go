package film

import (
	"fmt"
	"math"

	"bladecard/calc/blade"
)

// FloatRatio is the lift ratio from which the blade is taken to float on the ink (derived: the
// film grows without a bound that the model could tell from there on).
const FloatRatio = 0.8

// ErrFloats is the error of a setup in which the blade floats on the ink: no film can be told
// but that it is more than any other. Get at it with errors.As.
type ErrFloats struct {
	LiftRatio    float64 // lift of the ink / line load
	EdgeAngleDeg float64
	LoadNPerCM   float64
	SpeedMPerS   float64
}

// Error tells a printer what happens and what would mend it.
func (e ErrFloats) Error() string {
	return fmt.Sprintf("the blade floats on the ink: at an edge angle of %.0f°, %g N/cm and %g m/s the ink carries %.0f %% of the load (more than %.0f %%) and the screen will not clear; a more upright angle, a harder blade or more load is needed",
		e.EdgeAngleDeg, e.LoadNPerCM, e.SpeedMPerS, 100*e.LiftRatio, 100*FloatRatio)
}

// Hydroplane is the film in micrometres that a leaning blade leaves on the screen because the
// ink wedge lifts it, and the lift ratio F/W of the ink's lift to the line load. With the
// contact half-width a_c = sqrt(4 W R (1 - nu^2)/(pi E)) and the bead radius Rb,
//
//	F = 2 G I,  I = eta_inf U ln(Rb/a_c) + K U^n (Rb^(1-n) - a_c^(1-n))/(1-n)
//	film = 0.5 Rb (a_c/Rb)^(W/F)
//
// Above a lift ratio of FloatRatio the film is not to be believed; Stroke refuses it.
//
// Range: contact as in EdgeFilmUM, wedge 1 to 179 deg, bead radius 0.1 to 100 mm and larger
// than the contact; an error outside. Kind: derived, Taylor's wedge pressure summed from the
// Hertz contact to the bead.
func Hydroplane(c Contact, wedgeDeg, beadMM float64) (filmUM, liftRatio float64, err error) {
	if err := first(
		c.check(),
		within("wedge angle", wedgeDeg, 1, 179, "deg"),
		within("bead radius", beadMM, 0.1, 100, "mm")); err != nil {
		return 0, 0, err
	}
	g, err := WedgePressureFactor(wedgeDeg)
	if err != nil {
		return 0, 0, err
	}
	w, r, rb := c.LoadNPerCM*100, c.RadiusMM/1e3, beadMM/1e3
	ac := math.Sqrt(4 * w * r * (1 - blade.Poisson*blade.Poisson) / (math.Pi * c.ModulusMPa * 1e6))
	if !(ac < rb) {
		return 0, 0, fmt.Errorf("film: the edge is pressed flat over %.3g mm, more than the ink bead of %g mm; a larger bead, a harder blade or less load is accepted", ac*1e3, beadMM)
	}
	sum := c.Flow.EtaInfPaS * c.SpeedMPerS * math.Log(rb/ac)
	if m := 1 - c.Flow.N; m > 0 {
		sum += c.Flow.KPaSn * math.Pow(c.SpeedMPerS, c.Flow.N) * (math.Pow(rb, m) - math.Pow(ac, m)) / m
	} else {
		sum += c.Flow.KPaSn * c.SpeedMPerS * math.Log(rb/ac)
	}
	lift := 2 * g * sum
	return 0.5 * beadMM * 1e3 * math.Pow(ac/rb, w/lift), lift / w, nil
}
