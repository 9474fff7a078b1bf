package ink

import (
	"fmt"
	"math"
)

// Swatch is the sRGB color of a swatch such as "#d02020"; known is false for a text of another form.
//
// Range: every text. Kind: derived, hexadecimal digits.
func Swatch(text string) (r, g, b uint8, known bool) {
	n, _ := fmt.Sscanf(text, "#%02x%02x%02x", &r, &g, &b)
	return r, g, b, n == 3
}

// Color is what a surface sends back of red, green and blue light, shares from 0 to 1.
type Color [3]float64

// bands is what red, green and blue light bring to the luminance.
var bands = Color{0.2126, 0.7152, 0.0722}

// luminance is the relative luminance of a color.
func (c Color) luminance() float64 { return bands[0]*c[0] + bands[1]*c[1] + bands[2]*c[2] }

// ColorOf is the linear light of an sRGB color.
//
// Range: every color. Source: IEC 61966-2-1 [36] (published; constants from memory).
func ColorOf(r, g, b uint8) Color {
	var out Color
	for i, v := range []uint8{r, g, b} {
		c := float64(v) / 255
		if out[i] = c / 12.92; c > 0.04045 {
			out[i] = math.Pow((c+0.055)/1.055, 2.4)
		}
	}
	return out
}

// Luminance is the relative luminance of an sRGB color, from 0 for black to 1 for white.
//
// Range: every color. Source: IEC 61966-2-1 [36] (published; constants from memory).
func Luminance(r, g, b uint8) float64 { return ColorOf(r, g, b).luminance() }

// Lightness is how light an sRGB color looks, from 0 for black to 1 for white: CIE 1976 L* over 100 of its
// relative luminance.
//
// Range: every color. Source: ISO/CIE 11664-4 and CIE 15 [37] for L* (published; constants from memory).
func Lightness(r, g, b uint8) float64 { return lStar(Luminance(r, g, b)) / 100 }

// DarkLightness is the lightness of an ink below which the dye of the cloth does not show in it (common
// practice).
const DarkLightness = 0.25

// LightnessOf is Lightness of a surface that reflects the given share of the light, 0 to 1: CIE 1976 L* over 100.
//
// Range: share 0 to 1; an error outside. Source: ISO/CIE 11664-4 and CIE 15 [37] (published; constants from memory).
func LightnessOf(share float64) (float64, error) {
	if err := within("reflectance", share, 0, 1, "(a share)"); err != nil {
		return 0, err
	}
	return lStar(share) / 100, nil
}

// lightnessDrop is by how much a film over a cloth looks darker than the same film where nothing shows
// through, in CIE 1976 L*; below 0 where the cloth is lighter than the film. A red or an orange hides black
// cloth worse than a gray of its lightness: what it sends back lies in one band, which the cloth takes away.
func lightnessDrop(sx float64, thick Color, rCloth float64) float64 {
	var over Color
	for i, r := range thick {
		over[i] = reflectance(sx, r, rCloth)
	}
	return lStar(thick.luminance()) - lStar(over.luminance())
}

// LightnessFilmUM is the cured film in um over a cloth that looks darker than the film where nothing shows
// through by no more than drop, in L*; 0 where the cloth is no darker than the ink. It lies on top: what
// sinks into a knit comes to it (OnKnitUM).
//
// Range: drop 0.5 to 50, the bands of the thick film 0.01 to 0.99, scattering 1 to 1000 per mm, cloth 0 to 1; an
// error outside. Kind: derived, Kubelka and Munk 1931 [32] in three bands with one scattering, over a gray cloth; what
// the cloth does to the hue is left out, and how the scattering of a pigment varies with the light. Source of L*:
// ISO/CIE 11664-4 and CIE 15 [37] (published; constants from memory).
func LightnessFilmUM(drop float64, thick Color, scatteringPerMM, rCloth float64) (float64, error) {
	if err := first(
		within("drop of the lightness", drop, 0.5, 50, "L*"),
		within("reflectance of the thick film for red", thick[0], 0.01, 0.99, "(a share)"),
		within("reflectance of the thick film for green", thick[1], 0.01, 0.99, "(a share)"),
		within("reflectance of the thick film for blue", thick[2], 0.01, 0.99, "(a share)"),
		within("scattering", scatteringPerMM, 1, 1000, "per mm"),
		within("reflectance of the cloth", rCloth, 0, 1, "(a share)")); err != nil {
		return 0, err
	}
	sx := leastSX(func(sx float64) bool { return lightnessDrop(sx, thick, rCloth) > drop })
	return sx / scatteringPerMM * 1e3, nil
}

// lStar is CIE 1976 L* of a luminance, 0 to 100.
func lStar(y float64) float64 {
	if y <= 216.0/24389 {
		return y * 24389 / 27
	}
	return 116*math.Cbrt(y) - 16
}
