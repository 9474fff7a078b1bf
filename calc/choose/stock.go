package choose

import (
	"errors"
	"math"
	"sort"

	"bladecard/calc/blade"
	"bladecard/calc/film"
	"bladecard/calc/job"
)

// stock is a blade of the rack with what bending needs.
type stock struct {
	job.Blade
	rank   int // place in the rack by stiffness, softest 0; equal stiffness shares a place
	limber float64
	id     int                  // of the blade within known
	known  map[pressKey]pressed // shared by the rack; nil: a blade made up for a curve
}

// softestShoreA and hardestShoreA end the range of Gent's relation.
const (
	softestShoreA = 40.0
	hardestShoreA = 95.0
)

// layers returns the blade's layers with every hardness moved by shiftShoreA, no further than
// the relation between hardness and modulus reaches. A measured modulus moves by the ratio that Gent's relation gives for the shift.
func (s stock) layers(shiftShoreA float64) ([]blade.Layer, error) {
	out := make([]blade.Layer, len(s.Hardness))
	for i, h := range s.Hardness {
		moved, err := blade.ModulusGentMPa(math.Max(softestShoreA, math.Min(hardestShoreA, h+shiftShoreA)))
		if err != nil {
			return nil, err
		}
		if len(s.ModulusMPa) == len(s.Hardness) {
			plain, err := blade.ModulusGentMPa(h)
			if err != nil {
				return nil, err
			}
			moved *= s.ModulusMPa[i] / plain
		}
		out[i] = blade.Layer{ThicknessMM: s.layerMM(i), ModulusMPa: moved}
	}
	return out, nil
}

func (s stock) layerMM(i int) float64 {
	if len(s.LayersMM) == len(s.Hardness) {
		return s.LayersMM[i]
	}
	return s.ThicknessMM / float64(len(s.Hardness))
}

// rigidityNM is the blade's bending rigidity per width, N m.
func (s stock) rigidityNM(shiftShoreA float64) (float64, error) {
	ls, err := s.layers(shiftShoreA)
	if err != nil {
		return 0, err
	}
	return blade.RigidityNM(ls)
}

// rack is the shop's blades, softest first.
type rack struct {
	stocks    []stock
	workhorse int // index of the stock that a shop starts with
}

// newRack orders the blades by how far their edge gives under a load, L^2/D, and finds the one
// nearest to the reference. Blades within 2 % of each other share a place.
func newRack(blades []job.Blade) (rack, error) {
	var r rack
	known := map[pressKey]pressed{}
	for _, b := range blades {
		if b.Count == 0 {
			continue // none at hand
		}
		s := stock{Blade: b, id: len(r.stocks), known: known}
		d, err := s.rigidityNM(0)
		if err != nil {
			return rack{}, err
		}
		s.limber = square(b.FreeHeightMM) / d
		r.stocks = append(r.stocks, s)
	}
	if r.stocks == nil {
		return r, errors.New("no blade is at hand: every count is 0")
	}
	sort.SliceStable(r.stocks, func(i, j int) bool { return r.stocks[i].limber > r.stocks[j].limber })
	for i := 1; i < len(r.stocks); i++ {
		r.stocks[i].rank = r.stocks[i-1].rank
		if r.stocks[i-1].limber/r.stocks[i].limber > 1.02 {
			r.stocks[i].rank++
		}
	}
	ref, err := limberOf(workhorseShoreA)
	if err != nil {
		return rack{}, err
	}
	best := math.Inf(1)
	for i, s := range r.stocks {
		away := math.Abs(math.Log(s.limber / ref))
		if s.Edge != "new" {
			away += 0.01 // of two alike, start with the sharp one
		}
		if away < best {
			best, r.workhorse = away, i
		}
	}
	return r, nil
}

// limberOf is how far the edge of a reference blade of the given hardness gives under a load.
func limberOf(shoreA float64) (float64, error) {
	ref := stock{Blade: job.Blade{ThicknessMM: workhorseThicknessMM, Hardness: []float64{shoreA}}}
	d, err := ref.rigidityNM(0)
	if err != nil {
		return 0, err
	}
	return square(workhorseFreeHeightMM) / d, nil
}

// lengthMM is the shortest length that reaches over an image of the given width, and whether
// there is one. A blade whose lengths are not stated, or an image without a width, always fits.
func (s stock) lengthMM(imageMM float64) (mm float64, fits bool) {
	if len(s.LengthsMM) == 0 {
		return 0, true
	}
	longest, best := 0.0, math.Inf(1)
	for _, l := range s.LengthsMM {
		longest = math.Max(longest, l)
		if l >= imageMM+2*bladeOverhangMM && l < best {
			best = l
		}
	}
	if imageMM == 0 {
		return 0, true
	}
	if math.IsInf(best, 1) {
		return longest, false
	}
	return best, true
}

// edgeRadiusMM is the radius of the edge in its stated condition.
func (s stock) edgeRadiusMM() (float64, error) { return film.EdgeRadiusMM(s.Edge) }

func square(x float64) float64 { return x * x }
