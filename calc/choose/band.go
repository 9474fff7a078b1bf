package choose

import (
	"math"

	"bladecard/calc/film"
	"bladecard/calc/fit"
	"bladecard/calc/plan"
)

// ninety is how many standard deviations lie to either side of nine in ten of a normal spread.
const ninety = 1.6449

// band is the one formula of a film's band: the root of the sum of squares of what is not known, on the
// logarithm, laid on the value as a factor both ways. It holds nine of ten, before the shop has
// measured and after.
//
// Out of the box the parts are the model's own band and what is not known of a further wet stroke.
// With a calibration they are the fit's error for this mesh, blade, angle, hardness and stroke count,
// the scatter of a measured print or the usual errors, whichever is more (the one holds the other),
// what a new day brings, and what an old calibration may have drifted.
func (c chooser) band(value float64, t trial) (plan.Band, error) {
	b := c.bench
	half := math.Hypot(modelBand, ninety*strokeDoubt(t.strokes))
	if b.learned != nil {
		known, err := b.learned.Error(b.meshName, bladeName(t.stock), t.angleDeg, t.stock.Hardness[0], t.strokes)
		if err != nil {
			return plan.Band{}, err
		}
		usual := math.Min(1, t.moves.Together)
		half = b.learned.times * math.Sqrt(square(known)+square(math.Max(b.learned.Scatter, usual))+square(b.learned.Day)+square(b.learned.drift))
	}
	return plan.Band{Low: value * math.Exp(-half), Value: value, High: value * math.Exp(half)}, nil
}

// What is not known of a difference between two setups, at one sigma of the logarithm. The angle's is
// derived from what 15 to 45 deg may bring while the screen still clears, +2 to +40 %, taken as even
// (width / sqrt 12, over three steps of 10 deg); the hardness's is a judgement on the published signs. The
// others are judgements (from memory): a cloth's thickness from its geometry is known to 6 % (the fit to
// five published meshes); the shape of the stencil's share and the edge radii are assumptions, so half
// of what they bring.
const (
	angleSpreadPer10Deg       = fit.AngleSpread
	hardnessSpreadPer10ShoreA = fit.HardnessSpread
	meshSpread                = 0.06
	hitSpread                 = 0.10 // a print on gelled ink transfers more or less than one on cloth
	halfOfIt                  = 0.5
)

// differenceSpread is one sigma of what is not known of the change from setup a on bench x to
// setup b on bench y, on the logarithm.
func differenceSpread(a, b trial, x, y bench) float64 {
	sum := square(angleSpreadPer10Deg*(b.angleDeg-a.angleDeg)/10) +
		square(hardnessSpreadPer10ShoreA*(b.stock.Hardness[0]-a.stock.Hardness[0])/10)
	effect := math.Abs(math.Log(b.curedUM / a.curedUM))
	if a.hits != b.hits {
		sum += square(hitSpread)
	}
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

// strokeDoubt is what is not known of the film that further wet strokes add, as a logarithm at one
// sigma (from memory; no measurement is published).
func strokeDoubt(strokes int) float64 {
	if strokes < 2 {
		return 0
	}
	low, err1 := film.Strokes(strokes, film.NextStrokeShare-nextStrokeSpread)
	high, err2 := film.Strokes(strokes, film.NextStrokeShare+nextStrokeSpread)
	if err1 != nil || err2 != nil {
		return 1
	}
	return math.Log(high/low) / 2
}
