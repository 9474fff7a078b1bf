package film

import (
	"math"
	"testing"

	"bladecard/calc/blade"
	"bladecard/calc/internal/checks"
	"bladecard/calc/mesh"
)

// fataler is what *testing.T and *rapid.T share here.
type fataler interface {
	Helper()
	Fatal(...any)
}

// stock is a blade of equal layers: rigidity, and modulus of the layer that prints.
func stock(t fataler, thicknessMM float64, shoreA ...float64) (rigidityNM, edgeMPa float64) {
	t.Helper()
	var layers []blade.Layer
	for _, s := range shoreA {
		e, err := blade.ModulusGentMPa(s)
		if err != nil {
			t.Fatal(err)
		}
		layers = append(layers, blade.Layer{ThicknessMM: thicknessMM / float64(len(shoreA)), ModulusMPa: e})
	}
	d, err := blade.RigidityNM(layers)
	if err != nil {
		t.Fatal(err)
	}
	return d, layers[0].ModulusMPa
}

func cloth(t fataler, countPerInch, threadUM float64) mesh.Cloth {
	t.Helper()
	c, err := mesh.New(mesh.Spec{CountPerInch: countPerInch, ThreadUM: threadUM})
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// TestCheckValues holds the figures of wedge, filling and edge film, each with its kind and
// source.
func TestCheckValues(t *testing.T) {
	ok := checks.Taken(t)
	d70, e70 := stock(t, 9.5, 70)
	edge := ok(blade.EdgeAngleDeg(blade.Bend{SetDeg: 15, LoadNPerCM: 5, FreeHeightMM: 25, RigidityNM: d70, Friction: blade.Friction}))
	zw := ok(FillDepthUM(95, 90-edge, BeadMM))
	newton := Contact{ModulusMPa: e70, RadiusMM: 0.15, LoadNPerCM: 5, SpeedMPerS: 0.3, Flow: Flow{EtaInfPaS: 5, N: 1}}
	const (
		taylor = "Taylor 1962 [6]"
		second = "own second computation"
	)
	g := func(deg float64) float64 { t.Helper(); return ok(WedgePressureFactor(deg)) }
	for _, c := range []struct {
		name           string
		got, want, tol float64
		kind, source   string
	}{
		{"G 90", g(90), 0.6815, 5e-5, "published formula", taylor},
		{"G 75", g(75), 1.1955, 5e-5, "published formula", taylor},
		{"G 60", g(60), 2.1637, 5e-5, "published formula", taylor},
		{"G 45", g(45), 4.2790, 5e-5, "published formula", taylor},
		{"G 30", g(30), 10.350, 5e-4, "published formula", taylor},
		{"G 15", g(15), 43.17, 5e-3, "published formula", taylor},
		{"fill depth, opening 95 um, reference blade, um", zw, 113.4, 0.05, "derived", second},
		{"fill, fabric 101 and EOM 15 um, flooded", ok(Fill(101+15, zw, Prefill)), 0.877, 0.0005, "derived", second},
		{"edge film, 5 Pa s, 0.3 m/s, 5 N/cm, 70, um", ok(EdgeFilmUM(newton)), 5.19, 0.005, "derived", second},
		{"default ink at 100/s, Pa s", ok(DefaultFlow.ViscosityPaS(100)), 3 + 50/10.0, 1e-12, "from memory", "eta_inf 3, K 50, n 0.5"},
		{"radius new, mm", ok(EdgeRadiusMM("new")), 0.15, 0, "from memory", "customary"},
		{"radius used, mm", ok(EdgeRadiusMM("used")), 0.30, 0, "from memory", "customary"},
		{"radius worn, mm", ok(EdgeRadiusMM("worn")), 0.45, 0, "from memory", "customary"},
		{"constant of the edge film against Moes, %", 100 * (3.10/(2.05*math.Pow(2, 0.6)) - 1), 0, 0.3, "published", "Moes [8]: 2.05 x 2^0.6"},
		{"cured, 100 % solids, um", ok(CuredUM(60, 1)), 60, 0, "published", "plastisol holds no solvent"},
		{"cured, 40 % solids, um", ok(CuredUM(40, 0.4)), 16, 1e-12, "derived", "wet x volume solids"},
		{"wet height 39/cm-55, um", wetHeightUM(39, 55, 0), 61.76, 0.05, "published", "How Much Ink Do You Need?, Screen Printing, April 2000, Fig. 1 [12]"},
		{"wet height 120/cm, F 50, um", wetHeightUM(120, 34, 50), 14.25, 1e-12, "published", "How Much Ink Do You Need?, Fig. 1 [12]"},
		{"three strokes", ok(Strokes(3, 0.4)), 1.56, 1e-12, "derived", "1 + 0.4 + 0.16"},
	} {
		if !(math.Abs(c.got-c.want) <= c.tol) {
			t.Errorf("%s: got %.6g, want %g +- %g (%s: %s)", c.name, c.got, c.want, c.tol, c.kind, c.source)
		}
	}
}

// TestViscosityCancels checks that a Newtonian ink fills alike at any viscosity and speed
// (derived).
func TestViscosityCancels(t *testing.T) {
	s := reference(t, cloth(t, 156, 64), 15, 1)
	var first Deposit
	for i, f := range []struct{ eta, speed float64 }{{1, 0.1}, {1, 0.4}, {5, 0.1}, {5, 0.4}} {
		s.Flow, s.SpeedMPerS = Flow{EtaInfPaS: f.eta, N: 1}, f.speed
		d, err := laid(s)
		if err != nil {
			t.Fatal(err)
		}
		if i == 0 {
			first = d
		} else if d.Fill != first.Fill || d.FillDepthUM != first.FillDepthUM {
			t.Errorf("%g Pa s at %g m/s fills %g, before %g", f.eta, f.speed, d.Fill, first.Fill)
		}
	}
}

// reference is the stroke of the workhorse: 70 Shore A, 9.5 mm, 25 mm free, 15 deg, 5 N/cm,
// new edge, 0.3 m/s, flooded, default ink.
func reference(t fataler, c mesh.Cloth, eomUM, share float64) stroke {
	t.Helper()
	return setup(t, c, eomUM, share, press{set: 15, load: 5, free: 25, thickness: 9.5, edge: 0.15, shore: []float64{70}})
}

// press is what a test turns.
type press struct {
	set, load, free, thickness, edge float64
	shore                            []float64
	dry                              bool // no flood stroke
}

// stroke is one print stroke: the screen, and the edge on it.
type stroke struct {
	Setup
	Contact
}

// laid is the deposit of a stroke; of a blade that floats it has the lift ratio and nothing else.
func laid(s stroke) (Deposit, error) {
	edge, err := EdgeOf(s.Contact, s.EdgeAngleDeg)
	if err != nil {
		return Deposit{LiftRatio: edge.LiftRatio}, err
	}
	return Lay(s.Setup, edge)
}

func setup(t fataler, c mesh.Cloth, eomUM, share float64, p press) stroke {
	t.Helper()
	s, err := bent(t, c, eomUM, share, p)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// bent is the stroke of a press, or the error of its bent blade.
func bent(t fataler, c mesh.Cloth, eomUM, share float64, p press) (stroke, error) {
	t.Helper()
	d, e := stock(t, p.thickness, p.shore...)
	a, err := blade.EdgeAngleDeg(blade.Bend{SetDeg: p.set, LoadNPerCM: p.load, FreeHeightMM: p.free, RigidityNM: d, Friction: blade.Friction})
	return stroke{
		Setup{Cloth: c, EOMUM: eomUM, StencilShare: share, EdgeAngleDeg: a, Flood: !p.dry},
		Contact{ModulusMPa: e, RadiusMM: p.edge, LoadNPerCM: p.load, SpeedMPerS: 0.3, Flow: DefaultFlow},
	}, err
}
