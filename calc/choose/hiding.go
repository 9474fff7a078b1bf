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
	if g.hard || g.based || g.shade == "" || s.Ink.ScatterPerMM == 0 || use(s) == "blocker" || takesDyeOut(s) {
		return 0, false
	}
	cloth := sure.Of(ink.ClothReflectance(g.shade))
	if s.Ink.Whiteness > 0 && isWhite(s) {
		contrast := cmp.Or(useRules[use(s)].contrast, ink.HidesTextile)
		return onKnitUM(sure.Of(ink.HidingOnClothUM(contrast, s.Ink.Whiteness, s.Ink.ScatterPerMM, cloth))), true
	}
	r, green, b, ok := ink.Swatch(s.Swatch)
	if !ok {
		return 0, false
	}
	scatters := s.Ink.ScatterPerMM
	if isWhite(s) { // a white of a class that has all colors
		scatters = max(scatters, ink.ScatteringDefaultPerMM)
	}
	return onKnitUM(sure.Of(ink.LightnessFilmUM(mostDropLStar, max(0.01, ink.Luminance(r, green, b)), scatters, cloth))), true
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

// base plans the base that would hide the cloth under a screen: a white of the shop that sets as the screen's
// ink does and shares its cure, on the mesh that the planner takes. It is nil where the shop has no such ink.
func (m maker) base() *plan.Base {
	white := m.whiteInk()
	if white == nil {
		return nil
	}
	at := m
	at.screen = job.Screen{Color: "base", InkName: white.Name, Ink: white, Use: "underbase", Coverage: m.screen.Coverage, Pos: m.screen.Pos, Keys: m.screen.Keys}
	at.location.Screens = []job.Screen{at.screen, m.screen}
	at.number = 1
	d := newDemand(at.screen, at.ground())
	c, ch, fail := at.choose(d)
	if fail != nil {
		return nil
	}
	t := ch.best
	return &plan.Base{
		Ink: white.Name, Mesh: c.given.meshName, EOMUM: c.given.eomUM, Blade: t.stock.Name, AngleDeg: t.angleDeg, Strokes: t.strokes, Hits: t.hits,
		CuredUM: t.curedUM, TargetUM: plan.Interval{Low: d.target.Low, High: d.target.High}, ChokeMM: chokeMM, Coverage: m.screen.Coverage, MeetsAll: t.miss.none(),
	}
}

// whiteInk is the white of the shop that goes under the screen's ink; nil where there is none.
func (m maker) whiteInk() *job.Ink {
	over := m.screen.Ink
	for i := range m.shop.Inks {
		in := &m.shop.Inks[i]
		under := in.Whiteness > 0 && in.ScatterPerMM > 0 && in.Dries == over.Dries && in.On == over.On
		if under && (in.CureC == nil || over.CureC == nil || in.CureC.Low <= over.CureC.High && over.CureC.Low <= in.CureC.High) {
			return in
		}
	}
	return nil
}
