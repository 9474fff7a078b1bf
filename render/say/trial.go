package say

import (
	"fmt"

	"bladecard/calc/fit"
	"bladecard/calc/trials"
)

// Around is where nine of ten films lie round the predicted one, "32 % under to 48 % over".
func (v *Voice) Around(b trials.Band) string {
	return v.T("range.around", "low", v.Number(b.UnderPercent, 0), "high", v.Number(b.OverPercent, 0))
}

// TrialEffect is how well the effect of something is known before and after the test prints.
type TrialEffect struct{ What, Before, After string }

// TrialEffects are those of angle, hardness and a further stroke.
func (v *Voice) TrialEffects(t trials.Trial) []TrialEffect {
	of := func(key string, e trials.Effect) TrialEffect {
		return TrialEffect{v.T("trial.effect-" + key), "±" + nbsp + v.Percent(e.Before), "±" + nbsp + v.Percent(e.After)}
	}
	return []TrialEffect{of("angle", t.Angle), of("hardness", t.Hardness), of("next-stroke", t.NextStroke)}
}

// TrialPrint is a print of a trial, the nth, in cells.
func (v *Voice) TrialPrint(n int, p fit.Print) []string {
	return []string{fmt.Sprintf("%2d", n), p.Mesh, p.Blade, v.Angle(p.AngleDeg), v.Many("change.strokes", p.Strokes)}
}
