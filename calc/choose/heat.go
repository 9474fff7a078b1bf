package choose

import (
	"bladecard/calc/job"
	"bladecard/calc/plan"
	"slices"
)

// heat works out flash, cure and cautions of every screen of a location.
func (m maker) heat(loc *plan.Location) *job.Error {
	for i := range loc.Screens {
		sc, at := &loc.Screens[i], m
		at.screen, at.number = m.location.Screens[i], i+1
		if fail := at.try("ink", "figures of the ink class inside the ranges of the formulas", func() {
			sc.WaterGM2 = at.water(sc.WetUM.Value)
			sc.Warnings = append(sc.Warnings, at.flash(sc)...)
		}); fail != nil {
			return fail
		}
		at.cure(sc)
		sc.Cautions = at.cautions(*sc)
		flashFeels(sc)
	}
	return nil
}

// cautions are the codes of what can hurt: the ink class's, less those of a flash that is not
// lit, a dryer that is not used and a press that no motor moves.
func (m maker) cautions(sc plan.Screen) []string {
	out := append([]string{}, m.screen.Ink.Cautions...)
	return slices.DeleteFunc(out, func(c string) bool {
		return c == "hot-flash" && !sc.Flash.Needed || c == "hot-dryer" && sc.Cure.By != "heat" || c == "moving-press" && m.press.Kind == "manual"
	})
}
