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
func (c chooser) equivalents(best trial, meshes []given) []plan.Equivalent {
	out := []plan.Equivalent{}
	same := c.given.band(best)
	switch target := c.given.demand.target; { // a film that misses already is not to be missed by more
	case best.curedUM < target.Low:
		same.Low = best.curedUM * (1 - filmSeenShare)
	case best.curedUM > target.High:
		same.High = best.curedUM * (1 + filmSeenShare)
	}
	most := best.miss // what an equivalent may miss
	most.film, most.cut = 0, 0
	add := func(kind string, asked chooser, t trial, most miss) {
		if t.fault == "" && t.curedUM >= same.Low && t.curedUM <= same.High && t.miss.noMoreThan(most) {
			out = append(out, asked.equivalent(kind, t, best.curedUM))
		}
	}
	blades, reaches := c.sameFilm(best, same), most
	blades.fixed.blades, reaches.short = nil, 0 // another blade that is too short is no way out
	for _, t := range blades.choose().each {
		if t.stock.id != best.stock.id {
			add("blade", c, t, reaches)
		}
	}
	c.nearestFirst(meshes)
	for _, g := range meshes[:min(meshEquivalents, len(meshes))] {
		if got := c.on(g).sameFilm(best, same).choose(); got.found {
			add("mesh", c.on(g), got.best, most)
		}
	}
	return out
}

// equivalent writes a setup down that does the same work, judged by what the job asks.
func (c chooser) equivalent(kind string, t trial, bestUM float64) plan.Equivalent {
	return plan.Equivalent{
		Kind: kind, Blade: t.stock.Name, Layup: t.stock.Layup, ThicknessMM: t.stock.ThicknessMM,
		FreeHeightMM: t.stock.FreeHeightMM, Edge: t.stock.Edge, Mesh: c.given.meshName, EOMUM: c.given.eomUM,
		AngleDeg: t.angleDeg, ToScreen: 90 - t.angleDeg, LoadNPerCM: c.given.loadNCM, Strokes: t.strokes, Hits: t.hits,
		CuredUM: t.curedUM, DeltaPercent: 100 * (t.curedUM/bestUM - 1), SharesMiss: !c.judge(t.setup).miss.none(),
	}
}

// sameFilm asks for the film of a setup, inside its band and what is demanded; where the setup misses the film,
// for its own, and where it misses anything, for an edge that leans no more.
func (c chooser) sameFilm(t trial, same plan.Band) chooser {
	d := &c.given.demand
	if t.miss.film == 0 {
		same.Low, same.High = math.Max(d.target.Low, same.Low), math.Min(d.target.High, same.High)
	}
	d.target.Low, d.target.High = same.Low, same.High
	if !t.miss.none() {
		d.limitDeg = math.Max(d.limitDeg, t.edgeDeg)
	}
	return c
}
