package ink

import (
	"math"
	"strings"
	"testing"
)

// TestRefusals gives every function what it must refuse; the error says what is accepted.
func TestRefusals(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	one := func(_ float64, err error) error { return err }
	knit := func(um float64) error { _, _, err := OnKnitUM(um); return err }
	for name, err := range map[string]error{
		"K/S, 0":                       one(KOverS(0)),
		"K/S, NaN":                     one(KOverS(nan)),
		"reflectance, sx below 0":      one(Reflectance(-1, 0.9, 0)),
		"reflectance, sx inf":          one(Reflectance(inf, 0.9, 0)),
		"reflectance, rInf 0":          one(Reflectance(1, 0, 0)),
		"reflectance, rInf over 1":     one(Reflectance(1, 1.01, 0)),
		"reflectance, ground NaN":      one(Reflectance(1, 0.9, nan)),
		"contrast, sx NaN":             one(ContrastRatio(nan, 0.9)),
		"contrast on cloth, cloth 2":   one(ContrastOnCloth(1, 0.9, 2)),
		"root, contrast 1":             one(SXForContrast(1, 0.9)),
		"root, contrast NaN":           one(SXForContrast(nan, 0.9)),
		"root, rInf NaN":               one(SXForContrast(0.9, nan)),
		"root, cloth NaN":              one(SXOnCloth(0.9, 0.9, nan)),
		"scattering, as thick film":    one(ScatteringPerMM(0.9, 0.9, 50)),
		"scattering, almost":           one(ScatteringPerMM(0.8911, 0.9, 50)),
		"scattering, over black 0":     one(ScatteringPerMM(0, 0.9, 50)),
		"scattering, over black NaN":   one(ScatteringPerMM(nan, 0.9, 50)),
		"scattering, film 0":           one(ScatteringPerMM(0.5, 0.9, 0)),
		"hiding, S 0":                  one(HidingFilmUM(0.9, 0.9, 0)),
		"hiding, S NaN":                one(HidingFilmUM(0.9, 0.9, nan)),
		"hiding, contrast 1.2":         one(HidingOnClothUM(1.2, 0.9, 80, 0)),
		"drop, sx NaN":                 one(LightnessDrop(nan, gray(0.5), 0)),
		"drop, cloth 2":                one(LightnessDrop(1, gray(0.5), 2)),
		"lightness, drop 0":            one(LightnessFilmUM(0, gray(0.5), 40, 0)),
		"lightness, rInf NaN":          one(LightnessFilmUM(5, Color{0.5, nan, 0.5}, 40, 0)),
		"lightness, scattering 0":      one(LightnessFilmUM(5, gray(0.5), 0, 0)),
		"lightness, cloth NaN":         one(LightnessFilmUM(5, gray(0.5), 40, nan)),
		"lightness of a share over 1":  one(LightnessOf(1.1)),
		"lightness of NaN":             one(LightnessOf(nan)),
		"knit, NaN":                    knit(nan),
		"knit, below 0":                knit(-1),
		"shade, unknown":               one(ClothReflectance("navy")),
		"expansion, share 0.6":         one(ExpansionRatio(0.6, 1200, 1000, 60)),
		"expansion, after > before":    one(ExpansionRatio(0.05, 1200, 1000, 1001)),
		"expansion, before NaN":        one(ExpansionRatio(0.05, 1200, nan, 60)),
		"expansion, ink inf":           one(ExpansionRatio(0.05, inf, 1000, 60)),
		"expansion, more than the ink": one(ExpansionRatio(0.5, 2400, 1000, 60)),
		"height, ratio 0.9":            one(HeightUM(100, 0.9)),
		"film for height, ratio NaN":   one(FilmForHeightUM(100, nan)),
		"film for rise, ratio 1":       one(FilmForRiseUM(100, 1)),
		"film for rise, rise inf":      one(FilmForRiseUM(inf, 2)),
		"volume, width 0":              one(VolumeML(0, 300, 0.5, 60)),
		"volume, height NaN":           one(VolumeML(300, nan, 0.5, 60)),
		"volume, coverage 1.1":         one(VolumeML(300, 300, 1.1, 60)),
		"volume, film inf":             one(VolumeML(300, 300, 0.5, inf)),
		"mass, density 0":              one(MassG(300, 300, 0.5, 60, 0)),
		"mass, coverage NaN":           one(MassG(300, 300, nan, 60, 1)),
		"run, prints below 0":          one(RunG(4, -1, 0.1, 0)),
		"run, ink NaN":                 one(RunG(nan, 100, 0.1, 0)),
		"run, waste 2":                 one(RunG(4, 100, 2, 0)),
		"run, stays NaN":               one(RunG(4, 100, 0.1, nan)),
		"volume of mass, NaN":          one(GToML(nan, 1)),
		"volume of mass, density inf":  one(GToML(100, inf)),
		"prints, 0 g":                  one(PrintsPerGallon(0, 1)),
		"prints, density NaN":          one(PrintsPerGallon(3, nan)),
		"coverage, film 0":             one(CoverageM2PerL(0)),
	} {
		if err == nil {
			t.Errorf("%s: taken", name)
		} else if !strings.HasPrefix(err.Error(), "ink: ") || !strings.Contains(err.Error(), "accepted") {
			t.Errorf("%s: the error does not tell what is accepted: %v", name, err)
		}
	}
}
