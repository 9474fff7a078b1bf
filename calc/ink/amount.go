package ink

// VolumeML is the wet ink of one print in mL, area x coverage x wet film.
//
// Range: width and height 1 to 5000 mm, coverage 0 to 1, wet film 0 to 1e4 um; an error outside.
// Kind: derived.
func VolumeML(widthMM, heightMM, coverage, wetUM float64) (float64, error) {
	if err := first(
		within("width", widthMM, 1, 5000, "mm"),
		within("height", heightMM, 1, 5000, "mm"),
		within("coverage", coverage, 0, 1, "(a share)"),
		within("wet film", wetUM, 0, 1e4, "um")); err != nil {
		return 0, err
	}
	return widthMM * heightMM * coverage * wetUM * 1e-6, nil
}

// MassG is the wet ink of one print in g, area x coverage x wet film x density.
//
// Range: as VolumeML, density 0.5 to 3 kg/L; an error outside. Kind: derived.
func MassG(widthMM, heightMM, coverage, wetUM, densityKgPerL float64) (float64, error) {
	if err := within("density", densityKgPerL, 0.5, 3, "kg/L"); err != nil {
		return 0, err
	}
	ml, err := VolumeML(widthMM, heightMM, coverage, wetUM)
	return ml * densityKgPerL, err
}

// RunG is the ink to mix for a run in g: g per print x prints x (1 + waste) + what stays in the
// screen.
//
// Range: 0 to 1e5 g a print, 0 to 1e7 prints, waste 0 to 1 as a share of what is printed, 0 to
// 1e5 g stay; an error outside. Kind: derived; waste and what stays are the shop's own figures.
func RunG(gPerPrint float64, prints int, waste, staysG float64) (float64, error) {
	if err := first(
		within("ink per print", gPerPrint, 0, 1e5, "g"),
		within("quantity", float64(prints), 0, 1e7, "prints"),
		within("waste", waste, 0, 1, "(a share)"),
		within("ink that stays in the screen", staysG, 0, 1e5, "g")); err != nil {
		return 0, err
	}
	return gPerPrint*float64(prints)*(1+waste) + staysG, nil
}

// GToML is the volume in mL of a mass in g.
//
// Range: 0 to 1e9 g, density 0.5 to 3 kg/L; an error outside. Kind: definition of density.
func GToML(g, densityKgPerL float64) (float64, error) {
	if err := first(
		within("mass", g, 0, 1e9, "g"),
		within("density", densityKgPerL, 0.5, 3, "kg/L")); err != nil {
		return 0, err
	}
	return g / densityKgPerL, nil
}
