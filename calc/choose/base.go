package choose

import (
	"math"
	"slices"

	"bladecard/calc/ink"
	"bladecard/calc/job"
	"bladecard/calc/plan"
)

// baseSwatch is the color of a proposed base, a white as whites are printed.
const baseSwatch = "#f7f7f2"

// base plans the base that would hide the cloth under a screen: a white of the shop that sets as the screen's
// ink does and shares the job's cure, on the mesh that the planner takes. It is nil where the shop has no such ink.
func (m maker) base() *plan.Base {
	white := m.whiteInk()
	if white == nil {
		return nil
	}
	at := m
	at.screen = job.Screen{Color: "base", Swatch: baseSwatch, InkName: white.Name, Ink: white, Use: "underbase", Coverage: m.screen.Coverage, Pos: m.screen.Pos, Keys: m.screen.Keys}
	at.location.Screens = []job.Screen{at.screen, m.screen}
	at.number = 1
	if white.Whiteness == 0 { // a class of all colors asks no film of its whites
		um, known := at.hides()
		if !known {
			return nil
		}
		at.screen.FilmUM = &job.Range{Low: um * (1 - hidingSlack), High: um * hidingSpread}
	}
	d := newDemand(at.screen, at.ground())
	if d.target == (plan.Target{}) {
		return nil
	}
	c, ch, fail := at.choose(d)
	if fail != nil {
		return nil
	}
	t := ch.best
	return &plan.Base{
		Ink: white.Name, Swatch: baseSwatch, Mesh: c.given.meshName, EOMUM: c.given.eomUM, Blade: t.stock.Name, AngleDeg: t.angleDeg, Strokes: t.strokes, Hits: t.hits,
		CuredUM: t.curedUM, FilmAsked: at.screen.FilmUM != nil, TargetUM: plan.Interval{Low: d.target.Low, High: d.target.High}, ChokeMM: chokeMM, Coverage: m.screen.Coverage, MeetsAll: t.miss.none(),
	}
}

// whiteInk is the white that goes under the screen's ink: one of the shop's whites that sets alike and cures
// with all inks of the job, else the screen's own class, which has a white too. It is nil where neither hides.
func (m maker) whiteInk() *job.Ink {
	over := m.screen.Ink
	for i := range m.shop.Inks {
		in := &m.shop.Inks[i]
		if in.Whiteness > 0 && in.ScatterPerMM > 0 && in.Dries == over.Dries && in.On == over.On && m.curesWithAll(in) {
			return in
		}
	}
	if own := (job.Screen{Ink: over, Use: "underbase"}); over.ScatterPerMM > 0 && custom(own) != nil {
		return over
	}
	return nil
}

// onWhite tells whether a highlight lies on a white of the same location: it is printed on top by intent.
func (m maker) onWhite() bool {
	return use(m.screen) == "highlight" && slices.ContainsFunc(m.location.Screens[:m.number-1], isWhite)
}

// curesWithAll tells whether an ink shares a cure temperature with all inks of the job: a garment goes through
// the dryer at one.
func (m maker) curesWithAll(in *job.Ink) bool {
	low, high := 0.0, math.Inf(1)
	narrow := func(c *job.Range) {
		if c != nil {
			low, high = math.Max(low, c.Low), math.Min(high, c.High)
		}
	}
	narrow(in.CureC)
	for _, l := range m.job.Locations {
		for _, s := range l.Screens {
			narrow(s.Ink.CureC)
		}
	}
	return low <= high
}

// underAll is the one base of a location for all its screens that need one; it is printed before them all, so
// that every color may lie on it. It is nil where no screen needs a base or the shop has no white.
func underAll(screens []plan.Screen) *plan.LocationBase {
	var out *plan.LocationBase
	known := true
	covered := 0.0
	for _, s := range screens {
		if s.Base == nil {
			continue
		}
		if out == nil {
			out = &plan.LocationBase{Base: *s.Base, Before: screens[0].Number}
		}
		out.Under = append(out.Under, s.Number)
		known = known && s.Base.Coverage > 0
		covered += s.Base.Coverage
	}
	if out != nil {
		if out.Coverage = 0; known {
			out.Coverage = math.Min(1, covered)
		}
	}
	return out
}

// whiteOf is what a white print hides by: the reflectance of a film that nothing shows through, of the ink
// class or as whites are, and its scattering. It is none where the screen prints no white, or no white
// that scatters.
func whiteOf(s job.Screen) (whiteness, scattersPerMM float64, white bool) {
	if !isWhite(s) || s.Ink.ScatterPerMM == 0 {
		return 0, 0, false
	}
	if s.Ink.Whiteness > 0 {
		return s.Ink.Whiteness, s.Ink.ScatterPerMM, true
	}
	return whitestShare, math.Max(s.Ink.ScatterPerMM, ink.ScatteringDefaultPerMM), true
}

// The least and the most that a printed ink sends back of a light, whatever its swatch says (from memory).
const darkestShare, whitestShare = 0.01, 0.90
