package choose

import (
	"math"
	"slices"

	"bladecard/calc/job"
)

// chooser tries the setups of a rack on one mesh.
type chooser struct {
	given given
	rack  rack
	fixed fixed
	step  float64 // departure of the mesh from the customary one
}

// on is the chooser with the screen on another mesh.
func (c chooser) on(g given) chooser {
	c.given = g
	return c
}

// fixed is what the job file has decided.
type fixed struct {
	blades  []string // names of the stocks that the job's blade means; none: open
	strokes int
	hits    int
	angle   *float64
}

// open tells whether the job has decided nothing.
func (f fixed) open() bool { return f.blades == nil && f.strokes == 0 && f.hits == 0 && f.angle == nil }

func fixedBy(s job.Screen) fixed {
	f := fixed{strokes: s.Strokes, hits: s.Hits, angle: s.AngleDeg}
	for _, b := range s.Blades {
		f.blades = append(f.blades, b.Name)
	}
	return f
}

// stocks, angles and pulls are what the job leaves open.
func (c chooser) stocks() []stock {
	if c.fixed.blades == nil {
		return c.rack.stocks
	}
	var out []stock
	for _, s := range c.rack.stocks {
		if slices.Contains(c.fixed.blades, s.Name) {
			out = append(out, s)
		}
	}
	return out
}

// angles begin at the usual one and lean over, then stand up from it: what comes first leaves the least to try.
func (c chooser) angles() []float64 {
	if c.fixed.angle != nil {
		return []float64{*c.fixed.angle}
	}
	var out []float64
	for a := workhorseAngleDeg; a <= angleMostDeg; a += angleStepDeg {
		out = append(out, a)
	}
	for a := workhorseAngleDeg - angleStepDeg; a >= angleLeastDeg; a -= angleStepDeg {
		out = append(out, a)
	}
	return out
}

// pull is how often a screen is printed: wet strokes, and hits with a flash between.
type pull struct{ strokes, hits int }

// pulls are the stroke and hit counts that the job leaves open, the fewest first.
func (c chooser) pulls() []pull {
	strokes, hits := [2]int{1, strokesMost}, [2]int{1, c.given.demand.hitsMost}
	if n := c.fixed.strokes; n > 0 {
		strokes = [2]int{n, n}
	}
	if n := c.fixed.hits; n > 0 {
		hits = [2]int{n, n}
	}
	var out []pull
	for h := hits[0]; h <= hits[1]; h++ {
		for n := strokes[0]; n <= strokes[1]; n++ {
			if h == 1 || n <= strokesAgain || n == c.fixed.strokes {
				out = append(out, pull{n, h})
			}
		}
	}
	return out
}

// choice is the outcome of trying everything: the best setup, and the best of each stock.
type choice struct {
	best  trial
	found bool    // false: every setup folds over or floats
	each  []trial // the best of each stock tried, in rack order; fault set where it has none
}

// choose finds the best setup of all stocks, angles and stroke counts that the job leaves open.
func (c chooser) choose() choice {
	var out choice
	angles, pulls := c.angles(), c.pulls()
	for _, s := range c.stocks() {
		best, found := c.bestOf(s, angles, pulls)
		out.each = append(out.each, best)
		if found && (!out.found || c.better(best, out.best)) {
			out.best, out.found = best, true
		}
	}
	if out.found && c.given.demand.heavy {
		out.best = c.leastLean(out)
	}
	return out
}

// bestOf finds the best setup of a stock. Where every one folds over or floats it returns the one that
// leans most, with its fault.
func (c chooser) bestOf(s stock, angles []float64, pulls []pull) (best trial, found bool) {
	best.stock = s
	for _, a := range angles {
		if found && c.beyond(s, a, pulls, best) {
			continue
		}
		once := c.once(s, a)
		if once.fault != "" { // no further pull mends it
			if !found && (best.fault == "" || a > best.angleDeg) {
				best = once
			}
			continue
		}
		for _, n := range pulls {
			t := c.times(once, n.strokes, n.hits)
			if found && !c.better(t, best) { // nor would it be with its movements
				continue
			}
			if t = c.weigh(t); !found || c.better(t, best) {
				best, found = t, true
			}
		}
	}
	return best, found
}

// holds tells whether any setup that the job leaves open meets all demands.
func (c chooser) holds() bool {
	angles, pulls := c.angles(), c.pulls()
	for _, s := range c.stocks() {
		for _, a := range angles {
			once := c.once(s, a)
			for _, n := range pulls {
				t := c.times(once, n.strokes, n.hits)
				if t.fault != "" || !t.miss.none() {
					continue
				}
				if c.weigh(t).miss.none() {
					return true
				}
				break // the movements are the same however often it is pulled
			}
		}
	}
	return false
}

// beyond tells without any film that no setup of a stock at an angle is better than one that
// misses nothing at a working angle: it stands too upright, or departs more with the fewest strokes.
func (c chooser) beyond(s stock, angleDeg float64, pulls []pull, than trial) bool {
	if c.given.demand.heavy || !than.miss.none() || than.angleDeg < workhorseAngleDeg {
		return false
	}
	if angleDeg < workhorseAngleDeg {
		return true
	}
	least := c.cost(setup{stock: s, angleDeg: angleDeg, strokes: pulls[0].strokes, hits: pulls[0].hits})
	return least > than.cost && !near(least, than.cost)
}

// better tells whether a is to be taken before b. Setups that meet all demands come first, and
// of those the ones at a working angle; of those the least departure, for heavy work the most
// film a stroke and then the fewest pulls; of those that miss, the least miss. Ties go to the
// middle of the target, then to the sharper edge.
func (c chooser) better(a, b trial) bool {
	if am, bm := a.miss.total(), b.miss.total(); !near(am, bm) {
		return am < bm
	}
	if au, bu := a.angleDeg < workhorseAngleDeg, b.angleDeg < workhorseAngleDeg; au != bu {
		return bu
	}
	if c.given.demand.heavy {
		if !near(a.onceUM, b.onceUM) {
			return a.onceUM > b.onceUM
		}
		if x, y := a.strokes*a.hits, b.strokes*b.hits; x != y {
			return x < y
		}
	}
	if !near(a.cost, b.cost) {
		return a.cost < b.cost
	}
	if x, y := c.offMiddle(a), c.offMiddle(b); !near(x, y) {
		return x < y
	}
	return edgeOrder[a.stock.Edge] < edgeOrder[b.stock.Edge]
}

var edgeOrder = map[string]int{"new": 0, "used": 1, "worn": 2}

// offMiddle is how far a film is from the middle of its target, on the logarithm.
func (c chooser) offMiddle(t trial) float64 {
	d := c.given.demand.target
	return math.Abs(math.Log(t.curedUM / math.Sqrt(d.Low*d.High)))
}

func near(a, b float64) bool { return math.Abs(a-b) <= 1e-9*(1+math.Abs(a)+math.Abs(b)) }

// leastLean takes, of the blades whose films a shop could not tell from the heaviest, the one
// that leans least: the softer blade bends the rest of the way by itself.
func (c chooser) leastLean(ch choice) trial {
	best := ch.best
	for _, t := range ch.each {
		alike := t.fault == "" && near(t.miss.total(), ch.best.miss.total()) && t.strokes == ch.best.strokes && t.hits == ch.best.hits &&
			math.Log(ch.best.onceUM/t.onceUM) < filmSeenShare
		if alike && t.angleDeg < best.angleDeg {
			best = t
		}
	}
	return best
}
