package choose

import (
	"cmp"
	"math"

	"bladecard/calc/halftone"
	"bladecard/calc/ink"
	"bladecard/calc/internal/sure"
	"bladecard/calc/job"
	"bladecard/calc/plan"
)

// demand is what a screen must do: a film and a cut.
type demand struct {
	target   plan.Target
	finestMM float64
	coverMM  float64 // spread of an edge that is hidden by what is printed over it
	limitDeg float64 // most bent edge angle; noLimitDeg: none
	heavy    bool
	thick    bool // a sharp wall beside the film
	hard     bool // hard smooth stock
	hitsMost int  // prints with a flash between that may be planned
	flashed  bool // a flash follows the print anyway
}

// use is the screen's use, or solid where the job says none.
func use(s job.Screen) string {
	switch {
	case s.Use != "":
		return s.Use
	case s.Halftone != nil || s.BitmapDPI > 0:
		return "halftone"
	}
	return "solid"
}

// newDemand reads what the screen must do from the job, the ink class and the customs of the
// trade. The ground is what the film goes on.
func newDemand(s job.Screen, g ground) demand {
	rule := useRules[use(s)]
	d := demand{heavy: rule.heavy, thick: rule.thick, hard: g.hard, coverMM: rule.coverMM, hitsMost: hitsMost, flashed: g.flashed}
	if d.heavy && s.Ink.Rise <= 1 { // a gel stands as high as its stencil: the wall is the aim
		d.heavy, d.thick = false, true
	}
	switch {
	case d.hard, s.FlashWish == job.FlashNo:
		d.hitsMost = 1
	case d.heavy || d.thick:
		d.hitsMost = hitsMostThick
	}
	d.target, d.finestMM = target(s, g), finestMM(s, rule)
	d.limitDeg = d.limitFor(d.finestMM)
	return d
}

// limitFor is the most bent edge angle for the given smallest feature.
func (d demand) limitFor(finestMM float64) float64 {
	limit := edgeLimitDeg(finestMM + d.coverMM)
	switch {
	case d.hard:
		return math.Min(hardStockEdgeDeg, limit)
	case d.heavy:
		return raisedEdgeDeg
	case d.thick:
		return math.Min(thickEdgeDeg, limit)
	}
	return limit
}

// finestMM is the smallest feature that must hold: stated, or the smallest dot of the halftone,
// or the bitmap's dot, or what the use usually holds.
func finestMM(s job.Screen, rule useRule) float64 {
	switch {
	case s.FinestMM > 0:
		return s.FinestMM
	case s.Halftone != nil:
		return sure.Of(halftone.DotDiameterUM(s.Halftone.LinesPerInch, cmp.Or(s.Halftone.Smallest, rule.smallest))) / 1000
	case s.BitmapDPI > 0:
		return sure.Of(halftone.BitmapDotUM(s.BitmapDPI)) / 1000
	}
	return rule.finestMM
}

// ground is what a film goes on.
type ground struct {
	hard  bool   // a hard smooth sheet
	shade string // of the cloth: light, medium, dark; empty: not stated, or no cloth
	based bool   // an underbase or a blocker of the same location lies under it

	flashed bool // a flash follows the print
}

// target is the cured film that is asked for: the job's own; the one that hides the cloth, for
// an ink that hides, straight on cloth of a stated shade; the one that rises to a stated
// height; else the ink class's for the use, or for a solid where it states none for the use.
func target(s job.Screen, g ground) plan.Target {
	if s.FilmUM != nil {
		return plan.Target{Low: s.FilmUM.Low, High: s.FilmUM.High, From: "job"}
	}
	var class plan.Target
	if c := custom(s); c != nil && c.FilmUM != nil {
		class = plan.Target{Low: c.FilmUM.Low, High: c.FilmUM.High, From: "class"}
	}
	if s.HeightMM > 0 && s.Ink.Rise > 1 {
		um := sure.Of(ink.FilmForHeightUM(s.HeightMM*1000, s.Ink.Rise))
		return plan.Target{Low: um * (1 - heightSpread), High: um * (1 + heightSpread), From: "expansion"}
	}
	contrast := useRules[use(s)].contrast
	if contrast == 0 || g.based || g.shade == "" || s.Ink.ScatterPerMM == 0 || s.Ink.Whiteness == 0 || !isWhite(s) {
		return class
	}
	um := onKnitUM(sure.Of(ink.HidingOnClothUM(contrast, s.Ink.Whiteness, s.Ink.ScatterPerMM, sure.Of(ink.ClothReflectance(g.shade)))))
	if um <= class.Low {
		return class
	}
	return plan.Target{Low: um * (1 - hidingSlack), High: math.Max(class.High, um*hidingSpread), From: "hiding"}
}

// onKnitUM adds to a film what sinks into a knit; no film needs none.
func onKnitUM(um float64) float64 {
	if um == 0 {
		return 0
	}
	low, _ := sure.Both(ink.OnKnitUM(um))
	return low
}

// custom is what the ink class says of the use; nil where it says nothing.
func custom(s job.Screen) *job.Custom {
	if c := s.Ink.Uses[use(s)]; c != nil {
		return c
	}
	return s.Ink.Uses["solid"]
}

// featureMM is the width of the typical feature, for the share of the stencil that counts.
func featureMM(s job.Screen) float64 {
	switch {
	case s.FeatureMM > 0:
		return s.FeatureMM
	case s.Halftone != nil || s.BitmapDPI > 0:
		return halftoneFeatureMM
	}
	return useRules[use(s)].featureMM
}

// eomUM is the emulsion over mesh: stated, or the class's for the use, or the use's customary share.
func eomUM(s job.Screen, fabricUM float64) float64 {
	e := s.EOM
	if e == nil {
		if c := custom(s); c != nil {
			e = c.EOM
		}
	}
	switch {
	case e == nil:
		return useRules[use(s)].eomShare * fabricUM
	case e.UM > 0:
		return e.UM
	}
	return e.Share * fabricUM
}

// onSheet tells whether thin ink goes on a hard smooth sheet and not on a garment.
func (m maker) onSheet() bool {
	if m.job.Stock != nil {
		return true
	}
	return m.job.Garment == nil && m.screen.Ink.On == "sheet"
}

// ground is what this screen's film goes on.
func (m maker) ground() ground {
	g := ground{hard: m.onSheet()}
	if m.job.Garment != nil {
		g.shade = m.job.Garment.Shade
	}
	for _, s := range m.location.Screens[:m.number-1] {
		g.based = g.based || isBase(s)
	}
	last := m.number == len(m.location.Screens)
	g.flashed = !last && (isBase(m.screen) || m.screen.Ink.FlashEach) || m.screen.FlashWish == job.FlashYes || m.screen.FlashWish == job.FlashDry
	return g
}

// isBase tells whether a screen lays the ground for the others: it is flashed before they print.
func isBase(s job.Screen) bool { return use(s) == "underbase" || use(s) == "blocker" }
