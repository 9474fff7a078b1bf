package plan

// PressTime is how long a location takes on the press that the job means, from figures of the shop or
// customary ones. Stops for ink, rags and misprints are not in it.
type PressTime struct {
	PieceS        float64  `json:"piece_s"` // from one finished piece to the next
	PiecesPerHour float64  `json:"pieces_per_hour"`
	PressPerHour  float64  `json:"press_per_hour"` // what the press could print, whatever the dryer takes
	Sum           bool     `json:"sum"`            // the times add up; false: the slowest one sets the pace
	Slowest       string   `json:"slowest"`        // load, print, flash, cool, dryer
	SlowestScreen int      `json:"slowest_screen"` // 0: the loading, or the dryer
	SetupMin      float64  `json:"setup_min"`
	RunMin        *float64 `json:"run_min"` // null: quantity not stated
}

// JobTime is how long all locations of a job take on the press, one after another.
type JobTime struct {
	SetupMin float64 `json:"setup_min"`
	RunMin   float64 `json:"run_min"`
}
