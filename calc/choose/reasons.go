package choose

import (
	"math"
	"strconv"

	"bladecard/calc/plan"
)

// path is the way from the workhorse to the chosen setup, a step at a time: the blade, then the
// angle, then the strokes. Each step carries what was short before it and what it brought.
func (c chooser) path(to trial) []plan.Reason {
	at := c.judge(setup{stock: c.rack.stocks[c.rack.workhorse], angleDeg: workhorseAngleDeg, strokes: workhorseStrokes, hits: 1})
	out := []plan.Reason{c.reason("start", at, at, "")}
	out[0].To = at.stock.Name
	for _, step := range []struct {
		name string
		move func(setup) setup
		word func(setup) string
	}{
		{"blade", func(s setup) setup { s.stock = to.stock; return s }, func(s setup) string { return s.stock.Name }},
		{"angle", func(s setup) setup { s.angleDeg = to.angleDeg; return s }, func(s setup) string { return number(s.angleDeg) }},
		{"hits", func(s setup) setup { s.hits = to.hits; return s }, func(s setup) string { return strconv.Itoa(s.hits) }},
		{"strokes", func(s setup) setup { s.strokes = to.strokes; return s }, func(s setup) string { return strconv.Itoa(s.strokes) }},
	} {
		next := step.move(at.setup)
		from, word := step.word(at.setup), step.word(next)
		if from == word {
			continue
		}
		after := c.judge(next)
		r := c.reason(step.name, at, after, from)
		r.To = word
		if c.isFixed(step.name) {
			r.Short = "fixed"
		}
		out = append(out, r)
		at = after
	}
	return out
}

func (c chooser) isFixed(step string) bool {
	switch step {
	case "blade":
		return c.fixed.blades != nil
	case "angle":
		return c.fixed.angle != nil
	case "strokes":
		return c.fixed.strokes > 0
	case "hits":
		return c.fixed.hits > 0
	}
	return false
}

func (c chooser) reason(step string, before, after trial, from string) plan.Reason {
	return plan.Reason{
		Step: step, From: from, Short: c.short(before),
		FilmUM: after.curedUM, DeltaUM: after.curedUM - before.curedUM,
		EdgeDeg: after.edgeDeg, DeltaEdge: after.edgeDeg - before.edgeDeg,
		MissBefore: missOf(before), MissAfter: missOf(after),
	}
}

// missOf is the whole miss of a trial; -1 where it gives no figure at all.
func missOf(t trial) float64 {
	if t.fault != "" {
		return -1
	}
	return t.miss.total()
}

// short names what a trial is short of; the worst first.
func (c chooser) short(t trial) string {
	switch {
	case t.fault != "":
		return string(t.fault)
	case t.miss.dirty > 0:
		return "leaves-ink"
	case t.miss.frail > 0:
		return "frail"
	case t.miss.cut > math.Abs(t.miss.film) && t.miss.cut >= t.miss.moves:
		return "cut"
	case t.miss.moves > math.Abs(t.miss.film):
		return "moves"
	case t.miss.film < 0:
		return "film-thin"
	case t.miss.film > 0:
		return "film-heavy"
	case c.given.demand.heavy:
		return "aim-film"
	}
	return "none"
}

// lost tells of every other blade of the rack, at its best setup, what it lost on.
func (c chooser) lost(ch choice) []plan.Lost {
	var out []plan.Lost
	d := c.given.demand
	for _, t := range ch.each {
		if t.stock.alike(ch.best.stock) {
			continue
		}
		l := plan.Lost{Blade: t.stock.Name, AngleDeg: t.angleDeg, Strokes: t.strokes, Hits: t.hits}
		mm, fits := t.stock.lengthMM(c.given.imageMM)
		switch {
		case !fits:
			l.On, l.By = "length", reachMM(c.given.imageMM)-mm
		case t.fault != "":
			l.On, l.By = string(t.fault), t.liftOver
		case t.miss.none() && d.heavy && t.onceUM >= ch.best.onceUM:
			l.On, l.By = "more-lean", t.angleDeg-ch.best.angleDeg
		case t.miss.none() && d.heavy:
			l.On, l.By = "less-film", ch.best.onceUM-t.onceUM
		case t.miss.none():
			l.On, l.By = "departure", t.cost-ch.best.cost
		default:
			l.On = c.short(t)
			switch l.On {
			case "cut":
				l.By = t.edgeDeg - d.limitDeg
			case "moves":
				l.By = t.moves.Together - movesMost
			case "film-thin":
				l.By = d.target.Low - t.curedUM
			case "film-heavy":
				l.By = t.curedUM - d.target.High
			case "leaves-ink":
				l.By = t.liftOver
			}
		}
		out = append(out, l)
	}
	return out
}

func number(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }
