package choose

import (
	"bladecard/calc/ink"
	"bladecard/calc/job"
)

// inkLightness is how light a screen's ink is, CIE 1976 L* over 100: from its swatch, else from the whiteness of
// its class. A class of all colors without a swatch says nothing.
func inkLightness(s job.Screen) (light float64, known bool) {
	if l, known := lightness(s); known {
		return l, true
	}
	if s.Ink.Whiteness == 0 {
		return 0, false
	}
	l, err := ink.LightnessOf(s.Ink.Whiteness)
	return l, err == nil
}
