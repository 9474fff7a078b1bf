package day

import (
	"fmt"
	"math"
	"math/rand/v2"
	"reflect"
	"testing"

	"bladecard/calc/job"
	"bladecard/calc/plan"
)

// screen is a screen of a made-up plan on a head.
func screen(head int, ink, color, blade string) plan.Screen {
	return plan.Screen{
		Number: head, Head: head, Heads: []int{head}, Ink: ink, Color: color, Blade: plan.Blade{Name: blade}, Strokes: 1, Hits: 1, MeetsAll: true,
		Mesh: plan.Mesh{Name: "156-64"}, Cure: plan.Cure{Dryer: "tunnel", TemperatureC: &plan.Interval{Low: 150, High: 170}, BeltMPerMin: &plan.Interval{Low: 0.5, High: 0.8}},
	}
}

func planOf(name, press string, screens ...plan.Screen) *plan.Plan {
	return &plan.Plan{
		Job: name, Title: name, Quantity: 100, Press: plan.Press{Name: press, Heads: 8}, Time: &plan.JobTime{SetupMin: 10, RunMin: 20},
		Locations: []plan.Location{{Name: "front", Screens: screens, HeadsNeeded: len(screens)}},
	}
}

// TestOrderAgainstAll: up to seven jobs, the order has as few changes as the best of all orders; beyond mostExact, it
// has no more than 5 % over the exact one of as many, and never more than the given.
func TestOrderAgainstAll(t *testing.T) {
	r := rand.New(rand.NewPCG(14, 11))
	costs := func(n int) [][]int {
		out := make([][]int, n)
		for i := range out {
			out[i] = make([]int, n)
			for k := range out[i] {
				out[i][k] = r.IntN(9)
			}
		}
		return out
	}
	for range 60 {
		n := 2 + r.IntN(6)
		cost := costs(n)
		least := math.MaxInt
		every(n, func(o []int) { least = min(least, length(cost, o)) })
		if got := length(cost, exact(cost)); got != least {
			t.Errorf("%d jobs: %d changes, %d are possible", n, got, least)
		}
	}
	found, possible := 0, 0
	for range 20 {
		cost := costs(mostExact)
		found += length(cost, improved(cost))
		possible += length(cost, exact(cost))
	}
	if float64(found) > 1.25*float64(possible) {
		t.Errorf("moving parts leads to %d changes, %d are possible", found, possible)
	}
	for range 5 {
		cost := costs(40)
		given := make([]int, 40)
		for i := range given {
			given[i] = i
		}
		if o := improved(cost); length(cost, o) > length(cost, given) || len(o) != 40 {
			t.Errorf("40 jobs: %d changes after, %d before", length(cost, o), length(cost, given))
		}
	}
}

// every calls f with every order of n jobs.
func every(n int, f func([]int)) {
	order := make([]int, n)
	for i := range order {
		order[i] = i
	}
	var from func(int)
	from = func(k int) {
		if k == n {
			f(order)
			return
		}
		for i := k; i < n; i++ {
			order[k], order[i] = order[i], order[k]
			from(k + 1)
			order[k], order[i] = order[i], order[k]
		}
	}
	from(0)
}

// TestOrderOfAlike: jobs between which nothing is changed are printed as they are due, then as they are given.
func TestOrderOfAlike(t *testing.T) {
	for _, n := range []int{5, mostExact + 5} {
		var plans []*plan.Plan
		var want []string
		for i := range n {
			p := planOf(fmt.Sprintf("j%02d", i), "auto", screen(1, "plastisol", "white", "70"))
			if i == n-1 {
				p.Due = "2027-05-21"
				want = append([]string{p.Job}, want...)
			} else {
				want = append(want, p.Job)
			}
			plans = append(plans, p)
		}
		var got []string
		for _, j := range Of(&job.Shop{}, plans).Presses[0].Jobs {
			got = append(got, j.Job)
		}
		if !reflect.DeepEqual(got, want) {
			t.Errorf("%v, %v is wanted", got, want)
		}
	}
}

// TestChanges counts by hand what is changed between two jobs.
func TestChanges(t *testing.T) {
	a := planOf("a", "auto", screen(1, "plastisol", "white", "70"), screen(2, "plastisol", "red", "70"))
	b := planOf("b", "auto", screen(1, "plastisol", "white", "70"), screen(2, "plastisol", "blue", "70"), screen(3, "plastisol", "black", "80"))
	b.Locations[0].Screens[0].Flash.Needed = true
	b.Locations[0].Screens[2].Cure.BeltMPerMin = &plan.Interval{Low: 1, High: 1.2}
	jobs := jobsOf([]*plan.Plan{a, b})
	if got, want := between(jobs[0], jobs[1]), (ChangesOf{Blades: 1, Inks: 1, Flash: 1, Dryer: 1}); got != want {
		t.Errorf("%+v, %+v by hand", got, want)
	}
	if got, want := between(jobs[1], jobs[0]), (ChangesOf{Inks: 1, Dryer: 1}); got != want {
		t.Errorf("back: %+v, %+v by hand", got, want)
	}
}

// TestClashes: a stock that two presses want at once is settled by the swap that moves the film least, to a stock that
// has blades left; where none does, what is short is said.
func TestClashes(t *testing.T) {
	shop := &job.Shop{Blades: []job.Blade{{Layup: "70", Count: 1}, {Layup: "65/90/65", Count: 1}, {Layup: "80", Count: 2}}}
	near := plan.Equivalent{Kind: "blade", Blade: "65/90/65", AngleDeg: 20, CuredUM: 31, DeltaPercent: 2}
	far := plan.Equivalent{Kind: "blade", Blade: "80", AngleDeg: 10, CuredUM: 27, DeltaPercent: -6}
	one, two, three := screen(1, "plastisol", "red", "70"), screen(1, "plastisol", "blue", "70"), screen(1, "plastisol", "black", "70")
	one.Equivalents, two.Equivalents = []plan.Equivalent{far}, []plan.Equivalent{near, far}
	d := Of(shop, []*plan.Plan{planOf("a", "auto", one), planOf("b", "manual", two), planOf("c", "auto", three)})
	if len(d.Clashes) != 1 {
		t.Fatalf("%d clashes", len(d.Clashes))
	}
	c := d.Clashes[0]
	if c.Wanted != 2 || c.Count != 1 || c.Left != 0 || len(c.Swaps) != 1 || c.Swaps[0].Job != "b" || c.Swaps[0].Blade != "65/90/65" || len(c.Screens) != 3 {
		t.Errorf("%+v", c)
	}
	two.Equivalents = nil
	// A job that gets the blade of the next one is no change of blades.
	four := screen(1, "plastisol", "black", "80")
	d = Of(shop, []*plan.Plan{planOf("a", "auto", one), planOf("b", "manual", two), planOf("d", "auto", four)})
	if got, want := d.Presses[0].Jobs[1].Of, (ChangesOf{Inks: 1}); len(d.Clashes) != 1 || got != want || d.Changes != 1 || d.FileOrder != 1 {
		t.Errorf("after the swap: %+v, %d of %d changes, %+v", got, d.Changes, d.FileOrder, want)
	}
	d = Of(shop, []*plan.Plan{planOf("a", "auto", one), planOf("b", "manual", two), planOf("c", "auto", three)})
	if c := d.Clashes[0]; c.Left != 1 || len(c.Swaps) != 0 {
		t.Errorf("without an equivalent on every screen: %+v", c)
	}
	if d := Of(shop, []*plan.Plan{planOf("a", "auto", one), planOf("c", "auto", three)}); len(d.Clashes) != 0 {
		t.Errorf("jobs that follow one another clash: %+v", d.Clashes)
	}
}

// TestDryers: settings are joined as long as they have a belt speed in common, with the fewest that do.
func TestDryers(t *testing.T) {
	var plans []*plan.Plan
	for i, x := range [][4]float64{{149, 171, 0.5, 0.8}, {149, 171, 0.7, 1.0}, {149, 171, 0.9, 1.2}, {138, 143, 0.7, 0.9}, {160, 180, 0.75, 0.78}} {
		s := screen(1, "plastisol", "red", "70")
		s.Cure = plan.Cure{Dryer: "tunnel", TemperatureC: &plan.Interval{Low: x[0], High: x[1]}, BeltMPerMin: &plan.Interval{Low: x[2], High: x[3]}}
		plans = append(plans, planOf(fmt.Sprint("j", i), "auto", s))
	}
	d := Of(&job.Shop{}, plans)
	want := []Dryer{
		{"tunnel", Range{138, 143}, Range{0.7, 0.9}, []string{"j3"}, 0},
		{"tunnel", Range{160, 171}, Range{0.75, 0.78}, []string{"j0", "j1", "j4"}, 1},
		{"tunnel", Range{149, 171}, Range{0.9, 1.2}, []string{"j2"}, 4},
	}
	if !reflect.DeepEqual(d.Dryers, want) {
		t.Errorf("%+v, %+v is wanted", d.Dryers, want)
	}
}

// TestCools: of orders with as few changes the one is taken in which the dryer heats up; where the hotter job comes
// first all the same, since that saves a change, its setting does so too.
func TestCools(t *testing.T) {
	at := func(name string, low, high float64) *plan.Plan {
		s := screen(1, "plastisol", "red", "70")
		s.Cure = plan.Cure{Dryer: "tunnel", TemperatureC: &plan.Interval{Low: low, High: high}, BeltMPerMin: &plan.Interval{Low: 1, High: 2}}
		return planOf(name, "auto", s)
	}
	for k := range 4 {
		flash := k%2 == 1
		hot, cool := at("hot", 160, 170), at("cool", 138, 143)
		want := []string{"cool", "hot"}
		if hot.Locations[0].Screens[0].Flash.Needed = flash; flash {
			want = []string{"hot", "cool"}
		}
		given := []*plan.Plan{hot, cool}
		if k >= 2 {
			given = []*plan.Plan{cool, hot}
		}
		d := Of(&job.Shop{}, given)
		var jobs, settings []string
		for i, j := range d.Presses[0].Jobs {
			jobs, settings = append(jobs, j.Job), append(settings, d.Dryers[i].Jobs...)
		}
		if !reflect.DeepEqual(jobs, want) || !reflect.DeepEqual(settings, want) {
			t.Errorf("jobs %v, settings of %v; %v is wanted", jobs, settings, want)
		}
	}
}

// TestSharpen: a stock is due before the day or by its end, from what it has printed and what it will.
func TestSharpen(t *testing.T) {
	shop := &job.Shop{SharpenAfter: 1000, Blades: []job.Blade{{Layup: "70", Count: 4, Prints: 900}, {Layup: "80", Count: 2, Prints: 1200}, {Layup: "60", Count: 1, Prints: 10}}}
	s := screen(1, "plastisol", "red", "70")
	s.Strokes = 2
	d := Of(shop, []*plan.Plan{planOf("a", "auto", s)})
	if len(d.Sharpen) != 2 || d.Sharpen[0] != (Sharpen{"70", 900, 200, 1000, false}) || d.Sharpen[1] != (Sharpen{"80", 1200, 0, 1000, true}) {
		t.Errorf("%+v", d.Sharpen)
	}
}

// TestInks: the sums are those of the jobs, and times add up press by press.
func TestInks(t *testing.T) {
	a, b := planOf("a", "auto", screen(1, "plastisol", "red", "70")), planOf("b", "auto", screen(1, "plastisol", "red", "70"))
	a.Mix, b.Mix = []plan.Mix{{Ink: "plastisol", Color: "red", G: 120, ML: 100}}, []plan.Mix{{Ink: "plastisol", Color: "red", G: 60, ML: 50}, {Ink: "plastisol", Color: "blue", G: 12, ML: 10}}
	b.Time = nil
	d := Of(&job.Shop{}, []*plan.Plan{a, b})
	if len(d.Inks) != 2 || d.Inks[1].G != 180 || d.Inks[1].ML != 150 || len(d.Inks[1].Jobs) != 2 || d.Inks[0].G != 12 {
		t.Errorf("%+v", d.Inks)
	}
	if p := d.Presses[0]; p.SetupMin != 10 || p.RunMin != 20 || p.Untimed != 1 {
		t.Errorf("%+v", p)
	}
	if d := Of(&job.Shop{}, nil); d.Presses != nil || d.Changes != 0 {
		t.Errorf("no plans: %+v", d)
	}
}
