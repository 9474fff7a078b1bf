package halftone

import (
	"math"
	"math/rand/v2"
	"testing"

	"bladecard/calc/internal/checks"
)

// TestCheckValues holds the figures of halftones and bitmaps, each with its kind and source.
func TestCheckValues(t *testing.T) {
	ok := checks.Taken(t)
	pitch120 := 1e4 / 120
	const cmPerInch = 2.54
	for _, c := range []struct {
		name           string
		got, want, tol float64
		kind, source   string
	}{
		{"mesh for 65 lines at 3.5", ok(MeshForRatio(65, 3.5)), 227.5, 1e-12, "arithmetic", "the rule as Coudray, April 2003, quotes it, who argues against it (printed as 230)"},
		{"mesh for 65 lines at 4", ok(MeshForRatio(65, 4)), 260, 1e-12, "arithmetic", "the same (printed as 255 to 265)"},
		{"lines/cm on 150/cm at 3.75", ok(LinesForRatio(150*cmPerInch, 3.75)) / cmPerInch, 40, 1e-9, "published", "weavers' guidance [25]"},
		{"lines/cm on 150/cm at 5", ok(LinesForRatio(150*cmPerInch, 5)) / cmPerInch, 30, 1e-9, "published", "weavers' guidance [25]"},
		{"ratio 305/65", ok(MeshRatio(305, 65)), 305.0 / 65, 0, "derived", "quotient"},
		{"dot 65 lines 5 %, um", ok(DotDiameterUM(65, 0.05)), 98.6, 0.1, "derived", "D = 2 s sqrt(a/pi)"},
		{"dot 65 lines 3 %, um", ok(DotDiameterUM(65, 0.03)), 76.4, 0.1, "derived", "D = 2 s sqrt(a/pi)"},
		{"dot 65 lines 10 %, um", ok(DotDiameterUM(65, 0.10)), 139.4, 0.1, "derived", "D = 2 s sqrt(a/pi)"},
		{"dot 55 lines 5 %, um", ok(DotDiameterUM(55, 0.05)), 116.5, 0.1, "derived", "D = 2 s sqrt(a/pi)"},
		{"openings per cell, 305 mesh, 65 lines", ok(OpeningsPerCell(305, 65)), 22.0, 0.05, "derived", "(305/65)^2"},
		{"blocked, 120/cm-34, dot 34 um, %", 100 * ok(BlockedShare(34, 34, pitch120)), 3.57, 0.005, "derived", "disc on a lattice of squares"},
		{"blocked, 120/cm-34, dot 20 um, %", 100 * ok(BlockedShare(20, 34, pitch120)), 32.0, 0.05, "derived", "disc on a lattice of squares"},
		{"blocked, dot 1.4142136 d", ok(BlockedShare(1.4142136*34, 34, pitch120)), 0, 0, "derived", "half the diagonal of a crossing is d/1.4142"},
		{"smallest dot 305-34, um", ok(SmallestDotUM(34, 49.28)), 117.28, 1e-9, "common practice", "2 threads + 1 opening"},
		{"bitmap 300 dpi, um", ok(BitmapDotUM(300)), 84.67, 0.01, "derived", "25 400/300"},
	} {
		if !(math.Abs(c.got-c.want) <= c.tol) {
			t.Errorf("%s: got %.6g, want %g +- %g (%s: %s)", c.name, c.got, c.want, c.tol, c.kind, c.source)
		}
	}
	for _, a := range UsualAnglesDeg() {
		if !(a > 0 && a < 90 && a != 45) {
			t.Errorf("%g deg is one of the worst angles", a)
		}
	}
}

// TestMoireLock: 260 mesh and 65 lines at 0 deg lock 4 : 1, an infinite period (derived).
func TestMoireLock(t *testing.T) {
	b, err := MoireBeat(260, 65, 0)
	if err != nil || !math.IsInf(b.PeriodMM, 1) {
		t.Fatalf("got %+v, %v", b, err)
	}
	if (b.MeshOrder != [2]int{1, 0} || b.HalftoneOrder != [2]int{4, 0}) &&
		(b.MeshOrder != [2]int{0, 1} || b.HalftoneOrder != [2]int{0, 4}) {
		t.Errorf("locked in %+v", b)
	}
}

// TestMoireByHand holds beats that can be worked out by hand (derived).
func TestMoireByHand(t *testing.T) {
	for _, c := range []struct {
		mesh, lines, angle, period float64
		halftone                   [2]int
	}{
		{262, 65, 0, 25.4 / 2, [2]int{4, 0}},                                                 // 262 - 4 x 65 = 2 per inch
		{260, 65, 90, math.Inf(1), [2]int{0, -4}},                                            // a quarter turn locks as well
		{260, 65, 1, 25.4 / (2 * 260 * math.Sin(math.Pi/360)), [2]int{4, 0}},                 // a small turn
		{65 * math.Sqrt(20), 65, math.Atan(0.5) * 180 / math.Pi, math.Inf(1), [2]int{4, -2}}, // an oblique lock
	} {
		b, err := MoireBeat(c.mesh, c.lines, c.angle)
		if err != nil {
			t.Fatal(err)
		}
		if b.PeriodMM != c.period && math.Abs(b.PeriodMM/c.period-1) > 1e-9 || b.MeshOrder != [2]int{1, 0} || b.HalftoneOrder != c.halftone {
			t.Errorf("%g mesh, %g lines at %.2f deg: %+v, want a period of %g mm with %v", c.mesh, c.lines, c.angle, b, c.period, c.halftone)
		}
	}
}

// TestMoireBySearch looks through all harmonics near the mesh's instead of rounding.
func TestMoireBySearch(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 4))
	for range 200 {
		mesh, angle := 150+250*rng.Float64(), 90*rng.Float64()
		lines := mesh / (1 + 5*rng.Float64())
		got, err := MoireBeat(mesh, lines, angle)
		if err != nil {
			t.Fatal(err)
		}
		best := math.Inf(1)
		sin, cos := math.Sincos(angle * math.Pi / 180)
		for _, m := range [][2]float64{{1, 0}, {0, 1}, {1, 1}, {1, -1}} {
			for i := -12.0; i <= 12; i++ {
				for j := -12.0; j <= 12; j++ {
					if i == 0 && j == 0 {
						continue
					}
					best = math.Min(best, math.Hypot(mesh*m[0]-lines*(i*cos-j*sin), mesh*m[1]-lines*(i*sin+j*cos)))
				}
			}
		}
		if want := 25.4 / best; math.Abs(got.PeriodMM/want-1) > 1e-9 {
			t.Errorf("%g mesh, %g lines at %g deg: %g mm, by search %g mm", mesh, lines, angle, got.PeriodMM, want)
		}
	}
}

// TestBlockedByMonteCarlo throws dots on cloths, on both branches of the formula.
func TestBlockedByMonteCarlo(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	const throws = 400000
	for _, c := range []struct{ dot, thread, pitch float64 }{
		{20, 34, 83.33}, {34, 34, 83.33}, {38, 34, 83.33}, {44, 34, 83.33}, {50, 48, 112.9}, {60, 48, 112.9}, {90, 80, 110},
	} {
		want, err := BlockedShare(c.dot, c.thread, c.pitch)
		if err != nil {
			t.Fatal(err)
		}
		w, blocked := c.pitch-c.thread, 0
		for range throws {
			// The opening lies from 0 to w; how far is the nearest one from this center?
			x, y := c.pitch*rng.Float64(), c.pitch*rng.Float64()
			dx := math.Max(0, math.Min(x-w, c.pitch-x))
			dy := math.Max(0, math.Min(y-w, c.pitch-y))
			if math.Hypot(dx, dy) >= c.dot/2 {
				blocked++
			}
		}
		got := float64(blocked) / throws
		if sigma := math.Sqrt(want*(1-want)/throws) + 1e-6; math.Abs(got-want) > 4.5*sigma {
			t.Errorf("%+v: %.5f of the dots, formula %.5f", c, got, want)
		}
	}
}
