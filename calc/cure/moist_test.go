package cure

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"
)

// TestDryTable holds flash times on dry cloth to values of an independent finite-difference program
// (derived): gel 107 C, ink 25 C, platen 45 C, within 5 %.
func TestDryTable(t *testing.T) {
	fluxes := []float64{8, 10, 12, 15, 25}
	for film, want := range map[float64][]float64{
		30: {3.6, 1.9, 1.3, 0.9, 0.41}, 50: {4.2, 2.4, 1.7, 1.15, 0.55}, 65: {4.7, 2.7, 1.9, 1.3, 0.66},
	} {
		for i, flux := range fluxes {
			got, err := FlashSeconds(Flash{FilmUM: film, FluxKWM2: flux, GelC: 107, InkC: 25, PlatenC: 45})
			if err != nil || math.Abs(got/want[i]-1) > 0.05 {
				t.Errorf("%g um, %g kW/m2: %.3g s (%v); %g s is wanted", film, flux, got, err, want[i])
			}
		}
	}
}

// TestDefaultUnits: 50 um of plastisol on cotton, platen at 50 C, gel in the customary time under
// the default of each kind of unit (common practice).
func TestDefaultUnits(t *testing.T) {
	for _, c := range []struct{ flux, low, high float64 }{{PanelKWM2, 4, 6}, {QuartzKWM2, 1.5, 3}} {
		s, err := FlashSeconds(Flash{FilmUM: 50, FluxKWM2: c.flux, GelC: (104 + 121) / 2.0, InkC: 25, PlatenC: 50, ClothMoisture: 0.07})
		if err != nil || s < c.low || s > c.high {
			t.Errorf("%g kW/m2: %.3g s (%v); %g to %g s is customary", c.flux, s, err, c.low, c.high)
		}
	}
}

// TestWaterTakesItsHeat: a slab that loses nothing, heated evenly from below to above the drying
// range, takes its own heat and the latent heat of its water, no more and no less.
func TestWaterTakesItsHeat(t *testing.T) {
	const depthM, waterKGPerM3, flux = 1e-4, 300.0, 5e3
	h := newHeating([]layer{{thicknessM: depthM, conductivity: 1e3, heatCapacity: 2e6, startC: 30, cells: 6, waterKGPerM3: waterKGPerM3}}, air{})
	const dt = 1e-3
	var took float64
	for h.tempC[5] < 130 {
		h.step(flux, dt)
		took += flux * dt
	}
	want := depthM * (2e6*(h.tempC[0]-30) + waterKGPerM3*LatentKJPerKG*1000)
	if math.Abs(took/want-1) > 0.002 {
		t.Errorf("%.0f J/m2 were taken; %.0f are wanted", took, want)
	}
}

// TestMoistureLengthens: more water in ink or cloth never shortens a flash, and damp cotton takes
// longer than polyester.
func TestMoistureLengthens(t *testing.T) {
	at := func(water, moisture float64) float64 {
		s, err := FlashSeconds(Flash{FilmUM: 50, FluxKWM2: 12, GelC: 100, InkC: 25, PlatenC: 45, InkWaterGM2: water, ClothMoisture: moisture})
		if err != nil {
			t.Fatal(err)
		}
		return s
	}
	if !(at(0, 0) < at(0, 0.004) && at(0, 0.004) < at(0, 0.07) && at(0, 0.07) < at(10, 0.07) && at(10, 0.07) < at(30, 0.07)) {
		t.Error(at(0, 0), at(0, 0.004), at(0, 0.07), at(10, 0.07), at(30, 0.07))
	}
}

// TestFlashRangeHolds draws what is not known of a flash, each even over a range whose middle nine
// tenths are the stated ends, and counts how many flashes lie inside the printed range.
func TestFlashRangeHolds(t *testing.T) {
	const draws = 1500
	rnd := rand.New(rand.NewPCG(9, 5)) //nolint:gosec // a seeded test
	normal := func(low, high float64) float64 { return (low+high)/2 + (high-low)/2/1.645*rnd.NormFloat64() }
	for _, c := range []struct {
		flux, share float64
	}{{PanelKWM2, FluxDoubtUntimed}, {QuartzKWM2, FluxDoubtUntimed}, {QuartzKWM2, FluxDoubtTimed}} {
		f := Flash{FilmUM: 60, FluxKWM2: c.flux, GelC: 112.5, InkC: 25, PlatenC: 45, ClothMoisture: 0.07}
		low, _, high, err := FlashRange(f, Doubt{FluxShare: c.share, FilmLowUM: 60 * math.Exp(-0.35), FilmHighUM: 60 * math.Exp(0.35), GelLowC: 104, GelHighC: 121})
		if err != nil {
			t.Fatal(err)
		}
		inside := 0
		for range draws {
			g := f
			g.FluxKWM2 *= normal(1-c.share, 1+c.share)
			g.GelC = normal(104, 121)
			g.FilmUM *= math.Exp(normal(-0.35, 0.35))
			g.PlatenC += normal(-platenDoubtK, platenDoubtK)
			s, err := FlashSeconds(g)
			if never := (ErrNeverGels{}); errors.As(err, &never) {
				s = NeverS
			} else if err != nil {
				t.Fatal(err)
			}
			if s = math.Max(LeastS, s); s >= low && s <= high {
				inside++
			}
		}
		share := float64(inside) / draws
		t.Logf("%g kW/m2 ± %g %%: %.2f to %.2f s holds %.1f %%", c.flux, 100*c.share, low, high, 100*share)
		if share < 0.87 || share > 0.93 {
			t.Errorf("%g kW/m2 ± %g %%: %.2f to %.2f s holds %.1f %%; 87 to 93 %% is wanted", c.flux, 100*c.share, low, high, 100*share)
		}
	}
}
