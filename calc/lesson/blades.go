package lesson

import (
	"errors"
	"math"
	"slices"
	"sort"

	"bladecard/calc/blade"
	"bladecard/calc/job"
	"bladecard/calc/plan"
)

// Hardness is what one Shore A reading means.
type Hardness struct {
	ShoreA   float64
	MPa      float64 // Young's modulus, blade.ModulusGentMPa
	OtherMPa float64 // by the second relation, blade.ModulusRuessMPa
	LessMPa  float64 // of a blade that is softer by the trade's tolerance
	MoreMPa  float64 // of one that is harder by it
	To70     float64 // MPa over that of 70 Shore A
}

// Blade is a stock of the rack and what it does.
type Blade struct {
	Name, Layup, Edge         string
	Layers                    []plan.Layer
	MPa                       []float64 // of each layer
	ThicknessMM, FreeHeightMM float64
	RigidityNM                float64
	To70                      float64    // rigidity over that of one layer of 70, as thick
	TipNPerCMPerMM            float64    // StiffnessNPerCMPerMM
	Edges                     []*float64 // bent edge angle at each of Lesson.SetDeg
	Curve                     []Bent     // bent edge angle, finely
	Largest                   []*float64 // set angle at which the edge reaches each of Lesson.Limits; nil: none reaches so low
	Loaded                    []Loaded   // at each of Lesson.LoadsNPerCM
}

// Bent is a point of a curve of the bent edge angle.
type Bent struct{ SetDeg, EdgeDeg float64 }

// Loaded is a blade under a line load at the usual angle.
type Loaded struct {
	EdgeDeg *float64 // nil: folds over
	Floats  bool
	Clears  bool
}

// The reference blade: one layer of 70 Shore A, 9.5 mm thick (common practice).
const (
	referenceShoreA = 70.0
	referenceMM     = 9.5
	softShoreA      = 60.0 // the soft and the hard blade that are compared
	hardShoreA      = 80.0
	usualDeg        = 15.0 // the angle that a job starts from (common practice)
	mostDeg         = 45.0
)

// StiffnessNPerCMPerMM is the line load in N/cm that moves the tip of a blade by 1 mm, square to
// its face: 3 D/L^3 of the cantilever, for small bending.
//
// Range: rigidity 1e-5 to 1e5 N m, free height 1 to 200 mm; an error outside. Kind: derived,
// strength-of-materials textbooks [4] (published).
func StiffnessNPerCMPerMM(rigidityNM, freeHeightMM float64) (float64, error) {
	if !(rigidityNM >= 1e-5 && rigidityNM <= 1e5) {
		return 0, errors.New("lesson: rigidity is outside 1e-5 to 1e5 N m")
	}
	if !(freeHeightMM >= 1 && freeHeightMM <= 200) {
		return 0, errors.New("lesson: free height is outside 1 to 200 mm")
	}
	const perMM, perCM = 1e-3, 1e-2
	return 3 * rigidityNM / math.Pow(freeHeightMM/1000, 3) * perMM * perCM, nil
}

// hardness fills in what Shore A readings mean.
func (m *maker) hardness() error {
	ref, err := blade.ModulusGentMPa(referenceShoreA)
	if err != nil {
		return err
	}
	for s := 50.0; s <= 90; s += 5 {
		h := Hardness{ShoreA: s}
		for _, f := range []struct {
			to *float64
			of func(float64) (float64, error)
			at float64
		}{
			{&h.MPa, blade.ModulusGentMPa, s}, {&h.OtherMPa, blade.ModulusRuessMPa, s},
			{&h.LessMPa, blade.ModulusGentMPa, s - blade.ToleranceShoreA}, {&h.MoreMPa, blade.ModulusGentMPa, s + blade.ToleranceShoreA},
		} {
			if *f.to, err = f.of(f.at); err != nil {
				return err
			}
		}
		h.To70 = h.MPa / ref
		m.out.OtherTimes = math.Max(m.out.OtherTimes, h.OtherMPa/h.MPa)
		m.out.Hardness = append(m.out.Hardness, h)
	}
	soft, err := blade.ModulusGentMPa(softShoreA)
	if err != nil {
		return err
	}
	hard, err := blade.ModulusGentMPa(hardShoreA)
	if err != nil {
		return err
	}
	m.out.HardTimes = hard / soft
	whole, err := single(referenceShoreA, referenceMM)
	if err != nil {
		return err
	}
	core, err := single(referenceShoreA, referenceMM/3)
	m.out.CoreShare = core / whole
	return err
}

// rack chooses the blades that the lesson is computed from and fills in those that it shows, each
// stock once, softest first. Both are even choices in the order of stiffness.
func (m *maker) rack() error {
	seen := map[string]bool{}
	type racked struct {
		stock job.Blade
		blade Blade
	}
	var all []racked
	for _, b := range m.shop.Blades {
		key := b.Name + "\x00" + b.Layup + "\x00" + b.Edge + number(b.ThicknessMM) + number(b.FreeHeightMM)
		if b.Count == 0 || seen[key] {
			continue
		}
		seen[key] = true
		out, err := newBlade(b)
		if err != nil {
			return err
		}
		all = append(all, racked{b, out})
	}
	if all == nil {
		return errors.New("no blade is at hand: every count is 0")
	}
	sort.SliceStable(all, func(i, j int) bool { return all[i].blade.stiff() < all[j].blade.stiff() })
	// The workhorse is the planner's own: the blade of the first step of its path.
	stocks := make([]job.Blade, len(all))
	for i, r := range all {
		stocks[i] = r.stock
	}
	p, err := m.plan(m.with(stocks, m.shop.Meshes[:1]), fixed(m.shop.Meshes[0]))
	if err != nil {
		return err
	}
	m.out.Press = p.Press
	start := p.Locations[0].Screens[0].Reasons[0].To
	workhorse := max(0, slices.IndexFunc(all, func(r racked) bool { return r.blade.Name == start }))

	tried := spread(len(all), mostTried, workhorse)
	m.out.BladesAtHand, m.out.BladesTried = len(all), len(tried)
	if len(tried) < len(all) {
		m.shop = m.with(chosen(stocks, tried), m.shop.Meshes)
	}
	for n, at := range spread(len(tried), mostBlades, slices.Index(tried, workhorse)) {
		i := tried[at]
		b := all[i].blade
		if i == workhorse {
			m.out.Workhorse = n
		}
		for _, a := range m.out.SetDeg {
			e, err := b.edge(a, m.out.Press.LoadNPerCM)
			if err != nil {
				return err
			}
			b.Edges = append(b.Edges, e)
		}
		for a := 0.0; a <= mostDeg; a += 2.5 {
			e, err := b.edge(a, m.out.Press.LoadNPerCM)
			if err != nil {
				return err
			}
			if e != nil {
				b.Curve = append(b.Curve, Bent{a, *e})
			}
		}
		m.out.Blades = append(m.out.Blades, b)
		m.blades = append(m.blades, stocks[i])
	}
	return nil
}

// stiff is what blades are ordered by: how little the edge turns under a load, D/L^2, as the
// planner orders its rack.
func (b Blade) stiff() float64 { return b.RigidityNM / (b.FreeHeightMM * b.FreeHeightMM) }

// newBlade works out layers and stiffness of a stock.
func newBlade(b job.Blade) (Blade, error) {
	out := Blade{Name: b.Name, Layup: b.Layup, Edge: b.Edge, ThicknessMM: b.ThicknessMM, FreeHeightMM: b.FreeHeightMM}
	if out.Name == "" {
		out.Name = b.Layup
	}
	var layers []blade.Layer
	for i, h := range b.Hardness {
		mpa, err := blade.ModulusGentMPa(h)
		if err != nil {
			return out, err
		}
		if len(b.ModulusMPa) == len(b.Hardness) {
			mpa = b.ModulusMPa[i]
		}
		mm := b.ThicknessMM / float64(len(b.Hardness))
		if len(b.LayersMM) == len(b.Hardness) {
			mm = b.LayersMM[i]
		}
		layers = append(layers, blade.Layer{ThicknessMM: mm, ModulusMPa: mpa})
		out.Layers = append(out.Layers, plan.Layer{Hardness: h, ThicknessMM: mm})
		out.MPa = append(out.MPa, mpa)
	}
	var err error
	if out.RigidityNM, err = blade.RigidityNM(layers); err != nil {
		return out, err
	}
	ref, err := single(referenceShoreA, b.ThicknessMM)
	if err != nil {
		return out, err
	}
	out.To70 = out.RigidityNM / ref
	out.TipNPerCMPerMM, err = StiffnessNPerCMPerMM(out.RigidityNM, out.FreeHeightMM)
	return out, err
}

// single is the rigidity per width in N m of one layer.
func single(shoreA, thicknessMM float64) (float64, error) {
	mpa, err := blade.ModulusGentMPa(shoreA)
	if err != nil {
		return 0, err
	}
	return blade.RigidityNM([]blade.Layer{{ThicknessMM: thicknessMM, ModulusMPa: mpa}})
}

// edge is the bent edge angle of a blade; nil: it folds over.
func (b Blade) edge(setDeg, loadNPerCM float64) (*float64, error) {
	deg, err := blade.EdgeAngleDeg(blade.Bend{
		SetDeg: setDeg, LoadNPerCM: loadNPerCM, FreeHeightMM: b.FreeHeightMM, RigidityNM: b.RigidityNM, Friction: blade.Friction,
	})
	var folds blade.ErrFolds
	if errors.As(err, &folds) {
		return nil, nil
	}
	if err != nil {
		return nil, err
	}
	return &deg, nil
}

// setFor is the largest set angle in whole degrees, finer than anybody sets, at which the edge
// leans no more than edgeDeg, up to 45 deg; nil: it leans more even when set upright.
func (b Blade) setFor(edgeDeg, loadNPerCM float64) (*float64, error) {
	var best *float64
	for a := 0.0; a <= mostDeg; a++ {
		e, err := b.edge(a, loadNPerCM)
		if err != nil {
			return nil, err
		}
		if e == nil || *e > edgeDeg {
			break
		}
		at := a
		best = &at
	}
	return best, nil
}
