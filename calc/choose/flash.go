package choose

import (
	"errors"
	"math"

	"bladecard/calc/cure"
	"bladecard/calc/internal/sure"
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
func (m maker) flash(sc *plan.Screen) []plan.Warning {
	ink := m.screen.Ink
	sc.Flash.Does = setBy[ink.Dries]
	if !sc.Flash.Needed || sc.Flash.Does == "lamp" {
		return nil
	}
	if len(m.shop.Flashes) == 0 {
		return []plan.Warning{warn("flash-missing", nil)}
	}
	unit := m.flashUnit()
	sc.Flash.Unit, sc.Flash.Timed = unit.Name, unit.FluxKWM2 > 0 || unit.TimedS > 0
	if sc.Flash.Does == "tack" {
		if t := ink.TackS; t != nil {
			sc.Flash.Seconds = &plan.Interval{Low: t.Low, High: t.High}
		}
		return nil
	}
	f, doubt, known := m.underFlash(sc)
	if !known {
		return nil
	}
	f.FluxKWM2, doubt.FluxShare = m.fluxOf(unit)
	sc.Flash.FluxKWM2 = f.FluxKWM2
	sc.Flash.TemperatureC = &plan.Interval{Low: doubt.GelLowC, High: doubt.GelHighC}
	t := m.timed(f, doubt)
	if !t.gels {
		return []plan.Warning{flashNever(f)}
	}
	sc.Flash.StartS, sc.Flash.Seconds = &t.startS, &plan.Interval{Low: t.lowS, High: t.highS}
	if t.gelsCold { // else a cold platen is only the first prints' trouble
		longer := math.Max(1, t.coldS/t.startS) // the doubts are the same ones
		sc.Flash.ColdSeconds = &plan.Interval{Low: t.lowS * longer, High: math.Min(cure.NeverS, t.highS*longer)}
	}
	return nil
}

// flashTime is how long a flash takes, on warm platens with its range and on cold ones.
type flashTime struct {
	lowS, startS, highS, coldS float64
	gels, gelsCold             bool
}

// underLamp is what a flashTime depends on.
type underLamp struct {
	cure.Flash
	cure.Doubt
}

// mostTimed is how many flashes a planner keeps: those of some hundreds of different screens, 1 MB.
const mostTimed = 1 << 12

// timed works out a flash, once for all screens that it is the same for: it takes as long as all else of a screen.
func (pl *Planner) timed(f cure.Flash, d cure.Doubt) flashTime {
	key := underLamp{f, d}
	t, known := pl.flashes[key]
	if known {
		return t
	}
	var err error
	if t.lowS, t.startS, t.highS, err = cure.FlashRange(f, d); !neverGels(err) {
		sure.Check(err)
		t.gels = true
		f.PlatenC = platenColdC
		if t.coldS, err = cure.FlashSeconds(f); !neverGels(err) {
			sure.Check(err)
			t.gelsCold = true
		}
	}
	if len(pl.flashes) == mostTimed {
		clear(pl.flashes)
	}
	pl.flashes[key] = t
	return t
}

// neverGels tells whether an error is that of a flash too weak to set the film.
func neverGels(err error) bool {
	never := cure.ErrNeverGels{}
	return errors.As(err, &never)
}

// underFlash is a screen's film under a flash on a warm platen, with what is not known of it; it is
// not known where the class states no gel temperature.
func (m maker) underFlash(sc *plan.Screen) (f cure.Flash, d cure.Doubt, known bool) {
	ink := m.screen.Ink
	hits := float64(max(1, sc.Hits)) // each is flashed by itself
	f = cure.Flash{FilmUM: sc.CombUM.Value, InkC: cure.InkStartC, PlatenC: cure.PlatenWarmC}
	d = cure.Doubt{FilmLowUM: sc.CombUM.Low, FilmHighUM: sc.CombUM.High}
	f.ClothMoisture = sure.Of(cure.Moisture(substrate(m.job).Fibre))
	if ink.Dries == "water" {
		f.InkWaterGM2 = sc.WaterGM2 / hits
		d.GelLowC, f.GelC, d.GelHighC = sure.Of(cure.DryC(dryShareLow)), sure.Of(cure.DryC(dryShare)), sure.Of(cure.DryC(dryShareHigh))
		return f, d, true
	}
	if ink.GelC == nil {
		return f, d, false
	}
	d.GelLowC, d.GelHighC, f.GelC = ink.GelC.Low, ink.GelC.High, (ink.GelC.Low+ink.GelC.High)/2
	return f, d, true
}

// water is what has to leave the wet film of a screen, g/m2; 0 for an ink without water.
func (m maker) water(wetUM float64) float64 {
	ink := m.screen.Ink
	if ink.Dries != "water" {
		return 0
	}
	solids := sure.Of(cure.MassSolids(ink.Solids, ink.DryKgPerL, ink.DensityKgPerL))
	return sure.Of(cure.WaterGPerM2(wetUM, ink.DensityKgPerL, solids))
}

// flashNever is the warning of a flash that never sets the film, with the heat that would do it.
func flashNever(f cure.Flash) plan.Warning {
	w := warn("flash-never", vals{"film_um": f.FilmUM, "flux_kwm2": f.FluxKWM2, "longest_s": cure.NeverS})
	if needs, err := cure.FluxFromTimed(f, longFlashS); err == nil {
		w.Values["needs_kwm2"] = needs
	}
	return w
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
func (pl *Planner) fluxOf(f job.Flash) (kwM2, doubt float64) {
	switch {
	case f.FluxKWM2 > 0:
		return f.FluxKWM2, cure.FluxDoubtTimed
	case f.TimedS > 0:
		if _, solved := pl.flux[f]; !solved {
			timed := cure.Flash{FilmUM: f.TimedFilmUM, GelC: f.TimedGelC, InkC: cure.InkStartC, PlatenC: cure.PlatenWarmC, ClothMoisture: sure.Of(cure.Moisture("cotton"))}
			pl.flux[f] = sure.Of(cure.FluxFromTimed(timed, f.TimedS))
		}
		return pl.flux[f], cure.FluxDoubtTimed
	case f.Kind == "quartz":
		return cure.QuartzKWM2, cure.FluxDoubtUntimed
	}
	return cure.PanelKWM2, cure.FluxDoubtUntimed
}
