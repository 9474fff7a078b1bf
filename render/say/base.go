package say

import (
	"fmt"

	"bladecard/calc/plan"
)

// Base is the base that is proposed for a location, in words; empty where none is.
func (v *Voice) Base(b *plan.LocationBase) string {
	if b == nil {
		return ""
	}
	return v.T("base.proposed", append(v.baseValues(b), "ink", b.Ink, "mesh", b.Mesh)...)
}

// BaseNotes are what a job file cannot say of a base, line by line: for whom it is, how it is drawn, and what
// is expected of it.
func (v *Voice) BaseNotes(b *plan.LocationBase) []string {
	notes := []string{v.T("base.draw", v.baseValues(b)...), v.T("base.expect", v.baseValues(b)...)}
	if !b.MeetsAll {
		notes = append(notes, v.T("base.misses"))
	}
	return notes
}

func (v *Voice) baseValues(b *plan.LocationBase) []string {
	pulls := v.Many("change.strokes", b.Strokes)
	if b.Hits > 1 {
		pulls = v.Pulls(b.Strokes, b.Hits)
	}
	return []string{"under", v.Screens(b.Under), "before", fmt.Sprint(b.Before), "choke", v.Small(b.ChokeMM),
		"film", v.FilmUM(b.CuredUM), "target", v.FilmRange(b.TargetUM.Low, b.TargetUM.High),
		"blade", b.Blade, "angle", v.Angle(b.AngleDeg), "pulls", pulls}
}
