package trials_test

import (
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"reflect"
	"strconv"
	"testing"

	"bladecard/calc/choose"
	"bladecard/calc/file"
	"bladecard/calc/film"
	"bladecard/calc/fit"
	"bladecard/calc/trials"
)

// rack is the setups of an invented shop: four meshes, five blades, three angles, one and two strokes.
func rack() []fit.Print {
	var out []fit.Print
	for _, mesh := range []string{"110", "156", "230", "305"} {
		for _, shoreA := range []float64{60, 65, 70, 75, 80} {
			for _, deg := range []float64{10, 20, 30} {
				for strokes := 1; strokes <= 2; strokes++ {
					out = append(out, fit.Print{Mesh: mesh, Blade: fmt.Sprint(shoreA), AngleDeg: deg, HardnessShoreA: shoreA, Strokes: strokes, PredictedUM: 30, MeasuredUM: 30})
				}
			}
		}
	}
	return out
}

// truth is a shop as it really prints, drawn from what is known beforehand.
type truth struct {
	shop, angle, hardness, share float64
	mesh                         map[string]float64
	scatter, day                 float64
}

func newTruth(r *rand.Rand, setups []fit.Print) truth {
	pr := fit.Expected()
	t := truth{
		shop: pr.Shop * r.NormFloat64(), angle: pr.Angle * r.NormFloat64(), hardness: pr.Hardness * r.NormFloat64(),
		share: math.Max(0, math.Min(0.9, fit.NextStroke+pr.NextStroke*r.NormFloat64())), mesh: map[string]float64{}, scatter: pr.Scatter, day: pr.Day,
	}
	for _, s := range setups {
		if _, drawn := t.mesh[s.Mesh]; !drawn {
			t.mesh[s.Mesh] = pr.Mesh * r.NormFloat64()
		}
	}
	return t
}

// mean is the film of a setup on the mean day, and measured what is measured of one print on a day that is off.
func (t truth) mean(tb testing.TB, p fit.Print) float64 {
	tb.Helper()
	ln := t.shop + t.mesh[p.Mesh] + t.angle*(p.AngleDeg-20)/10 + t.hardness*(p.HardnessShoreA-70)/10
	own, err1 := film.Strokes(p.Strokes, t.share)
	taken, err2 := film.Strokes(p.Strokes, fit.NextStroke)
	if err := errors.Join(err1, err2); err != nil {
		tb.Fatal(err)
	}
	return p.PredictedUM * math.Exp(ln) * own / taken
}

// outcome is what simulated shops got from a set of prints.
type outcome struct {
	half float64 // mean over the shops of the root mean square half of the band
	held float64 // share of new prints on new days inside it
}

// meanHalf is the root mean square half of the band over the setups.
func meanHalf(t *testing.T, terms fit.Terms, setups []fit.Print) float64 {
	t.Helper()
	sum := 0.0
	for _, s := range setups {
		known, err := terms.Error(s.Mesh, s.Blade, s.AngleDeg, s.HardnessShoreA, s.Strokes)
		if err != nil {
			t.Fatal(err)
		}
		sum += math.Pow(terms.Half(known, 0, 0), 2)
	}
	return math.Sqrt(sum / float64(len(setups)))
}

func day(p fit.Print) int {
	n, _ := strconv.Atoi(p.Day)
	return n - 1
}

func simulate(t *testing.T, prints, setups []fit.Print, shops int) outcome {
	t.Helper()
	r := rand.New(rand.NewPCG(2026, 11))
	sum, held, all, refused := 0.0, 0, 0, 0
	for range shops {
		tr := newTruth(r, setups)
		days := map[string]float64{}
		var log []fit.Print
		for _, p := range prints {
			if _, known := days[p.Day]; !known {
				days[p.Day] = tr.day * r.NormFloat64()
			}
			p.MeasuredUM = tr.mean(t, p) * math.Exp(days[p.Day]+tr.scatter*r.NormFloat64())
			log = append(log, p)
		}
		res, err := fit.Shop(log, fit.Expected())
		if errors.Is(err, fit.ErrDisagree) {
			refused++
			continue
		}
		if err != nil {
			t.Fatal(err)
		}
		terms := res.Terms
		sum += meanHalf(t, terms, setups)
		for range 20 {
			s := setups[r.IntN(len(setups))]
			got := tr.mean(t, s) * math.Exp(tr.day*r.NormFloat64()+tr.scatter*r.NormFloat64())
			known, err := terms.Error(s.Mesh, s.Blade, s.AngleDeg, s.HardnessShoreA, s.Strokes)
			if err != nil {
				t.Fatal(err)
			}
			own, err1 := film.Strokes(s.Strokes, terms.NextStroke.Value)
			taken, err2 := film.Strokes(s.Strokes, fit.NextStroke)
			if err := errors.Join(err1, err2); err != nil {
				t.Fatal(err)
			}
			want := s.PredictedUM * terms.Factor(s.Mesh, s.AngleDeg, s.HardnessShoreA) * own / taken
			if math.Abs(math.Log(got/want)) <= terms.Half(known, 0, 0) {
				held++
			}
			all++
		}
	}
	if refused > shops/50 {
		t.Errorf("the fit refuses %d of %d logs", refused, shops)
	}
	return outcome{half: sum / float64(shops-refused), held: float64(held) / float64(all)}
}

// sampleShop is the setups of the sample shop.
func sampleShop(t *testing.T) []fit.Print {
	t.Helper()
	const path = "../../samples/shop.toml"
	src, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	shop, errs := file.DecodeShop(path, src)
	if errs != nil {
		t.Fatal(errs)
	}
	p, errs := choose.PatchesOf(shop, "", "")
	if errs != nil {
		t.Fatal(errs)
	}
	return p.Setups
}

// TestPredicted: on 200 shops that follow the plan the band that the fit gives is the predicted one within 15 %, it
// holds nine of ten new prints on new days, and a person's choice of as many prints, each angle in turn on
// one mesh with one blade, leaves a band a quarter wider or more.
func TestPredicted(t *testing.T) {
	for _, c := range []struct {
		name   string
		setups []fit.Print
		days   int
	}{{"made-up rack, one day", rack(), 1}, {"made-up rack, two days", rack(), 2}, {"sample shop", sampleShop(t), 1}} {
		l := trials.Usual()
		l.Days = c.days
		plan, err := trials.Plan(c.setups, fit.Expected(), l, 1)
		if err != nil {
			t.Fatal(err)
		}
		got := simulate(t, plan.Prints, c.setups, 200)
		var byHand []fit.Print
		for i, one := range plan.Prints {
			one.Mesh, one.Blade, one.Day, one.AngleDeg = plan.Prints[0].Mesh, "70", fmt.Sprint(i%c.days+1), []float64{10, 20, 30}[i%3]
			one.HardnessShoreA, one.Strokes = 70, 1
			byHand = append(byHand, one)
		}
		hand := simulate(t, byHand, c.setups, 200)
		t.Logf("%s: %d prints, %.0f min: before x/÷ %.3f, predicted %.3f, fitted %.3f holding %.1f %%; by hand %.3f holding %.1f %%", c.name,
			len(plan.Prints), plan.Minutes, math.Exp(plan.Before.Half), math.Exp(plan.After.Half), math.Exp(got.half), 100*got.held, math.Exp(hand.half), 100*hand.held)
		if ratio := got.half / plan.After.Half; ratio < 0.85 || ratio > 1.15 {
			t.Errorf("%s: the fit's band is %.2f of the predicted one", c.name, ratio)
		}
		if got.held < 0.87 || got.held > 0.93 {
			t.Errorf("%s: %.1f %% of new prints are inside the band", c.name, 100*got.held)
		}
		if hand.half < 1.25*got.half {
			t.Errorf("%s: as many prints on one mesh do as well: %.3f and %.3f", c.name, hand.half, got.half)
		}
		for name, e := range map[string]trials.Effect{"angle": plan.Angle, "hardness": plan.Hardness, "next stroke": plan.NextStroke} {
			if !(e.After < 0.8*e.Before) {
				t.Errorf("%s: the prints do not tell the %s: %+v", c.name, name, e)
			}
		}
	}
}

// TestLimits: a plan keeps to its limits, uses each screen and blade in one go a day, and comes out alike each time.
func TestLimits(t *testing.T) {
	for _, l := range []trials.Limits{
		trials.Usual(),
		{Days: 2, DayMinutes: 60, PrintMinutes: 3, BladeMinutes: 5, MeshMinutes: 10, MostBlades: 2, MostMeshes: 2},
		{Days: 1, DayMinutes: 45, PrintMinutes: 3, BladeMinutes: 2, MeshMinutes: 8, MostBlades: 1, MostMeshes: 1},
	} {
		plan, err := trials.Plan(rack(), fit.Expected(), l, 7)
		if err != nil {
			t.Fatal(err)
		}
		again, err := trials.Plan(rack(), fit.Expected(), l, 7)
		if err != nil || !reflect.DeepEqual(plan, again) {
			t.Errorf("%+v: another plan the second time, %v", l, err)
		}
		blades, meshes := map[string]bool{}, map[string]bool{}
		minutes := make([]float64, l.Days)
		was := fit.Print{}
		groups := map[string]bool{}
		for _, p := range plan.Prints {
			blades[p.Blade], meshes[p.Mesh] = true, true
			d := day(p)
			minutes[d] += l.PrintMinutes
			if p.Day != was.Day || p.Mesh != was.Mesh {
				minutes[d] += l.MeshMinutes
				if key := p.Day + " " + p.Mesh; groups[key] {
					t.Errorf("%+v: mesh %s is put up twice on day %s", l, p.Mesh, p.Day)
				} else {
					groups[key] = true
				}
				minutes[d] += l.BladeMinutes
			} else if p.Blade != was.Blade {
				minutes[d] += l.BladeMinutes
			}
			was = p
		}
		for d, m := range minutes {
			if m > l.DayMinutes || m != plan.Minutes[d] {
				t.Errorf("%+v: day %d takes %g min, %g stated", l, d+1, m, plan.Minutes[d])
			}
		}
		if l.MostBlades > 0 && len(blades) > l.MostBlades || l.MostMeshes > 0 && len(meshes) > l.MostMeshes {
			t.Errorf("%+v: %d blades on %d meshes", l, len(blades), len(meshes))
		}
		if !(plan.After.Half < plan.Before.Half) {
			t.Errorf("%+v: the band goes from %g to %g", l, plan.Before.Half, plan.After.Half)
		}
	}
}

// TestErrors: what cannot be planned is refused, and says what would be accepted.
func TestErrors(t *testing.T) {
	tight := trials.Usual()
	tight.DayMinutes = 20
	if _, err := trials.Plan(rack(), fit.Expected(), tight, 1); !errors.Is(err, trials.ErrNoTime) {
		t.Errorf("20 minutes: %v", err)
	}
	for _, l := range []trials.Limits{{}, {Days: 31, DayMinutes: 60, PrintMinutes: 1}, {Days: 1, DayMinutes: math.NaN(), PrintMinutes: 1}} {
		if _, err := trials.Plan(rack(), fit.Expected(), l, 1); err == nil {
			t.Errorf("%+v is taken", l)
		}
	}
	if _, err := trials.Plan(nil, fit.Expected(), trials.Usual(), 1); err == nil {
		t.Error("no setup is taken")
	}
}
