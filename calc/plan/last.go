package plan

// LastRun is what a screen ran with last and what came of it, as the shop's press log has it. A figure is
// null, and a text empty, where the log does not tell.
type LastRun struct {
	Date        string       `json:"date,omitempty"` // 2026-11-20
	Mesh        string       `json:"mesh"`
	EOMUM       *float64     `json:"eom_um"`
	Ink         string       `json:"ink,omitempty"`
	Blade       string       `json:"blade"`
	AngleDeg    float64      `json:"angle_deg"`
	LoadNPerCM  *float64     `json:"load_n_per_cm"`
	AirBar      *float64     `json:"air_bar"`
	Strokes     int          `json:"strokes"`
	Hits        int          `json:"hits"`
	FlashS      *float64     `json:"flash_s"`
	CuredUM     *float64     `json:"cured_um"`             // film of all hits
	CuredFrom   string       `json:"cured_from,omitempty"` // gauge, comb, weight: how it was measured; of the last two it is computed
	Wiped       string       `json:"wiped,omitempty"`      // yes, no: the image area came clean
	CureC       *float64     `json:"cure_c"`               // that the film reached
	Wash        string       `json:"wash,omitempty"`       // pass, fail
	Name        string       `json:"name,omitempty"`       // who signed the first print off
	Differences []Difference `json:"differences"`          // from the setup of this plan; the film where it lies outside the expected band
}

// Difference is one thing that was set otherwise than this plan has it: a name, or a figure in the unit of
// LastRun.
type Difference struct {
	What  string   `json:"what"` // mesh, eom, ink, blade, angle, strokes, hits, load, air, flash, film
	Then  string   `json:"then,omitempty"`
	Now   string   `json:"now,omitempty"`
	Was   *float64 `json:"was,omitempty"`
	Is    *float64 `json:"is,omitempty"`
	Range *Band    `json:"range,omitempty"` // of a film: what is expected now
}
