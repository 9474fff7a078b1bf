package lesson

import (
	"math"
	"slices"
	"sort"

	"bladecard/calc/halftone"
	"bladecard/calc/internal/sure"
	"bladecard/calc/job"
	"bladecard/calc/mesh"
)

// Mesh is a cloth of the racks and what it gives.
type Mesh struct {
	Name         string
	CountPerInch float64
	CountPerCM   float64
	ThreadUM     float64
	OpeningUM    float64
	VolumeUM     float64  // theoretical ink volume, cm3/m2 = um
	DotUM        float64  // smallest dot that it holds
	FilmUM       *float64 // cured, of the workhorse at the usual setup; nil: none
	Measured     bool
}

// usualPerInch is the count that the film figures are for, or the nearest to it on the racks.
const usualPerInch = 156.0

// meshes chooses the meshes that the lesson is computed from and fills in those that it shows, each
// once, coarse to fine. Both are even choices in the order of the count.
func (m *maker) meshes() {
	var all []job.Mesh
	for _, c := range m.shop.Meshes {
		same := func(o job.Mesh) bool {
			return o.Name == c.Name && o.OpeningUM == c.OpeningUM && o.FabricUM == c.FabricUM && o.Weave == c.Weave
		}
		if !slices.ContainsFunc(all, same) {
			all = append(all, c)
		}
	}
	sort.SliceStable(all, func(i, j int) bool { return all[i].CountPerInch < all[j].CountPerInch })
	nearest := 0
	for i, c := range all {
		if math.Abs(math.Log(c.CountPerInch/usualPerInch)) < math.Abs(math.Log(all[nearest].CountPerInch/usualPerInch)) {
			nearest = i
		}
	}
	m.middle = all[nearest]
	tried := spread(len(all), mostTried, nearest)
	m.out.MeshesRacked, m.out.MeshesTried = len(all), len(tried)
	if len(tried) < len(all) {
		m.shop = m.with(m.shop.Blades, chosen(all, tried))
	}
	for _, at := range spread(len(tried), mostMeshes, slices.Index(tried, nearest)) {
		c := all[tried[at]]
		cl := sure.Of(c.Cloth())
		out := Mesh{
			Name: c.Name, CountPerInch: c.CountPerInch, CountPerCM: mesh.PerCM(c.CountPerInch), ThreadUM: c.ThreadUM,
			OpeningUM: cl.OpeningUM, VolumeUM: cl.VolumeUM, DotUM: sure.Of(halftone.SmallestDotUM(c.ThreadUM, cl.OpeningUM)),
			Measured: cl.MeasuredOpening || cl.MeasuredFabric,
		}
		if sc := m.screen(fixed(c), m.out.Blades[m.out.Workhorse].stock, c); sc != nil {
			out.FilmUM = &sc.CuredUM.Value
		}
		m.out.Meshes = append(m.out.Meshes, out)
	}
}
