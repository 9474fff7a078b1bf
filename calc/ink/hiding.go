package ink

import (
	"fmt"
	"math"
)

// WhiteBacking is the reflectance of the white ground of a contrast ratio, 0.80 (published:
// the principle of ISO 6504-1 [33]).
const WhiteBacking = 0.80

// HidesTextile is the contrast ratio that counts as hiding, 0.90 (common practice: 0.90 to 0.95 is what
// whites on garments live with; the principle of ISO 6504-1 [33] asks for 0.98).
const HidesTextile = 0.90

// ScatteringDefaultPerMM is the scattering of a white screen ink when nothing was measured, 80
// per mm; 50 to 200 is likely (from memory: not published).
const ScatteringDefaultPerMM = 80.0

// reflectance is the share of light that a film of scattering power sx sends back over a ground of the
// reflectance rg, and rInf what a film sends back that shows no ground:
//
//	R = (1 - Rg (a - b coth bSX)) / (a - Rg + b coth bSX)   a = (1/rInf + rInf)/2, b = sqrt(a^2 - 1)
//
// Both sides of the fraction are taken times sx, so that neither a film of no power nor an ink that
// absorbs nothing divides by zero. Source: Kubelka and Munk 1931 [32] (published).
func reflectance(sx, rInf, rg float64) float64 {
	a, b := ab(rInf)
	z := b * sx
	c := 1 + z*z/3 // z coth z
	if z > 1e-4 {
		c = z / math.Tanh(z)
	}
	return (sx - rg*(a*sx-c)) / ((a-rg)*sx + c)
}

func ab(rInf float64) (a, b float64) { return (1/rInf + rInf) / 2, (1/rInf - rInf) / 2 }

// SXOnCloth is the scattering power at which a film reaches a contrast ratio: the reflectance of the film
// over the cloth over that of the same film over white (WhiteBacking). It is 0 when the bare cloth reaches it.
//
// Range: contrast 0 to 0.999, rInf 0.01 to 1, cloth 0 to 1; an error outside. Source: Kubelka and Munk 1931
// [32] (published), here with the cloth for the black of the principle of ISO 6504-1 [33] (derived). The ratio rises
// with sx for every cloth darker than the white ground, so that there is one root.
func SXOnCloth(contrast, rInf, rCloth float64) (float64, error) {
	if err := first(
		within("contrast ratio", contrast, 0, 0.999, "(a ratio)"),
		within("reflectance of the thick film", rInf, 0.01, 1, "(a share)"),
		within("reflectance of the cloth", rCloth, 0, 1, "(a share)")); err != nil {
		return 0, err
	}
	return leastSX(func(sx float64) bool {
		return reflectance(sx, rInf, rCloth) < contrast*reflectance(sx, rInf, WhiteBacking)
	}), nil
}

// leastSX is the least scattering power at which a film does not fall short any more, by bisection.
func leastSX(short func(sx float64) bool) float64 {
	if !short(0) {
		return 0
	}
	low, high := 0.0, 1.0
	for short(high) {
		low, high = high, 2*high
	}
	for {
		mid := low + (high-low)/2
		switch {
		case mid <= low || mid >= high:
			return high
		case short(mid):
			low = mid
		default:
			high = mid
		}
	}
}

// HidingOnClothUM is the cured film in um that reaches a contrast ratio against a cloth of the
// given reflectance (SXOnCloth, ClothReflectance); 0 when the cloth needs no hiding. A light cloth
// needs less. The film lies on top: what sinks into a knit comes to it (OnKnitUM).
//
// Range: as SXOnCloth, scattering 1 to 1000 per mm; an error outside. Kind: derived.
func HidingOnClothUM(contrast, rInf, scatteringPerMM, rCloth float64) (float64, error) {
	if err := within("scattering", scatteringPerMM, 1, 1000, "per mm"); err != nil {
		return 0, err
	}
	sx, err := SXOnCloth(contrast, rInf, rCloth)
	return sx / scatteringPerMM * 1e3, err
}

// The film that a first layer loses into a knit, in um (from memory).
const (
	KnitLossLowUM  = 10.0
	KnitLossHighUM = 15.0
)

// OnKnitUM is the film in um that a first layer must lay so that the given film stands on a
// knit: 10 to 15 um more. A film on another print loses nothing, and a film of 0 stays 0.
//
// Range: 0 to 1e5 um; an error outside. Kind: from memory.
func OnKnitUM(filmUM float64) (low, high float64, err error) {
	if err := within("film", filmUM, 0, 1e5, "um"); err != nil || filmUM == 0 {
		return 0, 0, err
	}
	return filmUM + KnitLossLowUM, filmUM + KnitLossHighUM, nil
}

// ClothReflectance is the customary reflectance of a cloth by its shade: dark 0.04, medium
// 0.25, light 0.6.
//
// Range: the three words; an error for any other. Kind: from memory.
func ClothReflectance(shade string) (float64, error) {
	switch shade {
	case "dark":
		return 0.04, nil
	case "medium":
		return 0.25, nil
	case "light":
		return 0.6, nil
	}
	return 0, fmt.Errorf("ink: the shade %q is not known; dark, medium and light are accepted", shade)
}
