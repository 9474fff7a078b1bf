package choose

import (
	"math"

	"bladecard/calc/plan"
)

// meshEquivalents is how many other meshes are tried as equivalents, the nearest ink volumes first.
const meshEquivalents = 4

// equivalents lists the other blades of the rack, and other meshes of the racks, with which a film
// inside the band of the chosen setup meets all its demands, each with the setup that does it and
// its film against the chosen one. A blade that the job fixes binds the other meshes, not the
// other blades. Where the chosen setup misses a demand, its own film and its own cut are what the
// others must give.
func (c chooser) equivalents(ch choice, meshes []bench) ([]plan.Equivalent, error) {
	out := []plan.Equivalent{}
	best := ch.best
	same, err := c.band(best.curedUM, best)
	if err != nil {
		return nil, err
	}
	most := best.miss // what an equivalent may miss
	most.film, most.cut = 0, 0
	add := func(kind string, real chooser, t trial) error {
		if !(t.curedUM >= same.Low && t.curedUM <= same.High) || !t.miss.noMoreThan(most) {
			return nil
		}
		asked, err := real.judge(t.setup)
		if err != nil {
			return err
		}
		out = append(out, plan.Equivalent{
			Kind: kind, Blade: bladeName(t.stock), Layup: t.stock.Layup, ThicknessMM: t.stock.ThicknessMM,
			FreeHeightMM: t.stock.FreeHeightMM, Edge: t.stock.Edge, Mesh: real.bench.meshName, EOMUM: real.bench.eomUM,
			AngleDeg: t.angleDeg, ToScreen: 90 - t.angleDeg, LoadNPerCM: real.bench.loadNCM, Strokes: t.strokes, Hits: t.hits,
			CuredUM: t.curedUM, DeltaPercent: 100 * (t.curedUM/best.curedUM - 1), SharesMiss: !asked.miss.none(),
		})
		return nil
	}

	blades := c.alike(best, same)
	blades.fixed.blades = nil
	tried, err := blades.choose()
	if err != nil {
		return nil, err
	}
	for _, t := range tried.each {
		if t.stock.id == best.stock.id || t.fault != "" {
			continue
		}
		if err := add("blade", c, t); err != nil {
			return nil, err
		}
	}
	c.nearestFirst(meshes)
	for _, b := range meshes[:min(meshEquivalents, len(meshes))] {
		other := c
		other.bench = b
		got, err := other.alike(best, same).choose()
		if err != nil {
			return nil, err
		}
		if !got.found {
			continue
		}
		if err := add("mesh", other, got.best); err != nil {
			return nil, err
		}
	}
	return out, nil
}

// alike asks for the film of a setup, inside its band and what is demanded; where the setup misses
// a demand, for its own film and an edge that leans no more.
func (c chooser) alike(t trial, same plan.Band) chooser {
	d := &c.bench.demand
	if t.miss.none() {
		d.target.Low, d.target.High = math.Max(d.target.Low, same.Low), math.Min(d.target.High, same.High)
		return c
	}
	d.target.Low, d.target.High = same.Low, same.High
	d.limitDeg = math.Max(d.limitDeg, t.edgeDeg)
	return c
}
