package fit

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"
)

// TestDesignAgainstSolve: after prints were added and taken out again, Sigma is that of the normal
// equations solved anew, and Gain says what Add does, to 1e-9.
func TestDesignAgainstSolve(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 1))
	tr := newTruth(r, 3)
	var targets []Print
	for range 40 {
		targets = append(targets, tr.print(r, 0))
	}
	pr := Expected()
	d, err := NewDesign(targets, []string{"mon", "tue"}, pr)
	if err != nil {
		t.Fatal(err)
	}
	var in []Print
	for i := range 60 {
		if i%3 == 2 {
			k := r.IntN(len(in))
			if err := d.Remove(in[k]); err != nil {
				t.Fatal(err)
			}
			in = append(in[:k], in[k+1:]...)
		} else {
			p := targets[r.IntN(len(targets))]
			p.Day = []string{"mon", "tue"}[i%2]
			before := d.Doubt()
			gain, err := d.Gain(p)
			if err != nil {
				t.Fatal(err)
			}
			if err := d.Add(p); err != nil {
				t.Fatal(err)
			}
			in = append(in, p)
			if got := before - d.Doubt(); math.Abs(got-gain) > 1e-9 {
				t.Fatalf("print %d: the gain is %g, %g was foretold", i, got, gain)
			}
		}
		var rows []entry
		for _, p := range in {
			row, err := d.entry(p)
			if err != nil {
				t.Fatal(err)
			}
			row.w = 1
			rows = append(rows, row)
		}
		priors := []float64{pr.Shop, pr.Angle, pr.Hardness, pr.NextStroke}
		for range d.meshes {
			priors = append(priors, pr.Mesh)
		}
		sol, err := solve(rows, append(priors, pr.Day, pr.Day), square(pr.Scatter))
		if err != nil {
			t.Fatal(err)
		}
		mean := 0.0
		for _, p := range targets {
			at, _ := d.entry(p)
			at.day = 0
			mean += sol.spread(at) / float64(len(targets))
		}
		if want := math.Sqrt(square(pr.Scatter)*mean + square(pr.Day)); math.Abs(d.Sigma()-want) > 1e-9 {
			t.Fatalf("step %d: sigma %g, solved anew %g", i, d.Sigma(), want)
		}
	}
}

// TestDesignErrors: what a plan cannot hold is refused.
func TestDesignErrors(t *testing.T) {
	p := Print{Mesh: "110", AngleDeg: 15, HardnessShoreA: 70, Strokes: 1}
	if _, err := NewDesign(nil, []string{"1"}, Expected()); err == nil {
		t.Error("no target is taken")
	}
	if _, err := NewDesign([]Print{p}, []string{"1"}, Priors{}); err == nil {
		t.Error("priors of 0 are taken")
	}
	d, err := NewDesign([]Print{p}, []string{"1"}, Expected())
	if err != nil {
		t.Fatal(err)
	}
	for _, wrong := range []Print{p, {Mesh: "110", Day: "2", AngleDeg: 15, HardnessShoreA: 70, Strokes: 1}, {Mesh: "111", Day: "1", AngleDeg: 15, HardnessShoreA: 70, Strokes: 1}, {Mesh: "110", Day: "1"}} {
		if _, err := d.Gain(wrong); err == nil {
			t.Errorf("%+v is taken", wrong)
		}
	}
}

// TestForetell: the errors that are foretold are those of a fit whose scatter is the expected one.
func TestForetell(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 9))
	log := newTruth(r, 3).log(r, 24, 0.1)
	pr := Expected()
	pr.ScatterWeight = 1e9 // the scatter stays the expected one
	got, err := Shop(log, pr)
	if err != nil {
		t.Fatal(err)
	}
	foretold, err := Foretell(log, pr)
	if err != nil {
		t.Fatal(err)
	}
	for i, p := range log {
		a, err1 := newDay(got, p)
		b, err2 := newDay(foretold, p)
		// The strokes' term is straight at another share, which moves its slope.
		if err1 != nil || err2 != nil || math.Abs(a/b-1) > 0.05 {
			t.Errorf("print %d: foretold %g, fitted %g (%v, %v)", i, b, a, err1, err2)
		}
	}
	unseen := log[0]
	unseen.Mesh = "another"
	a, _ := newDay(foretold, log[0])
	if b, err := newDay(foretold, unseen); err != nil || b <= a {
		t.Errorf("an unseen mesh is known to %g, a measured one to %g (%v)", b, a, err)
	}
}

// newDay is one sigma of how far the film of a setup may be off on a day that is not among the prints.
func newDay(r Result, p Print) (float64, error) {
	known, err := r.Error(p.Mesh, p.Blade, p.AngleDeg, p.HardnessShoreA, p.Strokes)
	return math.Hypot(math.Hypot(known, r.Scatter), r.Day), err
}

func planned() []Print {
	var out []Print
	for _, mesh := range []string{"110", "156"} {
		for _, deg := range []float64{10, 20, 30} {
			out = append(out, Print{Mesh: mesh, Blade: "70", Day: "1", AngleDeg: deg, HardnessShoreA: 70, Strokes: 1, PredictedUM: 40})
		}
	}
	return out
}

func ExampleForetell() {
	r, err := Foretell(planned(), Expected())
	if err != nil {
		panic(err)
	}
	s, _ := newDay(r, planned()[0])
	fmt.Printf("six prints on one day leave a film open to one sigma of %.1f %%\n", 100*s)
	// Output: six prints on one day leave a film open to one sigma of 15.8 %
}

func ExampleNewDesign() {
	d, err := NewDesign(planned(), []string{"1"}, Expected())
	fmt.Printf("%.3f %v\n", d.Sigma(), err)
	// Output: 0.214 <nil>
}

func ExampleDesign_Sigma() {
	d, _ := NewDesign(planned(), []string{"1"}, Expected())
	fmt.Printf("%.3f", d.Sigma())
	for _, p := range planned() {
		d.Add(p)
		fmt.Printf(" %.3f", d.Sigma())
	}
	// Output: 0.214 0.158 0.150 0.147 0.128 0.123 0.121
}

func ExampleDesign_Doubt() {
	d, _ := NewDesign(planned(), []string{"1"}, Expected())
	fmt.Printf("%.2f", d.Doubt())
	for _, p := range planned() {
		d.Add(p)
	}
	fmt.Printf(" %.2f\n", d.Doubt())
	// Output: 1.00 0.38
}

func ExampleDesign_Gain() {
	d, _ := NewDesign(planned(), []string{"1"}, Expected())
	first, _ := d.Gain(planned()[1])
	d.Add(planned()[1])
	again, _ := d.Gain(planned()[1])
	other, _ := d.Gain(planned()[4])
	fmt.Printf("the first print %.4f, the same again %.4f, one on another mesh %.4f\n", first, again, other)
	// Output: the first print 0.4028, the same again 0.0401, one on another mesh 0.1260
}

func ExampleDesign_Add() {
	d, _ := NewDesign(planned(), []string{"1"}, Expected())
	before := d.Sigma()
	d.Add(planned()[0])
	fmt.Println(d.Sigma() < before)
	// Output: true
}

func ExampleDesign_Remove() {
	d, _ := NewDesign(planned(), []string{"1"}, Expected())
	before := d.Sigma()
	d.Add(planned()[0])
	d.Remove(planned()[0])
	fmt.Printf("%.6f %.6f\n", before, d.Sigma())
	// Output: 0.214237 0.214237
}

func ExampleHalfOfNormal() {
	fmt.Printf("%.4f\n", HalfOfNormal(1))
	// Output: 1.6449
}
