package film

import (
	"errors"
	"testing"

	"bladecard/calc/blade"
	"bladecard/calc/mesh"
)

// constants are the figures from memory that a press does not turn, and the choices between
// relations.
type constants struct {
	friction, edgeMM float64
	flow             Flow
	dry              bool // no flood stroke
	ruess            bool // modulus after Ruess, not Gent
}

// usual are the constants of the package.
var usual = constants{friction: blade.Friction, edgeMM: 0.15, flow: DefaultFlow}

// lays is the deposit of a 9.5 mm blade at 5 N/cm under the constants; ok is false where it
// folds over or floats.
func (k constants) lays(t *testing.T, c mesh.Cloth, share, setDeg float64, shoreA []float64) (um float64, ok bool) {
	t.Helper()
	var layers []blade.Layer
	for _, s := range shoreA {
		modulus := blade.ModulusGentMPa
		if k.ruess {
			modulus = blade.ModulusRuessMPa
		}
		e, err := modulus(s)
		if err != nil {
			t.Fatal(err)
		}
		layers = append(layers, blade.Layer{ThicknessMM: 9.5 / float64(len(shoreA)), ModulusMPa: e})
	}
	d, err := blade.RigidityNM(layers)
	if err != nil {
		t.Fatal(err)
	}
	edge, err := blade.EdgeAngleDeg(blade.Bend{SetDeg: setDeg, LoadNPerCM: 5, FreeHeightMM: 25, RigidityNM: d, Friction: k.friction})
	var folds blade.ErrFolds
	if errors.As(err, &folds) {
		return 0, false
	}
	if err != nil {
		t.Fatal(err)
	}
	dep, err := laid(stroke{
		Setup{Cloth: c, EOMUM: 0.15 * c.FabricUM, StencilShare: share, EdgeAngleDeg: edge, Flood: !k.dry},
		Contact{ModulusMPa: layers[0].ModulusMPa, RadiusMM: k.edgeMM, LoadNPerCM: 5, SpeedMPerS: 0.3, Flow: k.flow},
	})
	var floats ErrFloats
	if errors.As(err, &floats) {
		return 0, false
	}
	if err != nil {
		t.Fatal(err)
	}
	return dep.TotalUM, true
}

// TestBandsOverConstants: the bands of differences hold to half a point when one constant at a
// time goes to the ends of what is plausible: friction 0 to 0.6, half and double the ink's
// body, its index 0.4 to 0.6, a Newtonian ink, a used and a worn edge, no flood stroke, the
// second relation for the modulus. They are overrun at both ends, by up to 0.5 point: on
// coarse cloth by the low friction and the second modulus, on the finest by the worn edge and
// without a flood. With all at once the sizes go further, but no sign changes. Kind: derived.
func TestBandsOverConstants(t *testing.T) {
	cloths := [][2]float64{{110, 80}, {125, 70}, {156, 64}, {196, 55}, {230, 48}, {255, 40}, {280, 40}, {305, 40}, {305, 34}}
	flows := []Flow{DefaultFlow, {1.5, 25, 0.5}, {6, 100, 0.5}, {3, 50, 0.4}, {3, 50, 0.6}, {5, 0, 1}}
	var all []constants
	for _, friction := range []float64{0, 0.3, 0.6} {
		for _, edge := range []float64{0.15, 0.30, 0.45} {
			for _, flow := range flows {
				for bits := range 4 {
					all = append(all, constants{friction, edge, flow, bits&1 != 0, bits&2 != 0})
				}
			}
		}
	}
	changed := func(k constants) int {
		n := 0
		for _, is := range []bool{k.friction != usual.friction, k.edgeMM != usual.edgeMM, k.flow != usual.flow, k.dry, k.ruess} {
			if is {
				n++
			}
		}
		return n
	}
	slack := [...]float64{0, 0.5} // points, by the number of constants changed
	const failsAtMost = 0.06      // of the blades at 45 deg, with all constants at once
	for _, b := range []struct {
		name      string
		set       float64
		shore     []float64
		low, high float64
	}{
		{"70 -> 80", 15, []float64{80}, -9, -2},
		{"70 -> 60", 15, []float64{60}, 2, 13},
		{"70 -> 65/90/65", 15, []float64{65, 90, 65}, 0.5, 2.6},
		{"70 -> 70/90/70", 15, []float64{70, 90, 70}, -1.8, -0.2},
		{"15 -> 45 deg", 45, []float64{70}, 2, 107},
	} {
		compared, failed := 0, 0
		for _, c := range cloths {
			cl := cloth(t, c[0], c[1])
			for _, share := range []float64{0.03, 1} {
				for _, k := range all {
					from, ok := k.lays(t, cl, share, 15, []float64{70})
					if !ok {
						t.Fatalf("the workhorse fails with %+v", k)
					}
					to, ok := k.lays(t, cl, share, b.set, b.shore)
					if !ok {
						failed++
						continue
					}
					compared++
					d := 100 * (to/from - 1)
					if d*b.low <= 0 || d*b.high <= 0 {
						t.Errorf("%s on %v with %+v: %+.2f %%, the sign is wrong", b.name, c, k, d)
					}
					if n := changed(k); n < len(slack) && !(d >= b.low-slack[n] && d <= b.high+slack[n]) {
						t.Errorf("%s on %v with %+v: %+.2f %%, band %+g to %+g %%", b.name, c, k, d, b.low, b.high)
					}
				}
			}
		}
		if float64(failed) > failsAtMost*float64(compared) {
			t.Errorf("%s: %d fold over or float, %d do not", b.name, failed, compared)
		}
	}
}

// TestSpeedMattersLittle: twice the speed or twice the ink's body adds 1 to 4 % here (derived).
// The trade says that a faster stroke lays less: unresolved, so no advice may rest on the sign.
func TestSpeedMattersLittle(t *testing.T) {
	for _, c := range [][2]float64{{110, 80}, {156, 64}, {230, 48}, {305, 40}} {
		s := reference(t, cloth(t, c[0], c[1]), 15, 1)
		fast, thick := s, s
		fast.SpeedMPerS *= 2
		thick.Flow.EtaInfPaS *= 2
		thick.Flow.KPaSn *= 2
		before, err := laid(s)
		if err != nil {
			t.Fatal(err)
		}
		for name, s := range map[string]stroke{"speed": fast, "body": thick} {
			d, err := laid(s)
			if err != nil {
				t.Fatal(err)
			}
			if more := 100 * (d.TotalUM/before.TotalUM - 1); !(more > 1 && more < 4) {
				t.Errorf("%v: twice the %s moves the film by %+.2f %%", c, name, more)
			}
		}
	}
}
