package lesson

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"bladecard/calc/internal/sure"
	"bladecard/calc/job"
	"bladecard/calc/plan"
)

// inkName is the class of the film figures: 100 % solids, so that wet and cured are one.
const inkName = "plastisol"

// Limit is the most that a bent edge may lean for the smallest feature that must hold.
type Limit struct{ FinestMM, EdgeDeg float64 }

// What the lesson prints on.
const (
	cotton    = "cotton"
	polyester = "polyester"
	paper     = "paper"
)

// jobOn is an empty job on one of them.
func jobOn(stock string) *job.Job {
	if stock == paper {
		return &job.Job{Title: "lesson", Stock: &job.Stock{Kind: paper}}
	}
	return &job.Job{Title: "lesson", Garment: &job.Garment{Fibre: stock, Shade: "dark"}}
}

// plan lets the planner make the setups of screens on a stock, each a location of its own.
func (m *maker) plan(on string, shop *job.Shop, screens ...job.Screen) (*plan.Plan, error) {
	j := jobOn(on)
	for _, s := range screens {
		j.Locations = append(j.Locations, job.Location{Name: "lesson", Screens: []job.Screen{s}})
	}
	return m.make(j, shop)
}

// make lets the planner make a job. It is the lesson's own, so that an error tells what is wrong and not where.
func (m *maker) make(j *job.Job, shop *job.Shop) (*plan.Plan, error) {
	var p *plan.Plan
	errs := job.Resolve(j, shop)
	if errs == nil {
		p, errs = m.planned(j, shop)
	}
	if errs != nil {
		return nil, fmt.Errorf("%s: %s", errs[0].Key, errs[0].Wrong)
	}
	return p, nil
}

// with is the shop with other racks.
func (m *maker) with(blades []job.Blade, meshes []job.Mesh) *job.Shop {
	s := *m.shop
	s.Blades, s.Meshes = blades, meshes
	return &s
}

// fixed is a screen for which nothing is left to choose: one stroke at the usual angle, and no second after a flash.
func fixed(c job.Mesh) job.Screen {
	a := usualDeg
	return job.Screen{InkName: inkName, Use: "solid", MeshName: c.Name, AngleDeg: &a, Strokes: 1, Hits: 1}
}

// screen is the planner's setup of a fixed screen; nil where the blade folds over or floats.
func (m *maker) screen(s job.Screen, b job.Blade, c job.Mesh) *plan.Screen {
	p, err := m.plan(cotton, m.with([]job.Blade{b}, []job.Mesh{c}), s)
	if err != nil {
		return nil
	}
	return &p.Locations[0].Screens[0]
}

// workhorse is the setup of the workhorse as changed by change.
func (m *maker) workhorse(change func(*job.Screen)) *plan.Screen {
	s, b := fixed(m.middle), m.out.Blades[m.out.Workhorse]
	change(&s)
	sc := m.screen(s, b.stock, m.middle)
	if sc == nil {
		sure.Check(errors.New("the blade " + b.Name + " folds over or floats at the usual setup: a stiffer or shorter blade in the rack is needed"))
	}
	return sc
}

// roomy is the same with a press that has heads for two hits: what a flash between them does to the film is told to a
// shop of one station too.
func (m *maker) roomy() *maker {
	const heads = 6
	shop, out := *m.shop, *m
	shop.Presses = slices.Clone(shop.Presses)
	for i := range shop.Presses {
		shop.Presses[i].Heads = max(shop.Presses[i].Heads, heads)
	}
	out.shop = &shop
	return &out
}

// limits asks the planner how far an edge may lean, and each blade how far it may then be set.
func (m *maker) limits() {
	for _, mm := range []float64{0.1, 0.2, 0.5, 2} {
		p := sure.Of(m.plan(cotton, m.roomy().shop, job.Screen{InkName: inkName, Use: "solid", FinestMM: mm, MeshName: m.middle.Name}))
		limit := *p.Locations[0].Screens[0].EdgeLimitDeg
		m.out.Limits = append(m.out.Limits, Limit{mm, limit})
		for i := range m.out.Blades {
			b := &m.out.Blades[i]
			b.Largest = append(b.Largest, b.setFor(limit, m.out.Press.LoadNPerCM))
		}
	}
}

// film fills in what a film follows: other blades, more strokes, and a flash between them.
func (m *maker) film() {
	for n := 1; n <= 3; n++ {
		m.out.Strokes = append(m.out.Strokes, m.workhorse(func(s *job.Screen) { s.Strokes = n }).CuredUM)
	}
	m.out.FlashedUM = m.roomy().workhorse(func(s *job.Screen) { s.Hits = 2 }).CuredUM.Value
	// The charts show the blades that the paper does.
	bench := m.workhorse(func(*job.Screen) {})
	shown := sure.Of(m.plan(cotton, m.with(stocksOf(m.out.Blades), []job.Mesh{m.middle}), fixed(m.middle)))
	bench.Charts.Angle = shown.Locations[0].Screens[0].Charts.Angle
	for i, c := range bench.Charts.Angle {
		bench.Charts.Angle[i].Chosen = c.Name == bench.Blade.Name
	}
	m.out.Bench = *bench
	low, high := bench.CuredUM.Value, bench.CuredUM.Value
	for _, b := range m.out.Blades {
		if sc := m.screen(fixed(m.middle), b.stock, m.middle); sc != nil && sc.Clears {
			low, high = math.Min(low, sc.CuredUM.Value), math.Max(high, sc.CuredUM.Value)
		}
	}
	m.out.Spread = high/low - 1
}
