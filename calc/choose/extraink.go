package choose

import (
	"bladecard/calc/ink"
	"bladecard/calc/internal/sure"
	"bladecard/calc/plan"
)

// extraInk adds to the ink of the run what stays in the second screens of what is printed more than once in one turn.
func (m maker) extraInk(loc *plan.Location) {
	if loc.ExtraScreens == 0 || m.shop.StaysG == 0 {
		return
	}
	for i := range loc.Screens {
		sc := &loc.Screens[i]
		if sc.InkGRun == nil || sc.Hits < 2 {
			continue
		}
		g := m.shop.StaysG * float64(sc.Hits-1)
		*sc.InkGRun += g
		*sc.InkMLRun += sure.Of(ink.GToML(g, m.location.Screens[i].Ink.DensityKgPerL))
	}
}
