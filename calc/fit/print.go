package fit

import (
	"fmt"
	"math"

	"bladecard/calc/film"
	"bladecard/calc/internal/span"
)

var within = span.In("fit")

// Print is one measured print.
type Print struct {
	Line           int // of the log, to name it by; 0: none
	Mesh, Blade    string
	Day            string  // it was printed, in any form that tells days apart; empty: one day that is not stated
	AngleDeg       float64 // from vertical
	HardnessShoreA float64 // of the edge
	Strokes        int
	PredictedUM    float64 // cured film, by the uncalibrated model
	MeasuredUM     float64 // cured film
	Doubt          float64 // one sigma of ln(MeasuredUM) that all prints measured alike have in common, such as what cloth takes in
}

func (p Print) check() error {
	err := span.First(
		within("predicted film", p.PredictedUM, 0.01, 1e5, "um"),
		within("measured film", p.MeasuredUM, 0.01, 1e5, "um"),
		within("angle", p.AngleDeg, 0, 90, "deg"),
		within("hardness", p.HardnessShoreA, 1, 100, "Shore A"),
		within("doubt", p.Doubt, 0, 10, "(a logarithm)"),
		within("strokes", float64(p.Strokes), 1, 20, "strokes"),
	)
	if err != nil && p.Line > 0 {
		return fmt.Errorf("line %d: %w", p.Line, err)
	}
	return err
}

// ratio is ln(measured / predicted).
func (p Print) ratio() float64 { return math.Log(p.MeasuredUM / p.PredictedUM) }

// mostShare is the most that a further stroke is taken to add.
const mostShare = 0.94

// strokes is what a share q of the further strokes does to the film against NextStroke, on the
// logarithm, and its derivative.
func strokes(n int, q float64) (value, slope float64, err error) {
	if n == 1 {
		return 0, 0, nil
	}
	const h = 1e-5
	at := func(q float64) float64 {
		var v float64
		if err == nil {
			v, err = film.Strokes(n, math.Max(0, math.Min(mostShare+1e-5, q)))
		}
		return v
	}
	base, mid, low, high := at(NextStroke), at(q), at(q-h), at(q+h)
	if err != nil {
		return 0, 0, err
	}
	return math.Log(mid / base), math.Log(high/low) / (2 * h), nil
}
