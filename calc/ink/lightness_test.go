package ink

import (
	"math"
	"testing"
)

// gray sends back the same share of all light.
func gray(share float64) Color { return Color{share, share, share} }

// TestBandsHideWorse: a red, whose light lies in one band, needs more film on black than a gray of its lightness, and
// its own film still drops by what was asked.
func TestBandsHideWorse(t *testing.T) {
	red := Color{0.63, 0.02, 0.02}
	um, err := LightnessFilmUM(5, red, 40, 0.04)
	alike, err2 := LightnessFilmUM(5, gray(red.luminance()), 40, 0.04)
	if err != nil || err2 != nil || !(um > 2*alike && alike > 0) {
		t.Errorf("red %g um (%v), gray %g um (%v)", um, err, alike, err2)
	}
	if drop := lightnessDrop(40*um/1e3, red, 0.04); math.Abs(drop-5) > 1e-6 {
		t.Errorf("%g um of red drop by %g", um, drop)
	}
}

// TestLightnessFilm: the film found drops by what was asked; cloth that is lighter than the ink asks for none; lighter
// ink, darker cloth and less scattering ask for more.
func TestLightnessFilm(t *testing.T) {
	at := func(drop, rInf, s, cloth float64) float64 {
		um, err := LightnessFilmUM(drop, gray(rInf), s, cloth)
		if err != nil {
			t.Fatal(err)
		}
		return um
	}
	for _, c := range [][3]float64{{0.75, 40, 0.04}, {0.9, 80, 0.04}, {0.3, 30, 0.04}, {0.75, 40, 0.25}} {
		um := at(5, c[0], c[1], c[2])
		if drop := lightnessDrop(c[1]*um/1e3, gray(c[0]), c[2]); math.Abs(drop-5) > 1e-6 {
			t.Errorf("%v: %g um drops by %g; 5 is asked", c, um, drop)
		}
	}
	if um := at(5, 0.1, 40, 0.6); um != 0 {
		t.Errorf("navy on light cloth: %g um; none is needed", um)
	}
	if !(at(5, 0.75, 40, 0.04) > at(5, 0.3, 40, 0.04) && at(5, 0.75, 40, 0.04) > at(5, 0.75, 40, 0.25) && at(5, 0.75, 20, 0.04) > at(5, 0.75, 40, 0.04)) {
		t.Error(at(5, 0.75, 40, 0.04), at(5, 0.3, 40, 0.04), at(5, 0.75, 40, 0.25), at(5, 0.75, 20, 0.04))
	}
	// CIE 15 [37] (values from memory): L* of a luminance of 0.1842 is 50, of 1 is 100
	if math.Abs(lStar(0.18418651851244416)-50) > 1e-9 || math.Abs(lStar(1)-100) > 1e-12 {
		t.Error(lStar(0.18418651851244416), lStar(1))
	}
}

// TestLightness holds the ends and known grays. #777777 is close to half-way, and #808080 is
// 53.59 (from memory, the usual tables).
func TestLightness(t *testing.T) {
	for _, c := range []struct {
		r, g, b uint8
		want    float64
	}{
		{0, 0, 0, 0}, {255, 255, 255, 1}, {128, 128, 128, 0.5359}, {119, 119, 119, 0.5003},
		{255, 0, 0, 0.5324}, {0, 255, 0, 0.8773}, {0, 0, 255, 0.3230}, // from memory: L* of the sRGB primaries
		{1, 1, 1, 0.00274}, // derived: 1/255/12.92 x 9.033
	} {
		if got := Lightness(c.r, c.g, c.b); !(math.Abs(got-c.want) <= 0.0001) {
			t.Errorf("%d %d %d: %.5f; want %.5f", c.r, c.g, c.b, got, c.want)
		}
	}
}
