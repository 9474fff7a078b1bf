package say

import (
	"fmt"
	"strings"

	"bladecard/calc/plan"
)

// Rounds is how the screens with several hits print more than once on a kind of press: in several turns, from
// a second screen, or from the same one; empty where each prints once.
func (v *Voice) Rounds(kind string, l plan.Location) string {
	var out []string
	if l.Turns > 1 {
		for i, screens := range l.TurnScreens {
			out = append(out, v.T("rounds.turn", "n", fmt.Sprint(i+1), "screens", v.Screens(screens)))
		}
		return v.T("rounds.turns", "n", fmt.Sprint(l.Turns), "list", strings.Join(out, "; "))
	}
	var again []int
	for _, s := range l.Screens {
		switch {
		case s.Hits < 2:
		case kind == "automatic":
			heads := strings.Trim(strings.Join(strings.Fields(fmt.Sprint(s.Heads)), ", "), "[]")
			out = append(out, v.T("rounds.extra", "screen", v.Screens([]int{s.Number}), "n", fmt.Sprint(s.Hits), "heads", heads))
		default:
			again = append(again, s.Number)
		}
	}
	if again != nil {
		out = append(out, v.T("rounds.again", "screens", v.Screens(again)))
	}
	return strings.Join(out, "; ")
}
