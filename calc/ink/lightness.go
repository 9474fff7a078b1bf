package ink

import "math"

// Luminance is the relative luminance of an sRGB color, from 0 for black to 1 for white.
//
// Range: every color. Source: IEC 61966-2-1 (published; constants from memory).
func Luminance(r, g, b uint8) float64 {
	linear := func(v uint8) float64 {
		c := float64(v) / 255
		if c <= 0.04045 {
			return c / 12.92
		}
		return math.Pow((c+0.055)/1.055, 2.4)
	}
	return 0.2126*linear(r) + 0.7152*linear(g) + 0.0722*linear(b)
}

// Lightness is how light an sRGB color looks, from 0 for black to 1 for white: CIE 1976 L* over 100 of its
// relative luminance.
//
// Range: every color. Source: ISO/CIE 11664-4 and CIE 15 for L* (published; constants from memory).
func Lightness(r, g, b uint8) float64 { return lStar(Luminance(r, g, b)) / 100 }

// LightnessOf is Lightness of a surface that reflects the given share of the light, 0 to 1: CIE 1976 L* over 100.
//
// Range: share 0 to 1; an error outside. Source: ISO/CIE 11664-4 and CIE 15 (published; constants from memory).
func LightnessOf(share float64) (float64, error) {
	if err := within("reflectance", share, 0, 1, "(a share)"); err != nil {
		return 0, err
	}
	return lStar(share) / 100, nil
}

// LightnessFilmUM is the cured film in um over a cloth that looks darker than the film where nothing shows
// through by no more than drop, in L*; 0 where the cloth is no darker than the ink. It lies on top: what
// sinks into a knit comes to it (OnKnitUM).
//
// Range: drop 0.5 to 50, rInf 0.01 to 1, scattering 1 to 1000 per mm, cloth 0 to 1; an error outside. Kind:
// derived, Kubelka and Munk 1931 on luminance alone: what the cloth does to the hue is left out, so a red on
// blue cloth may still turn.
func LightnessFilmUM(drop, rInf, scatteringPerMM, rCloth float64) (float64, error) {
	if err := first(
		within("drop of the lightness", drop, 0.5, 50, "L*"),
		within("reflectance of the thick film", rInf, 0.01, 1, "(a share)"),
		within("scattering", scatteringPerMM, 1, 1000, "per mm"),
		within("reflectance of the cloth", rCloth, 0, 1, "(a share)")); err != nil {
		return 0, err
	}
	sx := leastSX(func(sx float64) bool { return lStar(rInf)-lStar(reflectance(sx, rInf, rCloth)) > drop })
	return sx / scatteringPerMM * 1e3, nil
}

// lStar is CIE 1976 L* of a luminance, 0 to 100.
func lStar(y float64) float64 {
	if y <= 216.0/24389 {
		return y * 24389 / 27
	}
	return 116*math.Cbrt(y) - 16
}
