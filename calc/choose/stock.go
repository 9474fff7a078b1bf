package choose

import (
	"errors"
	"math"
	"sort"

	"bladecard/calc/blade"
	"bladecard/calc/internal/sure"
	"bladecard/calc/job"
	"bladecard/calc/plan"
	"bladecard/calc/tension"
)

// stock is a blade of the rack with what bending needs.
type stock struct {
	job.Blade
	rank   int // place in the rack by stiffness, softest 0; equal stiffness shares a place
	limber float64
	id     int // of the rack's blade, from 1
}

// madeUp is the id of a blade that is on no rack, such as one of a curve.
const madeUp = 0

// layers are the blade's layers with every hardness moved by shiftShoreA.
func (s stock) layers(shiftShoreA float64) []blade.Layer { return sure.Of(s.Layers(shiftShoreA)) }

// alike tells whether two blades go by one name on paper.
func (s stock) alike(o stock) bool { return s.Name == o.Name && s.Layup == o.Layup && s.Edge == o.Edge }

// limberness tells by how much the edge of a blade gives under a load, L^2/D.
func limberness(b job.Blade) float64 {
	return square(b.FreeHeightMM) / sure.Of(blade.RigidityNM(sure.Of(b.Layers(0))))
}

// rack is the shop's blades, softest first.
type rack struct {
	stocks    []stock
	workhorse int // index of the stock that a shop starts with
	soft      int // and of the one that it lays thick flat films with
}

// newRack orders the blades by how far their edge gives under a load, and finds the one
// nearest to the reference. Blades within 2 % of each other share a place.
func newRack(blades []job.Blade) (r rack, err error) {
	for _, b := range blades {
		if b.Count > 0 {
			r.stocks = append(r.stocks, stock{Blade: b, id: len(r.stocks) + 1})
		}
	}
	if r.stocks == nil {
		return r, errors.New("no blade is at hand: every count is 0")
	}
	err = sure.Try(func() {
		for i := range r.stocks {
			r.stocks[i].limber = limberness(r.stocks[i].Blade)
		}
		sort.SliceStable(r.stocks, func(i, j int) bool { return r.stocks[i].limber > r.stocks[j].limber })
		for i := 1; i < len(r.stocks); i++ {
			r.stocks[i].rank = r.stocks[i-1].rank
			if r.stocks[i-1].limber/r.stocks[i].limber > 1.02 {
				r.stocks[i].rank++
			}
		}
		r.workhorse, r.soft = r.nearest(workhorseShoreA), r.nearest(softShoreA)
	})
	return r, err
}

// nearest is the index of the stock that bends most as the reference blade does, of a hardness.
func (r rack) nearest(shoreA float64) int {
	reference := limberness(job.Blade{ThicknessMM: workhorseThicknessMM, FreeHeightMM: workhorseFreeHeightMM, Hardness: []float64{shoreA}})
	best, at := math.Inf(1), 0
	for i, s := range r.stocks {
		away := math.Abs(math.Log(s.limber / reference))
		if s.Edge != "new" {
			away += 0.01 // of two alike, start with the sharp one
		}
		if away < best {
			best, at = away, i
		}
	}
	return at
}

// lengthMM is the shortest length that reaches over an image of the given width, and whether
// there is one; where there is none, the longest. A blade whose lengths are not stated, or an
// image without a width, always fits.
func (s stock) lengthMM(imageMM float64) (mm float64, fits bool) {
	if len(s.LengthsMM) == 0 || imageMM == 0 {
		return 0, true
	}
	longest, best := 0.0, math.Inf(1)
	for _, l := range s.LengthsMM {
		longest = math.Max(longest, l)
		if l >= reachMM(imageMM) {
			best = math.Min(best, l)
		}
	}
	if math.IsInf(best, 1) {
		return longest, false
	}
	return best, true
}

// reachMM is the length that a blade needs for an image; 0 where its width is not stated.
func reachMM(imageMM float64) float64 {
	if imageMM == 0 {
		return 0
	}
	return sure.Of(tension.BladeLengthMM(imageMM))
}

// plan writes the blade down.
func (s stock) plan(imageMM float64, from string) plan.Blade {
	layers := s.layers(0)
	mm, _ := s.lengthMM(imageMM)
	out := plan.Blade{
		Name: s.Name, Layup: s.Layup, EdgeHardness: s.Hardness[0], ThicknessMM: s.ThicknessMM, FreeHeightMM: s.FreeHeightMM,
		LengthMM: mm, Edge: s.Edge, RigidityNM: sure.Of(blade.RigidityNM(layers)), From: from,
	}
	for i, l := range layers {
		out.Layers = append(out.Layers, plan.Layer{Hardness: s.Hardness[i], ThicknessMM: l.ThicknessMM})
	}
	return out
}

func square(x float64) float64 { return x * x }
