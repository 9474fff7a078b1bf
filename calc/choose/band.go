package choose

import (
	"math"

	"bladecard/calc/film"
	"bladecard/calc/plan"
)

// band is the one formula of a film's band: the root sum of squares of relative parts, laid on
// the value as a factor both ways.
//
// Out of the box the parts are the model's scatter (a judgement of about one sigma), the usual
// errors of angle and hardness, and what is not known of a further wet stroke. With a calibration
// they are the fit's error for this mesh, blade, angle, hardness and stroke count, the scatter of
// a measured print or the usual errors, whichever is more (the one holds the other), and what an
// old calibration may have drifted; the band then holds nine of ten prints.
func (c chooser) band(value float64, t trial) (plan.Band, error) {
	b := c.bench
	usual := math.Min(1, t.moves.Together)
	if b.learned == nil {
		by := 1 + math.Sqrt(square(modelScatter)+square(usual)+square(strokeDoubt(t.strokes)))
		return plan.Band{Low: value / by, Value: value, High: value * by}, nil
	}
	known, err := b.learned.Error(b.meshName, bladeName(t.stock), t.angleDeg, t.stock.Hardness[0], t.strokes)
	if err != nil {
		return plan.Band{}, err
	}
	by := math.Exp(b.learned.times * math.Sqrt(square(known)+square(math.Max(b.learned.Scatter, usual))+square(b.learned.drift)))
	return plan.Band{Low: value / by, Value: value, High: value * by}, nil
}

// What is not known of a difference between two setups, at one sigma of the logarithm. The first
// two are derived from the published and tried constants' bands of differences, each taken as
// even (width / sqrt 12): 15 to 45 deg +2 to +107 %, that is 0.02 to 0.73; 70 to 80 Shore A -2
// to -9 % and 70 to 60 +2 to +13 %. The others are judgements (from memory): a cloth's
// thickness from its geometry is known to 6 % (the fit to five published meshes); the shape of the
// stencil's share and the edge radii are assumptions, so half of what they bring.
const (
	angleSpreadPer10Deg       = 0.068
	hardnessSpreadPer10ShoreA = 0.025
	meshSpread                = 0.06
	halfOfIt                  = 0.5
)

// differenceSpread is one sigma of what is not known of the change from setup a on bench x to
// setup b on bench y, on the logarithm.
func differenceSpread(a, b trial, x, y bench) float64 {
	sum := square(angleSpreadPer10Deg*(b.angleDeg-a.angleDeg)/10) +
		square(hardnessSpreadPer10ShoreA*(b.stock.Hardness[0]-a.stock.Hardness[0])/10)
	effect := math.Abs(math.Log(b.curedUM / a.curedUM))
	if a.strokes != b.strokes {
		sum += square(math.Max(strokeDoubt(a.strokes), strokeDoubt(b.strokes)))
	}
	switch {
	case x.meshName != y.meshName:
		sum += 2 * square(meshSpread)
	case x.eomUM != y.eomUM:
		sum += square(halfOfIt * effect)
	}
	if a.stock.Edge != b.stock.Edge {
		sum += square(halfOfIt * effect)
	}
	return math.Sqrt(sum)
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
