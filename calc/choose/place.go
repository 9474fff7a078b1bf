package choose

import (
	"strings"

	"bladecard/calc/placement"
	"bladecard/calc/plan"
)

// place is where a location stands on the garment: as the job says, or as its name says, at the
// customary distances where the job gives none. How far down it stands on what has no collar is only known where the
// job says it. It is nil on a sheet, for an unknown name, and for a sleeve of what has none.
func (m maker) place() *plan.Placement {
	if m.onSheet() {
		return nil
	}
	word := m.location.Place
	if word == "" {
		word = strings.ReplaceAll(strings.ToLower(strings.TrimSpace(m.location.Name)), " ", "-")
		word = strings.ReplaceAll(word, "centre", "center")
	}
	usual, err := placement.Usual(word)
	if err != nil || usual.Side == placement.Sleeve && m.lacksCollar() {
		return nil
	}
	out := &plan.Placement{Place: word, Side: usual.Side, Left: usual.Left}
	switch {
	case m.location.DownMM > 0:
		out.DownMM, out.DownFrom = plan.Interval{Low: m.location.DownMM, High: m.location.DownMM}, "job"
	case !m.lacksCollar():
		out.DownMM, out.DownFrom = plan.Interval{Low: usual.Down.LowMM, High: usual.Down.HighMM}, "custom"
	}
	switch {
	case m.location.AcrossMM > 0:
		out.AcrossMM, out.AcrossFrom = &plan.Interval{Low: m.location.AcrossMM, High: m.location.AcrossMM}, "job"
	case usual.Across.HighMM > 0:
		out.AcrossMM, out.AcrossFrom = &plan.Interval{Low: usual.Across.LowMM, High: usual.Across.HighMM}, "custom"
	}
	return out
}

// lacksCollar tells whether the garment has no collar that the customary distances could count from, and no sleeves.
func (m maker) lacksCollar() bool {
	g := m.job.Garment
	return g != nil && (g.Outline == "cap" || g.Outline == "tote" || g.Outline == "apron")
}
