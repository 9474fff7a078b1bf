package choose

import (
	"cmp"
	"math"
	"slices"

	"bladecard/calc/plan"
)

// others works out what swapping blades could do at the press: the films of every blade of the rack over
// the range of angles that a card allows, and how far each other blade may lean.
func (c chooser) others(t trial, r plan.SetRange) plan.Others {
	out := plan.Others{FilmUM: plan.Interval{Low: t.curedUM, High: t.curedUM}, Leans: []plan.Lean{}}
	for i, s := range append([]stock{t.stock}, c.otherBlades(t.stock)...) {
		for _, a := range []float64{r.Low, r.Set, r.High} { // a film has no turn between them that a card could show
			o := c.given.try(setup{stock: s, angleDeg: a, strokes: t.strokes, hits: t.hits}, slip{})
			if o.fault == "" {
				out.FilmUM.Low, out.FilmUM.High = math.Min(out.FilmUM.Low, o.curedUM), math.Max(out.FilmUM.High, o.curedUM)
			}
		}
		if i > 0 {
			out.Leans = append(out.Leans, c.lean(s, t))
		}
	}
	// What would do at the set angle comes first, of it what leans least beyond.
	off := func(l plan.Lean) float64 {
		switch {
		case l.ToDeg == nil:
			return math.Inf(1)
		case *l.ToDeg < t.angleDeg:
			return angleMostDeg + t.angleDeg - *l.ToDeg
		}
		return *l.ToDeg - t.angleDeg
	}
	slices.SortStableFunc(out.Leans, func(a, b plan.Lean) int { return cmp.Compare(off(a), off(b)) })
	return out
}

// lean is the furthest angle at which a blade clears the screen and keeps the edge that the work takes.
func (c chooser) lean(s stock, t trial) plan.Lean {
	out := plan.Lean{Blade: s.Name}
	for a := angleMostDeg; a >= angleLeastDeg; a -= angleStepDeg {
		o := c.given.try(setup{stock: s, angleDeg: a, strokes: t.strokes, hits: t.hits}, slip{})
		if o.fault == "" && o.clears && o.edgeDeg <= c.given.demand.limitDeg+1e-9 {
			out.ToDeg = &a
			break
		}
	}
	return out
}
