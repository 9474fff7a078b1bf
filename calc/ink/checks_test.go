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
	half := reflectance(2, 0.9, 0.04)
	const km = "published: Kubelka and Munk 1931 [32], identity"
	hold(t, []figure{
		{"no absorption, SX 1 over black", value(reflectance(1, 1, 0), nil), 0.5, 1e-9, km + " SX/(1 + SX)"},
		{"rInf over rInf", value(reflectance(3, 0.9, 0.9), nil), 0.9, 1e-9, km},
		{"no film", value(reflectance(0, 0.9, 0.3), nil), 0.3, 1e-12, km},
		{"thick film", value(reflectance(1000, 0.9, 0.3), nil), 0.9, 1e-12, km},
		{"two half layers", value(reflectance(2, 0.9, half), nil), 0.7887621293075258, 1e-9, km + ": layers add"},
		{"one whole layer", value(reflectance(4, 0.9, 0.04), nil), 0.7887621293075258, 1e-9, km + ": layers add"},
	})
	for rInf, row := range map[float64][3]float64{ // derived: a second program
		0.85: {3.49, 5.17, 7.67},
		0.88: {3.65, 5.55, 8.51},
		0.90: {3.75, 5.80, 9.14},
	} {
		for i, contrast := range []float64{0.90, 0.95, 0.98} {
			got, err := SXOnCloth(contrast, rInf, 0)
			if err != nil || !(math.Abs(got-row[i]) <= 0.0051) {
				t.Errorf("SX for %g at %g: %.4f, %v; want %g", contrast, rInf, got, err, row[i])
			}
		}
	}
}

// TestHidingFilms checks films against SX / S worked by hand, and by shade.
func TestHidingFilms(t *testing.T) {
	hold(t, []figure{
		{"0.90 over black at 0.88, 80 per mm, um", value(HidingOnClothUM(0.90, 0.88, 80, 0)), 3.65 / 80 * 1000, 0.1, "derived: SX/S"},
		{"0.98 over black at 0.90, 100 per mm, um", value(HidingOnClothUM(0.98, 0.90, 100, 0)), 9.14 / 100 * 1000, 0.1, "derived: SX/S"},
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
		gal     = 3.785411784                   // L, exact
		density = 12 * 0.45359237 / 3.785411784 // kg/L, 12 lb/gal
	)
	perGal, err := GToML(3, density)
	if err != nil {
		t.Fatal(err)
	}
	hold(t, []figure{
		{"30 x 35 cm, 60 %, 60 um, 1.2 kg/L, g", value(MassG(300, 350, 0.6, 60, 1.2)), 4.536, 1e-9, "arithmetic"},
		{"12 lb/gal, 3 g, prints a gallon", value(gal*1000/perGal, nil), 1814, 1, article},
		{"50 um on 20 m2, mL", value(VolumeML(5000, 4000, 1, 50)), 1000, 1e-9, "published: principle of ISO 2814 [34]"},
		{"61.76 um, 10 x 12 in, 50 %, 1000 prints, mL", times(1000)(VolumeML(254, 304.8, 0.5, 61.76)), 2390.7, 0.1, "derived"},
		{"the same in gallons", times(1000 / (gal * 1000))(VolumeML(254, 304.8, 0.5, 61.76)), 0.6316, 0.00005, "derived"},
		{"4.536 g, 288 prints, 10 %, 150 g stay", value(RunG(4.536, 288, 0.1, 150)), 1587.0048, 1e-9, "arithmetic: 4.536 x 288 = 1306.368; x 1.1 = 1437.0048; + 150"},
		{"1587 g at 1.2 kg/L, mL", value(GToML(1587, 1.2)), 1322.5, 1e-9, "arithmetic"},
	})
}

// TestPuffFigures holds what the heat makes of a film of puff ink.
func TestPuffFigures(t *testing.T) {
	hold(t, []figure{
		{"150 um at 1.94, um high", value(HeightUM(150, 1.94)), 291, 1e-9, "derived"},
		{"291 um high at 1.94, um", value(FilmForHeightUM(291, 1.94)), 150, 1e-9, "derived"},
	})
}
