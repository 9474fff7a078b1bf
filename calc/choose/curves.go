package choose

import (
	"slices"

	"bladecard/calc/film"
	"bladecard/calc/plan"
)

// How finely the card's curves are computed.
const (
	curveAngleStepDeg = 2.5
	curveLowShoreA    = 50.0
	curveHighShoreA   = 90.0
	curveStepShoreA   = 2.5
)

// charts computes the cured film over the angle for every blade of the rack that reaches over the image, and over the edge
// hardness for a blade of one layer and, where the chosen blade has a core, for that core.
func (c chooser) charts(t trial) plan.Charts {
	var out plan.Charts
	var seen []string
	for _, s := range c.rack.stocks {
		if slices.Contains(seen, s.Name) {
			continue
		}
		seen = append(seen, s.Name)
		curve := plan.Curve{Name: s.Name, Chosen: s.alike(t.stock)}
		if _, reaches := s.lengthMM(c.given.imageMM); reaches || curve.Chosen { // a shorter one keeps its place, and with it its style
			curve = c.trace(curve, 0, angleMostDeg, curveAngleStepDeg, func(deg float64) setup {
				return setup{stock: s, angleDeg: deg, strokes: t.strokes, hits: t.hits}
			})
		}
		out.Angle = append(out.Angle, curve)
	}
	layered := len(t.stock.Hardness) > 1
	plain := t.stock
	plain.LayersMM, plain.Hardness = nil, []float64{0}
	out.Hardness = append(out.Hardness, c.overHardness(plan.Curve{Name: "one-layer", Chosen: !layered}, t.setup, plain))
	if layered {
		out.Hardness = append(out.Hardness, c.overHardness(plan.Curve{Name: "same-core", Chosen: true}, t.setup, t.stock))
	}
	return out
}

// overHardness varies the hardness of the outer layers of a blade in a setup.
func (c chooser) overHardness(curve plan.Curve, s setup, b stock) plan.Curve {
	return c.trace(curve, curveLowShoreA, curveHighShoreA, curveStepShoreA, func(shoreA float64) setup {
		s.stock = b.withOuter(shoreA)
		return s
	})
}

// withOuter is the blade with its printing layer, and the one behind that is alike, of another rubber.
func (s stock) withOuter(shoreA float64) stock {
	last := len(s.Hardness) - 1
	alike := s.Hardness[last] == s.Hardness[0]
	s.Hardness = slices.Clone(s.Hardness)
	if s.Hardness[0] = shoreA; alike {
		s.Hardness[last] = shoreA
	}
	s.ModulusMPa, s.id = nil, madeUp
	return s
}

// trace adds the points of a curve in the order of x, without those where the setup folds over or floats.
// Between a point that prints well and one that does not it adds the point at which the limit is reached,
// found on the straight line between the two.
func (c chooser) trace(curve plan.Curve, low, high, step float64, at func(x float64) setup) plan.Curve {
	var before outlook
	for x := low; x <= high; x += step {
		o := c.given.try(at(x), slip{})
		if n := len(curve.Points); o.fault == "" {
			now := plan.Point{X: x, UM: o.curedUM, Fails: c.given.fails(o)}
			if n > 0 && before.fault == "" && (curve.Points[n-1].Fails == "") != (now.Fails == "") {
				from, share := curve.Points[n-1], c.given.limitReached(before, o, now.Fails != "")
				curve.Points = append(curve.Points, plan.Point{X: from.X + share*(x-from.X), UM: from.UM + share*(now.UM-from.UM)})
			}
			curve.Points = append(curve.Points, now)
		}
		before = o
	}
	return curve
}

// fails says how a setup prints badly; of both ways ink that is left comes first, since it stops the press.
func (g given) fails(o outlook) string {
	switch {
	case o.fault != "":
		return ""
	case !o.clears:
		return "ink"
	case o.edgeDeg > g.demand.limitDeg:
		return "detail"
	}
	return ""
}

// limitReached is the share of the way from one outlook to another at which the first limit is passed, or,
// where things get better, at which the last one is kept again.
func (g given) limitReached(from, to outlook, worse bool) float64 {
	at, any := 0.0, false
	for _, v := range []struct{ from, to, most float64 }{{from.edgeDeg, to.edgeDeg, g.demand.limitDeg}, {from.liftOver, to.liftOver, film.ClearRatio}} {
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
