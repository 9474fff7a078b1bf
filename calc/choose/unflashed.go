package choose

import (
	"bladecard/calc/plan"
	"bladecard/calc/press"
)

// unflashed warns of the screens that want a flash before the next one prints, where the job forbids it.
func (m maker) unflashed(screens []press.Screen) []plan.Warning {
	var out []plan.Warning
	for i, s := range screens[:len(screens)-1] {
		if s.Forbidden && (s.Flash || isBase(m.location.Screens[i]) && !m.onSheet()) {
			out = append(out, warn("flash-forbidden", vals{"screen": float64(i + 1), "next": float64(i + 2)}))
		}
	}
	return out
}
