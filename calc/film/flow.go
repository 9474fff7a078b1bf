package film

import "math"

// Flow is the flow curve of an ink, eta = EtaInf + K rate^(N-1). K = 0 is a Newtonian ink.
type Flow struct {
	EtaInfPaS float64 // viscosity at very high shear
	KPaSn     float64 // consistency
	N         float64 // power-law index
}

// DefaultFlow is the flow curve of an ink of which nothing is known (from memory: a body like
// a screen ink's, no one ink's).
var DefaultFlow = Flow{EtaInfPaS: 3, KPaSn: 50, N: 0.5}

func (f Flow) check() error {
	return first(
		within("viscosity at high shear", f.EtaInfPaS, 0.001, 1000, "Pa s"),
		within("consistency", f.KPaSn, 0, 5000, "Pa s^n"),
		within("power-law index", f.N, 0.05, 1, "(a number)"))
}

// ViscosityPaS is the viscosity in Pa s at a shear rate in 1/s.
//
// Range: rate 1e-6 to 1e9 1/s; EtaInf 0.001 to 1000 Pa s, K 0 to 5000 Pa s^n, N 0.05 to 1; an
// error outside. Kind: textbook form (a power law on a plateau), the default's figures from
// memory.
func (f Flow) ViscosityPaS(rate float64) (float64, error) {
	if err := first(f.check(), within("shear rate", rate, 1e-6, 1e9, "1/s")); err != nil {
		return 0, err
	}
	return f.viscosity(rate), nil
}

func (f Flow) viscosity(rate float64) float64 {
	return f.EtaInfPaS + f.KPaSn*math.Pow(rate, f.N-1)
}
