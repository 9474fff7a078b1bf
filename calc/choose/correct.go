package choose

import (
	"math"
	"slices"
	"sort"
	"strconv"

	"bladecard/calc/mesh"
	"bladecard/calc/plan"
)

// change is one thing done otherwise than in the chosen setup.
type change struct {
	kind, to string
	chooser  chooser
	setup    setup
	cost     float64
	screen   bool // takes a new screen
}

// corrections computes the single changes that this shop can make to the chosen setup, each
// with its effect on the cured film, ranked. A change that folds the blade over or makes it
// float is none.
func (c chooser) corrections(t trial, others []given) []plan.Correction {
	out := []plan.Correction{}
	for _, ch := range c.changes(t, others) {
		if n := ch.chooser.look(ch.setup); n.fault == "" {
			out = append(out, c.correction(t, n, ch))
		}
	}
	rank(out)
	return out
}

// correction is what a change brings.
func (c chooser) correction(t, n trial, ch change) plan.Correction {
	ratio := n.curedUM / t.curedUM
	low, high := effectBand(t, n, c.given, ch.chooser.given, ch.kind != "blade") // only between two blades it may go either way
	out := plan.Correction{
		Kind: ch.kind, To: ch.to, Hits: ch.setup.hits, CuredUM: n.curedUM,
		DeltaUM: n.curedUM - t.curedUM, DeltaPercent: 100 * (ratio - 1),
		DeltaBandUM:  plan.Interval{Low: t.curedUM * math.Expm1(low), High: t.curedUM * math.Expm1(high)},
		EdgeAngleDeg: n.edgeDeg, KeepsCut: n.miss.cut == 0, Clears: n.clears,
		Disturbs: []string{}, Cost: ch.cost,
	}
	out.SpreadPercent = 100 * (out.DeltaBandUM.High - out.DeltaBandUM.Low) / 2 / t.curedUM
	if n.miss.cut > t.miss.cut {
		disturb(&out, "detail", costLosesDetail)
	}
	if !n.clears {
		disturb(&out, "clearing", costLeavesInk)
	}
	if ch.screen {
		out.Disturbs = append(out.Disturbs, "screen") // its cost is the change's own
	}
	return out
}

func disturb(c *plan.Correction, what string, cost float64) {
	c.Disturbs = append(c.Disturbs, what)
	c.Cost += cost
}

// rank sorts corrections by effect against cost, the most worth trying first.
func rank(list []plan.Correction) {
	worth := func(c plan.Correction) float64 { return math.Abs(math.Log1p(c.DeltaPercent/100)) / c.Cost }
	sort.SliceStable(list, func(i, j int) bool { return worth(list[i]) > worth(list[j]) })
}

// tellsUM is the smallest change of a screen's cured film that a shop can measure: with the comb, or by weighing
// where the size of the print is stated.
func tellsUM(sc plan.Screen) float64 {
	wetUM := combStepUM * float64(max(1, sc.Hits)) // a comb reads one of them
	if sc.InkGPerPrint != nil {
		wetUM = math.Min(wetUM, scaleStepG / *sc.InkGPerPrint * (sc.WetUM.Value+sc.SinksUM))
	}
	return wetUM * sc.CuredUM.Value / sc.WetUM.Value
}

// flashFeels marks the corrections of a flashed screen whose film takes a longer flash.
func flashFeels(sc *plan.Screen) {
	if !sc.Flash.Needed {
		return
	}
	for i := range sc.Corrections {
		if c := &sc.Corrections[i]; c.DeltaPercent >= 100*flashFeelsShare {
			disturb(c, "flash", costLongerFlash)
		}
	}
	rank(sc.Corrections)
}

// changes are all single changes: angle, strokes, every other blade of the rack that reaches,
// a sharp edge, the stencil, the next meshes.
func (c chooser) changes(t trial, others []given) []change {
	var out []change
	at := func(kind, to string, cost float64, alter func(*setup)) {
		s := t.setup
		alter(&s)
		out = append(out, change{kind: kind, to: to, chooser: c, setup: s, cost: cost})
	}
	for _, by := range []float64{-2, -1, 1, 2} {
		if a := t.angleDeg + by*handStepDeg; a >= 0 && a <= angleMostDeg {
			at("angle", number(a), c.moveCost(t.angleDeg, a), func(s *setup) { s.angleDeg = a })
		}
	}
	for _, n := range []int{t.strokes - 1, t.strokes + 1} {
		if n >= 1 && n <= strokesMost {
			at("strokes", strconv.Itoa(n), costStroke, func(s *setup) { s.strokes = n })
		}
	}
	for _, n := range []int{t.hits - 1, t.hits + 1} {
		if n >= 1 && n <= c.given.demand.hitsMost {
			at("hits", strconv.Itoa(n), costHit, func(s *setup) { s.hits = n })
		}
	}
	for _, o := range c.otherBlades(t.stock) {
		steps := math.Max(1, math.Abs(float64(o.rank-t.stock.rank)))
		at("blade", o.Name, costBladeStep*steps, func(s *setup) { s.stock = o })
	}
	if t.stock.Edge != "new" {
		at("edge", "new", costSharpen, func(s *setup) { s.stock.Edge, s.stock.id = "new", madeUp })
	}
	for _, eom := range eomNext(c.given.eomUM) {
		other := c
		other.given.eomUM = eom
		out = append(out, change{kind: "eom", to: number(eom), chooser: other, setup: t.setup, cost: costNewStencil, screen: true})
	}
	for _, g := range others {
		out = append(out, change{kind: "mesh", to: g.meshName, chooser: c.on(g), setup: t.setup, cost: costNewMesh, screen: true})
	}
	return out
}

// moveCost is what moving the angle weighs: upright of the workhorse's angle more than leaning.
func (c chooser) moveCost(from, to float64) float64 {
	cost := costAngle5Deg * math.Abs(to-from) / 5
	if to < from && to < workhorseAngleDeg {
		cost += (costAngleBelow5 - costAngle5Deg) * (math.Min(from, workhorseAngleDeg) - to) / 5
	}
	return cost
}

// eomNext are a coat or a film less and more, in whole um as a job file would state them.
func eomNext(um float64) []float64 {
	step := mesh.CoatUM
	if um > mesh.MostCoatedUM {
		step = filmStepUM
	}
	var out []float64
	for _, next := range []float64{math.Round(um - step), math.Round(um + step)} {
		if next >= step {
			out = append(out, next)
		}
	}
	return out
}

// otherBlades are the blades of the rack beside s that reach over the image, softest first, one
// of each name.
func (c chooser) otherBlades(s stock) []stock {
	var out []stock
	seen := []string{s.Name}
	for _, o := range c.rack.stocks {
		if _, fits := o.lengthMM(c.given.imageMM); fits && !slices.Contains(seen, o.Name) {
			seen = append(seen, o.Name)
			out = append(out, o)
		}
	}
	return out
}
