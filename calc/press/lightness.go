package press

import "math"

// Lightness is how light an sRGB colour looks, from 0 for black to 1 for white: CIE 1976 L* over
// 100 of its relative luminance.
//
// Range: every colour. Source: IEC 61966-2-1 for sRGB, CIE 15 for L* (published; constants from
// memory).
func Lightness(r, g, b uint8) float64 {
	linear := func(v uint8) float64 {
		c := float64(v) / 255
		if c <= 0.04045 {
			return c / 12.92
		}
		return math.Pow((c+0.055)/1.055, 2.4)
	}
	y := 0.2126*linear(r) + 0.7152*linear(g) + 0.0722*linear(b)
	if y <= 216.0/24389 {
		return y * 24389 / 27 / 100
	}
	return (116*math.Cbrt(y) - 16) / 100
}
