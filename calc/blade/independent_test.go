package blade

import (
	"errors"
	"math"
	"testing"

	"bladecard/calc/internal/checks"

	"gonum.org/v1/gonum/integrate/quad"
	"pgregory.net/rapid"
)

// TestRigidityByQuadrature integrates E (y - y0)^2 over random layups with gonum.
func TestRigidityByQuadrature(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 5).Draw(t, "layers")
		var layers, turned []Layer
		for range n {
			l := Layer{ThicknessMM: rapid.Float64Range(0.5, 8).Draw(t, "mm"), ModulusMPa: rapid.Float64Range(1, 60).Draw(t, "MPa")}
			layers = append(layers, l)
			turned = append([]Layer{l}, turned...)
		}
		got, err := RigidityNM(layers)
		if err != nil {
			t.Fatal(err)
		}
		sum := func(f func(e, y float64) float64) float64 {
			total, y := 0.0, 0.0
			for _, l := range layers {
				top := y + l.ThicknessMM/1e3
				total += quad.Fixed(func(y float64) float64 { return f(l.ModulusMPa*1e6, y) }, y, top, 8, nil, 0)
				y = top
			}
			return total
		}
		y0 := sum(func(e, y float64) float64 { return e * y }) / sum(func(e, _ float64) float64 { return e })
		want := sum(func(e, y float64) float64 { return e * (y - y0) * (y - y0) }) / 0.75
		if math.Abs(got-want) > 1e-9*want {
			t.Fatalf("got %g N m, by quadrature %g", got, want)
		}
		if back, err := RigidityNM(turned); err != nil || math.Abs(back-got) > 1e-9*got {
			t.Fatalf("turned round: %g N m, %v; %g before", back, err, got)
		}
	})
}

// TestSmallestRoot scans the equation finely from the set angle up and wants its first zero.
func TestSmallestRoot(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := Bend{
			SetDeg:       rapid.Float64Range(0, 60).Draw(t, "set"),
			LoadNPerCM:   rapid.Float64Range(0.1, 20).Draw(t, "load"),
			FreeHeightMM: rapid.Float64Range(10, 50).Draw(t, "free"),
			RigidityNM:   rapid.Float64Range(0.05, 3).Draw(t, "D"),
			Friction:     rapid.Float64Range(0.01, 0.6).Draw(t, "mu"),
		}
		l := b.FreeHeightMM / 1e3
		rest := func(deg float64) float64 { // the bending left over when the edge stands at deg
			th := (deg - b.SetDeg) * math.Pi / 180
			x := b.SetDeg*math.Pi/180 + 5*th/6
			return l*l/(2*b.RigidityNM)*b.LoadNPerCM*100*(math.Sin(x)+b.Friction*math.Cos(x)) - th
		}
		got, err := EdgeAngleDeg(b)
		const step = 0.02
		for deg := b.SetDeg; ; deg += step {
			if deg > FoldDeg {
				if err == nil && got < FoldDeg-step {
					t.Fatalf("no zero below 80 deg, got %g", got)
				}
				return
			}
			if rest(deg) <= 0 {
				if err != nil || got > deg+1e-6 || got < deg-step-1e-6 {
					t.Fatalf("first zero near %g deg, got %g, %v", deg, got, err)
				}
				if r := rest(got); math.Abs(r) > 1e-9 {
					t.Fatalf("%g rad left over at %g deg", r, got)
				}
				return
			}
		}
	})
}

// TestBendingOrders holds the orders that the trade reports (common practice) over random
// blades: more load, more free height, a more leaning holder and a softer rubber all lean the
// edge more, and more load bends a soft blade more than a hard one.
func TestBendingOrders(t *testing.T) {
	order := [][]float64{{80}, {70, 90, 70}, {70}, {65, 90, 65}, {60}} // hard to soft
	compared := 0
	rapid.Check(t, func(t *rapid.T) {
		thickness := rapid.Float64Range(8, 10).Draw(t, "thickness")
		free := rapid.Float64Range(15, 30).Draw(t, "free height")
		set := rapid.Float64Range(10, 30).Draw(t, "set")
		load := rapid.Float64Range(2, 7).Draw(t, "load")
		more := load + rapid.Float64Range(0.2, 1).Draw(t, "more load")
		edge := func(d, set, load, free float64) (float64, bool) {
			a, err := EdgeAngleDeg(Bend{SetDeg: set, LoadNPerCM: load, FreeHeightMM: free, RigidityNM: d, Friction: Friction})
			var folds ErrFolds
			if err != nil && !errors.As(err, &folds) {
				t.Fatal(err)
			}
			return a, err == nil
		}
		last, lastGain := 0.0, 0.0
		for _, shore := range order {
			d := layup(t, thickness, shore...)
			a, ok := edge(d, set, load, free)
			if !ok {
				return // this one and all softer ones fold over
			}
			if !(a > last) {
				t.Fatalf("%v: edge at %g deg, the harder one before at %g", shore, a, last)
			}
			last = a
			loaded, ok := edge(d, set, more, free)
			if !ok {
				return
			}
			if !(loaded-a > lastGain) {
				t.Fatalf("%v: %g N/cm more bends by %g deg, the harder one before by %g", shore, more-load, loaded-a, lastGain)
			}
			lastGain = loaded - a
			if tall, ok := edge(d, set, load, free+1); ok && !(tall > a) {
				t.Fatalf("%v: more free height: %g deg after %g", shore, tall, a)
			}
			if lean, ok := edge(d, set+1, load, free); ok && !(lean > a+1) {
				t.Fatalf("%v: 1 deg more: %g deg after %g", shore, lean, a)
			}
			compared++
		}
	})
	if compared < 200 {
		t.Errorf("only %d blades were compared", compared)
	}
}

// TestRefusals gives every function what it must refuse; the error says what is accepted.
func TestRefusals(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	one := func(_ float64, err error) error { return err }
	class := func(_ LoadClass, err error) error { return err }
	bend := func(change func(*Bend)) error {
		b := Bend{SetDeg: 15, LoadNPerCM: 5, FreeHeightMM: 25, RigidityNM: 0.5, Friction: Friction}
		change(&b)
		return one(EdgeAngleDeg(b))
	}
	if err := bend(func(*Bend) {}); err != nil {
		t.Fatal(err)
	}
	for name, err := range map[string]error{
		"Gent 39":            one(ModulusGentMPa(39)),
		"Gent 100":           one(ModulusGentMPa(100)),
		"Gent NaN":           one(ModulusGentMPa(nan)),
		"Ruess 96":           one(ModulusRuessMPa(96)),
		"Ruess NaN":          one(ModulusRuessMPa(nan)),
		"17 layers":          one(RigidityNM(make([]Layer, 17))),
		"layer without mm":   one(RigidityNM([]Layer{{0, 5}})),
		"layer NaN MPa":      one(RigidityNM([]Layer{{9, nan}})),
		"layer inf mm":       one(RigidityNM([]Layer{{inf, 5}})),
		"set -1":             bend(func(b *Bend) { b.SetDeg = -1 }),
		"set 76":             bend(func(b *Bend) { b.SetDeg = 76 }),
		"set NaN":            bend(func(b *Bend) { b.SetDeg = nan }),
		"load -1":            bend(func(b *Bend) { b.LoadNPerCM = -1 }),
		"load inf":           bend(func(b *Bend) { b.LoadNPerCM = inf }),
		"free 0":             bend(func(b *Bend) { b.FreeHeightMM = 0 }),
		"rigidity 0":         bend(func(b *Bend) { b.RigidityNM = 0 }),
		"rigidity NaN":       bend(func(b *Bend) { b.RigidityNM = nan }),
		"friction 0.7":       bend(func(b *Bend) { b.Friction = 0.7 }),
		"friction NaN":       bend(func(b *Bend) { b.Friction = nan }),
		"class NaN":          class(ClassOf(nan)),
		"load out of reach":  one(CylinderPressureBar(50, 10, 1, 1000)),
		"pressure, load NaN": one(CylinderPressureBar(nan, 50, 2, 400)),
		"pressure, bore 0":   one(CylinderPressureBar(5, 0, 2, 400)),
	} {
		checks.Refused(t, "blade", name, err)
	}
	if _, err := RigidityNM(nil); err == nil {
		t.Error("a blade without layers was taken")
	}
}
