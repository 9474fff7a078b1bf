package choose

import (
	"bladecard/calc/film"
	"bladecard/calc/job"
	"bladecard/calc/plan"
)

// How finely the card's curves are computed.
const (
	curveAngleStepDeg = 2.5
	curveLowShoreA    = 50.0
	curveHighShoreA   = 90.0
	curveStepShoreA   = 2.5
)

// charts computes the cured film over the angle for every blade of the rack, and over the edge
// hardness for a blade of one layer and, where the chosen blade has a core, for that core.
func (c chooser) charts(t trial) (plan.Charts, error) {
	var out plan.Charts
	seen := map[string]bool{}
	for _, s := range c.rack.stocks {
		name := s.Name
		if name == "" {
			name = s.Layup
		}
		if seen[name] {
			continue
		}
		seen[name] = true
		cv := plan.Curve{Name: name, Chosen: s.Name == t.stock.Name && s.Layup == t.stock.Layup && s.Edge == t.stock.Edge}
		trace := tracer{cv: &cv}
		for a := 0.0; a <= angleMostDeg; a += curveAngleStepDeg {
			if err := c.add(&trace, a, setup{stock: s, angleDeg: a, strokes: t.strokes, hits: t.hits}); err != nil {
				return out, err
			}
		}
		out.Angle = append(out.Angle, cv)
	}
	plain := t.stock
	plain.Blade.LayersMM, plain.Blade.ModulusMPa = nil, nil
	plain.Hardness = []float64{0}
	layered := len(t.stock.Hardness) > 1
	one, err := c.overHardness(t, plain, plan.Curve{Name: "one-layer", Chosen: !layered})
	if err != nil {
		return out, err
	}
	out.Hardness = append(out.Hardness, one)
	if layered {
		cored := t.stock
		cored.Blade.ModulusMPa = nil
		cv, err := c.overHardness(t, cored, plan.Curve{Name: "same-core", Chosen: true})
		if err != nil {
			return out, err
		}
		out.Hardness = append(out.Hardness, cv)
	}
	return out, nil
}

// overHardness varies the hardness of the outer layers of a blade.
func (c chooser) overHardness(t trial, s stock, cv plan.Curve) (plan.Curve, error) {
	inner := s.Hardness
	s.known = nil
	trace := tracer{cv: &cv}
	for h := curveLowShoreA; h <= curveHighShoreA; h += curveStepShoreA {
		s.Blade = withOuter(s.Blade, inner, h)
		if err := c.add(&trace, h, setup{stock: s, angleDeg: t.angleDeg, strokes: t.strokes, hits: t.hits}); err != nil {
			return cv, err
		}
	}
	return cv, nil
}

func withOuter(b job.Blade, hardness []float64, outer float64) job.Blade {
	last := len(hardness) - 1
	b.Hardness = append([]float64(nil), hardness...)
	if hardness[last] == hardness[0] {
		b.Hardness[last] = outer // alike on both sides
	}
	b.Hardness[0] = outer
	return b
}

// fails says how a setup prints badly; of both ways ink that is left comes first, since it stops the press.
func (b bench) fails(o outlook) string {
	switch {
	case o.fault != "":
		return ""
	case !o.clears:
		return "ink"
	case o.edgeDeg > b.demand.limitDeg:
		return "detail"
	}
	return ""
}

// tracer adds the points of a curve in the order of x.
type tracer struct {
	cv   *plan.Curve
	last outlook // of the point before
}

// add tries a setup and adds its point. Between a point that prints well and one that does not it adds the
// point at which the limit is reached, found on the straight line between the two.
func (c chooser) add(t *tracer, x float64, s setup) error {
	o, err := c.bench.try(s, slip{})
	if err != nil {
		return err
	}
	before := t.last
	if t.last = o; o.fault != "" {
		return nil
	}
	now := plan.Point{X: x, UM: o.curedUM, Fails: c.bench.fails(o)}
	if n := len(t.cv.Points); n > 0 && before.fault == "" {
		from := t.cv.Points[n-1]
		if (from.Fails == "") != (now.Fails == "") {
			at := c.bench.limitReached(before, o, now.Fails != "")
			t.cv.Points = append(t.cv.Points, plan.Point{X: from.X + at*(x-from.X), UM: from.UM + at*(now.UM-from.UM)})
		}
	}
	t.cv.Points = append(t.cv.Points, now)
	return nil
}

// limitReached is the share of the way from one outlook to another at which the first limit is passed, or,
// where things get better, at which the last one is kept again.
func (b bench) limitReached(from, to outlook, worse bool) float64 {
	at, any := 0.0, false
	for _, v := range []struct{ from, to, most float64 }{{from.edgeDeg, to.edgeDeg, b.demand.limitDeg}, {from.liftOver, to.liftOver, film.ClearRatio}} {
		if (v.from <= v.most) == (v.to <= v.most) {
			continue
		}
		share := (v.most - v.from) / (v.to - v.from)
		if !any || (share < at) == worse {
			at, any = share, true
		}
	}
	return at
}
