package ink

// HeightUM is the height in um of a film after the heat, film x ratio: the print is held by the
// cloth and grows upward only, which is an upper end.
//
// Range: film 0 to 1e4 um, ratio 1 to 40, since spheres alone grow 33-fold (published densities [38]); an error
// outside. Kind: derived.
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
