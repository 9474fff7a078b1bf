package tension

import (
	"math"
	"testing"
)

// TestFigures holds figures that others have printed and those derived for this package by
// hand, kind and source beside each.
func TestFigures(t *testing.T) {
	const span, h, margin = 533.4, 3.175, 100.0
	mid := span / 2
	for _, c := range []struct {
		what      string
		got       func() (float64, error)
		want, tol float64
		source    string
	}{
		{"shift in mid-span, mm", value(ImageShiftMM(h, mid, mid)), 0, 1e-15, "derived: symmetry"},
		{"shift at 100 mm, mm", value(ImageShiftMM(h, margin, span-margin)), 0.0388, 0.00005, "derived: h^2/2 (1/a - 1/(L-a))"},
		{"stretch, margins 100 mm, mm", value(StretchMM(h, span, margin)), 0.0775, 0.00005, "derived: twice the shift"},
		{"force in mid-span, N/cm", value(TouchForceNPerCM(25, h, mid, mid)), 0.595, 0.0005, "derived: T h (1/a + 1/b)"},
		{"force at 100 mm, N/cm", value(TouchForceNPerCM(25, h, margin, span-margin)), 0.977, 0.0005, "derived: T h (1/a + 1/b)"},
		{"peel at 100 mm, deg", value(PeelAngleDeg(h, margin)), 1.8186, 0.0005, "derived: atan(h/a)"},
		{"blade of a 300 mm image, mm", value(BladeLengthMM(300)), 350, 0, "common practice: 25 mm a side"},
	} {
		got, err := c.got()
		if err != nil || !(math.Abs(got-c.want) <= c.tol) {
			t.Errorf("%s: %.6g, %v; want %g +- %g (%s)", c.what, got, err, c.want, c.tol, c.source)
		}
	}
}

func value(v float64, err error) func() (float64, error) {
	return func() (float64, error) { return v, err }
}

// TestVerdicts holds the published classes of tension and the edges between them.
// Source: Graphics Pro, January 2023, p. 45 [27] (25-35 ideal, 15-20 acceptable, 10 and less to be
// stretched again, thin thread 25-30, raised 30 and more); the gaps are from memory.
func TestVerdicts(t *testing.T) {
	for _, c := range []struct {
		tension, thread float64
		raised          bool
		want            string
	}{
		{25, 64, false, Ideal}, {35, 64, false, Ideal}, {30, 64, false, Ideal},
		{15, 64, false, Acceptable}, {20, 64, false, Acceptable}, {24.9, 64, false, Acceptable},
		{10, 64, false, Restretch}, {4, 64, true, Restretch},
		{10.1, 64, false, Low}, {14.9, 64, false, Low},
		{35.1, 64, false, High},
		{25, 34, false, Ideal}, {30, 34, false, Ideal}, {30.1, 34, false, High}, {30.1, ThinThreadUM, false, High}, {30.1, 41, false, Ideal},
		{30, 80, true, Ideal}, {29.9, 80, true, Low}, {20, 80, true, Low}, {36, 80, true, High},
	} {
		if got, err := TensionVerdict(c.tension, c.thread, c.raised); err != nil || got != c.want {
			t.Errorf("%g N/cm, %g um, raised %t: %q, %v; want %q", c.tension, c.thread, c.raised, got, err, c.want)
		}
	}
}

// TestOffContact holds the off-contacts of trade articles, in sixteenths of an inch to 0.1 mm.
// Published, but the articles differ; react and where large begins are from memory.
func TestOffContact(t *testing.T) {
	for _, c := range []struct {
		dries     string
		width     float64
		low, high float64
	}{
		{"water", 0, 1.6, 1.6}, {"water", 580, 1.6, 1.6}, {"water", 640, 1.6, 4.8},
		{"fuse", 0, 1.6, 3.2}, {"fuse", 508, 1.6, 3.2}, {"fuse", 900, 1.6, 4.8},
		{"solvent", 500, 1.6, 3.2}, {"uv", 500, 1.6, 3.2}, {"uv", 1500, 1.6, 4.8}, {"react", 500, 1.6, 3.2},
	} {
		if low, high, err := OffContactMM(c.dries, c.width); err != nil || low != c.low || high != c.high {
			t.Errorf("%s at %g mm: %g to %g, %v; want %g to %g", c.dries, c.width, low, high, err, c.low, c.high)
		}
	}
}

// TestBladePath checks both rules at their edges. Ratio published (SGIA, 2021 [31]), margins common
// practice.
func TestBladePath(t *testing.T) {
	for _, c := range []struct {
		frame, blade float64
		want         Fit
	}{
		{450, 300, Fit{MarginMM: 75, Ratio: 1.5, MarginHolds: true, RatioHolds: true}},
		{500, 400, Fit{MarginMM: 50, Ratio: 1.25, ShortMM: 100}},
		{560, 400, Fit{MarginMM: 80, Ratio: 1.4, MarginHolds: true, ShortMM: 40}},
		{200, 100, Fit{MarginMM: 50, Ratio: 2, RatioHolds: true, ShortMM: 50}},
		{400, 400, Fit{MarginMM: 0, Ratio: 1, ShortMM: 200}},
	} {
		if got, err := BladePathFits(c.frame, c.blade); err != nil || got != c.want {
			t.Errorf("frame %g, blade %g: %+v, %v; want %+v", c.frame, c.blade, got, err, c.want)
		}
	}
}
