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

// Exact by definition: the pound of 1959, the US gallon of 231 cubic inches, its quart.
const (
	gPerLb     = 453.59237
	mlPerGal   = 3785.411784
	quartsAGal = 4
)

// GToLb turns grams into pounds.
//
// No range. Definition: 1 lb = 453.59237 g.
func GToLb(g float64) float64 { return g / gPerLb }

// MLToQuart turns millilitres into US quarts.
//
// No range. Definition: 1 US gallon = 231 in3 = 3785.411784 mL = 4 quarts.
func MLToQuart(ml float64) float64 { return ml / mlPerGal * quartsAGal }

// LbPerGalToKgPerL turns pounds per US gallon into kg/L.
//
// No range. Definition: see GToLb and MLToQuart.
func LbPerGalToKgPerL(lbPerGal float64) float64 { return lbPerGal * gPerLb / mlPerGal }

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

// PrintsPerGallon is how many prints a US gallon gives, without waste.
//
// Range: 0.001 to 1e5 g a print, density 0.5 to 3 kg/L; an error outside. Kind: derived; meets
// the published 1814 prints of 3 g from 12 lb/gal ("Calculating Ink Costs", 2011 [35]).
func PrintsPerGallon(gPerPrint, densityKgPerL float64) (float64, error) {
	if err := first(
		within("ink per print", gPerPrint, 0.001, 1e5, "g"),
		within("density", densityKgPerL, 0.5, 3, "kg/L")); err != nil {
		return 0, err
	}
	return mlPerGal * densityKgPerL / gPerPrint, nil
}

// CoverageM2PerL is the area in m2 that a litre covers with a wet film, 1000 / film.
//
// Range: film 0.1 to 1e4 um; an error outside. Kind: derived; meets the published 50 um at
// 20 m2/L (principle of ISO 2814 [34]).
func CoverageM2PerL(wetUM float64) (float64, error) {
	if err := within("wet film", wetUM, 0.1, 1e4, "um"); err != nil {
		return 0, err
	}
	return 1e3 / wetUM, nil
}
