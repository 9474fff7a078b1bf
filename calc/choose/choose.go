package choose

import (
	"math"
	"slices"
	"sort"

	"bladecard/calc/film"
	"bladecard/calc/job"
	"bladecard/calc/plan"
)

// trial is a setup with all that it is judged by.
type trial struct {
	setup
	outlook
	moves   plan.Moves
	frail   string // the first slip that it does not stand; empty: it stands them all
	weighed bool   // moves and frail are known, and counted in miss
	miss    miss
	cost    float64
}

// miss is by how much a setup misses each demand, in units of the limits; zero is none.
type miss struct {
	film  float64 // negative: too thin, positive: too heavy
	cut   float64
	moves float64
	frail float64 // 1: one of the usual slips makes it fail
	dirty float64 // 1: leaves ink in the screen
	short float64 // 1: the blade does not reach over the image
}

func (m miss) total() float64 {
	return math.Abs(m.film) + m.cut + m.moves + missFrail*m.frail + dirtyWeight*m.dirty + dirtyWeight*m.short
}

// A screen that does not clear, or a blade that does not reach, is worse than any film.
const dirtyWeight = 100

func (m miss) none() bool { return m.total() == 0 }

// noMoreThan tells whether m misses nothing by more than o does.
func (m miss) noMoreThan(o miss) bool {
	return math.Abs(m.film) <= math.Abs(o.film)+1e-9 && m.cut <= o.cut+1e-9 && m.moves <= o.moves+1e-9 && m.frail <= o.frail && m.dirty <= o.dirty && m.short <= o.short
}

// chooser tries the setups of one bench.
type chooser struct {
	bench bench
	rack  rack
	fixed fixed
	step  float64 // mesh departure of this bench
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
	var blades []string
	for _, b := range s.Blades {
		blades = append(blades, b.Name)
	}
	return fixed{blades: blades, strokes: s.Strokes, hits: s.Hits, angle: s.AngleDeg}
}

// judge computes a setup with its misses and its cost.
func (c chooser) judge(s setup) (trial, error) {
	t, err := c.look(s)
	if err != nil {
		return t, err
	}
	return c.weigh(t)
}

// look judges a setup without the sensitivities, which cost most to compute: what it misses of film,
// cut and clearing is known, so that the miss is no more than judge's.
func (c chooser) look(s setup) (trial, error) {
	t, err := c.once(s.stock, s.angleDeg)
	if err != nil {
		return t, err
	}
	return c.times(t, s.strokes, s.hits)
}

// once tries a stock at an angle with one stroke: all that the stroke count does not change.
func (c chooser) once(s stock, angleDeg float64) (trial, error) {
	t := trial{setup: setup{stock: s, angleDeg: angleDeg, strokes: 1, hits: 1}}
	var err error
	t.outlook, err = c.bench.try(t.setup, slip{})
	return t, err
}

// weigh adds the movements to a trial. They are shares of the film, the same for every stroke count.
func (c chooser) weigh(t trial) (trial, error) {
	if t.fault != "" || t.weighed {
		return t, nil
	}
	single := t.setup
	single.strokes, single.hits = 1, 1
	at := t.outlook
	at.curedUM = t.onceUM
	var err error
	if t.moves, err = c.bench.moves(single, at); err != nil {
		return t, err
	}
	if t.frail, err = c.bench.frail(single); err != nil {
		return t, err
	}
	if t.weighed = true; t.frail != "" {
		t.miss.frail = 1
	}
	t.miss.moves = math.Max(0, math.Min(1, t.moves.Together)-movesMost) / missMoveUnit
	return t, nil
}

// holds tells whether any setup that the job leaves open meets all demands.
func (c chooser) holds() (bool, error) {
	for _, s := range c.stocks() {
		for _, a := range c.angles() {
			once, err := c.once(s, a)
			if err != nil {
				return false, err
			}
			for _, n := range c.pulls() {
				t, err := c.times(once, n.strokes, n.hits)
				if err != nil {
					return false, err
				}
				if t.fault != "" || !t.miss.none() {
					continue
				}
				if t, err = c.weigh(t); err != nil {
					return false, err
				}
				if t.miss.none() {
					return true, nil
				}
				break // the sensitivities are the same however often it is pulled
			}
		}
	}
	return false, nil
}

// times makes of a trial of one stroke one of the given strokes and hits, and judges it without the
// sensitivities.
func (c chooser) times(t trial, strokes, hits int) (trial, error) {
	t.strokes, t.hits = strokes, hits
	if t.fault != "" {
		return t, nil
	}
	more, err := film.Strokes(strokes, c.bench.nextStroke())
	if err != nil {
		return t, err
	}
	t.curedUM = t.onceUM * more * float64(hits)
	t.wetUM = t.curedUM / c.bench.solids
	d := c.bench.demand
	t.miss.film = filmMiss(t.curedUM, d.target)
	t.miss.cut = math.Max(0, t.edgeDeg-d.limitDeg) / missCutUnit
	if !t.clears {
		t.miss.dirty = 1
	}
	if _, fits := t.stock.lengthMM(c.bench.imageMM); !fits {
		t.miss.short = 1
	}
	t.cost = c.cost(t.setup)
	return t, nil
}

// filmMiss is by how much a film is outside its target, in units of missFilmUnit on the
// logarithm; negative is too thin.
func filmMiss(um float64, t plan.Target) float64 {
	switch {
	case um < t.Low:
		return math.Log(um/t.Low) / missFilmUnit
	case um > t.High:
		return math.Log(um/t.High) / missFilmUnit
	}
	return 0
}

// cost is how far a setup departs from the workhorse.
func (c chooser) cost(s setup) float64 {
	cost := c.step + costBladeStep*math.Abs(float64(s.stock.rank-c.start().rank))
	if lean := (s.angleDeg - workhorseAngleDeg) / 5; lean >= 0 {
		cost += costAngle5Deg * lean
	} else {
		cost -= costAngleBelow5 * lean
	}
	hit := costHit
	if c.bench.demand.flashed {
		hit = costHitFlashed
	}
	return cost + costStroke*math.Abs(float64(s.strokes-workhorseStrokes)) + hit*float64(max(1, s.hits)-1)
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
	if c.bench.demand.heavy {
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

func (c chooser) offMiddle(t trial) float64 {
	d := c.bench.demand.target
	return math.Abs(math.Log(t.curedUM / math.Sqrt(d.Low*d.High)))
}

func near(a, b float64) bool { return math.Abs(a-b) <= 1e-9*(1+math.Abs(a)+math.Abs(b)) }

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

func (c chooser) angles() []float64 {
	if c.fixed.angle != nil {
		return []float64{*c.fixed.angle}
	}
	var out []float64
	for a := angleLeastDeg; a <= angleMostDeg; a += angleStepDeg {
		out = append(out, a)
	}
	return out
}

// pull is how often a screen is printed: wet strokes, and hits with a flash between.
type pull struct{ strokes, hits int }

// pulls are the stroke and hit counts that the job leaves open, the fewest first.
func (c chooser) pulls() []pull {
	strokes, hits := [2]int{1, strokesMost}, [2]int{1, c.bench.demand.hitsMost}
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
func (c chooser) choose() (choice, error) {
	var out choice
	angles, counts := c.angles(), c.pulls()
	// From the usual angle up, then down from it: what comes first leaves the least to try.
	sort.SliceStable(angles, func(i, j int) bool {
		a, b := angles[i]-workhorseAngleDeg, angles[j]-workhorseAngleDeg
		return a >= 0 && (b < 0 || a < b) || a < 0 && b < 0 && a > b
	})
	for _, s := range c.stocks() {
		best, found := trial{setup: setup{stock: s}}, false
		for _, a := range angles {
			if found && c.beyond(s, a, counts, best) {
				continue
			}
			base, err := c.once(s, a)
			if err != nil {
				return out, err
			}
			if base.fault != "" { // no further pull mends it
				if !found && (best.fault == "" || a > best.angleDeg) {
					best = base
				}
				continue
			}
			for _, n := range counts {
				t, err := c.times(base, n.strokes, n.hits)
				if err != nil {
					return out, err
				}
				if found && !c.better(t, best) { // nor would it be with its sensitivities
					continue
				}
				if t, err = c.weigh(t); err != nil {
					return out, err
				}
				if !found || c.better(t, best) {
					best, found = t, true
				}
			}
		}
		out.each = append(out.each, best)
		if found && (!out.found || c.better(best, out.best)) {
			out.best, out.found = best, true
		}
	}
	if out.found && c.bench.demand.heavy {
		out.best = c.leastLean(out)
	}
	return out, nil
}

// beyond tells without any film that no setup of a stock at an angle is better than one that
// misses nothing at a working angle: it stands too upright, or departs more with the fewest strokes.
func (c chooser) beyond(s stock, angleDeg float64, counts []pull, than trial) bool {
	if c.bench.demand.heavy || !than.miss.none() || than.angleDeg < workhorseAngleDeg {
		return false
	}
	if angleDeg < workhorseAngleDeg {
		return true
	}
	least := c.cost(setup{stock: s, angleDeg: angleDeg, strokes: counts[0].strokes, hits: counts[0].hits})
	return least > than.cost && !near(least, than.cost)
}

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
