package film

import (
	"fmt"
	"math"

	"bladecard/calc/blade"
)

// EdgeRadiusMM is the radius of a blade's edge in mm by its state: "new" 0.15, "used" 0.30,
// "worn" 0.45.
//
// Range: these three words; any other is an error.
//
// Kind: from memory; a worn edge lays more (published: Coatings 2014, 4, 356 [9]).
func EdgeRadiusMM(edge string) (float64, error) {
	switch edge {
	case "new":
		return 0.15, nil
	case "used":
		return 0.30, nil
	case "worn":
		return 0.45, nil
	}
	return 0, fmt.Errorf("film: edge %q is not known; new, used and worn are accepted", edge)
}

// Contact is the edge of a blade on the mesh.
type Contact struct {
	ModulusMPa float64 // Young's modulus of the layer that prints
	RadiusMM   float64 // edge radius
	LoadNPerCM float64 // line load
	SpeedMPerS float64 // print stroke
	Flow       Flow
}

func (c Contact) check() error {
	return first(
		within("modulus of the printing layer", c.ModulusMPa, 0.1, 1000, "MPa"),
		within("edge radius", c.RadiusMM, 0.01, 5, "mm"),
		within("line load", c.LoadNPerCM, 0.1, 100, "N/cm"),
		within("stroke speed", c.SpeedMPerS, 0.001, 10, "m/s"),
		c.Flow.check())
}

// EdgeFilmUM is the whole film under the edge in micrometres, of which half stays on the
// print: soft elastohydrodynamic lubrication of a line contact,
//
//	h = 3.10 R (eta U/2/(E' R))^0.6 (W/(E' R))^-0.2,  E' = 2 E/(1 - nu^2)
//
// with the viscosity at the shear rate U/h, solved as a fixed point.
//
// Range: modulus 0.1 to 1000 MPa, edge radius 0.01 to 5 mm, load 0.1 to 100 N/cm, speed 0.001
// to 10 m/s, flow as in ViscosityPaS; an error outside. Source: Herrebrugh 1968 [7] (published;
// the constant from memory, it agrees within 0.3 % with Moes' [8] 2.05 x 2^0.6).
func EdgeFilmUM(c Contact) (float64, error) {
	if err := c.check(); err != nil {
		return 0, err
	}
	e := 2 * c.ModulusMPa * 1e6 / (1 - blade.Poisson*blade.Poisson)
	r := c.RadiusMM / 1e3
	load := math.Pow(c.LoadNPerCM*100/(e*r), -0.2)
	film := func(eta float64) float64 {
		return 3.10 * r * math.Pow(eta*c.SpeedMPerS/2/(e*r), 0.6) * load
	}
	// In ln h the map has a slope of at most 0.6 (1 - N) < 0.6: it contracts from any start.
	h := film(c.Flow.EtaInfPaS)
	for range 100 {
		next := film(c.Flow.viscosity(c.SpeedMPerS / h))
		done := math.Abs(next-h) <= 1e-13*h
		h = next
		if done {
			break
		}
	}
	return h * 1e6, nil
}
