package choose

import (
	"fmt"
	"math"
	"sort"

	"bladecard/calc/internal/sure"
	"bladecard/calc/job"
)

// choose makes the choice on the job's mesh, or on every mesh of the racks where the job leaves
// it open; the mesh nearest to the customary one that meets the demands is taken.
func (m maker) choose(d demand) (best chooser, got choice, fail *job.Error) {
	meshes := m.meshes()
	if len(meshes) == 0 {
		return best, got, m.fail("mesh", fmt.Sprintf("the image, %g x %g mm, fits in no frame of the racks", m.location.WidthMM, m.location.HeightMM), "a larger frame in the shop file, or a smaller image")
	}
	for i, mesh := range meshes {
		c := chooser{rack: m.rack, fixed: fixedBy(m.screen), step: costMeshStep * float64(mesh.steps)}
		if err := sure.Try(func() { c.given = m.given(mesh.Mesh, d) }); err != nil {
			return best, got, m.fail("mesh", err.Error(), "a mesh whose threads leave an opening, such as 156-64")
		}
		var ch choice
		if err := sure.Try(func() { ch = c.choose() }); err != nil {
			return best, got, m.fail("blade", err.Error(), "a setup inside the ranges of the formulas")
		}
		if i == 0 || ch.found && (!got.found || nearerMesh(c, ch, best, got)) {
			best, got = c, ch
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
	if c.given.demand.heavy && near(a.best.miss.total(), b.best.miss.total()) && c.step != than.step {
		return c.step < than.step
	}
	return c.better(a.best, b.best)
}

// meshChoice is a mesh with its distance from the customary one, in steps along the racks.
type meshChoice struct {
	job.Mesh
	steps int
}

// meshes are those that the job leaves open.
func (m maker) meshes() []meshChoice {
	if m.screen.Mesh != nil {
		return []meshChoice{{Mesh: *m.screen.Mesh}}
	}
	all := append([]job.Mesh(nil), m.shop.Meshes...)
	sort.SliceStable(all, func(i, j int) bool { return all[i].CountPerInch < all[j].CountPerInch })
	home := m.customaryMesh(all)
	var out []meshChoice
	for i, x := range all {
		if job.Fits(&m.location, &x) && (i == home || m.fineEnough(x)) {
			out = append(out, meshChoice{Mesh: x, steps: int(math.Abs(float64(i - home)))})
		}
	}
	return out
}

// fineEnough tells whether a mesh has the threads that the screen's halftone needs.
func (m maker) fineEnough(x job.Mesh) bool {
	h := m.screen.Halftone
	return h == nil || x.CountPerInch >= meshPerLineLeast*h.LinesPerInch
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

// otherMeshes puts the same screen on the other meshes of the racks.
func (m maker) otherMeshes(on given) []given {
	var out []given
	for _, x := range m.shop.Meshes {
		same := x.Name == on.meshName || x.CountPerInch == on.cloth.CountPerInch && x.ThreadUM == on.cloth.ThreadUM
		if !same && m.fineEnough(x) {
			out = append(out, m.given(x, on.demand))
		}
	}
	return out
}

// nextMeshes are the next finer and the next coarser mesh, by ink volume.
func nextMeshes(g given, others []given) []given {
	finer, coarser := -1, -1
	for i, o := range others {
		switch v := o.cloth.VolumeUM; {
		case v > g.cloth.VolumeUM && (coarser < 0 || v < others[coarser].cloth.VolumeUM):
			coarser = i
		case v < g.cloth.VolumeUM && (finer < 0 || v > others[finer].cloth.VolumeUM):
			finer = i
		}
	}
	var out []given
	for _, i := range []int{finer, coarser} {
		if i >= 0 {
			out = append(out, others[i])
		}
	}
	return out
}
