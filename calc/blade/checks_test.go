package blade

import (
	"errors"
	"math"
	"testing"

	"bladecard/calc/internal/checks"
)

// layup is a blade of equal layers, moduli after Gent.
func layup(t interface {
	Helper()
	Fatal(...any)
}, thicknessMM float64, shoreA ...float64) float64 {
	t.Helper()
	var layers []Layer
	for _, s := range shoreA {
		e, err := ModulusGentMPa(s)
		if err != nil {
			t.Fatal(err)
		}
		layers = append(layers, Layer{ThicknessMM: thicknessMM / float64(len(shoreA)), ModulusMPa: e})
	}
	d, err := RigidityNM(layers)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// TestCheckValues holds the figures of hardness, stiffness and bending, each with its kind and
// source.
func TestCheckValues(t *testing.T) {
	ok := checks.Taken(t)
	d70 := layup(t, 9.5, 70)
	edge := func(set, load float64) float64 {
		t.Helper()
		return ok(EdgeAngleDeg(Bend{SetDeg: set, LoadNPerCM: load, FreeHeightMM: 25, RigidityNM: d70, Friction: Friction}))
	}
	at15 := func(d float64) float64 {
		t.Helper()
		return ok(EdgeAngleDeg(Bend{SetDeg: 15, LoadNPerCM: 5, FreeHeightMM: 25, RigidityNM: d, Friction: Friction}))
	}
	const (
		gent   = "Gent 1958 [1], constants from memory"
		second = "own second computation"
	)
	for _, c := range []struct {
		name           string
		got, want, tol float64
		kind, source   string
	}{
		{"E 55, MPa", ok(ModulusGentMPa(55)), 2.97, 0.005, "published formula", gent},
		{"E 60, MPa", ok(ModulusGentMPa(60)), 3.61, 0.005, "published formula", gent},
		{"E 70, MPa", ok(ModulusGentMPa(70)), 5.52, 0.005, "published formula", gent},
		{"E 80, MPa", ok(ModulusGentMPa(80)), 9.35, 0.005, "published formula", gent},
		{"E 90, MPa", ok(ModulusGentMPa(90)), 20.84, 0.005, "published formula", gent},
		{"E 65, MPa, polyurethane about 5 +- 30 %", ok(ModulusGentMPa(65)), 5, 1.5, "published", "a polyurethane maker's data [53]"},
		{"E 50 second relation, MPa (3.425, quoted cut and not rounded)", ok(ModulusRuessMPa(50)), 3.42, 0.006, "published formula", "Ruess, in Qi, Joyce and Boyce 2003 [2]"},
		{"E 70 second relation, MPa", ok(ModulusRuessMPa(70)), 10.11, 0.005, "published formula", "Ruess, in Qi, Joyce and Boyce 2003 [2]"},
		{"D 70, 9.5 mm, N m", d70, 0.526, 0.0005, "derived", second},
		{"D 65/90/65 over D 70", layup(t, 9.5, 65, 90, 65) / d70, 0.912, 0.0005, "derived", second},
		{"D 70/90/70 over D 70", layup(t, 9.5, 70, 90, 70) / d70, 1.103, 0.0005, "derived", second},
		{"edge angle 70, 0 deg, 5 N/cm", edge(0, 5), 6.75, 0.005, "derived", second},
		{"edge angle 70, 15 deg, 5 N/cm", edge(15, 5), 26.78, 0.005, "derived", second},
		{"edge angle 70, 20 deg, 5 N/cm", edge(20, 5), 33.13, 0.005, "derived", second},
		{"edge angle 70, 45 deg, 5 N/cm", edge(45, 5), 62.25, 0.005, "derived", second},
		{"edge angle 70, 15 deg, 2 N/cm", edge(15, 2), 19.09, 0.005, "derived", second},
		{"edge angle 70, 15 deg, 8 N/cm", edge(15, 8), 36.72, 0.005, "derived", second},
		{"edge angle 60 at the workhorse's setting", at15(layup(t, 9.5, 60)), 35, 0.6, "derived", second},
		{"edge angle 65/90/65", at15(layup(t, 9.5, 65, 90, 65)), 28, 0.5, "derived", second},
		{"edge angle 70/90/70", at15(layup(t, 9.5, 70, 90, 70)), 25, 0.5, "derived", second},
		{"edge angle 80", at15(layup(t, 9.5, 80)), 21, 0.5, "derived", second},
	} {
		if !(math.Abs(c.got-c.want) <= c.tol) {
			t.Errorf("%s: got %.5g, want %g +- %g (%s: %s)", c.name, c.got, c.want, c.tol, c.kind, c.source)
		}
	}
}

// TestCoreCountsLittle checks that the core of equal thirds is 1/27 of the section: the gain
// in stiffness over one layer is that share of the gain in modulus.
func TestCoreCountsLittle(t *testing.T) {
	d, err := RigidityNM([]Layer{{3, 5}, {3, 500}, {3, 5}})
	if err != nil {
		t.Fatal(err)
	}
	one, err := RigidityNM([]Layer{{9, 5}})
	if err != nil {
		t.Fatal(err)
	}
	if want := 1 + 99.0/27; math.Abs(d/one-want) > 1e-12 {
		t.Errorf("a core 100 times as stiff: %g times the rigidity, want %g", d/one, want)
	}
}

// TestFolds checks that a blade that folds over is an error with its figures and a way out,
// never a number.
func TestFolds(t *testing.T) {
	b := Bend{SetDeg: 45, LoadNPerCM: 8, FreeHeightMM: 25, RigidityNM: layup(t, 9.5, 60), Friction: Friction}
	v, err := EdgeAngleDeg(b)
	var folds ErrFolds
	if !errors.As(err, &folds) {
		t.Fatalf("got %g, %v", v, err)
	}
	if v != 0 || folds.Bend != b {
		t.Errorf("got %g and %+v", v, folds.Bend)
	}
	const want = "the blade folds over: at 45° and 8 N/cm its edge leans past 80° and lies flat on the mesh (25 mm free height, rigidity 0.343 N m); a harder or thicker blade, less free height, less load or a more upright angle is needed"
	if err.Error() != want {
		t.Errorf("the words are\n%s\nwant\n%s", err, want)
	}
}

// TestBuckling holds the buckling of an upright blade without friction: straight below the
// load, leaning above, at 2.40 D/L^2 where Euler's column [4] has pi^2/4.
func TestBuckling(t *testing.T) {
	const d, l = 0.5, 25.0
	unit := d / (l / 1e3 * l / 1e3) / 100
	upright := func(load float64) float64 {
		t.Helper()
		a, err := EdgeAngleDeg(Bend{LoadNPerCM: load, FreeHeightMM: l, RigidityNM: d})
		if err != nil {
			t.Fatal(err)
		}
		return a
	}
	if a := upright(2.399 * unit); a != 0 {
		t.Errorf("at 2.399 D/L^2 the blade leans %g deg", a)
	}
	if a := upright(2.401 * unit); !(a > 0.5) {
		t.Errorf("at 2.401 D/L^2 the blade leans %g deg", a)
	}
	if r := 2.40 / (math.Pi * math.Pi / 4); !(r > 0.97 && r < 0.98) {
		t.Errorf("2.40 is %g of pi^2/4", r)
	}
}

// TestLoads holds the pressure of air cylinders by hand: 50 mm bore, 5 bar, 2 cylinders press
// 2 x 981.7477 N on a blade of 400 mm.
func TestLoads(t *testing.T) {
	if bar, err := CylinderPressureBar(2*981.7477/40, 50, 2, 400); err != nil || math.Abs(bar-5) > 1e-6 {
		t.Errorf("got %g bar, %v, want 5 (derived, p = load x length / (n pi d^2/4))", bar, err)
	}
	for load, want := range map[float64]LoadClass{0: Light, 2: Light, 3.49: Light, 3.5: Medium, 5: Medium, 6.49: Medium, 6.5: Firm, 8: Firm, 20: Firm} {
		if got, err := ClassOf(load); err != nil || got != want {
			t.Errorf("%g N/cm is %q, %v; want %q", load, got, err, want)
		}
	}
}
