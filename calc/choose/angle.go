package choose

import (
	"math"

	"bladecard/calc/plan"
)

// scanDeg is how finely the ends of an angle range are looked for.
const scanDeg = 0.25

// angleRange returns the angles round the chosen setup over which it misses nothing, cut to
// what a hand can keep, and the width of the range before it was cut. Where the setup itself
// misses a demand, the range is over which it misses no more than at the set angle.
func (c chooser) angleRange(t trial) (r plan.SetRange, exactDeg float64) {
	allowed := t.miss.total() + 1e-9
	least := math.Min(t.angleDeg, workhorseAngleDeg) - handStepDeg
	end := func(by float64) float64 {
		at := t.angleDeg
		for next := at + by; math.Abs(next-t.angleDeg) <= rangeReachDeg && next >= math.Max(0, least) && next <= math.Max(angleMostDeg, t.angleDeg); next += by {
			o := c.look(setup{stock: t.stock, angleDeg: next, strokes: t.strokes, hits: t.hits})
			if o.miss.total() <= allowed {
				o = c.weigh(o)
			}
			if o.fault != "" || o.miss.total() > allowed {
				break
			}
			at = next
		}
		return at
	}
	low, high := end(-scanDeg), end(scanDeg)
	r = plan.SetRange{
		Low:      math.Min(t.angleDeg, math.Ceil(low/handStepDeg-1e-9)*handStepDeg),
		Set:      t.angleDeg,
		High:     math.Max(t.angleDeg, math.Floor(high/handStepDeg+1e-9)*handStepDeg),
		ToScreen: 90 - t.angleDeg,
	}
	return r, high - low
}
