package choose

import (
	"errors"
	"math"

	"bladecard/calc/cure"
	"bladecard/calc/job"
	"bladecard/calc/plan"
)

// The platen under a flash (from memory): cold at the start of the run, warm after some rounds.
const (
	platenColdC = 25.0
	platenWarmC = 45.0
	inkStartC   = 25.0
)

// garmentPitchMM is how much of the belt a garment takes, and garmentWidthMM of its width
// (common practice).
const (
	garmentPitchMM = 750.0
	garmentWidthMM = 600.0
)

// heat works out flash and cure of every screen of a location, and what the garment's fibre
// and the shop's dryer forbid.
func (m maker) heat(loc *plan.Location) *job.Error {
	dyes := false
	for i := range loc.Screens {
		sc, s := &loc.Screens[i], m.location.Screens[i]
		at := m
		at.screen, at.number = s, i+1
		ws, err := at.flash(sc)
		if err == nil {
			var more []plan.Warning
			more, err = at.cure(sc)
			ws = append(ws, more...)
		}
		if err != nil {
			return at.fail("ink", err.Error(), "figures of the ink class inside the ranges of the formulas")
		}
		for _, w := range ws {
			if w.Code == "dyes-migrate" { // once a location: it is the cloth's, not the screen's
				if dyes {
					continue
				}
				dyes = true
			}
			sc.Warnings = append(sc.Warnings, w)
		}
		sc.Cautions = at.cautions(*sc)
		flashFeels(sc)
	}
	return nil
}

// cautions are the codes of what can hurt: the ink class's, less those of a flash that is not
// lit, a dryer that is not used and a press that no motor moves.
func (m maker) cautions(sc plan.Screen) []string {
	out := []string{}
	for _, c := range m.screen.Ink.Cautions {
		switch {
		case c == "hot-flash" && !sc.Flash.Needed,
			c == "hot-dryer" && sc.Cure.By != "heat",
			c == "moving-press" && m.press.Kind == "manual":
			continue
		}
		out = append(out, c)
	}
	return out
}

// flash times the flash of a screen that needs one, with cold platens and with warm ones.
func (m maker) flash(sc *plan.Screen) ([]plan.Warning, error) {
	if !sc.Flash.Needed {
		return nil, nil
	}
	if len(m.shop.Flashes) == 0 {
		return []plan.Warning{{Code: "flash-missing"}}, nil
	}
	unit := m.flashUnit()
	flux, err := m.fluxOf(unit)
	if err != nil {
		return nil, err
	}
	sc.Flash.Unit, sc.Flash.FluxKWM2 = unit.Name, flux
	ink := m.screen.Ink
	if ink.Dries == "water" {
		water, err := cure.WaterGPerM2(sc.WetUM.Value, ink.DensityKgPerL, ink.Solids)
		if err != nil {
			return nil, err
		}
		s, err := cure.EvaporationSeconds(water, sc.Flash.FluxKWM2)
		if err != nil {
			return nil, err
		}
		low, high, err := cure.FlashBandS(s)
		sc.Flash.Seconds = &plan.Interval{Low: math.Max(low, s), High: high} // never less than the water takes
		return nil, err
	}
	if ink.GelC == nil {
		return nil, nil
	}
	sc.Flash.TemperatureC = &plan.Interval{Low: ink.GelC.Low, High: ink.GelC.High}
	warm, err := m.flashAt(sc, platenWarmC)
	if err != nil {
		return nil, err
	}
	sc.Flash.Seconds = warm
	if warm == nil {
		return []plan.Warning{{Code: "flash-never"}}, nil
	}
	sc.Flash.ColdSeconds, err = m.flashAt(sc, platenColdC)
	return nil, err
}

// flashAt is the band of the flash time on a platen of the given temperature; nil where the
// film never gels.
func (m maker) flashAt(sc *plan.Screen, platenC float64) (*plan.Interval, error) {
	gel := m.screen.Ink.GelC
	s, err := cure.FlashSeconds(cure.Flash{
		FilmUM: sc.WetUM.Value, FluxKWM2: sc.Flash.FluxKWM2, GelC: (gel.Low + gel.High) / 2, InkC: inkStartC, PlatenC: platenC,
	})
	var never cure.ErrNeverGels
	if errors.As(err, &never) {
		return nil, nil
	}
	if err != nil {
		return nil, err
	}
	low, high, err := cure.FlashBandS(s)
	return &plan.Interval{Low: low, High: high}, err
}

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

// fluxOf is the heat that a print takes up under a unit: stated, solved from the shop's timed
// flash (once a unit: it takes some milliseconds), or the default of its kind.
func (pl *Planner) fluxOf(f job.Flash) (float64, error) {
	switch {
	case f.FluxKWM2 > 0:
		return f.FluxKWM2, nil
	case f.TimedS > 0:
		if flux, solved := pl.flux[f]; solved {
			return flux, nil
		}
		flux, err := cure.FluxFromTimed(cure.Flash{FilmUM: f.TimedFilmUM, GelC: f.TimedGelC, InkC: inkStartC, PlatenC: platenWarmC}, f.TimedS)
		if err == nil {
			pl.flux[f] = flux
		}
		return flux, err
	case f.Kind == "quartz":
		return cure.QuartzKWM2, nil
	}
	return cure.PanelKWM2, nil
}

// cure gives the cure of the ink class, the belt of the shop's dryer for it, and what fibre and
// dryer forbid.
func (m maker) cure(sc *plan.Screen) ([]plan.Warning, error) {
	ink := m.screen.Ink
	switch {
	case ink.Dries == "uv":
		sc.Cure.By = "light"
		return nil, nil
	case ink.CureC == nil:
		sc.Cure.By = "air"
		return nil, nil
	}
	sc.Cure.By = "heat"
	sc.Cure.TemperatureC = &plan.Interval{Low: ink.CureC.Low, High: ink.CureC.High}
	sc.Cure.TopC = ink.CureTopC
	ws, err := m.fibre(sc)
	if err != nil || ink.DwellS == nil {
		return ws, err
	}
	sc.Cure.DwellS = &plan.Interval{Low: ink.DwellS.Low, High: ink.DwellS.High}
	more, err := m.dryer(sc)
	return append(ws, more...), err
}

// fibre keeps the cure inside what the garment's fibre bears.
func (m maker) fibre(sc *plan.Screen) ([]plan.Warning, error) {
	if m.job.Garment == nil || m.job.Garment.Fibre == "" {
		return nil, nil
	}
	limit, err := cure.FibreLimit(m.job.Garment.Fibre)
	if err != nil {
		return nil, err
	}
	names := map[string]string{"fibre": m.job.Garment.Fibre}
	c := sc.Cure.TemperatureC
	switch {
	case c.Low > limit.StopC:
		return []plan.Warning{{Code: "fibre-stops", Values: vals{"stop_c": limit.StopC, "cure_c": c.Low}, Names: names}}, nil
	case c.High > limit.StopC:
		c.High = limit.StopC // cure no hotter than the cloth bears
	}
	if c.Low >= limit.WarnC {
		return []plan.Warning{{Code: "dyes-migrate", Values: vals{"warn_c": limit.WarnC, "cure_c": c.Low}, Names: names}}, nil
	}
	return nil, nil
}

// dryer sets the belt of the shop's first dryer for the dwell.
func (m maker) dryer(sc *plan.Screen) ([]plan.Warning, error) {
	if len(m.shop.Dryers) == 0 || m.onSheet() {
		return nil, nil
	}
	d := m.shop.Dryers[0]
	if d.HeatedMM == 0 {
		return nil, nil
	}
	sc.Cure.Dryer = d.Name
	slow, err := cure.BeltMPerMin(d.HeatedMM, sc.Cure.DwellS.High)
	if err != nil {
		return nil, err
	}
	fast, err := cure.BeltMPerMin(d.HeatedMM, sc.Cure.DwellS.Low)
	if err != nil {
		return nil, err
	}
	var ws []plan.Warning
	if r := d.BeltMPerMin; r != nil {
		switch {
		case fast < r.Low:
			ws = append(ws, warn("dryer-short", vals{"belt_mpm": fast, "least_mpm": r.Low}))
		case slow > r.High:
			ws = append(ws, warn("dryer-fast", vals{"belt_mpm": slow, "most_mpm": r.High, "dwell_s": sc.Cure.DwellS.High}))
		default:
			slow, fast = math.Max(slow, r.Low), math.Min(fast, r.High)
		}
	}
	if d.MaxC > 0 && d.MaxC < sc.Cure.TemperatureC.Low {
		ws = append(ws, warn("dryer-cool", vals{"top_c": d.MaxC, "cure_c": sc.Cure.TemperatureC.Low}))
	}
	sc.Cure.BeltMPerMin = &plan.Interval{Low: slow, High: fast}
	lanes := max(1, int(d.BeltMM/garmentWidthMM))
	// the belt's speed over the pitch is what the dryer takes
	few, err := cure.GarmentsPerHour(lanes, d.HeatedMM, d.HeatedMM/1000/slow*60, garmentPitchMM)
	if err != nil {
		return nil, err
	}
	many, err := cure.GarmentsPerHour(lanes, d.HeatedMM, d.HeatedMM/1000/fast*60, garmentPitchMM)
	if err != nil {
		return nil, err
	}
	sc.Cure.GarmentsPerHour = &plan.Interval{Low: few, High: many}
	return ws, nil
}
