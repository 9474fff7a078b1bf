package cure

import (
	"errors"
	"math"
	"testing"

	"bladecard/calc/internal/checks"

	"pgregory.net/rapid"
)

// TestFlashTimes holds the flash times that two separate programs agree on within 5 % (derived):
// gel 105 C, ink 25 C, film 100 um.
func TestFlashTimes(t *testing.T) {
	for _, c := range []struct{ flux, platen, want float64 }{
		{8, 25, 9.9}, {8, 40, 6.1}, {8, 60, 3.7},
		{10, 25, 4.9}, {10, 40, 3.6}, {10, 60, 2.6},
		{20, 25, 1.36}, {20, 40, 1.21}, {20, 60, 1.04},
		{30, 25, 0.79}, {30, 40, 0.73}, {30, 60, 0.66},
	} {
		got, err := FlashSeconds(Flash{FilmUM: 100, FluxKWM2: c.flux, GelC: 105, InkC: 25, PlatenC: c.platen})
		if err != nil || math.Abs(got/c.want-1) > 0.05 {
			t.Errorf("%g kW/m2 on a platen of %g C: %.3g s; %g s ± 5 %% is wanted (%v)", c.flux, c.platen, got, c.want, err)
		}
	}
	_, err := FlashSeconds(Flash{FilmUM: 100, FluxKWM2: 6, GelC: 105, InkC: 25, PlatenC: 25})
	var never ErrNeverGels
	if !errors.As(err, &never) {
		t.Errorf("6 kW/m2 on a cold platen: %v; it never gels (derived)", err)
	}
}

// TestThickerNeverShorter, and warmer never longer, and stronger never longer.
func TestThickerNeverShorter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := Flash{
			FilmUM: rapid.Float64Range(20, 300).Draw(t, "film"), FluxKWM2: rapid.Float64Range(8, 40).Draw(t, "flux"),
			GelC: rapid.Float64Range(80, 125).Draw(t, "gel"), InkC: 25, PlatenC: rapid.Float64Range(25, 70).Draw(t, "platen"),
		}
		at := func(f Flash) float64 {
			s, err := FlashSeconds(f)
			var never ErrNeverGels
			if errors.As(err, &never) {
				return math.Inf(1)
			}
			if err != nil || !(s > 0) {
				t.Fatal(s, err)
			}
			return s
		}
		base := at(f)
		thick, warm, strong := f, f, f
		thick.FilmUM *= 1.1
		warm.PlatenC += 5
		strong.FluxKWM2 *= 1.1
		if s := at(thick); s < base {
			t.Fatalf("%+v: %g s; thicker: %g s", f, base, s)
		}
		if s := at(warm); s > base {
			t.Fatalf("%+v: %g s; warmer platen: %g s", f, base, s)
		}
		if s := at(strong); s > base {
			t.Fatalf("%+v: %g s; more flux: %g s", f, base, s)
		}
	})
}

// TestFluxFromTimed: the flux that a timed flash gives takes that time again.
func TestFluxFromTimed(t *testing.T) {
	f := Flash{FilmUM: 80, GelC: 107, InkC: 25, PlatenC: 45}
	for _, s := range []float64{0.5, 2, 6} {
		flux, err := FluxFromTimed(f, s)
		if err != nil {
			t.Fatal(err)
		}
		g := f
		g.FluxKWM2 = flux
		if got, err := FlashSeconds(g); err != nil || math.Abs(got/s-1) > 1e-3 {
			t.Errorf("timed %g s: %g kW/m2 takes %g s (%v)", s, flux, got, err)
		}
	}
}

// thickSlab is a half-space for the textbook's times.
func thickSlab(k, alpha, startC, depthM float64, cells int) *heating {
	return newHeating([]layer{{thicknessM: depthM, conductivity: k, heatCapacity: k / alpha, startC: startC, cells: cells}}, air{})
}

// semiInfiniteRise is the rise at a depth of a half-space under a constant flux:
// (2 q sqrt(at/pi) exp(-x^2/4at) - q x erfc(x/2 sqrt(at)))/k (Incropera and DeWitt [39], eq. 5.59).
func semiInfiniteRise(q, k, alpha, x, t float64) float64 {
	s := math.Sqrt(alpha * t)
	return (2*q*s/math.Sqrt(math.Pi)*math.Exp(-x*x/(4*alpha*t)) - q*x*math.Erfc(x/(2*s))) / k
}

// TestTextbook runs the solver on worked examples.
func TestTextbook(t *testing.T) {
	// Holman 5th ed. ex. 4.2 [40], as a verification guide carries it (see textbook_test.go): 35 C, 3.2e5 W/m2, k 45, a 1.4e-5, x 25 mm, 30 s -> 79.3 C
	if got := 35 + semiInfiniteRise(3.2e5, 45, 1.4e-5, 0.025, 30); math.Abs(got-79.3) > 0.1 {
		t.Errorf("Holman 4.2 [40], closed form: %g C; 79.3 is published", got)
	}
	march := func(h *heating, q, until, dt float64) {
		for s := 0.0; s < until-1e-9; s += dt {
			h.step(q, dt)
		}
	}
	at := func(h *heating, depthM, dx float64) float64 { // between the middles of two cells
		i := int(depthM/dx - 0.5)
		f := depthM/dx - 0.5 - float64(i)
		return h.tempC[i]*(1-f) + h.tempC[i+1]*f
	}
	h := thickSlab(45, 1.4e-5, 35, 0.3, 600)
	march(h, 3.2e5, 30, 0.02)
	if got := at(h, 0.025, 0.3/600); math.Abs(got-79.3) > 0.15 {
		t.Errorf("Holman 4.2 [40], solver: %g C; 79.3 is published", got)
	}
	// Incropera and DeWitt [39] ex. 5.10, as solved in a notebook (see textbook_test.go): copper 20 C, 3e5 W/m2, k 401, a 117e-6, 120 s ->
	// 120.0 C at the surface (inputs published, value from memory), 45.4 C at 150 mm (published)
	h = thickSlab(401, 117e-6, 20, 1.5, 600)
	march(h, 3e5, 120, 0.05)
	if got := h.tempC[0] + 3e5*(1.5/600/2)/401; math.Abs(got-120) > 0.3 {
		t.Errorf("Incropera 5.10, surface: %g C; 120.0", got)
	}
	if got := at(h, 0.150, 1.5/600); math.Abs(got-45.4) > 0.15 {
		t.Errorf("Incropera 5.10, 150 mm: %g C; 45.4 is published", got)
	}
	// Film on a base (derived): 25 kW/m2, film 162.5 J/m2K on a base of effusivity 160.4, 3 s from 25 C
	// -> 217.6 C, that is a rise of 192.6 K:
	// dT = (2q/e) sqrt(t/pi) - (qC/e^2)(1 - exp(z^2) erfc z), z = (e/C) sqrt t
	const q, C, e, s = 25e3, 162.5, 160.4, 3.0
	z := e / C * math.Sqrt(s)
	closed := 2*q/e*math.Sqrt(s/math.Pi) - q*C/(e*e)*(1-math.Exp(z*z)*math.Erfc(z))
	if math.Abs(25+closed-217.58) > 0.1 {
		t.Errorf("film on base, closed form: %g C; 217.58", 25+closed)
	}
	const base = 160.4 * 160.4 / 0.06 // heat capacity with a conductivity of 0.06
	h = newHeating([]layer{
		{thicknessM: 1e-4, conductivity: 1000, heatCapacity: C / 1e-4, cells: 1},
		{thicknessM: 0.006, conductivity: 0.06, heatCapacity: base, cells: 800},
	}, air{})
	march(h, q, s, 0.001)
	if got := h.tempC[0]; math.Abs(got/closed-1) > 0.003 {
		t.Errorf("film on base, solver: %g K; %g in closed form", got, closed)
	}
	// Lumped film (derived): one cell that keeps all its heat rises q t/C.
	h = newHeating([]layer{{thicknessM: 1e-4, conductivity: 1, heatCapacity: C / 1e-4, cells: 1}}, air{})
	march(h, q, 1, 0.01)
	if got, want := h.tempC[0], q/C; math.Abs(got/want-1) > 1e-9 {
		t.Errorf("lumped film: %g K; %g", got, want)
	}
}

// TestFigures: each with its kind and source.
func TestFigures(t *testing.T) {
	ok := checks.Taken(t)
	water := ok(WaterGPerM2(40, 1.05, 0.40))
	for _, c := range []struct {
		name           string
		got, want, tol float64
		kind           string
	}{
		{"water of 40 um, 1.05 kg/L, 40 %, g/m2", water, 25.2, 1e-9, "derived"},
		{"its heat, kJ/m2", water / 1000 * LatentKJPerKG, 56.85, 0.05, "derived; latent heat published [42]"},
		{"6 ft, 60 s, ft/min", ok(BeltMPerMin(6*304.8, 60)) / 0.3048, 6, 1e-9, "arithmetic"},
		{"the same, m/min", ok(BeltMPerMin(6*304.8, 60)), 1.83, 0.005, "arithmetic"},
		{"6 garments for 60 s, an hour", ok(GarmentsPerHour(1, 3000, 60, 500)), 360, 1e-9, "arithmetic; an article prints 60"},
	} {
		if math.Abs(c.got-c.want) > c.tol {
			t.Errorf("%s = %g; %g ± %g is wanted (%s)", c.name, c.got, c.want, c.tol, c.kind)
		}
	}
	// a longer dryer runs faster
	if !(ok(BeltMPerMin(3000, 60)) > ok(BeltMPerMin(2000, 60))) {
		t.Error("a longer dryer does not run faster")
	}
	for _, bad := range []float64{math.NaN(), math.Inf(1), -1} {
		if _, err := BeltMPerMin(bad, 60); err == nil {
			t.Errorf("a dryer of %g mm is taken", bad)
		}
		if _, err := FlashSeconds(Flash{FilmUM: bad, FluxKWM2: 10, GelC: 105, InkC: 25, PlatenC: 40}); err == nil {
			t.Errorf("a film of %g um is taken", bad)
		}
	}
	if f, err := FibreLimit("polyester"); err != nil || f.WarnC != 129 || f.StopC != 154 {
		t.Errorf("polyester: %+v %v; 129 and 154 C are published", f, err)
	}
	if _, err := FibreLimit("wool"); err == nil {
		t.Error("wool is taken")
	}
}

func BenchmarkFlashSeconds(b *testing.B) {
	for b.Loop() {
		if _, err := FlashSeconds(Flash{FilmUM: 45, FluxKWM2: 10, GelC: 107, InkC: 25, PlatenC: 45}); err != nil {
			b.Fatal(err)
		}
	}
}
