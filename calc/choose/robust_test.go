package choose_test

import (
	"errors"
	"math"
	"testing"

	"bladecard/calc/blade"
	"bladecard/calc/film"
	"bladecard/calc/job"
	"bladecard/calc/plan"
)

// stands tells whether a planned setup clears with one thing off, worked out anew from the figures
// of the plan.
func stands(t *testing.T, p *plan.Plan, s plan.Screen, ink *job.Ink, leanDeg, shoreA, load, freeMM, speed float64) bool {
	t.Helper()
	var layers []blade.Layer
	for _, l := range s.Blade.Layers {
		e, err := blade.ModulusGentMPa(math.Max(40, math.Min(95, l.Hardness+shoreA)))
		if err != nil {
			t.Fatal(err)
		}
		layers = append(layers, blade.Layer{ThicknessMM: l.ThicknessMM, ModulusMPa: e})
	}
	d, err := blade.RigidityNM(layers)
	if err != nil {
		t.Fatal(err)
	}
	edge, err := blade.EdgeAngleDeg(blade.Bend{SetDeg: math.Max(0, s.AngleDeg.Set+leanDeg), LoadNPerCM: s.LoadNPerCM * load,
		FreeHeightMM: s.Blade.FreeHeightMM + freeMM, RigidityNM: d, Friction: blade.Friction})
	if folds := (blade.ErrFolds{}); errors.As(err, &folds) {
		return false
	}
	radius, rErr := film.EdgeRadiusMM(s.Blade.Edge)
	if err != nil || rErr != nil {
		t.Fatal(err, rErr)
	}
	e, err := film.EdgeOf(film.Contact{ModulusMPa: layers[0].ModulusMPa, RadiusMM: radius, LoadNPerCM: s.LoadNPerCM * load, SpeedMPerS: p.Press.StrokeMPS * speed,
		Flow: film.Flow{EtaInfPaS: ink.EtaInfPaS, KPaSn: ink.KPaSn, N: ink.N}}, edge)
	if floats := (film.ErrFloats{}); errors.As(err, &floats) {
		return false
	}
	if err != nil {
		t.Fatal(err)
	}
	return e.LiftRatio <= 0.5
}

// TestSlips: over the screens of all made-up jobs every choice clears with each of the usual slips, one at a
// time, or carries the warning that it does not.
func TestSlips(t *testing.T) {
	all, frail := 0, 0
	for n, m := range madeUp() {
		j, p := m.job, m.plan
		for k, l := range p.Locations {
			for i, s := range l.Screens {
				all++
				ink := j.Locations[k].Screens[i].Ink
				holds := true
				for _, off := range [][5]float64{
					{0, 0, 1.25, 0, 1}, {0, 0, 0.75, 0, 1}, {0, 0, 1, 2, 1}, {0, 0, 1, -2, 1}, {5, 0, 1, 0, 1}, {-5, 0, 1, 0, 1},
					{0, 5, 1, 0, 1}, {0, -5, 1, 0, 1}, {0, 0, 1, 0, 1.5}, {0, 0, 1, 0, 1 / 1.5},
				} {
					holds = holds && stands(t, p, s, ink, off[0], off[1], off[2], off[3], off[4])
				}
				warned := warningOf(s, "frail") != nil
				if holds == warned {
					t.Errorf("job %d, %s screen %d: stands all slips: %v, warned: %v", n, l.Name, i+1, holds, warned)
				}
				if warned {
					frail++
				}
			}
		}
	}
	t.Logf("%d screens, %d with no setup that stands every slip", all, frail)
	if all < 800 {
		t.Errorf("only %d screens", all)
	}
}

// TestFrailIsSaid: a job that fixes a setup on the brink is told which slip makes it fail.
func TestFrailIsSaid(t *testing.T) {
	s := screenOf(t, one("", "ink = \"plastisol puff\"\nuse = \"raised\"\nmesh = \"110-80\"\nblade = \"60\"\nangle = 35\n"))
	w := warningOf(s, "frail")
	if w == nil || w.Names["slip"] == "" {
		t.Errorf("a 60 at 35°, edge %.0f°: warnings %s", s.EdgeAngleDeg, codesOf(s))
	}
}

// TestThickWork: raised work leans no further than 65 deg of bent edge, clear and gel work no further
// than 45 (common practice), and a thick gel takes several hits.
func TestThickWork(t *testing.T) {
	puff := screenOf(t, one("", "ink = \"plastisol puff\"\nuse = \"raised\"\n"))
	gel := screenOf(t, one("", "ink = \"plastisol clear gel\"\nuse = \"clear\"\nmesh = \"86-100\"\neom = \"200 um\"\nfilm = \"380..480 um\"\n"))
	if puff.EdgeAngleDeg > 65 || *puff.EdgeLimitDeg != 65 || gel.EdgeAngleDeg > 45 || *gel.EdgeLimitDeg != 45 {
		t.Errorf("bent edges %.0f of %g and %.0f of %g deg", puff.EdgeAngleDeg, *puff.EdgeLimitDeg, gel.EdgeAngleDeg, *gel.EdgeLimitDeg)
	}
	if !gel.MeetsAll || gel.Hits < 2 || gel.AngleDeg.Set < 10 || gel.AngleDeg.Set > 25 {
		t.Errorf("gel of 400 um: %s at %g deg, %d hits of %d strokes, %.0f um, %s", gel.Blade.Layup, gel.AngleDeg.Set, gel.Hits, gel.Strokes, gel.CuredUM.Value, codesOf(gel))
	}
}
