package choose

import (
	"fmt"
	"math"
	"sort"

	"bladecard/calc/job"
)

// choose makes the choice on the job's mesh, or on every mesh of the racks where the job leaves
// it open; the mesh nearest to the customary one that meets the demands is taken.
func (m maker) choose(d demand) (chooser, choice, *job.Error) {
	var (
		best  chooser
		got   choice
		first = true
	)
	cands := m.meshes()
	if len(cands) == 0 {
		return best, got, m.fail("mesh", fmt.Sprintf("the image, %g x %g mm, fits in no frame of the racks", m.location.WidthMM, m.location.HeightMM), "a larger frame in the shop file, or a smaller image")
	}
	for _, cand := range cands {
		b, err := newBench(m.screen, cand.Mesh, m.shop, m.press, d, m.location.WidthMM, m.job.Due)
		if err != nil {
			return best, got, m.fail("mesh", err.Error(), "a mesh whose threads leave an opening, such as 156-64")
		}
		c := chooser{bench: b, rack: m.rack, fixed: fixedBy(m.screen), step: costMeshStep * float64(cand.steps)}
		ch, err := c.choose()
		if err != nil {
			return best, got, m.fail("blade", err.Error(), "a setup inside the ranges of the formulas")
		}
		if first || ch.found && (!got.found || nearerMesh(c, ch, best, got)) {
			best, got, first = c, ch, false
		}
	}
	if got.found {
		return best, got, nil
	}
	key := "blade"
	if m.screen.AngleDeg != nil {
		key = "angle"
	}
	stiffest := got.each[len(got.each)-1]
	return best, got, m.fail(key, "no setup prints: "+stiffest.why.Error(), "a setup that stands on its edge and clears the screen")
}

// nearerMesh tells whether a choice on one mesh is to be taken before that on another. For heavy
// work the film a stroke would always ask for the coarsest mesh: there, of meshes that miss
// alike, the customary one is taken.
func nearerMesh(c chooser, a choice, than chooser, b choice) bool {
	if c.bench.demand.heavy && near(a.best.miss.total(), b.best.miss.total()) && c.step != than.step {
		return c.step < than.step
	}
	return c.better(a.best, b.best)
}

// meshChoice is a mesh with its distance from the customary one, in steps along the racks.
type meshChoice struct {
	job.Mesh
	steps int
}

func (m maker) meshes() []meshChoice {
	if m.screen.Mesh != nil {
		return []meshChoice{{Mesh: *m.screen.Mesh}}
	}
	all := append([]job.Mesh(nil), m.shop.Meshes...)
	sort.SliceStable(all, func(i, j int) bool { return all[i].CountPerInch < all[j].CountPerInch })
	home := m.customaryMesh(all)
	var out []meshChoice
	for i, x := range all {
		if !job.Fits(&m.location, &x) {
			continue
		}
		if h := m.screen.Halftone; h != nil && x.CountPerInch < meshPerLineLeast*h.LinesPerInch && i != home {
			continue
		}
		out = append(out, meshChoice{Mesh: x, steps: int(math.Abs(float64(i - home)))})
	}
	return out
}

// customaryMesh is the index of the rack's mesh nearest to what is customary: for a halftone by
// its line count, else the ink class's mesh for the use.
func (m maker) customaryMesh(all []job.Mesh) int {
	want := defaultMeshPerInch
	if h := m.screen.Halftone; h != nil {
		want = meshPerLineUsual * h.LinesPerInch
	} else if c := custom(m.screen); c != nil && c.Mesh != "" {
		if count, _, err := job.ParseMesh(c.Mesh); err == nil {
			want = count
		}
	}
	best, home := math.Inf(1), 0
	for i, x := range all {
		if away := math.Abs(math.Log(x.CountPerInch / want)); away < best {
			best, home = away, i
		}
	}
	return home
}

// otherMeshes are benches of the same screen on the other meshes of the racks.
func (m maker) otherMeshes(c chooser) ([]bench, error) {
	var out []bench
	for _, x := range m.shop.Meshes {
		if x.Name == c.bench.meshName || x.CountPerInch == c.bench.cloth.CountPerInch && x.ThreadUM == c.bench.cloth.ThreadUM {
			continue
		}
		if c.bench.lines > 0 && x.CountPerInch < meshPerLineLeast*c.bench.lines {
			continue
		}
		b, err := newBench(m.screen, x, m.shop, m.press, c.bench.demand, m.location.WidthMM, m.job.Due)
		if err != nil {
			return nil, err
		}
		out = append(out, b)
	}
	return out, nil
}

// nextMeshes are the next finer and the next coarser mesh, by ink volume.
func nextMeshes(b bench, others []bench) []bench {
	var up, down *bench
	for i := range others {
		o := &others[i]
		switch v := o.cloth.VolumeUM; {
		case v > b.cloth.VolumeUM && (up == nil || v < up.cloth.VolumeUM):
			up = o
		case v < b.cloth.VolumeUM && (down == nil || v > down.cloth.VolumeUM):
			down = o
		}
	}
	var out []bench
	for _, o := range []*bench{down, up} {
		if o != nil {
			out = append(out, *o)
		}
	}
	return out
}
