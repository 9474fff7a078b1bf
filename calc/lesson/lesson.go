package lesson

import (
	"errors"
	"runtime"
	"slices"

	"bladecard/calc/choose"
	"bladecard/calc/internal/sure"
	"bladecard/calc/job"
	"bladecard/calc/plan"
)

// Lesson is everything that the handout shows. A nil figure is one that does not exist: the blade folds
// over or floats there.
type Lesson struct {
	Shop   string
	Press  plan.Press // whose working load and speed all figures have
	Blades []Blade    // softest first, those that the paper has room for
	// BladesAtHand are the different stocks of the rack. Setups are chosen from BladesTried of them.
	BladesAtHand, BladesTried int
	Workhorse                 int // index of the blade that a job starts from
	SetDeg                    []float64
	Limits                    []Limit     // finest feature first
	Bench                     plan.Screen // the workhorse at the usual setup
	Spread                    float64     // share by which the rack's heaviest film is over its lightest, at the usual angle
	Strokes                   []plan.Band // cured film of 1, 2, 3 wet strokes
	FlashedUM                 float64     // of print, flash and print again
	Meshes                    []Mesh      // coarse to fine, those that the paper has room for
	// MeshesRacked are the different meshes of the racks. Setups are chosen from MeshesTried of them.
	MeshesRacked, MeshesTried int
	Prints                    []Choice   // typical prints, each with the mesh chosen from the racks
	Others                    []Choice   // each other ink class and use
	Worked                    *plan.Plan // a job of a white base and a halftone on it, or of a solid; nil: the planner finds none
	Faults                    []Fault    // what may be seen of the worked job's prints, and what to do
	Cautions                  []string   // codes of what can hurt, of all the shop's inks
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
		Shop:   shop.Name,
		SetDeg: []float64{0, 5, usualDeg, 30, mostDeg},
	}}
}

// lesson works out one part after the other.
func (m *maker) lesson() (*Lesson, error) {
	if len(m.shop.Meshes) == 0 {
		return nil, errors.New("no mesh is on the racks")
	}
	if err := sure.Try(func() {
		for _, step := range []func(){m.rack, m.meshes, m.limits, m.film, m.choice, m.cautions, m.job, m.exercises} {
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
	middle  job.Mesh // the mesh of the usual setup
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
