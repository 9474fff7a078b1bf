package lesson

import (
	"math"
	"slices"
	"sort"

	"bladecard/calc/job"
	"bladecard/calc/mesh"
)

// Mesh is a cloth of the racks and what it holds.
type Mesh struct {
	Name         string
	CountPerInch float64
	CountPerCM   float64
	ThreadUM     float64
	OpeningUM    float64
	OpenArea     float64 // share
	FabricUM     float64
	VolumeUM     float64 // theoretical ink volume, cm3/m2 = um
	EOMUM        float64 // emulsion over mesh, a fifth of the fabric
	HoldsUM      float64 // cloth and stencil together, narrow features
	SolidUM      *float64
	DetailUM     *float64 // cured film of the workhorse at the usual setup, wide and narrow; nil: none
	Measured     bool
}

// Stencil is how much of a stencil counts for a feature of some width.
type Stencil struct {
	FeatureMM float64
	Counts    float64  // share of the emulsion over mesh
	ThinUM    *float64 // cured film with an EOM of a fifth of the fabric
	ThickUM   *float64 // with one as thick as the fabric
}

// The stencils of the tables, as shares of the fabric (common practice: textile work, and raised work).
const (
	thinShare  = 0.20
	thickShare = 1.0
)

// The wide and the narrow feature of the mesh table, in mm.
const (
	wideMM   = 50.0
	narrowMM = 1.0
)

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
			OpeningUM: cl.OpeningUM, OpenArea: cl.OpenArea, FabricUM: cl.FabricUM, VolumeUM: cl.VolumeUM,
			EOMUM: thinShare * cl.FabricUM, Measured: cl.MeasuredOpening || cl.MeasuredFabric,
		}
		if out.HoldsUM, err = mesh.HoldsUM(cl.OpenArea, cl.FabricUM, out.EOMUM); err != nil {
			return err
		}
		for _, f := range []struct {
			to *(*float64)
			mm float64
		}{{&out.SolidUM, wideMM}, {&out.DetailUM, narrowMM}} {
			s := fixed(c)
			s.FeatureMM, s.EOM = f.mm, &job.EOM{Share: thinShare}
			if sc := m.screen(s, m.blades[m.out.Workhorse], c); sc != nil {
				um := sc.CuredUM.Value
				*f.to = &um
			}
		}
		m.out.Meshes = append(m.out.Meshes, out)
		m.cloths = append(m.cloths, c)
	}
	return nil
}

func cloth(c job.Mesh) (mesh.Cloth, error) {
	return mesh.New(mesh.Spec{
		CountPerInch: c.CountPerInch, ThreadUM: c.ThreadUM, OpeningUM: c.OpeningUM, FabricUM: c.FabricUM, Twill: c.Weave == "twill",
	})
}

func (m *maker) stencil() error {
	for _, mm := range []float64{0.5, 1, 3, 5, 10, 20, 50} {
		out := Stencil{FeatureMM: mm}
		var err error
		if out.Counts, err = mesh.StencilShare(mm); err != nil {
			return err
		}
		for _, f := range []struct {
			to    *(*float64)
			share float64
		}{{&out.ThinUM, thinShare}, {&out.ThickUM, thickShare}} {
			s := fixed(m.bench)
			s.FeatureMM, s.EOM = mm, &job.EOM{Share: f.share}
			if sc := m.screen(s, m.blades[m.out.Workhorse], m.bench); sc != nil {
				um := sc.CuredUM.Value
				*f.to = &um
			}
		}
		m.out.Stencil = append(m.out.Stencil, out)
	}
	return nil
}
