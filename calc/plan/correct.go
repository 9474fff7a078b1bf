package plan

import (
	"math"
	"strconv"
)

// corrections computes the single changes that this shop can make to the chosen setup, each
// with its effect on the cured film: what can be done at the press first (angle, strokes), then
// another blade, then another screen. A change that folds the blade over or makes it float is
// none.
func (c chooser) corrections(t trial, others []bench) ([]Correction, error) {
	var out []Correction
	add := func(ch chooser, kind, to string, s setup) error {
		n, err := ch.judge(s)
		if err != nil || n.fault != "" {
			return err
		}
		out = append(out, Correction{
			Kind: kind, To: to,
			DeltaUM: n.curedUM - t.curedUM, DeltaPercent: 100 * (n.curedUM/t.curedUM - 1),
			KeepsCut: n.miss.cut == 0, Clears: n.clears, Seen: math.Abs(n.curedUM/t.curedUM-1) >= filmSeenShare,
		})
		return nil
	}
	for _, by := range []float64{-handStepDeg, handStepDeg} {
		next := t.setup
		next.angleDeg += by
		if next.angleDeg < 0 || next.angleDeg > angleMostDeg {
			continue
		}
		if err := add(c, "angle", number(next.angleDeg), next); err != nil {
			return nil, err
		}
	}
	for _, by := range []int{-1, 1} {
		next := t.setup
		next.strokes += by
		if next.strokes < 1 || next.strokes > strokesMost {
			continue
		}
		if err := add(c, "strokes", strconv.Itoa(next.strokes), next); err != nil {
			return nil, err
		}
	}
	for _, s := range c.neighbours(t.stock) {
		next := t.setup
		next.stock = s
		if err := add(c, "blade", bladeName(s), next); err != nil {
			return nil, err
		}
	}
	for _, b := range others {
		other := c
		other.bench = b
		if err := add(other, "mesh", b.meshName, t.setup); err != nil {
			return nil, err
		}
	}
	return out, nil
}

// neighbours are the next softer and the next harder blade of the rack.
func (c chooser) neighbours(s stock) []stock {
	var softer, harder *stock
	for i := range c.rack.stocks {
		o := &c.rack.stocks[i]
		if _, fits := o.lengthMM(c.bench.imageMM); !fits {
			continue
		}
		if o.rank < s.rank {
			softer = o // the rack is in order: the last one is the nearest
		}
		if o.rank > s.rank && harder == nil {
			harder = o
		}
	}
	var out []stock
	if softer != nil {
		out = append(out, *softer)
	}
	if harder != nil {
		out = append(out, *harder)
	}
	return out
}
