package say

import "bladecard/calc/trials"

// TrialEffects says of angle, hardness and a further stroke how well each is known before and after the test prints.
func (v *Voice) TrialEffects(t trials.Trial) []string {
	line := func(key string, e trials.Effect) string {
		return v.T("trial."+key, "before", v.Percent(e.Before), "after", v.Percent(e.After))
	}
	return []string{line("angle", t.Angle), line("hardness", t.Hardness), line("next-stroke", t.NextStroke)}
}
