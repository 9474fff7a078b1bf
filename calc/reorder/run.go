package reorder

import (
	"math"

	"bladecard/calc/job"
	"bladecard/calc/plan"
	"bladecard/calc/presslog"
)

// How far two figures may lie apart and still be the same setting: what a log rounds, and what no hand sets
// (common practice).
const (
	sameEOMUM      = 1.0
	sameDeg        = 0.25
	sameNCM        = 0.2
	sameBar        = 0.1
	sameFlashS     = 0.25
	sameFlashShare = 0.1
)

// lastRun is what a row tells of a screen.
func lastRun(r presslog.Row, s plan.Screen, shop *job.Shop) *plan.LastRun {
	out := &plan.LastRun{
		Date: r.Date.ISO(), Mesh: line(r.Mesh), EOMUM: known(r.EOMUM), Ink: line(r.Ink), Blade: line(r.Blade), AngleDeg: r.AngleDeg, LoadNPerCM: known(r.LoadNCM),
		AirBar: known(r.AirBar), Strokes: r.Strokes, Hits: r.Hits, FlashS: known(r.FlashS), Wiped: r.Wiped, CureC: known(r.CureC), Wash: r.Wash, Name: line(r.Name),
	}
	out.CuredUM, out.CuredFrom = film(r, s, shop)
	out.Differences = differences(out, s)
	return out
}

// known is a figure of a row, nil where it does not state one.
func known(v float64) *float64 {
	if math.IsNaN(v) {
		return nil
	}
	return &v
}

// film is the cured film in um that was measured, and how: by the gauge where it was, else by the comb, else by weight.
func film(r presslog.Row, s plan.Screen, shop *job.Shop) (um *float64, from string) {
	if !math.IsNaN(r.CuredUM) {
		return known(r.CuredUM), "gauge"
	}
	name := r.Ink
	if name == "" {
		name = s.Ink
	}
	ink, ok := shop.FindInk(name)
	if !ok {
		return nil, ""
	}
	from = "weight"
	if !math.IsNaN(r.WetUM) {
		from, r.BeforeG = "comb", math.NaN()
	}
	cured, _, fault := r.Film(ink.Solids, ink.DensityKgPerL)
	if math.IsNaN(cured) || fault != (presslog.Fault{}) {
		return nil, ""
	}
	return &cured, from
}

// differences are what was set otherwise than the plan has it, from the screen to the stroke, and last the film
// where it lies outside the band that is expected now.
func differences(r *plan.LastRun, s plan.Screen) []plan.Difference {
	out := []plan.Difference{}
	name := func(what, then string, now ...string) {
		for _, n := range now {
			if then == "" || key(then) == key(n) {
				return
			}
		}
		out = append(out, plan.Difference{What: what, Then: then, Now: now[0]})
	}
	figure := func(what string, was *float64, is, same float64) {
		if was != nil && math.Abs(*was-is) > same {
			out = append(out, plan.Difference{What: what, Was: was, Is: &is})
		}
	}
	count := func(what string, was, is int) {
		then := float64(was)
		figure(what, &then, float64(is), 0)
	}
	name("mesh", r.Mesh, s.Mesh.Name)
	figure("eom", r.EOMUM, s.Stencil.EOMUM, sameEOMUM)
	name("ink", r.Ink, s.Ink)
	name("blade", r.Blade, s.Blade.Name, s.Blade.Layup)
	figure("angle", &r.AngleDeg, s.AngleDeg.Set, sameDeg)
	count("strokes", r.Strokes, s.Strokes)
	count("hits", r.Hits, s.Hits)
	figure("load", r.LoadNPerCM, s.LoadNPerCM, sameNCM)
	if s.Pressure != nil {
		figure("air", r.AirBar, s.Pressure.Bar, sameBar)
	}
	if s.Flash.StartS != nil {
		figure("flash", r.FlashS, *s.Flash.StartS, math.Max(sameFlashS, sameFlashShare**s.Flash.StartS))
	}
	if b := s.CuredUM; r.CuredUM != nil && (*r.CuredUM < b.Low || *r.CuredUM > b.High) {
		out = append(out, plan.Difference{What: "film", Was: r.CuredUM, Is: &b.Value, Range: &b})
	}
	return out
}
