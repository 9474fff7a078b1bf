package cure

import (
	"fmt"
	"math"
)

// Heat that a print takes up under a flash unit in kW/m2 when nothing was timed: a heated panel
// and quick quartz lamps. A calibration, not a validation: with them 50 um of plastisol (gel 104 to
// 121 C) on cotton, the platen at 50 C, gel in 5 s and in 2.1 s, the middle of the customary 4 to 6 s
// and 1.5 to 3 s (common practice). One timed flash replaces them, see FluxFromTimed.
const (
	PanelKWM2  = 9.6
	QuartzKWM2 = 14.5
)

// NeverS is the time in seconds after which a flash is given up: no shop waits longer (common
// practice).
const NeverS = 40.0

// LeastS is the shortest flash in seconds that a unit and a hand can keep (common practice).
const LeastS = 0.5

// Water leaves ink and cloth between these temperatures, a share of it with each degree, and takes
// its latent heat along (derived: the simplest course that keeps the heat; real drying has its
// plateau near 100 C).
const (
	DryingFromC = 60.0
	DryingToC   = 110.0
)

// Flash is a print under a flash unit.
type Flash struct {
	FilmUM   float64 // wet film
	FluxKWM2 float64 // heat that the print takes up
	GelC     float64 // temperature that the lowest ink must reach
	InkC     float64 // of the ink at the start
	PlatenC  float64 // of platen and pad at the start; the garment starts half-way to it

	InkWaterGM2   float64 // water in the film, see WaterGPerM2; 0: none
	ClothMoisture float64 // water in the cloth, a share of its dry mass, see Moisture; 0: dry
}

// ErrNeverGels is the error of a flash that does not gel the film within NeverS. Get at it with
// errors.As.
type ErrNeverGels struct{ Flash Flash }

// Error tells a printer what happens and what would mend it.
func (e ErrNeverGels) Error() string {
	return fmt.Sprintf("cure: the flash does not gel the film within %g s: %g kW/m2 on %.0f µm with the platen at %g °C; a stronger or closer unit, a warmer platen or a thinner film is needed",
		NeverS, e.Flash.FluxKWM2, e.Flash.FilmUM, e.Flash.PlatenC)
}

func (f Flash) check() error {
	return first(
		within("film", f.FilmUM, 1, 2000, "um"),
		within("flux", f.FluxKWM2, 0.1, 200, "kW/m2"),
		within("gel temperature", f.GelC, 30, 250, "C"),
		within("ink temperature", f.InkC, 0, 60, "C"),
		within("platen temperature", f.PlatenC, 0, 150, "C"),
		within("water in the ink", f.InkWaterGM2, 0, 2000, "g/m2"),
		within("moisture of the cloth", f.ClothMoisture, 0, 0.3, "of its mass"))
}

// FlashSeconds is how long a flash takes in seconds until the lowest part of the film reaches
// the gel temperature: one-dimensional transient conduction through ink, 0.5 mm of garment, 1.5
// mm of pad and 5 mm of aluminium, a constant flux at the surface, convection (10 W/m2K) and
// radiation (0.9) lost from it, the back of the platen adiabatic. Water in ink and cloth takes its
// latent heat between DryingFromC and DryingToC; an ink that dries is therefore asked for the
// temperature at which the wanted share of its water has gone, see DryC.
//
// Range: film 1 to 2000 um, flux 0.1 to 200 kW/m2, gel 30 to 250 C, ink 0 to 60 C, platen 0 to
// 150 C, water in the ink 0 to 2000 g/m2, in the cloth 0 to 0.3 of its mass; an error outside, ErrNeverGels after NeverS. Kind: derived (implicit finite volumes;
// the method in Incropera and DeWitt [39] ch. 5), on properties partly from memory.
func FlashSeconds(f Flash) (float64, error) {
	if err := f.check(); err != nil {
		return 0, err
	}
	s, gels := f.gels(NeverS)
	if !gels {
		return 0, ErrNeverGels{Flash: f}
	}
	return s, nil
}

// gels marches the flash until the film gels, and no further than untilS.
func (f Flash) gels(untilS float64) (seconds float64, gels bool) {
	if f.InkC >= f.GelC {
		return 0, true
	}
	const inkCells = 8
	h := newHeating([]layer{
		{thicknessM: f.FilmUM * 1e-6, conductivity: inkConductivity, heatCapacity: inkHeatCapacity, startC: f.InkC, cells: inkCells, waterKGPerM3: f.InkWaterGM2 / f.FilmUM * 1e3},
		{thicknessM: fabricM, conductivity: fabricConductivity, heatCapacity: fabricHeatCapacity, startC: (f.InkC + f.PlatenC) / 2, cells: 12, contactM2KPerW: contactM2KPerW, waterKGPerM3: f.ClothMoisture * fabricKGPerM3},
		{thicknessM: padM, conductivity: padConductivity, heatCapacity: padHeatCapacity, startC: f.PlatenC, cells: 8},
		{thicknessM: plateM, conductivity: plateConductivity, heatCapacity: plateHeatCapacity, startC: f.PlatenC, cells: 3},
	}, shop)
	// The step grows with the time, so that a short flash is resolved as well as a long one.
	before, t := f.InkC, 0.0
	for t < untilS {
		dt := math.Max(0.002, t/200)
		h.step(f.FluxKWM2*1000, dt)
		t += dt
		lowest := h.tempC[inkCells-1]
		if lowest >= f.GelC {
			return t - dt*(lowest-f.GelC)/(lowest-before), true
		}
		before = lowest
	}
	return 0, false
}

// FluxFromTimed is the flux in kW/m2 with which a flash takes the given seconds, so that one
// timed flash of the shop replaces the default; the FluxKWM2 of f is not read.
//
// Range: as FlashSeconds, 0.2 to 30 s; an error outside, or where no flux of 0.1 to 200 kW/m2
// takes so long. Kind: derived, FlashSeconds turned round by bisection.
func FluxFromTimed(f Flash, seconds float64) (float64, error) {
	if err := within("timed flash", seconds, 0.2, 30, "s"); err != nil {
		return 0, err
	}
	f.FluxKWM2 = 200
	fastest, err := FlashSeconds(f)
	if err != nil {
		return 0, err
	}
	if fastest > seconds {
		return 0, fmt.Errorf("cure: no flux up to 200 kW/m2 gels %.0f um in %g s; %.2g s or more is accepted", f.FilmUM, seconds, fastest)
	}
	low, high := 0.1, 200.0
	for high/low > 1+1e-6 {
		f.FluxKWM2 = math.Sqrt(low * high)
		if s, gels := f.gels(seconds); !gels || s > seconds { // too weak
			low = f.FluxKWM2
		} else {
			high = f.FluxKWM2
		}
	}
	return math.Sqrt(low * high), nil
}
