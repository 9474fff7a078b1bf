package choose

import (
	"math"

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

// judge computes a setup with its misses and its cost.
func (c chooser) judge(s setup) trial { return c.weigh(c.look(s)) }

// look judges a setup without its movements, which take most time to compute: what it misses of film, cut
// and clearing is known, so that the miss is no more than judge's.
func (c chooser) look(s setup) trial { return c.times(c.once(s.stock, s.angleDeg), s.strokes, s.hits) }

// once tries a stock at an angle with one stroke: all that the stroke count does not change.
func (c chooser) once(s stock, angleDeg float64) trial {
	once := setup{stock: s, angleDeg: angleDeg, strokes: 1, hits: 1}
	return trial{setup: once, outlook: c.given.try(once, slip{})}
}

// times makes of a trial of one stroke one of the given strokes and hits, and judges it without its movements.
func (c chooser) times(t trial, strokes, hits int) trial {
	t.strokes, t.hits = strokes, hits
	if t.fault != "" {
		return t
	}
	c.given.repeat(&t.outlook, strokes, hits)
	d := c.given.demand
	t.miss.film = filmMiss(t.curedUM, d.target)
	t.miss.cut = math.Max(0, t.edgeDeg-d.limitDeg) / missCutUnit
	if !t.clears {
		t.miss.dirty = 1
	}
	if _, fits := t.stock.lengthMM(c.given.imageMM); !fits {
		t.miss.short = 1
	}
	t.cost = c.cost(t.setup)
	return t
}

// weigh adds the movements to a trial. They are shares of the film, the same for every stroke count.
func (c chooser) weigh(t trial) trial {
	if t.fault != "" || t.weighed {
		return t
	}
	single := t.setup
	single.strokes, single.hits = 1, 1
	t.moves, t.frail, t.weighed = c.given.moves(single, t.onceUM), c.given.frail(single), true
	if t.frail != "" {
		t.miss.frail = 1
	}
	t.miss.moves = math.Max(0, math.Min(1, t.moves.Together)-movesMost) / missMoveUnit
	return t
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
	if c.given.demand.flashed {
		hit = costHitFlashed
	}
	return cost + costStroke*math.Abs(float64(s.strokes-workhorseStrokes)) + hit*float64(max(1, s.hits)-1)
}
