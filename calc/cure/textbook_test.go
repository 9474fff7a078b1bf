package cure

import (
	"math"
	"testing"
)

// lump is one cell of the given heat per area and K, J/(m2 K).
func lump(heat, startC float64, around air) *heating {
	return newHeating([]layer{{thicknessM: 1e-3, conductivity: 1, heatCapacity: heat / 1e-3, startC: startC, cells: 1}}, around)
}

// until is the time in seconds after which the lump passes a temperature, warming or cooling.
func until(h *heating, tempC float64) float64 {
	const dt = 0.002
	warming := h.tempC[0] < tempC
	for s := 0.0; s < 5000; s += dt {
		if (h.tempC[0] >= tempC) == warming {
			return s
		}
		h.step(0, dt)
	}
	return math.Inf(1)
}

// The expected values of the textbook's examples are those of a solved notebook, which is what was read: FOSSEE,
// Python Textbook Companions, Fundamentals of Heat and Mass Transfer, Chapter_5.ipynb. Those of Holman
// are carried by a verification guide of a finite-element program (mvtt001). "Published" means there.

// TestTextbookLumps runs the solver's one cell on the worked examples of Incropera and DeWitt [39], ch. 5, as solved
// in the notebook.
func TestTextbookLumps(t *testing.T) {
	// Ex. 5.1: a thermocouple bead of 0.706 mm (published), 8500 kg/m3, 400 J/kgK, 400 W/m2K has a
	// time constant of 1 s, in which 1 - 1/e of the way from 25 to 200 C is gone.
	bead := 8500 * 400 * 0.706e-3 / 6
	tau := until(lump(bead, 25, air{lossWM2K: 400, airC: 200}), 25+175*(1-1/math.E))
	// Ex. 5.2: the same bead among walls of 400 C, emissivity 0.9.
	walls := air{lossWM2K: 400, airC: 200, emits: 0.9, radiantC: 400}
	settled := lump(bead, 25, walls)
	for range 20000 {
		settled.step(0, 0.002)
	}
	near := until(lump(bead, 25, walls), 217.7)
	// Ex. 5.3: aluminium of 3 mm, heated on both faces to 150 C, kept in the oven for 300 s more,
	// cooled to 37 C.
	plate := lump(2770*875*0.0015, 25, air{lossWM2K: 40, airC: 175, emits: 0.8, radiantC: 175})
	heated := until(plate, 150)
	for range 150000 {
		plate.step(0, 0.002)
	}
	plate.around = air{lossWM2K: 10, airC: 25, emits: 0.8, radiantC: 25}
	cycle := heated + 300 + until(plate, 37)
	for _, c := range []struct {
		name           string
		got, want, tol float64
		kind           string
	}{
		{"5.1: time constant, s", tau, 1, 0.003, "published"},
		{"5.2: settles at, C", settled.tempC[0], 218.7, 0.2, "book value from memory; the notebook prints 217.7"},
		{"5.2: to 217.7 C, s", near, 4.98, 0.03, "published"},
		{"5.3: to 150 C, s", heated, 123.07, 0.3, "published"},
		{"5.3: whole cycle, s", cycle, 987, 3, "published"},
	} {
		if !(math.Abs(c.got-c.want) <= c.tol) {
			t.Errorf("ex. %s: %.4g; %g ± %g is wanted (%s)", c.name, c.got, c.want, c.tol, c.kind)
		}
	}
}

// TestTextbookStep: Holman 5th ed. ex. 4.2 [40] (inputs published, 118.5 C from memory): a half-space
// of 35 C whose surface steps to 250 C, a 1.4e-5, after 30 s at 25 mm. In closed form and by the
// solver, whose first cell an endless heat transfer pins.
func TestTextbookStep(t *testing.T) {
	closed := 250 + (35-250)*math.Erf(0.025/(2*math.Sqrt(1.4e-5*30)))
	if math.Abs(closed-118.5) > 0.1 {
		t.Errorf("closed form: %.2f C; 118.5", closed)
	}
	const dx = 0.3 / 600
	h := newHeating([]layer{{thicknessM: 0.3, conductivity: 45, heatCapacity: 45 / 1.4e-5, startC: 35, cells: 600}},
		air{lossWM2K: 1e12, airC: 250})
	for range 1500 {
		h.step(0, 0.02)
	}
	if got := h.tempC[50]; math.Abs(got-118.5) > 0.2 { // 50 cells of 0.5 mm below the pinned one
		t.Errorf("solver, %g m below the pinned cell: %.2f C; 118.5", 50*dx, got)
	}
}

// TestFilmOnBaseAtFirst: the closed form of a film on a base begins as a film alone, q t/C (derived).
func TestFilmOnBaseAtFirst(t *testing.T) {
	const q, C, e, s = 25e3, 162.5, 160.4, 1e-6
	z := e / C * math.Sqrt(s)
	closed := 2*q/e*math.Sqrt(s/math.Pi) - q*C/(e*e)*(1-math.Exp(z*z)*math.Erfc(z))
	if got := closed / (q * s / C); math.Abs(got-1) > 0.002 {
		t.Errorf("%g of q t/C; 1 ± 0.002", got)
	}
}

// TestLongStepsAreStable: a thin lump under 10 kW/m2 settles where it loses as much, by steps many
// times as long as its own time (derived).
func TestLongStepsAreStable(t *testing.T) {
	for _, around := range []air{{lossWM2K: 200, airC: 25}, {emits: 0.9, radiantC: 25}, shop} {
		h := lump(0.5, 25, around)
		for range 200 {
			h.step(10e3, 1)
		}
		if lost, _ := around.lost(h.tempC[0]); !(math.Abs(lost-10e3) < 1) {
			t.Errorf("%+v: settles at %g C, where it loses %g W/m2 of 10000", around, h.tempC[0], lost)
		}
	}
}
