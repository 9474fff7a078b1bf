package ink

import (
	"math"
	"testing"
)

// figure is a figure with what it should be.
type figure struct {
	what      string
	got       func() (float64, error)
	want, tol float64
	source    string
}

func hold(t *testing.T, figures []figure) {
	t.Helper()
	for _, c := range figures {
		got, err := c.got()
		if err != nil || !(math.Abs(got-c.want) <= c.tol) {
			t.Errorf("%s: %.8g, %v; want %g +- %g (%s)", c.what, got, err, c.want, c.tol, c.source)
		}
	}
}

func value(v float64, err error) func() (float64, error) {
	return func() (float64, error) { return v, err }
}

// times turns a figure into another unit.
func times(factor float64) func(float64, error) func() (float64, error) {
	return func(v float64, err error) func() (float64, error) { return value(v*factor, err) }
}

// TestHidingFigures holds the identities of the two-flux theory and the table of SX.
func TestHidingFigures(t *testing.T) {
	half, err := Reflectance(2, 0.9, 0.04)
	if err != nil {
		t.Fatal(err)
	}
	const km = "published: Kubelka and Munk 1931 [32], identity"
	hold(t, []figure{
		{"no absorption, SX 1 over black", value(Reflectance(1, 1, 0)), 0.5, 1e-9, km + " SX/(1 + SX)"},
		{"K/S at 0.5", value(KOverS(0.5)), 0.25, 1e-12, km},
		{"rInf over rInf", value(Reflectance(3, 0.9, 0.9)), 0.9, 1e-9, km},
		{"no film", value(Reflectance(0, 0.9, 0.3)), 0.3, 1e-12, km},
		{"thick film", value(Reflectance(1000, 0.9, 0.3)), 0.9, 1e-12, km},
		{"two half layers", value(Reflectance(2, 0.9, half)), 0.7887621293075258, 1e-9, km + ": layers add"},
		{"one whole layer", value(Reflectance(4, 0.9, 0.04)), 0.7887621293075258, 1e-9, km + ": layers add"},
		{"SX of a drawdown, 0.80 over black, 0.90", times(0.05)(ScatteringPerMM(0.80, 0.90, 50)), 4.378, 0.0005, "derived; principle of ISO 6504-1"},
		{"S of that drawdown at 50 um, per mm", value(ScatteringPerMM(0.80, 0.90, 50)), 88, 0.5, "derived"},
		{"no absorption, S from 0.5 over black at 10 um", value(ScatteringPerMM(0.5, 1, 10)), 100, 1e-9, km + " SX = R/(1 - R)"},
	})
	for rInf, row := range map[float64][3]float64{ // derived: a second program
		0.85: {3.49, 5.17, 7.67},
		0.88: {3.65, 5.55, 8.51},
		0.90: {3.75, 5.80, 9.14},
	} {
		for i, contrast := range []float64{0.90, 0.95, 0.98} {
			got, err := SXForContrast(contrast, rInf)
			if err != nil || !(math.Abs(got-row[i]) <= 0.0051) {
				t.Errorf("SX for %g at %g: %.4f, %v; want %g", contrast, rInf, got, err, row[i])
			}
		}
	}
}

// TestHidingFilms checks films against SX / S worked by hand, and by shade.
func TestHidingFilms(t *testing.T) {
	hold(t, []figure{
		{"0.90 over black at 0.88, 80 per mm, um", value(HidingFilmUM(0.90, 0.88, 80)), 3.65 / 80 * 1000, 0.1, "derived: SX/S"},
		{"0.98 over black at 0.90, 100 per mm, um", value(HidingFilmUM(0.98, 0.90, 100)), 9.14 / 100 * 1000, 0.1, "derived: SX/S"},
		{"cloth as light as asked", value(HidingOnClothUM(0.75, 0.88, 80, 0.6)), 0, 1e-12, "derived: 0.6/0.8"},
		{"cloth lighter than the white ground", value(HidingOnClothUM(0.98, 0.88, 80, 0.85)), 0, 0, "derived: nothing to hide"},
		{"dark", value(ClothReflectance("dark")), 0.04, 0, "from memory"},
		{"medium", value(ClothReflectance("medium")), 0.25, 0, "from memory"},
		{"light", value(ClothReflectance("light")), 0.6, 0, "from memory"},
	})
	low, high, err := OnKnitUM(45)
	if err != nil || low != 55 || high != 60 { // from memory: 10 to 15 um
		t.Errorf("45 um on a knit: %g to %g, %v", low, high, err)
	}
	if low, high, err := OnKnitUM(0); err != nil || low != 0 || high != 0 {
		t.Errorf("no film on a knit: %g to %g, %v", low, high, err)
	}
}

// TestAmountFigures holds amounts that others have printed, and exact arithmetic.
func TestAmountFigures(t *testing.T) {
	const (
		article = `published: "Calculating Ink Costs", 22 November 2011 [35]`
		gal     = 3.785411784 // L, exact
		ft2     = 0.09290304  // m2, exact
	)
	density := LbPerGalToKgPerL(12)
	hold(t, []figure{
		{"30 x 35 cm, 60 %, 60 um, 1.2 kg/L, g", value(MassG(300, 350, 0.6, 60, 1.2)), 4.536, 1e-9, "arithmetic"},
		{"12 lb/gal, kg/L", value(density, nil), 1.438, 0.0005, "derived"},
		{"12 lb/gal, g a gallon", value(density*gal*1000, nil), 5443, 0.5, article},
		{"12 lb/gal, 3 g, prints a gallon", value(PrintsPerGallon(3, density)), 1814, 1, article},
		{"a gallon at 1 mil, ft2", times(gal / ft2)(CoverageM2PerL(25.4)), 1604.17, 0.005, "definition: 231 in3"},
		{"50 um, m2/L", value(CoverageM2PerL(50)), 20, 1e-9, "published: principle of ISO 2814 [34]"},
		{"61.76 um, 10 x 12 in, 50 %, 1000 prints, mL", times(1000)(VolumeML(254, 304.8, 0.5, 61.76)), 2390.7, 0.1, "derived"},
		{"the same in gallons", times(1000 / (gal * 1000))(VolumeML(254, 304.8, 0.5, 61.76)), 0.6316, 0.00005, "derived"},
		{"the same in quarts", value(MLToQuart(2390.7), nil), 4 * 0.6316, 0.0005, "derived"},
		{"a pound", value(GToLb(453.59237), nil), 1, 1e-15, "definition"},
		{"4.536 g, 288 prints, 10 %, 150 g stay", value(RunG(4.536, 288, 0.1, 150)), 1587.0048, 1e-9, "arithmetic: 4.536 x 288 = 1306.368; x 1.1 = 1437.0048; + 150"},
		{"1587 g at 1.2 kg/L, mL", value(GToML(1587, 1.2)), 1322.5, 1e-9, "arithmetic"},
	})
}

// TestPuffFigures holds the expansion of a puff ink. A rise of 1 to 2 mm is published; at the
// ratio of 1.94 it asks for more than 1 mm of ink, so the inks that show it expand more.
func TestPuffFigures(t *testing.T) {
	hold(t, []figure{
		{"5 %, 1200, 1000 to 60 kg/m3", value(ExpansionRatio(0.05, 1200, 1000, 60)), 1.94, 0.001, "derived"},
		{"no microspheres", value(ExpansionRatio(0, 1200, 1000, 60)), 1, 0, "derived"},
		{"spheres that do not expand", value(ExpansionRatio(0.2, 1200, 1000, 1000)), 1, 1e-12, "derived"},
		{"spheres alone, 1000 to 30 kg/m3", value(ExpansionRatio(0.5, 2000, 1000, 30)), 33.3, 0.05, "derived from published densities [38]: the volume of the sphere alone"},
		{"150 um at 1.94, um high", value(HeightUM(150, 1.94)), 291, 1e-9, "derived"},
		{"291 um high at 1.94, um", value(FilmForHeightUM(291, 1.94)), 150, 1e-9, "derived"},
		{"1 mm of rise at 1.94, um", value(FilmForRiseUM(1000, 1.94)), 1063.8, 0.05, "derived"},
		{"1 mm of rise at 8, um", value(FilmForRiseUM(1000, 8)), 142.9, 0.05, "derived"},
	})
}
