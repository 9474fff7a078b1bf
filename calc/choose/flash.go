package choose

import (
	"errors"
	"math"

	"bladecard/calc/cure"
	"bladecard/calc/job"
	"bladecard/calc/plan"
)

// platenColdC is the platen at the start of the run (from memory); cure.PlatenWarmC is that of some rounds
// later.
const platenColdC = 25.0

// What has to leave a film before it is dry to the touch, a share of its water: most likely, and
// nine of ten (from memory).
const (
	dryShareLow, dryShare, dryShareHigh = 0.6, 0.8, 1.0
)

// setBy is what sets a film between two prints, by how its ink dries.
var setBy = map[string]string{"fuse": "gel", "water": "dry", "react": "tack", "uv": "lamp"}

// flash times the flash of a screen that needs one, with cold platens and with warm ones.
func (m maker) flash(sc *plan.Screen) ([]plan.Warning, error) {
	ink := m.screen.Ink
	sc.Flash.Does = setBy[ink.Dries]
	if !sc.Flash.Needed || sc.Flash.Does == "lamp" {
		return nil, nil
	}
	if len(m.shop.Flashes) == 0 {
		return []plan.Warning{{Code: "flash-missing"}}, nil
	}
	unit := m.flashUnit()
	sc.Flash.Unit, sc.Flash.Timed = unit.Name, unit.FluxKWM2 > 0 || unit.TimedS > 0
	if sc.Flash.Does == "tack" {
		if t := ink.TackS; t != nil {
			sc.Flash.Seconds = &plan.Interval{Low: t.Low, High: t.High}
		}
		return nil, nil
	}
	f, doubt, known, err := m.underFlash(sc)
	if err != nil || !known {
		return nil, err
	}
	var share float64
	if f.FluxKWM2, share, err = m.fluxOf(unit); err != nil {
		return nil, err
	}
	doubt.FluxShare, sc.Flash.FluxKWM2 = share, f.FluxKWM2
	sc.Flash.TemperatureC = &plan.Interval{Low: doubt.GelLowC, High: doubt.GelHighC}
	low, start, high, err := cure.FlashRange(f, doubt)
	if never := (cure.ErrNeverGels{}); errors.As(err, &never) {
		return m.flashNever(f)
	}
	if err != nil {
		return nil, err
	}
	sc.Flash.StartS, sc.Flash.Seconds = &start, &plan.Interval{Low: low, High: high}
	f.PlatenC = platenColdC
	cold, err := cure.FlashSeconds(f)
	if never := (cure.ErrNeverGels{}); errors.As(err, &never) {
		return nil, nil // a cold platen is only the first prints' trouble
	}
	longer := math.Max(1, cold/start) // the doubts are the same ones
	sc.Flash.ColdSeconds = &plan.Interval{Low: low * longer, High: math.Min(cure.NeverS, high*longer)}
	return nil, err
}

// underFlash is a screen's film under a flash on a warm platen, with what is not known of it; it is
// not known where the class states no gel temperature.
func (m maker) underFlash(sc *plan.Screen) (f cure.Flash, d cure.Doubt, known bool, err error) {
	ink := m.screen.Ink
	hits := float64(max(1, sc.Hits)) // each is flashed by itself
	f = cure.Flash{FilmUM: sc.WetUM.Value / hits, InkC: cure.InkStartC, PlatenC: cure.PlatenWarmC}
	d = cure.Doubt{FilmLowUM: sc.WetUM.Low / hits, FilmHighUM: sc.WetUM.High / hits}
	fibre := "cotton" // what most garments are, and what holds the most water
	if g := m.job.Garment; g != nil && g.Fibre != "" {
		fibre = g.Fibre
	}
	if f.ClothMoisture, err = cure.Moisture(fibre); err != nil {
		return f, d, false, err
	}
	if ink.Dries == "water" {
		f.InkWaterGM2 = sc.WaterGM2 / hits
		for share, c := range map[float64]*float64{dryShareLow: &d.GelLowC, dryShare: &f.GelC, dryShareHigh: &d.GelHighC} {
			if *c, err = cure.DryC(share); err != nil {
				return f, d, false, err
			}
		}
		return f, d, true, nil
	}
	if ink.GelC == nil {
		return f, d, false, nil
	}
	d.GelLowC, d.GelHighC, f.GelC = ink.GelC.Low, ink.GelC.High, (ink.GelC.Low+ink.GelC.High)/2
	return f, d, true, nil
}

// water is what has to leave the wet film of a screen, g/m2; 0 for an ink without water.
func (m maker) water(wetUM float64) (float64, error) {
	ink := m.screen.Ink
	if ink.Dries != "water" {
		return 0, nil
	}
	solids, err := cure.MassSolids(ink.Solids, ink.DryKgPerL, ink.DensityKgPerL)
	if err != nil {
		return 0, err
	}
	return cure.WaterGPerM2(wetUM, ink.DensityKgPerL, solids)
}

// flashNever is the warning of a flash that never sets the film, with the heat that would do it.
func (m maker) flashNever(f cure.Flash) ([]plan.Warning, error) {
	w := plan.Warning{Code: "flash-never", Values: vals{"film_um": f.FilmUM, "flux_kwm2": f.FluxKWM2, "longest_s": cure.NeverS}}
	if needs, err := cure.FluxFromTimed(f, longFlashS); err == nil {
		w.Values["needs_kwm2"] = needs
	}
	return []plan.Warning{w}, nil
}

// longFlashS is a flash that a shop would still wait for (common practice).
const longFlashS = 15.0

// flashUnit is the unit for the press: quick lamps on an automatic, a panel elsewhere, else
// whatever the shop has.
func (m maker) flashUnit() job.Flash {
	want := "panel"
	if m.press.Kind == "automatic" {
		want = "quartz"
	}
	for _, f := range m.shop.Flashes {
		if f.Kind == want {
			return f
		}
	}
	return m.shop.Flashes[0]
}

// fluxOf is the heat that a print takes up under a unit and what is not known of it, a share:
// stated, solved from the shop's timed flash (once a unit: it takes some milliseconds), or the
// default of its kind. The timed print lay on cotton.
func (pl *Planner) fluxOf(f job.Flash) (kwM2, doubt float64, err error) {
	switch {
	case f.FluxKWM2 > 0:
		return f.FluxKWM2, cure.FluxDoubtTimed, nil
	case f.TimedS > 0:
		if flux, solved := pl.flux[f]; solved {
			return flux, cure.FluxDoubtTimed, nil
		}
		moisture, err := cure.Moisture("cotton")
		if err != nil {
			return 0, 0, err
		}
		flux, err := cure.FluxFromTimed(cure.Flash{FilmUM: f.TimedFilmUM, GelC: f.TimedGelC, InkC: cure.InkStartC, PlatenC: cure.PlatenWarmC, ClothMoisture: moisture}, f.TimedS)
		if err == nil {
			pl.flux[f] = flux
		}
		return flux, cure.FluxDoubtTimed, err
	case f.Kind == "quartz":
		return cure.QuartzKWM2, cure.FluxDoubtUntimed, nil
	}
	return cure.PanelKWM2, cure.FluxDoubtUntimed, nil
}
