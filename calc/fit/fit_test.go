package fit

import (
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat/distuv"
)

// TestAgainstGonum: where no penalty acts, the terms are those of gonum's QR least squares to
// 1e-9, weights included.
func TestAgainstGonum(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	free := Priors{Shop: math.Inf(1), Mesh: math.Inf(1), Angle: math.Inf(1), Hardness: math.Inf(1), NextStroke: math.Inf(1), Scatter: 0.1}
	for trial := range 50 {
		f := newFitter(newTruth(r, 1).log(r, 30+trial, 0.1), free)
		if err := f.straighten(); err != nil {
			t.Fatal(err)
		}
		n := len(f.rows)
		x, y := mat.NewDense(n, columns, nil), mat.NewVecDense(n, nil)
		for i := range f.rows {
			row := &f.rows[i]
			row.mesh, row.day = 0, 0 // one mesh and one day: their factors are the shop's
			row.w = 0.2 + r.Float64()
			w := math.Sqrt(row.w)
			_, factors := row.factors()
			for j := range columns {
				x.Set(i, j, w*factors[j])
			}
			y.SetVec(i, w*row.y)
		}
		got, err := solve(f.rows, append(f.priors[:columns:columns], 1), 1)
		if err != nil {
			t.Fatal(err)
		}
		var qr mat.QR
		qr.Factorize(x)
		var want mat.VecDense
		if err := qr.SolveVecTo(&want, false, y); err != nil {
			t.Fatal(err)
		}
		for j := range columns {
			if d := math.Abs(got.term[j] - want.AtVec(j)); d > 1e-9 {
				t.Errorf("trial %d: term %d is %g, gonum has %g", trial, j, got.term[j], want.AtVec(j))
			}
		}
		var xtx, inv mat.Dense
		xtx.Mul(x.T(), x)
		if err := inv.Inverse(&xtx); err != nil {
			t.Fatal(err)
		}
		for j := range columns {
			if d := math.Abs(got.cov[j][j] - inv.At(j, j)); d > 1e-9*inv.At(j, j) {
				t.Errorf("trial %d: variance %d is %g, gonum has %g", trial, j, got.cov[j][j], inv.At(j, j))
			}
		}
	}
}

// TestNinetyTimes against gonum's Student's t.
func TestNinetyTimes(t *testing.T) {
	for _, v := range []float64{2, 2.5, 3, 5, 10, 30, 1000} {
		got, err := NinetyTimes(v)
		want := distuv.StudentsT{Mu: 0, Sigma: 1, Nu: v}.Quantile(0.95)
		if err != nil || math.Abs(got-want) > 0.02 {
			t.Errorf("%g degrees: %g, %v; gonum has %g", v, got, err, want)
		}
	}
	if got, err := NinetyTimes(math.Inf(1)); err != nil || math.Abs(got-1.6448536) > 1e-6 {
		t.Errorf("no end of degrees: %g, %v", got, err)
	}
	for _, v := range []float64{1.9, 0, -1, math.NaN()} {
		if _, err := NinetyTimes(v); err == nil {
			t.Errorf("%g degrees are taken", v)
		}
	}
}

// TestGrossError: one row that is grossly wrong is named and moves no term by its standard error.
func TestGrossError(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for _, wrong := range []float64{25.4, 10, 3, 1 / 3.0, 0.1} {
		log := newTruth(r, 3).log(r, 20, 0.08)
		clean, err := Shop(log, Expected())
		if err != nil {
			t.Fatal(err)
		}
		log[7].MeasuredUM *= wrong
		got, err := Shop(log, Expected())
		if err != nil {
			t.Fatal(err)
		}
		named := false
		for _, o := range got.Outliers {
			named = named || o.Index == 7
		}
		if !named {
			t.Errorf("a film of %g times the true one is not named: %+v", wrong, got.Outliers)
		}
		for _, c := range []struct {
			name string
			a, b Estimate
		}{{"shop", clean.Shop, got.Shop}, {"angle", clean.Angle, got.Angle}, {"hardness", clean.Hardness, got.Hardness}, {"stroke", clean.NextStroke, got.NextStroke}} {
			if math.Abs(c.a.Value-c.b.Value) > c.a.Error {
				t.Errorf("film x %g: %s moves from %g to %g; its error is %g", wrong, c.name, c.a.Value, c.b.Value, c.a.Error)
			}
		}
	}
}

// TestFewAndInconsistent: what cannot be fitted says so; what the prints do not tell stays at its
// prior.
func TestFewAndInconsistent(t *testing.T) {
	p := Print{Mesh: "156-64", Blade: "70", AngleDeg: 15, HardnessShoreA: 70, Strokes: 1, PredictedUM: 40, MeasuredUM: 44}
	for n := range Least {
		if _, err := Shop(make([]Print, n), Expected()); !errors.Is(err, ErrFew) {
			t.Errorf("%d prints: %v", n, err)
		}
	}
	res, err := Shop([]Print{p, p, p, p}, Expected())
	if err != nil {
		t.Fatal(err)
	}
	if res.Angle.Told || res.Hardness.Told || res.NextStroke.Told || !res.Shop.Told {
		t.Errorf("four prints of one setup tell %+v", res)
	}
	if math.Abs(res.Angle.Error-Expected().Angle) > 1e-9 || res.NextStroke.Value != NextStroke {
		t.Errorf("untold terms moved: %+v", res)
	}
	if f := res.Terms.Factor("156-64", 15, 70); !(f > 1.05 && f < 1.1) {
		t.Errorf("factor %g for films 10 %% above", f)
	}
	var halves []Print
	for i := range 12 {
		q := p
		if i%3 == 0 {
			q.MeasuredUM = 400
		}
		halves = append(halves, q)
	}
	if _, err := Shop(halves, Expected()); !errors.Is(err, ErrDisagree) {
		t.Errorf("a third of the rows ten times too thick: %v", err)
	}
	many := []Print{}
	for i := range MostMeshes + 1 {
		q := p
		q.Mesh = fmt.Sprint(i)
		many = append(many, q)
	}
	if _, err := Shop(many, Expected()); err == nil || !strings.Contains(err.Error(), "at most 256") {
		t.Errorf("%d meshes: %v", len(many), err)
	}
	bad := p
	bad.Line, bad.MeasuredUM = 9, math.NaN()
	if _, err := Shop([]Print{p, p, bad}, Expected()); err == nil || !strings.Contains(err.Error(), "line 9") {
		t.Errorf("NaN: %v", err)
	}
}

// TestLeaveOut: the leave-one-out error is that of refitting without each print.
func TestLeaveOut(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 8))
	f := newFitter(newTruth(r, 2).log(r, 15, 0.1), Expected())
	if err := f.straighten(); err != nil {
		t.Fatal(err)
	}
	all, err := solve(f.rows, f.priors, 0.01)
	if err != nil {
		t.Fatal(err)
	}
	for i := range f.rows {
		short := (f.rows[i].y - all.of(f.rows[i])) / (1 - all.spread(f.rows[i]))
		f.rows[i].w = 0
		without, err := solve(f.rows, f.priors, 0.01)
		if err != nil {
			t.Fatal(err)
		}
		f.rows[i].w = 1
		if long := f.rows[i].y - without.of(f.rows[i]); math.Abs(short-long) > 1e-9 {
			t.Errorf("print %d: %g by the short way, %g by refitting", i, short, long)
		}
	}
}

// TestHeldOut: of further prints of a shop on another day, about nine in ten fall within ninety times the error
// that its kept terms and the scatter make, at three noise levels.
func TestHeldOut(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 12))
	for _, noise := range []float64{0.05, 0.10, 0.20} {
		held, all := 0, 0
		for range 300 {
			tr := newTruth(r, 4)
			tr.day = Expected().Day * r.NormFloat64()
			res, err := Shop(tr.log(r, 24, noise), Expected())
			for errors.As(err, &WrongUnit{}) { // a shop so far out is drawn again
				tr = newTruth(r, 4)
				res, err = Shop(tr.log(r, 24, noise), Expected())
			}
			if err != nil {
				t.Fatal(err)
			}
			tr.day = Expected().Day * r.NormFloat64() // another day
			k, err := NinetyTimes(math.Max(2, res.Freedom))
			if err != nil {
				t.Fatal(err)
			}
			terms := res.Terms
			for _, p := range tr.log(r, 20, noise) {
				value, _, err := strokes(p.Strokes, terms.NextStroke.Value)
				if err != nil {
					t.Fatal(err)
				}
				off := p.ratio() - value - math.Log(terms.Factor(p.Mesh, p.AngleDeg, p.HardnessShoreA))
				e, err := terms.Error(p.Mesh, p.Blade, p.AngleDeg, p.HardnessShoreA, p.Strokes)
				if err != nil {
					t.Fatal(err)
				}
				sd := math.Hypot(e, math.Hypot(terms.Scatter, terms.Day))
				if all++; math.Abs(off) <= k*sd {
					held++
				}
			}
		}
		share := float64(held) / float64(all)
		t.Logf("noise %g: %.1f %% of %d held-out prints in the band", noise, 100*share, all)
		if share < 0.87 || share > 0.94 {
			t.Errorf("noise %g: the band holds %.1f %% of held-out prints; about 90 are wanted", noise, 100*share)
		}
	}
}

func ExampleShop() {
	var prints []Print
	for i, um := range []float64{44, 46, 43, 47} {
		prints = append(prints, Print{Line: i + 2, Mesh: "156-64", Blade: "70", AngleDeg: 15, HardnessShoreA: 70, Strokes: 1, PredictedUM: 40, MeasuredUM: um})
	}
	r, err := Shop(prints, Expected())
	m := r.Meshes[0]
	fmt.Printf("%.3f ± %.3f, scatter %.1f %%, %v\n", m.Factor, m.Error, 100*r.Scatter, err)
	// Output: 1.104 ± 0.079, scatter 6.1 %, <nil>
}

func ExampleNinetyTimes() {
	k, err := NinetyTimes(10)
	fmt.Printf("%.3f %v\n", k, err)
	// Output: 1.812 <nil>
}

func ExampleExpected() {
	fmt.Printf("%.2f %.2f\n", Expected().Shop, Expected().Mesh)
	// Output: 0.17 0.10
}

// TestWrongUnit: films of a factor that no shop has are named, with the mesh where only one of them has it; a factor
// that a shop may have is fitted.
func TestWrongUnit(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 12))
	log := func(times map[string]float64) []Print {
		var out []Print
		for range 15 {
			for _, mesh := range []string{"110-80", "156-64", "230-48", "305-40", "355-34"} {
				k, other := times[mesh]
				if !other {
					k = times[""]
				}
				out = append(out, Print{Mesh: mesh, Blade: "70", AngleDeg: 15, HardnessShoreA: 70, Strokes: 1, PredictedUM: 40, MeasuredUM: 40 * k * math.Exp(0.05*r.NormFloat64())})
			}
		}
		return out
	}
	for _, c := range []struct {
		name  string
		times map[string]float64
		want  WrongUnit
	}{
		{"mil as um", map[string]float64{"": 1 / 25.4}, WrongUnit{Times: 1 / 25.4}},
		{"um as mil", map[string]float64{"": 25.4}, WrongUnit{Times: 25.4}},
		{"a little too much", map[string]float64{"": 2.7}, WrongUnit{Times: 2.7}},
		{"a little too little", map[string]float64{"": 0.37}, WrongUnit{Times: 0.37}},
		{"one mesh", map[string]float64{"": 1, "305-40": 4}, WrongUnit{Mesh: "305-40", Times: 4}},
		{"a heavy shop", map[string]float64{"": 2.2}, WrongUnit{}},
		{"a light shop", map[string]float64{"": 0.45}, WrongUnit{}},
	} {
		_, err := Shop(log(c.times), Expected())
		var got WrongUnit
		if errors.As(err, &got) != (c.want.Times > 0) || got.Mesh != c.want.Mesh || math.Abs(got.Times-c.want.Times) > 0.1*c.want.Times {
			t.Errorf("%s: %v; %+v is wanted", c.name, err, c.want)
		}
		if c.want.Times == 0 && err != nil {
			t.Errorf("%s: %v", c.name, err)
		}
	}
}

// TestScattered: films that differ from one another without rule tell nothing.
func TestScattered(t *testing.T) {
	var prints []Print
	for i := range 12 {
		prints = append(prints, Print{Mesh: "156-64", Blade: "70", AngleDeg: 15, HardnessShoreA: 70, Strokes: 1, PredictedUM: 40, MeasuredUM: 40 * math.Exp(1.8*float64(i%3-1))})
	}
	if _, err := Shop(prints, Expected()); !errors.Is(err, ErrScattered) {
		t.Errorf("films of 7, 40 and 240 um: %v", err)
	}
}

// TestSpread: a fit tells over which angles, hardnesses and strokes its prints go, and that one of each tells nothing
// of its effect.
func TestSpread(t *testing.T) {
	p := Print{Mesh: "156-64", Blade: "70", AngleDeg: 15, HardnessShoreA: 70, Strokes: 1, PredictedUM: 40, MeasuredUM: 44}
	same, err := Shop([]Print{p, p, p, p}, Expected())
	if err != nil {
		t.Fatal(err)
	}
	if same.Angle.Told || same.Hardness.Told || same.NextStroke.Told {
		t.Errorf("of prints all alike, effects are told: %+v", same)
	}
	if same.AngleDeg != (Spread{15, 15}) || same.ShoreA != (Spread{70, 70}) || same.Strokes != (Spread{1, 1}) {
		t.Errorf("prints all alike go over %v, %v and %v", same.AngleDeg, same.ShoreA, same.Strokes)
	}
	var prints []Print
	for i := range 24 {
		q := p
		q.AngleDeg, q.HardnessShoreA, q.Strokes = 10+5*float64(i%4), 65+5*float64(i/4%3), 1+i%2
		prints = append(prints, q)
	}
	apart, err := Shop(prints, Expected())
	if err != nil {
		t.Fatal(err)
	}
	if apart.AngleDeg != (Spread{10, 25}) || apart.ShoreA != (Spread{65, 75}) || apart.Strokes != (Spread{1, 2}) {
		t.Errorf("the prints go over %v, %v and %v", apart.AngleDeg, apart.ShoreA, apart.Strokes)
	}
}
