package lesson

import (
	"cmp"
	"errors"
	"math"
	"slices"

	"bladecard/calc/blade"
	"bladecard/calc/internal/sure"
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

	stock job.Blade // as it stands in the shop
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
func (m *maker) hardness() {
	mpa := func(shoreA float64) float64 { return sure.Of(blade.ModulusGentMPa(shoreA)) }
	for s := 50.0; s <= 90; s += 5 {
		h := Hardness{
			ShoreA: s, MPa: mpa(s), OtherMPa: sure.Of(blade.ModulusRuessMPa(s)),
			LessMPa: mpa(s - blade.ToleranceShoreA), MoreMPa: mpa(s + blade.ToleranceShoreA), To70: mpa(s) / mpa(referenceShoreA),
		}
		m.out.OtherTimes = math.Max(m.out.OtherTimes, h.OtherMPa/h.MPa)
		m.out.Hardness = append(m.out.Hardness, h)
	}
	m.out.HardTimes = mpa(hardShoreA) / mpa(softShoreA)
	m.out.CoreShare = oneLayerNM(referenceShoreA, referenceMM/3) / oneLayerNM(referenceShoreA, referenceMM)
}

// rack chooses the blades that the lesson is computed from and fills in those that it shows, each
// stock once, softest first. Both are even choices in the order of stiffness.
func (m *maker) rack() {
	all := m.atHand()
	stocks := stocksOf(all)
	p := sure.Of(m.plan(m.with(stocks, m.shop.Meshes[:1]), fixed(m.shop.Meshes[0])))
	m.out.Press = p.Press
	start := p.Locations[0].Screens[0].Reasons[0].To // the planner's path begins at its own workhorse
	workhorse := max(0, slices.IndexFunc(stocks, func(b job.Blade) bool { return b.Name == start }))

	tried := spread(len(stocks), mostTried, workhorse)
	m.out.BladesAtHand, m.out.BladesTried = len(stocks), len(tried)
	if len(tried) < len(stocks) {
		m.shop = m.with(chosen(stocks, tried), m.shop.Meshes)
	}
	for n, at := range spread(len(tried), mostBlades, slices.Index(tried, workhorse)) {
		i := tried[at]
		if i == workhorse {
			m.out.Workhorse = n
		}
		b := all[i]
		for _, a := range m.out.SetDeg {
			b.Edges = append(b.Edges, b.edge(a, m.out.Press.LoadNPerCM))
		}
		for a := 0.0; a <= mostDeg; a += 2.5 {
			if e := b.edge(a, m.out.Press.LoadNPerCM); e != nil {
				b.Curve = append(b.Curve, Bent{a, *e})
			}
		}
		m.out.Blades = append(m.out.Blades, b)
	}
}

// atHand are the different blades of the shop, softest first.
func (m *maker) atHand() (out []Blade) {
	for _, b := range m.shop.Blades {
		same := func(o Blade) bool {
			return o.Name == b.Name && o.Layup == b.Layup && o.Edge == b.Edge && o.ThicknessMM == b.ThicknessMM && o.FreeHeightMM == b.FreeHeightMM
		}
		if b.Count > 0 && !slices.ContainsFunc(out, same) {
			out = append(out, newBlade(b))
		}
	}
	if out == nil {
		sure.Check(errors.New("no blade is at hand: every count is 0"))
	}
	slices.SortStableFunc(out, func(a, b Blade) int { return cmp.Compare(a.stiff(), b.stiff()) })
	return out
}

// stocksOf are the blades as they stand in the shop.
func stocksOf(blades []Blade) (out []job.Blade) {
	for _, b := range blades {
		out = append(out, b.stock)
	}
	return out
}

// stiff is what blades are ordered by: how little the edge turns under a load, D/L^2, as the
// planner orders its rack.
func (b Blade) stiff() float64 { return b.RigidityNM / (b.FreeHeightMM * b.FreeHeightMM) }

// newBlade works out layers and stiffness of a stock.
func newBlade(b job.Blade) Blade {
	layers := sure.Of(b.Layers(0))
	rigidity := sure.Of(blade.RigidityNM(layers))
	out := Blade{
		stock: b, Name: b.Name, Layup: b.Layup, Edge: b.Edge, ThicknessMM: b.ThicknessMM, FreeHeightMM: b.FreeHeightMM,
		RigidityNM: rigidity, To70: rigidity / oneLayerNM(referenceShoreA, b.ThicknessMM), TipNPerCMPerMM: sure.Of(StiffnessNPerCMPerMM(rigidity, b.FreeHeightMM)),
	}
	for i, l := range layers {
		out.Layers = append(out.Layers, plan.Layer{Hardness: b.Hardness[i], ThicknessMM: l.ThicknessMM})
		out.MPa = append(out.MPa, l.ModulusMPa)
	}
	return out
}

// oneLayerNM is the rigidity per width in N m of one layer.
func oneLayerNM(shoreA, thicknessMM float64) float64 {
	return sure.Of(blade.RigidityNM([]blade.Layer{{ThicknessMM: thicknessMM, ModulusMPa: sure.Of(blade.ModulusGentMPa(shoreA))}}))
}

// edge is the bent edge angle of a blade; nil: it folds over.
func (b Blade) edge(setDeg, loadNPerCM float64) *float64 {
	deg, err := blade.EdgeAngleDeg(blade.Bend{
		SetDeg: setDeg, LoadNPerCM: loadNPerCM, FreeHeightMM: b.FreeHeightMM, RigidityNM: b.RigidityNM, Friction: blade.Friction,
	})
	if folds := (blade.ErrFolds{}); errors.As(err, &folds) {
		return nil
	}
	sure.Check(err)
	return &deg
}

// setFor is the largest set angle in whole degrees, finer than anybody sets, at which the edge
// leans no more than edgeDeg, up to 45 deg; nil: it leans more even when set upright.
func (b Blade) setFor(edgeDeg, loadNPerCM float64) (best *float64) {
	for a := 0.0; a <= mostDeg; a++ {
		if e := b.edge(a, loadNPerCM); e == nil || *e > edgeDeg {
			break
		}
		best = &a
	}
	return best
}
