package choose_test

import (
	"math"
	"strings"
	"testing"

	"bladecard/calc/job"
	"bladecard/calc/plan"
	"bladecard/calc/plantest"
)

// learnedShop is a rack with what ten prints said of it.
func learnedShop(t *testing.T, more string) *job.Shop {
	t.Helper()
	return plantest.Shop(t, `[[blade]]
layup = "70"
[[blade]]
layup = "80"
[[mesh]]
mesh = "156-64"
[[mesh]]
mesh = "230-48"
`+more)
}

const tenPrints = `[calibration]
factor = 1.1
error = 0.11
scatter = 0.06
count = 10
date = 2026-03-01
mean-angle = "15 deg"
mean-hardness = 70
next-stroke = 0.3
next-stroke-error = 0.1
angle = 0.05
angle-error = 0.03
blades = ["70"]
[[calibration.mesh]]
mesh = "156-64"
factor = 1.2
error = 0.03
count = 10
`

// TestCalibrationChangesThePlan: with measured prints the figure moves by their factor, the band
// narrows, and what was not measured or is old widens it and says so.
func TestCalibrationChangesThePlan(t *testing.T) {
	src := func(due, keys string) string {
		return one(due, "ink = \"plastisol\"\neom = \"12 um\"\nfilm = \"10..200 um\"\n"+keys)
	}
	at := func(calibration, due, keys string) (*plan.Plan, plan.Screen) {
		p := plantest.Plan(t, src(due, keys), learnedShop(t, calibration))
		return p, p.Locations[0].Screens[0]
	}
	width := func(s plan.Screen) float64 { return math.Log(s.CuredUM.High / s.CuredUM.Low) }
	const same = "mesh = \"156-64\"\nblade = \"70\"\nangle = 15\nstrokes = 1"
	_, bare := at("", "due = 2026-06-01", same)
	p, known := at(tenPrints, "due = 2026-06-01", same)
	if r := known.CuredUM.Value / bare.CuredUM.Value; math.Abs(r-1.2) > 1e-9 {
		t.Errorf("the film is %g of the uncalibrated one; this mesh measured 1.2", r)
	}
	if !(width(known) < 0.75*width(bare)) || bare.Measured != nil {
		t.Errorf("band %v with ten prints, %v without", known.CuredUM, bare.CuredUM)
	}
	if c := p.Calibration; c == nil || c.Count != 10 || c.Date != "2026-03-01" || c.Old || *known.Measured != (plan.Measured{Mesh: true, Blade: true}) {
		t.Errorf("calibration %+v, measured %+v", p.Calibration, known.Measured)
	}
	p, old := at(tenPrints, "due = 2027-06-01", same)
	if !p.Calibration.Old || !(width(old) > 1.2*width(known)) {
		t.Errorf("after 15 months: old %v, band %v; it was %v", p.Calibration.Old, old.CuredUM, known.CuredUM)
	}
	for name, keys := range map[string]string{
		"another blade": strings.Replace(same, "70", "80", 1), "another mesh": strings.Replace(same, "156-64", "230-48", 1),
		"far from the mean angle": strings.Replace(same, "angle = 15", "angle = 40", 1), "two strokes": strings.Replace(same, "strokes = 1", "strokes = 2", 1),
	} {
		_, got := at(tenPrints, "due = 2026-06-01", keys)
		if !(width(got) > width(known)) {
			t.Errorf("%s: band %v is no wider than %v", name, got.CuredUM, known.CuredUM)
		}
	}
	// Further strokes and angle act as measured.
	_, two := at(tenPrints, "", strings.Replace(same, "strokes = 1", "strokes = 2", 1))
	if r := two.CuredUM.Value / known.CuredUM.Value; math.Abs(r-1.3) > 1e-9 {
		t.Errorf("a second stroke gives %g; measured is 1.3", r)
	}
	lean := strings.Replace(same, "angle = 15", "angle = 25", 1)
	_, bareLean := at("", "", lean)
	_, knownLean := at(tenPrints, "", lean)
	if r := knownLean.CuredUM.Value / bareLean.CuredUM.Value; math.Abs(r-1.2*math.Exp(0.05)) > 1e-9 {
		t.Errorf("10 deg more lean: factor %g; %g is measured", r, 1.2*math.Exp(0.05))
	}
	// Corrections keep to the same calibrated model.
	for _, c := range known.Corrections {
		if c.Kind == "angle" && c.To == "25" && math.Abs(c.CuredUM-knownLean.CuredUM.Value) > 1e-9*c.CuredUM {
			t.Errorf("correction to 25 deg promises %g um, the job gives %g", c.CuredUM, knownLean.CuredUM.Value)
		}
	}
}
