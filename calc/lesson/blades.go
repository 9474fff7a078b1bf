package lesson

import (
	"cmp"
	"errors"
	"slices"

	"bladecard/calc/blade"
	"bladecard/calc/internal/sure"
	"bladecard/calc/job"
	"bladecard/calc/plan"
)

// Blade is a stock of the rack and what its edge does.
type Blade struct {
	stock job.Blade // as it stands in the shop

	Name, Layup, Edge         string
	Layers                    []plan.Layer
	ThicknessMM, FreeHeightMM float64
	RigidityNM                float64
	Stiff                     float64    // how little the edge turns under a load, over the workhorse
	Edges                     []*float64 // bent edge angle at each of Lesson.SetDeg; nil: folds over
	Largest                   []*float64 // set angle at which the edge reaches each of Lesson.Limits; nil: none reaches so low
}

const (
	usualDeg = 15.0 // the angle that a job starts from (common practice)
	mostDeg  = 45.0
)

// rack chooses the blades that the lesson is computed from and fills in those that it shows, each
// stock once, softest first. Both are even choices in the order of stiffness.
func (m *maker) rack() {
	all := m.atHand()
	stocks := stocksOf(all)
	p := sure.Of(m.plan(cotton, m.with(stocks, m.shop.Meshes[:1]), fixed(m.shop.Meshes[0])))
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
		b.Stiff = b.stiff() / all[workhorse].stiff()
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
	out := Blade{
		stock: b, Name: b.Name, Layup: b.Layup, Edge: b.Edge, ThicknessMM: b.ThicknessMM, FreeHeightMM: b.FreeHeightMM,
		RigidityNM: sure.Of(blade.RigidityNM(layers)),
	}
	for i, l := range layers {
		out.Layers = append(out.Layers, plan.Layer{Hardness: b.Hardness[i], ThicknessMM: l.ThicknessMM})
	}
	return out
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
