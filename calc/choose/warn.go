package choose

import (
	"math"
	"slices"
	"sort"

	"bladecard/calc/plan"
)

// vals are the figures of a warning.
type vals = map[string]float64

func warn(code string, v vals) plan.Warning { return plan.Warning{Code: code, Values: v} }

// named is a warning that carries one name.
func named(code, what, name string) plan.Warning {
	return plan.Warning{Code: code, Names: map[string]string{what: name}}
}

// warnings tells what a person must know about the chosen setup: what it misses and by how much. A machine
// holds the narrowest range of angles; a hand does not.
func (c chooser) warnings(t trial, r plan.SetRange, exactDeg float64, byHand bool) []plan.Warning {
	d := c.given.demand
	longest, fits := t.stock.lengthMM(c.given.imageMM)
	var out []plan.Warning
	for _, w := range []struct {
		holds bool
		plan.Warning
	}{
		{t.miss.film < 0, warn("film-thin", vals{"film_um": t.curedUM, "low_um": d.target.Low, "high_um": d.target.High, "short_um": d.target.Low - t.curedUM})},
		{t.miss.film > 0, warn("film-heavy", vals{"film_um": t.curedUM, "low_um": d.target.Low, "high_um": d.target.High, "over_um": t.curedUM - d.target.High})},
		{t.miss.cut > 0, warn("edge-leans", vals{"edge_deg": t.edgeDeg, "limit_deg": d.limitDeg, "finest_mm": d.finestMM})},
		{t.miss.moves > 0, warn("film-unsteady", vals{"moves_percent": 100 * t.moves.Together, "most_percent": 100 * movesMost})},
		{t.miss.frail > 0, named("frail", "slip", t.frail)},
		{t.miss.dirty > 0, warn("leaves-ink", vals{"lift_percent": 100 * t.liftOver})},
		{!fits, plan.Warning{Code: "blade-short", Values: vals{"longest_mm": longest, "needed_mm": reachMM(c.given.imageMM)}, Names: map[string]string{"blade": t.stock.Name}}},
		{byHand && exactDeg < narrowRangeDeg && c.fixed.angle == nil, warn("angle-narrow", vals{"low_deg": r.Low, "high_deg": r.High, "width_deg": exactDeg})},
		{t.stock.Edge == "worn", warn("edge-worn", nil)},
	} {
		if w.holds {
			out = append(out, w.Warning)
		}
	}
	return out
}

// mend is a change that may make a screen meet its demands, with the chooser of the screen so changed.
type mend struct {
	plan.Warning
	changed chooser
}

// mends tells what would make the screen meet both demands where no setup does, of each kind of change the
// nearest that does.
func (c chooser) mends(t trial, meshes []given) []plan.Warning {
	if t.miss.none() {
		return nil
	}
	kinds := [][]mend{c.mendMesh(meshes), c.mendEOM(), nil, nil}
	if t.miss.cut > 0 {
		kinds[2] = c.mendLines()
	}
	if !c.fixed.open() {
		free := c
		free.fixed = fixed{}
		kinds[3] = []mend{{warn("mend-unfix", nil), free}}
	}
	var out []plan.Warning
	for _, kind := range kinds {
		if i := slices.IndexFunc(kind, func(m mend) bool { return m.changed.holds() }); i >= 0 {
			out = append(out, kind[i].Warning)
		}
	}
	return out
}

// mendMesh are the other meshes of the racks, the nearest ink volume first.
func (c chooser) mendMesh(meshes []given) (out []mend) {
	c.nearestFirst(meshes)
	for _, g := range meshes {
		out = append(out, mend{named("mend-mesh", "mesh", g.meshName), c.on(g)})
	}
	return out
}

// nearestFirst sorts meshes by how near their ink volume is to this one's.
func (c chooser) nearestFirst(meshes []given) {
	away := func(g given) float64 { return math.Abs(math.Log(g.cloth.VolumeUM / c.given.cloth.VolumeUM)) }
	sort.SliceStable(meshes, func(i, j int) bool { return away(meshes[i]) < away(meshes[j]) })
}

// mendEOM are stencils of 5 to 200 % of the fabric, the nearest first.
func (c chooser) mendEOM() (out []mend) {
	var shares []float64
	for percent := 5; percent <= 200; percent += 5 {
		shares = append(shares, float64(percent)/100)
	}
	now := c.given.eomUM / c.given.cloth.FabricUM
	sort.SliceStable(shares, func(i, j int) bool { return math.Abs(shares[i]-now) < math.Abs(shares[j]-now) })
	for _, share := range shares {
		other := c
		other.given.eomUM = share * c.given.cloth.FabricUM
		out = append(out, mend{warn("mend-eom", vals{"eom_um": other.given.eomUM, "eom_percent": 100 * share}), other})
	}
	return out
}

// mendLines are coarser line counts of a halftone.
func (c chooser) mendLines() (out []mend) {
	for lines := math.Floor((c.given.lines-1)/5) * 5; lines >= coarsestLines; lines -= 5 {
		other := c
		d := &other.given.demand
		d.finestMM *= c.given.lines / lines
		d.limitDeg = d.limitFor(d.finestMM)
		out = append(out, mend{warn("mend-lines", vals{"lines_per_inch": lines}), other})
	}
	return out
}
