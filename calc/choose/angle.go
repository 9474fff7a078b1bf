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
func (c chooser) angleRange(t trial) (r plan.SetRange, exactDeg float64, err error) {
	allowed := t.miss.total() + 1e-9
	least := math.Min(t.angleDeg, workhorseAngleDeg) - handStepDeg
	edge := func(dir float64) (float64, error) {
		at := t.angleDeg
		for math.Abs(at+dir*scanDeg-t.angleDeg) <= rangeReachDeg {
			next := at + dir*scanDeg
			if next < math.Max(0, least) || next > math.Max(angleMostDeg, t.angleDeg) {
				break
			}
			o, err := c.look(setup{stock: t.stock, angleDeg: next, strokes: t.strokes, hits: t.hits})
			if err == nil && o.miss.total() <= allowed {
				o, err = c.weigh(o)
			}
			if err != nil {
				return 0, err
			}
			if o.fault != "" || o.miss.total() > allowed {
				break
			}
			at = next
		}
		return at, nil
	}
	low, err := edge(-1)
	if err != nil {
		return r, 0, err
	}
	high, err := edge(1)
	if err != nil {
		return r, 0, err
	}
	r = plan.SetRange{
		Low:      math.Min(t.angleDeg, math.Ceil(low/handStepDeg-1e-9)*handStepDeg),
		Set:      t.angleDeg,
		High:     math.Max(t.angleDeg, math.Floor(high/handStepDeg+1e-9)*handStepDeg),
		ToScreen: 90 - t.angleDeg,
	}
	return r, high - low, nil
}
