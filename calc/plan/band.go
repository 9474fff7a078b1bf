package plan

import (
	"math"

	"bladecard/calc/film"
)

// band is the one formula of a film's band: the model's (or the calibration's) scatter, the
// usual errors of angle and hardness, and what is not known of a further wet stroke, taken
// together as a root sum of squares of relative parts and laid on the logarithm.
func (c chooser) band(value float64, t trial) Band {
	rel := math.Sqrt(square(c.bench.scatter) + square(math.Min(1, t.moves.Together)) + square(strokeDoubt(t.strokes)))
	return Band{Low: value / (1 + rel), Value: value, High: value * (1 + rel)}
}

// strokeDoubt is what is not known of the film that further wet strokes add, as a relative part
// at one sigma: the share that the next stroke adds may be anything from 0 to 0.8 (from memory;
// no measurement is published), taken as even over that interval.
func strokeDoubt(strokes int) float64 {
	if strokes < 2 {
		return 0
	}
	low, err1 := film.Strokes(strokes, film.NextStrokeShare-nextStrokeSpread)
	high, err2 := film.Strokes(strokes, film.NextStrokeShare+nextStrokeSpread)
	mid, err3 := film.Strokes(strokes, film.NextStrokeShare)
	if err1 != nil || err2 != nil || err3 != nil {
		return 1
	}
	return (high - low) / mid / 2
}
