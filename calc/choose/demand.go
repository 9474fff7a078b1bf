package choose

import (
	"math"

	"bladecard/calc/halftone"
	"bladecard/calc/ink"
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
func newDemand(s job.Screen, g ground) (demand, error) {
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
	var err error
	if d.target, err = target(s, g); err != nil {
		return d, err
	}
	if d.finestMM, err = finestMM(s, rule); err != nil {
		return d, err
	}
	d.limitDeg = d.limitFor(d.finestMM)
	return d, nil
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
func finestMM(s job.Screen, rule useRule) (float64, error) {
	switch {
	case s.FinestMM > 0:
		return s.FinestMM, nil
	case s.Halftone != nil:
		share := s.Halftone.Smallest
		if share == 0 {
			share = rule.smallest
		}
		um, err := halftone.DotDiameterUM(s.Halftone.LinesPerInch, share)
		return um / 1000, err
	case s.BitmapDPI > 0:
		um, err := halftone.BitmapDotUM(s.BitmapDPI)
		return um / 1000, err
	}
	return rule.finestMM, nil
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
func target(s job.Screen, g ground) (plan.Target, error) {
	if s.FilmUM != nil {
		return plan.Target{Low: s.FilmUM.Low, High: s.FilmUM.High, From: "job"}, nil
	}
	var class plan.Target
	if c := custom(s); c != nil && c.FilmUM != nil {
		class = plan.Target{Low: c.FilmUM.Low, High: c.FilmUM.High, From: "class"}
	}
	if s.HeightMM > 0 && s.Ink.Rise > 1 {
		um, err := ink.FilmForHeightUM(s.HeightMM*1000, s.Ink.Rise)
		return plan.Target{Low: um * (1 - heightSpread), High: um * (1 + heightSpread), From: "expansion"}, err
	}
	contrast := useRules[use(s)].contrast
	if contrast == 0 || g.based || g.shade == "" || s.Ink.ScatterPerMM == 0 || s.Ink.Whiteness == 0 || !isWhite(s) {
		return class, nil
	}
	cloth, err := ink.ClothReflectance(g.shade)
	if err != nil {
		return class, err
	}
	um, err := ink.HidingOnClothUM(contrast, s.Ink.Whiteness, s.Ink.ScatterPerMM, cloth)
	if err != nil || um == 0 {
		return class, err
	}
	onKnit, _, err := ink.OnKnitUM(um)
	if err != nil || onKnit <= class.Low {
		return class, err
	}
	return plan.Target{Low: onKnit * (1 - hidingSlack), High: math.Max(class.High, onKnit*hidingSpread), From: "hiding"}, nil
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

// hardStock tells whether thin ink goes on a hard smooth sheet.
func (m maker) hardStock() bool {
	if m.job.Stock != nil {
		return true
	}
	return m.job.Garment == nil && m.screen.Ink.On == "sheet"
}

// ground is what this screen's film goes on.
func (m maker) ground() ground {
	g := ground{hard: m.hardStock()}
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
