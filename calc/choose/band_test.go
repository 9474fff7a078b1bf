package choose

import (
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"slices"
	"testing"

	"bladecard/calc/file"
	"bladecard/calc/fit"
	"bladecard/calc/ink"
	"bladecard/calc/job"
)

// world is a shop as it may truly be: what the model does not know, drawn from what is stated of each. The
// figures stand here anew, so that a band that rests on others does not hold nine of ten.
type world struct {
	rnd                             *rand.Rand
	shop, perDeg, perShoreA, hit, q float64
	mesh, blade                     map[string]float64
	stencil, edge                   float64
}

func newWorld(rnd *rand.Rand) *world {
	const all, mesh, day = 0.35 / 1.6449, 0.10, 0.08
	return &world{
		rnd: rnd, shop: math.Sqrt(all*all-mesh*mesh-day*day) * rnd.NormFloat64(),
		perDeg: 0.00305 * rnd.NormFloat64(), perShoreA: 0.004 * rnd.NormFloat64(), hit: 0.20 * rnd.NormFloat64(), q: 0.1 + 0.7*rnd.Float64(),
		mesh: map[string]float64{}, blade: map[string]float64{}, stencil: 1 + 0.5*rnd.NormFloat64(), edge: 1 + 0.5*rnd.NormFloat64(),
	}
}

// own is what a mesh or a blade has of its own, the same each time.
func (w *world) own(of map[string]float64, name string, spread float64) float64 {
	if _, known := of[name]; !known {
		of[name] = spread * w.rnd.NormFloat64()
	}
	return of[name]
}

// row is the film of wet strokes and hits over that of one.
func (w *world) row(t trial) float64 {
	sum, term := 0.0, 1.0
	for range t.strokes {
		sum += term
		term *= w.q
	}
	return sum * (1 + float64(t.hits-1)*math.Exp(w.hit))
}

// film is what a setup truly lays on an average day, on the logarithm: the model's film of one stroke, and
// all that it does not know.
func (w *world) film(g given, t trial) float64 {
	return math.Log(t.onceUM*w.row(t)) + w.shop + w.own(w.mesh, g.meshName, 0.10) +
		w.perDeg*(t.angleDeg-15) + w.perShoreA*(t.stock.Hardness[0]-70)
}

// change is what a change truly brings, on the logarithm.
func (w *world) change(c chooser, t, n trial, ch change) float64 {
	model := math.Log(n.curedUM / t.curedUM)
	d := w.film(ch.chooser.given, n) - w.film(c.given, t)
	switch {
	case ch.kind == "eom":
		return d + (w.stencil-1)*model
	case t.stock.Edge != n.stock.Edge:
		return d + (w.edge-1)*model
	case ch.kind == "blade":
		return d + w.own(w.blade, n.stock.Name, 0.01)
	}
	return d
}

// counts is how often what was drawn lay inside its band, by what it was.
type counts map[string][2]int

func (c counts) add(name string, inside bool) {
	n := c[name]
	if n[1]++; inside {
		n[0]++
	}
	c[name] = n
}

// check wants 87 to 93 % of each.
func (c counts) check(t *testing.T) {
	t.Helper()
	var names []string
	for name := range c {
		names = append(names, name)
	}
	slices.Sort(names)
	for _, name := range names {
		share := 100 * float64(c[name][0]) / float64(c[name][1])
		t.Logf("%-32s %5.1f %% of %d", name, share, c[name][1])
		if share < 87 || share > 93 {
			t.Errorf("%s: %.1f %% lie inside; 87 to 93 %% are wanted", name, share)
		}
	}
}

// floor is the built-in shop with a rack whose blades are also used and worn, and screens on all its meshes.
type floor struct {
	rack    rack
	meshes  int
	screens [][]given // of a stencil and a feature, on each mesh
}

func newFloor(t *testing.T) floor {
	t.Helper()
	shop := file.BuiltInShop()
	for _, edge := range []string{"used", "worn"} {
		b := shop.Blades[2]
		b.Name, b.Edge = edge+" "+b.Layup, edge
		shop.Blades = append(shop.Blades, b)
	}
	f, known := floor{meshes: len(shop.Meshes)}, bends{}
	var err error
	if f.rack, err = newRack(shop.Blades); err != nil {
		t.Fatal(err)
	}
	ink := shop.Inks[slices.IndexFunc(shop.Inks, func(i job.Ink) bool { return i.Name == "plastisol" })]
	for _, mm := range []float64{1, 5, 50} {
		for _, um := range []float64{5, 10, 15, 20} {
			var on []given
			for _, m := range shop.Meshes {
				of := maker{work: work{Planner: &Planner{bends: known}, press: pressOf(&job.Job{}, shop)}, screen: job.Screen{Ink: &ink, FeatureMM: mm, EOM: &job.EOM{UM: um}}}
				on = append(on, of.given(m, demand{hitsMost: 3, limitDeg: 45}))
			}
			f.screens = append(f.screens, on)
		}
	}
	return f
}

// draw is a setup on one of the shop's meshes from first to last, with the meshes beside it.
func (f floor) draw(t *testing.T, rnd *rand.Rand, first, last int) (chooser, trial, []given) {
	t.Helper()
	for {
		on, i := f.screens[rnd.IntN(len(f.screens))], first+rnd.IntN(last-first)
		c := chooser{given: on[i], rack: f.rack}
		s := setup{stock: f.rack.stocks[rnd.IntN(len(f.rack.stocks))], angleDeg: 10 + 5*float64(rnd.IntN(5)), strokes: 1 + rnd.IntN(3), hits: 1 + rnd.IntN(2)}
		tr := c.look(s)
		if tr.fault == "" {
			return c, tr, nextMeshes(on[i], slices.Delete(slices.Clone(on), i, i+1))
		}
	}
}

// effects counts the effects of all changes of a setup in one world. An effect whose sign is sure is drawn
// again where it has the other one.
func (c chooser) effects(t *testing.T, got counts, before string, w func() *world, tr trial, others []given) {
	t.Helper()
	for _, ch := range c.changes(tr, others) {
		n := ch.chooser.look(ch.setup)
		if n.fault != "" || n.curedUM == tr.curedUM {
			continue
		}
		out := c.correction(tr, n, ch)
		d := w().change(c, tr, n, ch)
		for try := 0; ch.kind != "blade" && d*out.DeltaUM < 0; try++ {
			if try > 1000 {
				t.Fatalf("%s %s never has its sign", ch.kind, ch.to)
			}
			d = w().change(c, tr, n, ch)
		}
		um := tr.curedUM * math.Expm1(d)
		got.add(before+ch.kind, um >= out.DeltaBandUM.Low && um <= out.DeltaBandUM.High)
	}
}

// TestBandsHoldNineOfTen: of films, of effects of changes and of weighed prints, over all that is not known of a
// shop that has not measured, 87 to 93 % lie inside the bands that are printed.
func TestBandsHoldNineOfTen(t *testing.T) {
	rnd := rand.New(rand.NewPCG(9, 2))
	f := newFloor(t)
	got := counts{}
	for range 400 {
		c, tr, others := f.draw(t, rnd, 0, f.meshes)
		band := c.given.band(tr)
		for range 20 {
			w := newWorld(rnd)
			w.perDeg, w.perShoreA = 0, 0 // what they bring is inside the band of a film
			um := math.Exp(w.film(c.given, tr) + 0.08*rnd.NormFloat64())
			got.add(fmt.Sprintf("film, %d strokes, %d hits", tr.strokes, tr.hits), um >= band.Low && um <= band.High)
			// Cloth takes 10 to 15 um in, nine of ten: what a print weighs is the film and that.
			laid, all := laidBand(band, ink.Sinks{LowUM: 10, HighUM: 15}), um+12.5+2.5/1.6449*rnd.NormFloat64()
			got.add("weighed print", all >= laid.Low && all <= laid.High)
		}
		for range 10 {
			c.effects(t, got, "effect: ", func() *world { return newWorld(rnd) }, tr, others)
		}
	}
	got.check(t)
}

// TestLearnedBandsHoldNineOfTen: the same for shops that have filled in a log, through the fit and what the shop
// file keeps of it, for prints on a new day. 600 shops have each log, and 1,500 with BLADECARD_FULL.
func TestLearnedBandsHoldNineOfTen(t *testing.T) {
	f := newFloor(t)
	shops := 600
	if os.Getenv("BLADECARD_FULL") != "" {
		shops = 1500
	}
	for i, c := range []struct{ rows, days int }{{24, 4}, {12, 3}, {16, 1}} {
		rnd := rand.New(rand.NewPCG(9, 6+uint64(i)))
		got, refused := counts{}, 0
		log := fmt.Sprintf("%d rows on %d days: ", c.rows, c.days)
		draw := func() (chooser, trial, []given) { return f.draw(t, rnd, 2, 6) } // four of the meshes are measured
		for range shops {
			w := newWorld(rnd)
			cal, err := w.calibrate(draw, c.rows, c.days)
			if err != nil {
				refused++ // a log that is refused gives no band
				continue
			}
			c, bare, others := draw()
			um := math.Exp(w.film(c.given, bare) + w.print())
			c.given.learned = cal
			for i := range others {
				others[i].learned = cal
			}
			tr := c.judge(bare.setup)
			band := c.given.band(tr)
			got.add(log+"film", um >= band.Low && um <= band.High)
			c.learnedEffects(t, got, log, w, tr, bare, others)
		}
		t.Logf("%s%d logs refused", log, refused)
		got.check(t)
	}
}

// print is what a print on a day of its own is off, measured.
func (w *world) print() float64 { return 0.08*w.rnd.NormFloat64() + 0.10*w.rnd.NormFloat64() }

// calibrate fills in a log of the world's prints and keeps what a fit says of it.
func (w *world) calibrate(draw func() (chooser, trial, []given), rows, days int) (*learned, error) {
	day := make([]float64, days)
	for i := range day {
		day[i] = 0.08 * w.rnd.NormFloat64()
	}
	var log []fit.Print
	for i := range rows {
		c, tr, _ := draw()
		for tr.hits > 1 { // a log has no hits
			c, tr, _ = draw()
		}
		log = append(log, fit.Print{
			Mesh: c.given.meshName, Blade: tr.stock.Name, Day: fmt.Sprint(i % days), AngleDeg: tr.angleDeg, HardnessShoreA: tr.stock.Hardness[0],
			Strokes: tr.strokes, PredictedUM: tr.curedUM, MeasuredUM: math.Exp(w.film(c.given, tr) + day[i%days] + 0.10*w.rnd.NormFloat64()),
		})
	}
	res, err := fit.Shop(log, fit.Expected())
	if err != nil {
		return nil, err
	}
	return learn(CalibrationOf(res, job.Date{}), job.Date{}), nil
}

// learnedEffects counts the effects of the changes that a fit tells something of, of a setup with what was learned
// (tr) and without (bare).
func (c chooser) learnedEffects(t *testing.T, got counts, log string, w *world, tr, bare trial, others []given) {
	t.Helper()
	plain := c
	plain.given.learned = nil
	for _, ch := range c.changes(tr, others) {
		if ch.kind != "angle" && ch.kind != "strokes" && ch.kind != "mesh" {
			continue
		}
		n := ch.chooser.look(ch.setup)
		if n.fault != "" {
			continue
		}
		out := c.correction(tr, n, ch)
		ch.chooser.given.learned = nil
		truly := ch.chooser.look(ch.setup)
		um := tr.curedUM * math.Expm1(w.change(plain, bare, truly, ch))
		got.add(log+ch.kind, um >= out.DeltaBandUM.Low && um <= out.DeltaBandUM.High)
	}
}
