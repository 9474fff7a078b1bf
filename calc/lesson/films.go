package lesson

import (
	"errors"
	"fmt"
	"math"

	"bladecard/calc/internal/sure"
	"bladecard/calc/job"
	"bladecard/calc/plan"
)

// inkName is the class of the film figures: 100 % solids, so that wet and cured are one.
const inkName = "plastisol"

// Limit is the most that a bent edge may lean for the smallest feature that must hold.
type Limit struct{ FinestMM, EdgeDeg float64 }

// Film is the cured film of one stroke over the angle, on one mesh.
type Film struct {
	Mesh, Ink string
	Target    plan.Target
	Curves    []plan.Curve // a curve per blade
	Hardness  []plan.Curve // over the edge hardness of the workhorse
	EdgeShore float64      // hardness of its edge, Shore A
	Moves     plan.Moves   // of the workhorse at the usual angle
	Band      plan.Band    // its cured film
	Spread    float64      // share by which the rack's heaviest film is over its lightest, at the usual angle
}

// Strokes is the film of wet strokes in a row.
type Strokes struct {
	Count   int
	CuredUM plan.Band
	AddsUM  float64 // by the last stroke
}

// Wear is the workhorse with an edge in some state.
type Wear struct {
	Edge    string
	CuredUM float64
	ToNew   float64 // change against a new edge, share
}

// Ground is the workhorse after its edge has been ground back.
type Ground struct {
	FreeHeightMM   float64
	TipNPerCMPerMM float64
	EdgeDeg        *float64 // at the usual angle and load
}

// plan lets the planner make the setups of screens, each a location of its own, on dark cotton
// or on paper as the first one's ink is for. The screens are the lesson's own, so that an error tells
// what is wrong and not where.
func (m *maker) plan(shop *job.Shop, screens ...job.Screen) (*plan.Plan, error) {
	j := &job.Job{Title: "lesson"}
	for _, s := range screens {
		j.Locations = append(j.Locations, job.Location{Name: "lesson", Screens: []job.Screen{s}})
	}
	if in, ok := shop.FindInk(screens[0].InkName); ok && in.On == "sheet" {
		j.Stock = &job.Stock{Kind: "paper"}
	} else {
		j.Garment = &job.Garment{Fibre: "cotton", Shade: "dark"}
	}
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

// fixed is a screen for which nothing is left to choose: one stroke at the usual angle.
func fixed(c job.Mesh) job.Screen {
	a := usualDeg
	return job.Screen{InkName: inkName, Use: "solid", MeshName: c.Name, AngleDeg: &a, Strokes: 1}
}

// screen is the planner's setup of a fixed screen; nil where the blade folds over or floats.
func (m *maker) screen(s job.Screen, b job.Blade, c job.Mesh) *plan.Screen {
	p, err := m.plan(m.with([]job.Blade{b}, []job.Mesh{c}), s)
	if err != nil {
		return nil
	}
	return &p.Locations[0].Screens[0]
}

// workhorse is the setup of the workhorse as changed by change; an error where there is none.
func (m *maker) workhorse(change func(*job.Screen, *job.Blade)) *plan.Screen {
	s, b := fixed(m.middle), m.out.Blades[m.out.Workhorse].stock
	change(&s, &b)
	sc := m.screen(s, b, m.middle)
	if sc == nil {
		sure.Check(errors.New("the blade " + m.out.Blades[m.out.Workhorse].Name + " folds over or floats at the usual setup: a stiffer or shorter blade in the rack is needed"))
	}
	return sc
}

// limits asks the planner how far an edge may lean, and each blade how far it may then be set.
func (m *maker) limits() {
	for _, mm := range []float64{2, 0.5, 0.2, 0.1} {
		p := sure.Of(m.plan(m.shop, job.Screen{InkName: inkName, Use: "solid", FinestMM: mm, MeshName: m.middle.Name}))
		limit := *p.Locations[0].Screens[0].EdgeLimitDeg
		m.out.Limits = append(m.out.Limits, Limit{mm, limit})
		for i := range m.out.Blades {
			b := &m.out.Blades[i]
			b.Largest = append(b.Largest, b.setFor(limit, m.out.Press.LoadNPerCM))
		}
	}
}

// film fills in the film over the angle.
func (m *maker) film() {
	sc := m.workhorse(func(*job.Screen, *job.Blade) {})
	f := Film{Mesh: sc.Mesh.Name, Ink: sc.Ink, Target: sc.TargetUM, Moves: sc.Moves, Band: sc.CuredUM,
		Hardness: sc.Charts.Hardness, EdgeShore: sc.Blade.EdgeHardness}
	p := sure.Of(m.plan(m.with(stocksOf(m.out.Blades), []job.Mesh{m.middle}), fixed(m.middle)))
	f.Curves = p.Locations[0].Screens[0].Charts.Angle
	low, high := f.Band.Value, f.Band.Value
	for _, b := range m.out.Blades {
		if sc := m.screen(fixed(m.middle), b.stock, m.middle); sc != nil && sc.Clears {
			low, high = math.Min(low, sc.CuredUM.Value), math.Max(high, sc.CuredUM.Value)
		}
	}
	f.Spread = high/low - 1
	m.out.Film = f
}

// load fills in the blades under the three loads.
func (m *maker) load() {
	for i := range m.out.Blades {
		b := &m.out.Blades[i]
		for _, w := range m.out.LoadsNPerCM {
			l := Loaded{EdgeDeg: b.edge(usualDeg, w)}
			s := fixed(m.middle)
			s.LoadNCM = w
			if sc := m.screen(s, b.stock, m.middle); sc != nil {
				l.Clears = sc.Clears
			} else {
				l.Floats = l.EdgeDeg != nil
			}
			b.Loaded = append(b.Loaded, l)
		}
	}
}

// strokes fills in the film of wet strokes in a row.
func (m *maker) strokes() {
	before := 0.0
	for n := 1; n <= 3; n++ {
		sc := m.workhorse(func(s *job.Screen, _ *job.Blade) { s.Strokes = n })
		m.out.Strokes = append(m.out.Strokes, Strokes{n, sc.CuredUM, sc.CuredUM.Value - before})
		before = sc.CuredUM.Value
	}
}

// wear fills in the workhorse with an older edge, and ground back.
func (m *maker) wear() {
	for _, edge := range []string{"new", "used", "worn"} {
		sc := m.workhorse(func(_ *job.Screen, b *job.Blade) { b.Edge = edge })
		w := Wear{Edge: edge, CuredUM: sc.CuredUM.Value}
		if m.out.Wear != nil {
			w.ToNew = w.CuredUM/m.out.Wear[0].CuredUM - 1
		}
		m.out.Wear = append(m.out.Wear, w)
	}
	b := m.out.Blades[m.out.Workhorse]
	full := b.FreeHeightMM
	for _, share := range []float64{1, 0.9, 0.8, 0.7} {
		b.FreeHeightMM = math.Round(full*share*2) / 2
		m.out.Ground = append(m.out.Ground, Ground{
			FreeHeightMM: b.FreeHeightMM, TipNPerCMPerMM: sure.Of(StiffnessNPerCMPerMM(b.RigidityNM, b.FreeHeightMM)),
			EdgeDeg: b.edge(usualDeg, m.out.Press.LoadNPerCM),
		})
	}
}
