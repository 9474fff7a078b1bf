package lesson

import (
	"errors"
	"runtime"
	"slices"

	"bladecard/calc/blade"
	"bladecard/calc/choose"
	"bladecard/calc/internal/sure"
	"bladecard/calc/job"
	"bladecard/calc/plan"
)

// Lesson is everything that the class paper shows. A nil figure is one that does not exist:
// the blade folds over or floats there.
type Lesson struct {
	Shop       string
	Press      plan.Press // whose working load and speed all figures have
	Hardness   []Hardness
	HardTimes  float64 // modulus of 80 Shore A over that of 60
	OtherTimes float64 // the most that the second relation gives over the first
	CoreShare  float64 // of the rigidity that the core of equal thirds has where all layers are alike
	Blades     []Blade // softest first, those that the paper has room for
	// BladesAtHand are the different stocks of the rack. Setups are chosen from BladesTried of them.
	BladesAtHand, BladesTried int
	Workhorse                 int // index of the blade that a job starts from
	SetDeg                    []float64
	LoadsNPerCM               []float64
	Limits                    []Limit
	Film                      Film
	Strokes                   []Strokes
	Wear                      []Wear
	Ground                    []Ground
	Meshes                    []Mesh // coarse to fine, those that the paper has room for
	// MeshesRacked are the different meshes of the racks. Setups are chosen from MeshesTried of them.
	MeshesRacked, MeshesTried int
	Stencil                   []Stencil
	ThinShare                 float64 // the stencils of the tables: EOM as shares of the fabric
	ThickShare                float64
	WideMM                    float64 // the wide and the narrow feature of the mesh table
	NarrowMM                  float64
	Works                     []Choice // each ink class and use, the mesh chosen from the racks
	Through                   []Choice // one ink in three uses through the meshes of the racks
	Cautions                  []string // codes of what can hurt, of all the shop's inks
	Exercises                 []Exercise
}

// The most that the paper has room for.
const (
	mostBlades = 12
	mostMeshes = 14
)

// mostTried is how many blades, and how many meshes, the lesson is computed from: those that are shown
// and about one between each two of them. The planner tries every blade on every mesh, so that of larger
// racks an even choice has to stand for all.
const mostTried = 24

// Make computes the lesson of a shop that DecodeShop or BuiltInShop returned. An error when no
// blade is at hand, when there is no mesh, or when a figure lies outside the ranges of the
// formulas. Kind: derived; every film and choice is the planner's (package plan).
//
// Range: that of the packages it calls.
func Make(shop *job.Shop) (*Lesson, error) {
	return newMaker(shop, planned).lesson()
}

// planned makes a plan on all cores: the grid of setups has a hundred screens.
func planned(j *job.Job, shop *job.Shop) (*plan.Plan, job.Errors) {
	pl := choose.NewPlanner(shop)
	pl.PlanOn(runtime.GOMAXPROCS(0))
	return pl.Make(j)
}

func newMaker(shop *job.Shop, plan planFunc) *maker {
	return &maker{shop: shop, planned: plan, out: &Lesson{
		Shop:        shop.Name,
		SetDeg:      []float64{0, 10, 15, 20, 30, 45},
		LoadsNPerCM: []float64{blade.LightNPerCM, blade.MediumNPerCM, blade.FirmNPerCM},
		ThinShare:   thinShare, ThickShare: thickShare, WideMM: wideMM, NarrowMM: narrowMM,
	}}
}

// lesson works out one part after the other.
func (m *maker) lesson() (*Lesson, error) {
	if len(m.shop.Meshes) == 0 {
		return nil, errors.New("no mesh is on the racks")
	}
	if err := sure.Try(func() {
		for _, step := range []func(){
			m.rack, m.hardness, m.meshes, m.limits, m.film, m.load, m.strokes, m.wear, m.stencil, m.choice, m.cautions, m.exercises,
		} {
			step()
		}
	}); err != nil {
		return nil, err
	}
	return m.out, nil
}

// planFunc makes the plan of a job, as choose.Make does.
type planFunc func(*job.Job, *job.Shop) (*plan.Plan, job.Errors)

// maker works a lesson out.
type maker struct {
	shop    *job.Shop // its racks hold no more than mostTried blades and meshes
	planned planFunc
	out     *Lesson
	middle  job.Mesh // the mesh of the film figures
}

// spread returns at most n, three or more, of the indexes 0 to count-1, evenly spread, the ends and keep
// among them.
func spread(count, n, keep int) []int {
	out := make([]int, min(count, n))
	for i := range out {
		out[i] = i
		if count > n {
			out[i] = i * (count - 1) / (n - 1)
		}
	}
	if slices.Contains(out, keep) {
		return out
	}
	nearest := 1
	for i := 1; i < n-1; i++ {
		if abs(out[i]-keep) < abs(out[nearest]-keep) {
			nearest = i
		}
	}
	out[nearest] = keep
	return out
}

// chosen are the entries of a list at some indexes.
func chosen[T any](list []T, at []int) []T {
	out := make([]T, 0, len(at))
	for _, i := range at {
		out = append(out, list[i])
	}
	return out
}

func abs(i int) int { return max(i, -i) }
