package lesson

import (
	"math"
	"slices"
	"sort"

	"bladecard/calc/internal/sure"
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
		eomUM := thinShare * cl.FabricUM
		m.out.Meshes = append(m.out.Meshes, Mesh{
			Name: c.Name, CountPerInch: c.CountPerInch, CountPerCM: mesh.PerCM(c.CountPerInch), ThreadUM: c.ThreadUM,
			OpeningUM: cl.OpeningUM, OpenArea: cl.OpenArea, FabricUM: cl.FabricUM, VolumeUM: cl.VolumeUM,
			EOMUM: eomUM, HoldsUM: sure.Of(mesh.HoldsUM(cl.OpenArea, cl.FabricUM, eomUM)), Measured: cl.MeasuredOpening || cl.MeasuredFabric,
			SolidUM: m.throughUM(c, wideMM, thinShare), DetailUM: m.throughUM(c, narrowMM, thinShare),
		})
	}
}

// throughUM is the cured film of the workhorse at the usual setup through a mesh, with a stencil that is a share
// of the fabric and a feature of some width; nil where it folds over or floats.
func (m *maker) throughUM(c job.Mesh, featureMM, eomShare float64) *float64 {
	s := fixed(c)
	s.FeatureMM, s.EOM = featureMM, &job.EOM{Share: eomShare}
	if sc := m.screen(s, m.out.Blades[m.out.Workhorse].stock, c); sc != nil {
		return &sc.CuredUM.Value
	}
	return nil
}

// stencil fills in how much of a stencil counts.
func (m *maker) stencil() {
	for _, mm := range []float64{0.5, 1, 3, 5, 10, 20, 50} {
		m.out.Stencil = append(m.out.Stencil, Stencil{
			FeatureMM: mm, Counts: sure.Of(mesh.StencilShare(mm)),
			ThinUM: m.throughUM(m.middle, mm, thinShare), ThickUM: m.throughUM(m.middle, mm, thickShare),
		})
	}
}
