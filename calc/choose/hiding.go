package choose

import (
	"fmt"

	"bladecard/calc/ink"
	"bladecard/calc/job"
	"bladecard/calc/plan"
)

// What hiding asks (common practice): a color may look this much darker on the cloth than where nothing
// shows through, in L*; and a base is drawn this much smaller than what prints on it.
const (
	mostDropLStar = 5.0
	chokeMM       = 0.4
)

// whiteScattersPerMM is the light scattering of a film with white pigment (from memory, 50 to 200: not
// published for screen inks).
const whiteScattersPerMM = 80.0

// hides is the cured film that hides the cloth under a screen, what sinks into it included. It is not known
// where the cloth's shade, the ink's lightness or its scattering is not stated, and not asked where a base or
// a blocker lies under the screen or the ink takes the dye out.
func (m maker) hides() (um float64, known bool, err error) {
	g, s := m.ground(), m.screen
	if g.hard || g.based || g.shade == "" || s.Ink.ScatterPerMM == 0 || use(s) == "blocker" || takesDyeOut(s) || m.onWhite() {
		return 0, false, nil
	}
	cloth, err := ink.ClothReflectance(g.shade)
	if err != nil {
		return 0, false, err
	}
	if whiteness, scatters, white := whiteOf(s); white {
		contrast := useRules[use(s)].contrast
		if contrast == 0 {
			contrast = ink.HidesTextile
		}
		um, err = ink.HidingOnClothUM(contrast, whiteness, scatters, cloth)
	} else {
		color, ok := thickFilm(s)
		if !ok {
			return 0, false, nil
		}
		um, err = ink.LightnessFilmUM(mostDropLStar, color, s.Ink.ScatterPerMM, cloth)
	}
	if err != nil || um == 0 {
		return 0, err == nil, err
	}
	um, _, err = ink.OnKnitUM(um)
	return um, true, err
}

// takesDyeOut tells whether an ink discharges the dye of the cloth: it needs no base.
func takesDyeOut(s job.Screen) bool {
	for _, c := range s.Ink.Cautions {
		if c == "discharge-agent" {
			return true
		}
	}
	return false
}

// hiding judges whether a planned screen hides the cloth, and proposes a base where it does not.
func (m maker) hiding(sc *plan.Screen) ([]plan.Warning, error) {
	um, known, err := m.hides()
	if err != nil || !known {
		return nil, err
	}
	sc.HidesUM = &um
	if sc.CuredUM.Value >= um*(1-hidingSlack)*(1-1e-9) || um == 0 {
		return nil, nil
	}
	w := warn("needs-base", vals{"film_um": sc.CuredUM.Value, "hides_um": um})
	if isBase(m.screen) {
		w.Code = "base-thin"
		return []plan.Warning{w}, nil
	}
	sc.Base = m.base()
	return []plan.Warning{w}, nil
}

// thickFilm is what a screen's ink sends back where nothing shows through, from its swatch: no printed ink is as
// bright or as dark as a screen shows.
func thickFilm(s job.Screen) (c ink.Color, known bool) {
	var r, g, b uint8
	if n, _ := fmt.Sscanf(s.Swatch, "#%02x%02x%02x", &r, &g, &b); n != 3 {
		return c, false
	}
	c = ink.ColorOf(r, g, b)
	for i := range c {
		c[i] = min(max(c[i], darkestShare), whitestShare)
	}
	return c, true
}
