package lesson

import (
	"math"
	"slices"
	"sort"

	"bladecard/calc/halftone"
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
func (m *maker) meshes() error {
	seen := map[string]bool{}
	var all []job.Mesh
	for _, c := range m.shop.Meshes {
		key := c.Name + " " + number(c.OpeningUM) + " " + number(c.FabricUM) + c.Weave
		if !seen[key] {
			seen[key] = true
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
	m.bench = all[nearest]
	tried := spread(len(all), mostTried, nearest)
	m.out.MeshesRacked, m.out.MeshesTried = len(all), len(tried)
	if len(tried) < len(all) {
		m.shop = m.with(m.shop.Blades, chosen(all, tried))
	}
	for _, at := range spread(len(tried), mostMeshes, slices.Index(tried, nearest)) {
		c := all[tried[at]]
		cl, err := cloth(c)
		if err != nil {
			return err
		}
		out := Mesh{
			Name: c.Name, CountPerInch: c.CountPerInch, CountPerCM: mesh.PerCM(c.CountPerInch), ThreadUM: c.ThreadUM,
			OpeningUM: cl.OpeningUM, VolumeUM: cl.VolumeUM, Measured: cl.MeasuredOpening || cl.MeasuredFabric,
		}
		if out.DotUM, err = halftone.SmallestDotUM(c.ThreadUM, cl.OpeningUM); err != nil {
			return err
		}
		if sc := m.screen(fixed(c), m.blades[m.out.Workhorse], c); sc != nil {
			out.FilmUM = &sc.CuredUM.Value
		}
		m.out.Meshes = append(m.out.Meshes, out)
	}
	return nil
}

func cloth(c job.Mesh) (mesh.Cloth, error) {
	return mesh.New(mesh.Spec{
		CountPerInch: c.CountPerInch, ThreadUM: c.ThreadUM, OpeningUM: c.OpeningUM, FabricUM: c.FabricUM, Twill: c.Weave == "twill",
	})
}
