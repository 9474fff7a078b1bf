package ink

import (
	"fmt"
	"math"
)

// WhiteBacking is the reflectance of the white ground of a contrast ratio, 0.80 (published:
// the principle of ISO 6504-1 [33]).
const WhiteBacking = 0.80

// The contrast ratios that count as hiding.
const (
	HidesFully   = 0.98 // published: the principle of ISO 6504-1 [33]
	HidesTextile = 0.90 // common practice: 0.90 to 0.95 is what whites on garments live with
)

// ScatteringDefaultPerMM is the scattering of a white screen ink when nothing was measured, 80
// per mm; 50 to 200 is likely (from memory: not published).
const ScatteringDefaultPerMM = 80.0

// KOverS is the absorption over the scattering of an ink, (1 - rInf)^2 / (2 rInf).
//
// Range: rInf 0.01 to 1; an error outside. Source: Kubelka and Munk 1931 [32] (published).
func KOverS(rInf float64) (float64, error) {
	if err := within("reflectance of the thick film", rInf, 0.01, 1, "(a share)"); err != nil {
		return 0, err
	}
	return (1 - rInf) * (1 - rInf) / (2 * rInf), nil
}

// Reflectance is the share of light that a film of scattering power sx sends back over a ground
// of the given reflectance:
//
//	R = (1 - Rg (a - b coth bSX)) / (a - Rg + b coth bSX)   a = (1/rInf + rInf)/2, b = sqrt(a^2 - 1)
//
// Over rInf itself it is rInf; a film of no power shows the ground.
//
// Range: sx 0 to 10 000, rInf 0.01 to 1, ground 0 to 1; an error outside. Source: Kubelka and
// Munk 1931 [32] (published).
func Reflectance(sx, rInf, rBacking float64) (float64, error) {
	if err := first(
		within("scattering power", sx, 0, 1e4, "(S x X)"),
		within("reflectance of the thick film", rInf, 0.01, 1, "(a share)"),
		within("reflectance of the ground", rBacking, 0, 1, "(a share)")); err != nil {
		return 0, err
	}
	return reflectance(sx, rInf, rBacking), nil
}

// reflectance is Reflectance with both sides of the fraction times sx, so that neither a film of
// no power nor an ink that absorbs nothing divides by zero.
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

// ContrastRatio is the reflectance of a film over black (0) over that of the same film over
// white (0.80): 0 without a film, 1 when the ground can't be told.
//
// Range: as Reflectance; an error outside. Source: Kubelka and Munk 1931 [32] with the grounds of the
// principle of ISO 6504-1 [33] (published).
func ContrastRatio(sx, rInf float64) (float64, error) { return ContrastOnCloth(sx, rInf, 0) }

// ContrastOnCloth is the contrast ratio against a cloth instead of black: the reflectance of a
// film over the cloth over that of the same film over white (0.80). On a light cloth it starts
// near 1, so less film is needed there; above 1 the cloth is lighter than the white ground.
//
// Range: as Reflectance; an error outside. Kind: derived, the contrast ratio with another dark
// ground.
func ContrastOnCloth(sx, rInf, rCloth float64) (float64, error) {
	r, err := Reflectance(sx, rInf, rCloth)
	if err != nil {
		return 0, err
	}
	return r / reflectance(sx, rInf, WhiteBacking), nil
}

// SXForContrast is the scattering power at which a film reaches a contrast ratio over black.
//
// Range: contrast 0 to 0.999, rInf 0.01 to 1; an error outside. Kind: derived (root of
// ContrastRatio).
func SXForContrast(contrast, rInf float64) (float64, error) { return SXOnCloth(contrast, rInf, 0) }

// SXOnCloth is the scattering power at which a film reaches the contrast ratio of
// ContrastOnCloth; 0 when the bare cloth reaches it.
//
// Range: contrast 0 to 0.999, rInf 0.01 to 1, cloth 0 to 1; an error outside. Kind: derived
// (root of ContrastOnCloth, which rises with sx for every cloth darker than the white ground,
// so that there is one root and bisection finds it).
func SXOnCloth(contrast, rInf, rCloth float64) (float64, error) {
	if err := first(
		within("contrast ratio", contrast, 0, 0.999, "(a ratio)"),
		within("reflectance of the thick film", rInf, 0.01, 1, "(a share)"),
		within("reflectance of the cloth", rCloth, 0, 1, "(a share)")); err != nil {
		return 0, err
	}
	short := func(sx float64) bool {
		return reflectance(sx, rInf, rCloth) < contrast*reflectance(sx, rInf, WhiteBacking)
	}
	if !short(0) {
		return 0, nil
	}
	low, high := 0.0, 1.0
	for short(high) {
		low, high = high, 2*high
	}
	for {
		mid := low + (high-low)/2
		if mid <= low || mid >= high {
			return high, nil
		}
		if short(mid) {
			low = mid
		} else {
			high = mid
		}
	}
}

// ScatteringPerMM is the scattering S of an ink, per mm, from one drawdown: the reflectance of a
// cured film over black, that of a film too thick to see through, and the film in um.
//
//	S X = arcoth((1 - a R0) / (b R0)) / b
//
// Range: thick film 0.01 to 1, over black above 0 and to 99 % of the thick film (nearer to it
// the film says nothing any more: a thinner drawdown is needed), film 1 to 5000 um; an error
// outside. Source: Kubelka and Munk 1931 [32], solved for SX (published).
func ScatteringPerMM(rOverBlack, rInf, filmUM float64) (float64, error) {
	if err := first(
		within("reflectance of the thick film", rInf, 0.01, 1, "(a share)"),
		within("film", filmUM, 1, 5000, "um")); err != nil {
		return 0, err
	}
	if !(rOverBlack > 0 && rOverBlack <= 0.99*rInf) {
		return 0, fmt.Errorf("ink: a reflectance of %g over black does not go with %g of the thick film; above 0 to %.4g is accepted, a thinner drawdown gives less", rOverBlack, rInf, 0.99*rInf)
	}
	a, b := ab(rInf)
	sx := rOverBlack / (1 - a*rOverBlack)
	if x := b * sx; x > 1e-6 {
		sx = math.Atanh(x) / b
	}
	return sx / filmUM * 1e3, nil
}

// HidingFilmUM is the cured film in um that reaches a contrast ratio over black. It lies on top:
// what sinks into a knit comes to it (OnKnitUM).
//
// Range: contrast 0 to 0.999, rInf 0.01 to 1, scattering 1 to 1000 per mm; an error outside.
// Kind: derived.
func HidingFilmUM(contrast, rInf, scatteringPerMM float64) (float64, error) {
	return HidingOnClothUM(contrast, rInf, scatteringPerMM, 0)
}

// HidingOnClothUM is the cured film in um that reaches a contrast ratio against a cloth of the
// given reflectance (ContrastOnCloth, ClothReflectance); 0 when the cloth needs no hiding. A
// light cloth needs less.
//
// Range: as HidingFilmUM, cloth 0 to 1; an error outside. Kind: derived.
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
