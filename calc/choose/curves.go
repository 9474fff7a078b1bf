package choose

import (
	"slices"

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
func (c chooser) charts(t trial) plan.Charts {
	var out plan.Charts
	var seen []string
	for _, s := range c.rack.stocks {
		if slices.Contains(seen, s.Name) {
			continue
		}
		seen = append(seen, s.Name)
		curve := plan.Curve{Name: s.Name, Chosen: s.alike(t.stock)}
		for a := 0.0; a <= angleMostDeg; a += curveAngleStepDeg {
			c.point(&curve, a, setup{stock: s, angleDeg: a, strokes: t.strokes, hits: t.hits})
		}
		out.Angle = append(out.Angle, curve)
	}
	layered := len(t.stock.Hardness) > 1
	plain := t
	plain.stock.LayersMM, plain.stock.Hardness = nil, []float64{0}
	out.Hardness = append(out.Hardness, c.overHardness(plain.setup, plan.Curve{Name: "one-layer", Chosen: !layered}))
	if layered {
		out.Hardness = append(out.Hardness, c.overHardness(t.setup, plan.Curve{Name: "same-core", Chosen: true}))
	}
	return out
}

// overHardness varies the hardness of the outer layers of a blade.
func (c chooser) overHardness(s setup, curve plan.Curve) plan.Curve {
	for h := curveLowShoreA; h <= curveHighShoreA; h += curveStepShoreA {
		harder := s
		harder.stock = s.stock.withOuter(h)
		c.point(&curve, h, harder)
	}
	return curve
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

// point adds the film of a setup to a curve, where it has one.
func (c chooser) point(curve *plan.Curve, x float64, s setup) {
	if o := c.given.try(s, slip{}); o.fault == "" {
		curve.Points = append(curve.Points, plan.Point{X: x, UM: o.curedUM})
	}
}
