package choose

import (
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
		for a := 0.0; a <= angleMostDeg; a += curveAngleStepDeg {
			if err := c.point(&cv, a, setup{stock: s, angleDeg: a, strokes: t.strokes, hits: t.hits}); err != nil {
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
	for h := curveLowShoreA; h <= curveHighShoreA; h += curveStepShoreA {
		s.Blade = withOuter(s.Blade, inner, h)
		if err := c.point(&cv, h, setup{stock: s, angleDeg: t.angleDeg, strokes: t.strokes, hits: t.hits}); err != nil {
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

func (c chooser) point(cv *plan.Curve, x float64, s setup) error {
	o, err := c.bench.try(s, slip{})
	if err != nil {
		return err
	}
	if o.fault == "" {
		cv.Points = append(cv.Points, plan.Point{X: x, UM: o.curedUM})
	}
	return nil
}
