package choose

import (
	"strings"

	"bladecard/calc/placement"
	"bladecard/calc/plan"
)

// place is where a location stands on the garment: as the job says, or as its name says, at the
// customary distances where the job gives none. It is nil on a sheet, and for an unknown name.
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
	if err != nil || m.location.DownMM == 0 && m.lacksCollar() {
		return nil
	}
	out := &plan.Placement{
		Place: word, Side: usual.Side, Left: usual.Left,
		DownMM: plan.Interval{Low: usual.Down.LowMM, High: usual.Down.HighMM}, DownFrom: "custom",
	}
	if m.location.DownMM > 0 {
		out.DownMM, out.DownFrom = plan.Interval{Low: m.location.DownMM, High: m.location.DownMM}, "job"
	}
	switch {
	case m.location.AcrossMM > 0:
		out.AcrossMM, out.AcrossFrom = &plan.Interval{Low: m.location.AcrossMM, High: m.location.AcrossMM}, "job"
	case usual.Across.HighMM > 0:
		out.AcrossMM, out.AcrossFrom = &plan.Interval{Low: usual.Across.LowMM, High: usual.Across.HighMM}, "custom"
	}
	return out
}

// lacksCollar tells whether the garment has no collar that the customary distances could count from.
func (m maker) lacksCollar() bool {
	g := m.job.Garment
	return g != nil && (g.Outline == "cap" || g.Outline == "tote" || g.Outline == "apron")
}
