package say

import (
	"fmt"
	"math"

	"bladecard/calc/plan"
)

// PressTime is how long a location takes on the press, in words; empty where it is not known.
func (v *Voice) PressTime(t *plan.PressTime) string {
	if t == nil {
		return ""
	}
	key := "time.pace-"
	if t.Sum {
		key = "time.longest-"
	}
	text := v.T("time.location", "piece", v.Seconds(t.PieceS), "pieces", v.Number(t.PiecesPerHour, 0),
		"pace", v.T(key+t.Slowest, "n", fmt.Sprint(t.SlowestScreen), "press", v.Number(t.PressPerHour, 0)), "setup", v.Minutes(t.SetupMin))
	if t.RunMin != nil {
		text += v.T("time.run", "run", v.Minutes(*t.RunMin))
	}
	return text
}

// JobTime is how long a job of several locations takes; empty where it is not known, or of one location.
func (v *Voice) JobTime(p *plan.Plan) string {
	if p.Time == nil || len(p.Locations) < 2 {
		return ""
	}
	return v.T("time.job", "setup", v.Minutes(p.Time.SetupMin), "run", v.Minutes(p.Time.RunMin), "all", v.Minutes(p.Time.SetupMin+p.Time.RunMin))
}

// Minutes is a time in minutes, in hours and minutes from one hour up; never less than a minute.
func (v *Voice) Minutes(min float64) string {
	whole := int(math.Max(1, math.Round(min+1e-9)))
	if whole < 60 {
		return v.T("time.minutes", "m", fmt.Sprint(whole))
	}
	if whole%60 == 0 {
		return v.T("time.whole-hours", "h", fmt.Sprint(whole/60))
	}
	return v.T("time.hours", "h", fmt.Sprint(whole/60), "m", fmt.Sprint(whole%60))
}
