package choose

import (
	"math"

	"bladecard/calc/film"
	"bladecard/calc/plan"
)

// frail names the first slip that a setup does not stand: it then folds over, floats, or leaves ink in
// the screen; empty where it stands them all. Mesh and stencil have no say in it.
func (g given) frail(s setup) string {
	for _, one := range slips {
		off := one.off
		off.angleDeg = math.Max(off.angleDeg, -s.angleDeg)
		if p := g.press(s, off); p.fault != "" || p.edge.LiftRatio > film.ClearRatio {
			return one.word
		}
	}
	return ""
}

// moves computes what the usual errors of angle and hardness do to the film of a setup.
func (g given) moves(s setup, filmUM float64) plan.Moves {
	angle, dA := g.move(s, filmUM, angleErrorDeg, slip{angleDeg: -math.Min(angleErrorDeg, s.angleDeg)}, slip{angleDeg: angleErrorDeg})
	hardness, dH := g.move(s, filmUM, hardnessErrorShoreA, slip{hardnessShoreA: -hardnessErrorShoreA}, slip{hardnessShoreA: hardnessErrorShoreA})
	return plan.Moves{Angle: angle, Hardness: hardness, Together: math.Hypot(dA, dH)}
}

// loadMove is what the usual error of the load does. No choice hangs on it: it is for paper.
func (g given) loadMove(s setup, filmUM float64) plan.Move {
	m, _ := g.move(s, filmUM, loadErrorShare, slip{loadShare: -loadErrorShare}, slip{loadShare: loadErrorShare})
	return m
}

// move is the film's change for less and for more of one thing, and the larger of the two.
func (g given) move(s setup, filmUM, step float64, less, more slip) (m plan.Move, worst float64) {
	m = plan.Move{Step: step, Less: g.changeBy(s, filmUM, less), More: g.changeBy(s, filmUM, more)}
	for _, by := range []*float64{m.Less, m.More} {
		if by == nil {
			worst = math.Max(worst, 1) // no figure at all: as bad as losing the film
		} else {
			worst = math.Max(worst, math.Abs(*by))
		}
	}
	return m, worst
}

// changeBy is the film's relative change under a slip; nil where the setup then fails.
func (g given) changeBy(s setup, filmUM float64, off slip) *float64 {
	o := g.try(s, off)
	if o.fault != "" {
		return nil
	}
	by := o.curedUM/filmUM - 1
	return &by
}
