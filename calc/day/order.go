package day

import (
	"cmp"
	"math"
	"math/bits"
	"slices"

	"bladecard/calc/plan"
)

// ChangesOf is what is changed on a press from one job to the next, beside the screens.
type ChangesOf struct {
	Blades int `json:"blades"` // heads that get another blade
	Inks   int `json:"inks"`   // heads whose blade has to be washed for another ink
	Flash  int `json:"flash"`  // heads that a flash unit is moved to
	Dryer  int `json:"dryer"`  // 1: no setting of the dryer does for both
}

func (c ChangesOf) sum() int { return c.Blades + c.Inks + c.Flash + c.Dryer }

// run is what one location puts on the heads of the press.
type run struct {
	blades map[int]string
	inks   map[int]string
	flash  map[int]bool // a flash unit stands behind the print of this screen
	cures  []cure
}

// cure is what an ink asks of a dryer.
type cure struct {
	dryer string
	film  Range // temperature that the film must reach, C
	belt  Range // m/min
}

// Range is a low and a high end, in the unit that its name tells.
type Range struct {
	Low  float64 `json:"low"`
	High float64 `json:"high"`
}

// with is what two ranges have in common; empty where Low is above High.
func (r Range) with(o Range) Range { return Range{math.Max(r.Low, o.Low), math.Min(r.High, o.High)} }

func (r Range) empty() bool { return r.Low > r.High }

func runOf(l plan.Location) run {
	r := run{blades: map[int]string{}, inks: map[int]string{}, flash: map[int]bool{}}
	for _, s := range l.Screens {
		for _, head := range headsOf(s) {
			r.blades[head], r.inks[head] = s.Blade.Name, s.Ink+" "+s.Color
			if s.Flash.Needed {
				r.flash[head] = true
			}
		}
		if c, ok := cureOf(s); ok && !slices.Contains(r.cures, c) {
			r.cures = append(r.cures, c)
		}
	}
	return r
}

func headsOf(s plan.Screen) []int {
	if len(s.Heads) > 0 {
		return s.Heads
	}
	return []int{s.Head}
}

func cureOf(s plan.Screen) (cure, bool) {
	c := s.Cure
	if c.Dryer == "" || c.BeltMPerMin == nil || c.TemperatureC == nil {
		return cure{}, false
	}
	return cure{c.Dryer, Range(*c.TemperatureC), Range(*c.BeltMPerMin)}, true
}

// between counts what is changed from the last location of one job to the first of the next.
func between(a, b Job) ChangesOf {
	if len(a.runs) == 0 || len(b.runs) == 0 {
		return ChangesOf{}
	}
	from, to := a.runs[len(a.runs)-1], b.runs[0]
	var c ChangesOf
	for head, blade := range to.blades {
		if from.blades[head] != blade {
			c.Blades++
		} else if from.inks[head] != to.inks[head] {
			c.Inks++
		}
	}
	for head := range to.flash {
		if !from.flash[head] {
			c.Flash++
		}
	}
	if !oneSetting(append(slices.Clone(from.cures), to.cures...)) {
		c.Dryer = 1
	}
	return c
}

// oneSetting tells whether each dryer has a setting that does for all.
func oneSetting(cures []cure) bool {
	for i, a := range cures {
		for _, b := range cures[:i] {
			if a.dryer == b.dryer && (a.film.with(b.film).empty() || a.belt.with(b.belt).empty()) {
				return false
			}
		}
	}
	return true
}

// cools is 1 where a dryer has to come down from one job to the next, else 0.
func cools(a, b Job) int {
	if len(a.runs) == 0 || len(b.runs) == 0 {
		return 0
	}
	for _, from := range a.runs[len(a.runs)-1].cures {
		for _, to := range b.runs[0].cures {
			if from.dryer == to.dryer && to.film.High < from.film.Low {
				return 1
			}
		}
	}
	return 0
}

// changes counts them all in an order.
func changes(jobs []Job) int {
	n := 0
	for i := 1; i < len(jobs); i++ {
		n += between(jobs[i-1], jobs[i]).sum()
	}
	return n
}

// mostStarts is from how many first jobs a longer order is begun.
const mostStarts = 6

// mostExact is up to how many jobs every order is weighed.
const mostExact = 12

// inOrder is the jobs of a press in the order with the fewest changes: of all orders up to mostExact jobs, beyond
// that of those that moving and turning a part of the order leads to. Of orders with as few, the one that waits least
// for a dryer, which heats faster than it cools; then the one that begins with what is due first, or given first.
func inOrder(jobs []Job) []Job {
	jobs = sorted(slices.Clone(jobs), by(func(j Job) string { return cmp.Or(j.Due, "no date: last") }))
	cost := make([][]int, len(jobs))
	for i, a := range jobs {
		cost[i] = make([]int, len(jobs))
		for k, b := range jobs {
			if i != k {
				c := between(a, b)
				cost[i][k] = 2*len(jobs)*c.sum() + c.Dryer + cools(a, b)
			}
		}
	}
	order := exact(cost)
	if len(jobs) > mostExact {
		order = improved(cost)
	}
	out := make([]Job, len(jobs))
	for i, k := range order {
		out[i] = jobs[k]
	}
	return out
}

// exact weighs every order, a set of jobs and its first one at a time (Held and Karp 1962). Of orders that cost the
// same it is the one whose jobs come first in the list.
func exact(cost [][]int) []int {
	n := len(cost)
	if n == 0 || n > mostExact {
		return nil
	}
	const far = math.MaxInt / 2
	least, then := make([][]int, 1<<n), make([][]int, 1<<n)
	for set := range least {
		least[set], then[set] = make([]int, n), make([]int, n)
		for first := range n {
			least[set][first] = far
			if set == 1<<first {
				least[set][first] = 0
			}
			if set&(1<<first) == 0 || bits.OnesCount(uint(set)) < 2 {
				continue
			}
			rest := set &^ (1 << first)
			for next := range n {
				if rest&(1<<next) == 0 {
					continue
				}
				if c := cost[first][next] + least[rest][next]; c < least[set][first] {
					least[set][first], then[set][first] = c, next
				}
			}
		}
	}
	set, at := 1<<n-1, 0
	for k := range n {
		if least[set][k] < least[set][at] {
			at = k
		}
	}
	out := make([]int, n)
	for i := range out {
		out[i] = at
		set, at = set&^(1<<at), then[set][at]
	}
	return out
}

// improved starts from the given order and from the nearest next job after each first one, moves and turns parts
// of it while that saves changes, and keeps the best.
func improved(cost [][]int) []int {
	n := len(cost)
	given := make([]int, n)
	for i := range given {
		given[i] = i
	}
	best := polished(cost, given)
	for first := range min(n, mostStarts) {
		if o := polished(cost, nearest(cost, first)); length(cost, o) < length(cost, best) {
			best = o
		}
	}
	return best
}

// nearest takes the job with the fewest changes next, from a first one.
func nearest(cost [][]int, first int) []int {
	out, used := []int{first}, map[int]bool{first: true}
	for len(out) < len(cost) {
		at, next := out[len(out)-1], -1
		for k := range cost {
			if !used[k] && (next < 0 || cost[at][k] < cost[at][next]) {
				next = k
			}
		}
		out, used[next] = append(out, next), true
	}
	return out
}

// polished takes parts of an order out and puts them elsewhere, as they are or turned round, until that saves nothing.
func polished(cost [][]int, order []int) []int {
	best, least := slices.Clone(order), length(cost, order)
	for again := true; again; {
		again = false
		for from := range best {
			for to := from + 1; to <= min(len(best), from+8); to++ {
				part := best[from:to]
				rest := slices.Concat(best[:from], best[to:])
				turned := slices.Clone(part)
				slices.Reverse(turned)
				for at := 0; at <= len(rest); at++ {
					for _, p := range [][]int{part, turned} {
						o := slices.Concat(rest[:at], p, rest[at:])
						if l := length(cost, o); l < least {
							best, least, again = o, l, true
						}
					}
					if again {
						break
					}
				}
				if again {
					break
				}
			}
			if again {
				break
			}
		}
	}
	return best
}

func length(cost [][]int, order []int) int {
	n := 0
	for i := 1; i < len(order); i++ {
		n += cost[order[i-1]][order[i]]
	}
	return n
}
