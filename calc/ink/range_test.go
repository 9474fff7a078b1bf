package ink

import (
	"math"
	"testing"

	"bladecard/calc/internal/checks"
)

// TestRefusals gives every function what it must refuse; the error says what is accepted.
func TestRefusals(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	one := func(_ float64, err error) error { return err }
	knit := func(um float64) error { _, _, err := OnKnitUM(um); return err }
	for name, err := range map[string]error{
		"root, contrast 1":            one(SXOnCloth(1, 0.9, 0)),
		"root, contrast NaN":          one(SXOnCloth(nan, 0.9, 0)),
		"root, rInf NaN":              one(SXOnCloth(0.9, nan, 0)),
		"root, cloth NaN":             one(SXOnCloth(0.9, 0.9, nan)),
		"hiding, S 0":                 one(HidingOnClothUM(0.9, 0.9, 0, 0)),
		"hiding, S NaN":               one(HidingOnClothUM(0.9, 0.9, nan, 0)),
		"hiding, contrast 1.2":        one(HidingOnClothUM(1.2, 0.9, 80, 0)),
		"lightness, drop 0":           one(LightnessFilmUM(0, gray(0.5), 40, 0)),
		"lightness, rInf NaN":         one(LightnessFilmUM(5, Color{0.5, nan, 0.5}, 40, 0)),
		"lightness, scattering 0":     one(LightnessFilmUM(5, gray(0.5), 0, 0)),
		"lightness, cloth NaN":        one(LightnessFilmUM(5, gray(0.5), 40, nan)),
		"lightness of a share over 1": one(LightnessOf(1.1)),
		"lightness of NaN":            one(LightnessOf(nan)),
		"knit, NaN":                   knit(nan),
		"knit, below 0":               knit(-1),
		"shade, unknown":              one(ClothReflectance("navy")),
		"height, ratio 0.9":           one(HeightUM(100, 0.9)),
		"film for height, ratio NaN":  one(FilmForHeightUM(100, nan)),
		"volume, width 0":             one(VolumeML(0, 300, 0.5, 60)),
		"volume, height NaN":          one(VolumeML(300, nan, 0.5, 60)),
		"volume, coverage 1.1":        one(VolumeML(300, 300, 1.1, 60)),
		"volume, film inf":            one(VolumeML(300, 300, 0.5, inf)),
		"mass, density 0":             one(MassG(300, 300, 0.5, 60, 0)),
		"mass, coverage NaN":          one(MassG(300, 300, nan, 60, 1)),
		"run, prints below 0":         one(RunG(4, -1, 0.1, 0)),
		"run, ink NaN":                one(RunG(nan, 100, 0.1, 0)),
		"run, waste 2":                one(RunG(4, 100, 2, 0)),
		"run, stays NaN":              one(RunG(4, 100, 0.1, nan)),
		"volume of mass, NaN":         one(GToML(nan, 1)),
		"volume of mass, density inf": one(GToML(100, inf)),
	} {
		checks.Refused(t, "ink", name, err)
	}
}
