package choose

import (
	"math"
	"sort"

	"bladecard/calc/plan"
)

// warnings tells what a person must know about the chosen setup: what it misses and by how
// much, and what would mend it. A machine holds the narrowest range of angles; a hand does not.
func (c chooser) warnings(t trial, r plan.SetRange, exactDeg float64, byHand bool) []plan.Warning {
	var out []plan.Warning
	d := c.bench.demand
	if t.miss.film < 0 {
		out = append(out, warn("film-thin", vals{"film_um": t.curedUM, "low_um": d.target.Low, "high_um": d.target.High, "short_um": d.target.Low - t.curedUM}))
	}
	if t.miss.film > 0 {
		out = append(out, warn("film-heavy", vals{"film_um": t.curedUM, "low_um": d.target.Low, "high_um": d.target.High, "over_um": t.curedUM - d.target.High}))
	}
	if t.miss.cut > 0 {
		out = append(out, warn("edge-leans", vals{"edge_deg": t.edgeDeg, "limit_deg": d.limitDeg, "finest_mm": d.finestMM}))
	}
	if t.miss.moves > 0 {
		out = append(out, warn("film-unsteady", vals{"moves_percent": 100 * t.moves.Together, "most_percent": 100 * movesMost}))
	}
	if t.miss.frail > 0 {
		out = append(out, plan.Warning{Code: "frail", Names: map[string]string{"slip": t.frail}})
	}
	if t.miss.dirty > 0 {
		out = append(out, warn("leaves-ink", vals{"lift_percent": 100 * t.liftOver}))
	}
	if mm, fits := t.stock.lengthMM(c.bench.imageMM); !fits {
		out = append(out, warn("blade-short", vals{"longest_mm": mm, "needed_mm": c.bench.imageMM + 2*bladeOverhangMM}))
	}
	if byHand && exactDeg < narrowRangeDeg && c.fixed.angle == nil {
		out = append(out, warn("angle-narrow", vals{"low_deg": r.Low, "high_deg": r.High, "width_deg": exactDeg}))
	}
	if t.stock.Edge == "worn" {
		out = append(out, plan.Warning{Code: "edge-worn"})
	}
	return out
}

// vals are the figures of a warning.
type vals = map[string]float64

func warn(code string, v vals) plan.Warning { return plan.Warning{Code: code, Values: v} }

// mends looks for what would make the screen meet both demands where no setup does: another
// mesh of the racks, another stencil, a coarser line count, or what the job has fixed. Each is computed by making the whole choice again.
func (c chooser) mends(t trial, meshes []bench) ([]plan.Warning, error) {
	if t.miss.none() {
		return nil, nil
	}
	var out []plan.Warning
	firstThat := func(code string, n int, at func(i int) (chooser, plan.Warning)) error {
		for i := 0; i < n; i++ {
			ch, w := at(i)
			ok, err := ch.holds()
			if err != nil {
				return err
			}
			if ok {
				w.Code = code
				out = append(out, w)
				return nil
			}
		}
		return nil
	}
	c.nearestFirst(meshes)
	if err := firstThat("mend-mesh", len(meshes), func(i int) (chooser, plan.Warning) {
		ch := c
		ch.bench = meshes[i]
		return ch, plan.Warning{Names: map[string]string{"mesh": meshes[i].meshName}}
	}); err != nil {
		return nil, err
	}
	shares := eomSteps(c.bench.eomUM / c.bench.cloth.FabricUM)
	if err := firstThat("mend-eom", len(shares), func(i int) (chooser, plan.Warning) {
		ch := c
		ch.bench.eomUM = shares[i] * c.bench.cloth.FabricUM
		return ch, warn("", vals{"eom_um": ch.bench.eomUM, "eom_percent": 100 * shares[i]})
	}); err != nil {
		return nil, err
	}
	if c.bench.lines > 0 && t.miss.cut > 0 {
		var steps []float64
		for l := math.Floor((c.bench.lines-1)/5) * 5; l >= coarsestLines; l -= 5 {
			steps = append(steps, l)
		}
		if err := firstThat("mend-lines", len(steps), func(i int) (chooser, plan.Warning) {
			ch := c
			scale := c.bench.lines / steps[i]
			ch.bench.demand.finestMM *= scale
			ch.bench.demand.limitDeg = ch.bench.demand.limitFor(ch.bench.demand.finestMM)
			return ch, warn("", vals{"lines_per_inch": steps[i]})
		}); err != nil {
			return nil, err
		}
	}
	if !c.fixed.open() {
		if err := firstThat("mend-unfix", 1, func(int) (chooser, plan.Warning) {
			ch := c
			ch.fixed = fixed{}
			return ch, plan.Warning{}
		}); err != nil {
			return nil, err
		}
	}
	return out, nil
}

// nearestFirst sorts benches by how near their ink volume is to this one's.
func (c chooser) nearestFirst(meshes []bench) {
	sort.SliceStable(meshes, func(i, j int) bool {
		return c.volumeAway(meshes[i]) < c.volumeAway(meshes[j])
	})
}

func (c chooser) volumeAway(b bench) float64 {
	return math.Abs(math.Log(b.cloth.VolumeUM / c.bench.cloth.VolumeUM))
}

// eomSteps are the stencils that are tried in place of the given share of the fabric, nearest first.
func eomSteps(share float64) []float64 {
	var out []float64
	for pct := 5; pct <= 200; pct += 5 {
		out = append(out, float64(pct)/100)
	}
	sort.SliceStable(out, func(i, j int) bool { return math.Abs(out[i]-share) < math.Abs(out[j]-share) })
	return out
}
