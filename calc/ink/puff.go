package ink

import "fmt"

// ExpansionRatio is the volume of a puff ink after the heat over that before it, from the mass
// share of microspheres in the ink and the densities in kg/m3 of the ink and of the spheres
// before and after:
//
//	1 + w rho_ink (1/rho_after - 1/rho_before)
//
// Range: share 0 to 0.5, ink and spheres before 500 to 3000 kg/m3, after 5 kg/m3 to the density
// before, and spheres no more than the ink has room for (w rho_ink <= rho_before); an error
// outside. Kind: derived (volumes add); densities of the spheres [38] are published.
func ExpansionRatio(share, inkKgPerM3, beforeKgPerM3, afterKgPerM3 float64) (float64, error) {
	if err := first(
		within("share of microspheres", share, 0, 0.5, "(a share)"),
		within("density of the ink", inkKgPerM3, 500, 3000, "kg/m3"),
		within("density of the spheres before the heat", beforeKgPerM3, 500, 3000, "kg/m3"),
		within("density of the spheres after the heat", afterKgPerM3, 5, beforeKgPerM3, "kg/m3")); err != nil {
		return 0, err
	}
	if share*inkKgPerM3 > beforeKgPerM3 {
		return 0, fmt.Errorf("ink: microspheres of %g kg/m3 with a share of %g take more than the whole ink of %g kg/m3; a share to %g is accepted", beforeKgPerM3, share, inkKgPerM3, beforeKgPerM3/inkKgPerM3)
	}
	return 1 + share*inkKgPerM3*(1/afterKgPerM3-1/beforeKgPerM3), nil
}

// HeightUM is the height in um of a film after the heat, film x ratio: the print is held by the
// cloth and grows upward only, which is an upper end.
//
// Range: film 0 to 1e4 um, ratio 1 to 40; an error outside. Kind: derived.
func HeightUM(filmUM, ratio float64) (float64, error) {
	if err := first(
		within("film", filmUM, 0, 1e4, "um"),
		within("expansion ratio", ratio, 1, 40, "(a ratio)")); err != nil {
		return 0, err
	}
	return filmUM * ratio, nil
}

// FilmForHeightUM is the film in um that stands at a height in um after the heat, height /
// ratio: HeightUM turned round.
//
// Range: height 0 to 1e5 um, ratio 1 to 40; an error outside. Kind: derived.
func FilmForHeightUM(heightUM, ratio float64) (float64, error) {
	if err := first(
		within("height", heightUM, 0, 1e5, "um"),
		within("expansion ratio", ratio, 1, 40, "(a ratio)")); err != nil {
		return 0, err
	}
	return heightUM / ratio, nil
}

// FilmForRiseUM is the film in um that the heat lifts by a rise in um, what it adds to the
// height: rise / (ratio - 1).
//
// Range: rise 0 to 1e5 um, ratio 1.01 to 40; an error outside. Kind: derived.
func FilmForRiseUM(riseUM, ratio float64) (float64, error) {
	if err := first(
		within("rise", riseUM, 0, 1e5, "um"),
		within("expansion ratio", ratio, 1.01, 40, "(a ratio)")); err != nil {
		return 0, err
	}
	return riseUM / (ratio - 1), nil
}
