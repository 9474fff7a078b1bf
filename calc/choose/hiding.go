package choose

import (
	"cmp"
	"slices"

	"bladecard/calc/ink"
	"bladecard/calc/internal/sure"
	"bladecard/calc/job"
	"bladecard/calc/plan"
)

// What hiding asks (common practice): a color may look this much darker on the cloth than where nothing
// shows through, in L*; and a base is drawn this much smaller than what prints on it.
const (
	mostDropLStar = 5.0
	chokeMM       = 0.4
)

// hides is the cured film that hides the cloth under a screen, what sinks into it included. It is not known
// where the cloth's shade, the ink's lightness or its scattering is not stated, and not asked where a base or
// a blocker lies under the screen or the ink takes the dye out.
func (m maker) hides() (um float64, known bool) {
	g, s := m.ground(), m.screen
	if g.hard || g.based || g.shade == "" || s.Ink.ScatterPerMM == 0 || use(s) == "blocker" || takesDyeOut(s) || m.onWhite() {
		return 0, false
	}
	cloth := sure.Of(ink.ClothReflectance(g.shade))
	if whiteness, scatters, white := whiteOf(s); white {
		contrast := cmp.Or(useRules[use(s)].contrast, ink.HidesTextile)
		return onKnitUM(sure.Of(ink.HidingOnClothUM(contrast, whiteness, scatters, cloth))), true
	}
	color, known := thickFilm(s)
	if !known {
		return 0, false
	}
	return onKnitUM(sure.Of(ink.LightnessFilmUM(mostDropLStar, color, s.Ink.ScatterPerMM, cloth))), true
}

// takesDyeOut tells whether an ink discharges the dye of the cloth: it needs no base.
func takesDyeOut(s job.Screen) bool {
	return slices.Contains(s.Ink.Cautions, "discharge-agent")
}

// hiding judges whether a planned screen hides the cloth, and proposes a base where it does not.
func (m maker) hiding(sc *plan.Screen) []plan.Warning {
	um, known := m.hides()
	if !known {
		return nil
	}
	sc.HidesUM = &um
	if sc.CuredUM.Value >= um*(1-hidingSlack)*(1-1e-9) || um == 0 {
		return nil
	}
	w := warn("needs-base", vals{"film_um": sc.CuredUM.Value, "hides_um": um})
	if isBase(m.screen) {
		w.Code = "base-thin"
		return []plan.Warning{w}
	}
	sc.Base = m.base()
	return []plan.Warning{w}
}

// thickFilm is what a screen's ink sends back where nothing shows through, from its swatch: no printed ink is as
// bright or as dark as a screen shows.
func thickFilm(s job.Screen) (c ink.Color, known bool) {
	r, g, b, known := ink.Swatch(s.Swatch)
	c = ink.ColorOf(r, g, b)
	for i := range c {
		c[i] = min(max(c[i], darkestShare), whitestShare)
	}
	return c, known
}
