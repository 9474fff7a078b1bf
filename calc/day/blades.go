package day

import (
	"math"
	"slices"
	"strconv"

	"bladecard/calc/job"
	"bladecard/calc/plan"
)

// Blades is how many blades of a stock have to lie ready at once, all presses running and clashes settled.
type Blades struct {
	Blade    string  `json:"blade"`
	LengthMM float64 `json:"length_mm"` // 0: not known, as the rack states no lengths or the job no size
	Wanted   int     `json:"wanted"`
	Count    int     `json:"count"` // of the stock, all lengths
}

// Where is a screen of a job.
type Where struct {
	Press    string `json:"press"`
	Job      string `json:"job"`
	Title    string `json:"title"`
	Location string `json:"location"`
	Screen   int    `json:"screen"`
	Named    bool   `json:"location_named"` // false: the job has but this location, and its file does not name it
}

// whereOf is a screen of a location of a job.
func whereOf(press string, j Job, l plan.Location, s plan.Screen) Where {
	return Where{press, j.Job, j.Title, l.Name, s.Number, len(j.Plan.Locations) > 1 || l.Name != job.Unnamed(0)}
}

// Clash is a stock of blades that is wanted by more screens at once than it has blades, and what settles it.
type Clash struct {
	Blade   string  `json:"blade"`
	Wanted  int     `json:"wanted"`
	Count   int     `json:"count"`
	Screens []Where `json:"screens"`
	Swaps   []Swap  `json:"swaps"`
	Left    int     `json:"left"` // blades that are still short after the swaps: run those presses one after another
}

// Swap is a screen that prints with another blade, with the setup that its plan computed for it.
type Swap struct {
	Where
	Blade        string  `json:"blade"`
	AngleDeg     float64 `json:"angle_deg"`
	Strokes      int     `json:"strokes"`
	Hits         int     `json:"hits"`
	CuredUM      float64 `json:"cured_um"`
	DeltaPercent float64 `json:"delta_percent"`
}

// use is one screen that takes blades: as many as heads print it.
type use struct {
	Where
	run    int // of all runs of its press
	blade  string
	length float64
	heads  int
	others []plan.Equivalent
}

// bench is all that takes blades, and what there is.
type bench struct {
	uses  []*use
	count map[string]int
}

// blades are those to lay out, and the clashes.
func blades(shop *job.Shop, presses []Press) ([]Blades, []Clash) {
	b := bench{count: map[string]int{}}
	for _, x := range shop.Blades {
		b.count[nameOf(x)] += x.Count
	}
	for _, p := range presses {
		run := 0
		for _, j := range p.Jobs {
			for _, l := range j.Plan.Locations {
				for _, s := range l.Screens {
					u := &use{Where: whereOf(p.Name, j, l, s), run: run, blade: s.Blade.Name, length: s.Blade.LengthMM, heads: max(1, len(s.Heads))}
					for _, e := range s.Equivalents {
						if e.Kind == "blade" && (s.MeetsAll || !e.SharesMiss) {
							u.others = append(u.others, e)
						}
					}
					b.uses = append(b.uses, u)
				}
				run++
			}
		}
	}
	clashes := b.clashes() // first: a swapped screen takes its other blade
	return b.layout(), clashes
}

func nameOf(b job.Blade) string {
	if b.Name != "" {
		return b.Name
	}
	return b.Layup
}

// wanted is how many blades that pass a test are in use at once: of each press those of its location that takes the
// most, all presses together.
func (b *bench) wanted(pass func(*use) bool) int {
	total := 0
	for _, press := range b.byPress() {
		most := 0
		for _, uses := range press {
			most = max(most, heads(uses, pass))
		}
		total += most
	}
	return total
}

// byPress is the uses by press, and there by run.
func (b *bench) byPress() [][][]*use {
	var out [][][]*use
	for _, press := range groups(b.uses, func(u *use) string { return u.Press }) {
		out = append(out, groups(press, func(u *use) string { return strconv.Itoa(u.run) }))
	}
	return out
}

func heads(uses []*use, pass func(*use) bool) int {
	n := 0
	for _, u := range uses {
		if pass(u) {
			n += u.heads
		}
	}
	return n
}

// layout is the blades to lie ready, by stock and length.
func (b *bench) layout() []Blades {
	type key struct {
		blade  string
		length float64
	}
	seen := map[key]bool{}
	var out []Blades
	for _, u := range b.uses {
		k := key{u.blade, u.length}
		if seen[k] {
			continue
		}
		seen[k] = true
		out = append(out, Blades{u.blade, u.length, b.wanted(func(o *use) bool { return o.blade == k.blade && o.length == k.length }), b.count[u.blade]})
	}
	return sorted(out, by(func(x Blades) string { return x.Blade }), by(func(x Blades) float64 { return x.LengthMM }))
}

// clashes settles each stock that is short, by the swaps that move the film least.
func (b *bench) clashes() []Clash {
	var out []Clash
	for _, uses := range groups(b.uses, func(u *use) string { return u.blade }) {
		blade := uses[0].blade
		short := func() int { return b.wantedOf(blade) - b.count[blade] }
		if short() <= 0 {
			continue
		}
		c := Clash{Blade: blade, Wanted: b.wantedOf(blade), Count: b.count[blade]}
		for _, press := range b.byPress() {
			for _, u := range slices.Concat(peaks(press, blade)...) {
				if u.blade == blade {
					c.Screens = append(c.Screens, u.Where)
				}
			}
		}
		for short() > 0 {
			swaps := b.cheapest(blade)
			if swaps == nil {
				break
			}
			c.Swaps = append(c.Swaps, swaps...)
		}
		c.Left = max(0, short())
		out = append(out, c)
	}
	return out
}

func (b *bench) wantedOf(blade string) int {
	return b.wanted(func(u *use) bool { return u.blade == blade })
}

// peaks are the runs of a press that take the most of a stock.
func peaks(press [][]*use, blade string) [][]*use {
	is := func(u *use) bool { return u.blade == blade }
	most := 0
	for _, uses := range press {
		most = max(most, heads(uses, is))
	}
	var out [][]*use
	for _, uses := range press {
		if most > 0 && heads(uses, is) == most {
			out = append(out, uses)
		}
	}
	return out
}

// cheapest swaps a blade in each run of one press that takes the most of the stock: on the press where that moves the
// films least. It is nil where no press can.
func (b *bench) cheapest(blade string) []Swap {
	var best []Swap
	least := math.Inf(1)
	for _, press := range b.byPress() {
		swaps, ok := b.swapsOn(peaks(press, blade), blade)
		moved := 0.0
		for _, s := range swaps {
			moved += math.Abs(s.DeltaPercent)
		}
		b.apply(swaps, blade, true)
		if ok && len(swaps) > 0 && moved < least {
			least, best = moved, swaps
		}
	}
	b.apply(best, blade, false)
	return best
}

// swapsOn makes a swap in each of the runs; the next one knows what the one before has taken.
func (b *bench) swapsOn(runs [][]*use, blade string) (swaps []Swap, ok bool) {
	for _, uses := range runs {
		s, found := b.swap(uses, blade)
		if !found {
			return swaps, false
		}
		swaps = append(swaps, s)
		b.apply([]Swap{s}, blade, false)
	}
	return swaps, true
}

// swap is the one in a run that moves the film least, to a stock that has blades left.
func (b *bench) swap(uses []*use, blade string) (best Swap, found bool) {
	for _, u := range uses {
		if u.blade != blade {
			continue
		}
		for _, e := range u.others {
			left := b.count[e.Blade] - b.wantedOf(e.Blade)
			if e.Blade == blade || left < u.heads || found && math.Abs(e.DeltaPercent) >= math.Abs(best.DeltaPercent) {
				continue
			}
			best, found = Swap{u.Where, e.Blade, e.AngleDeg, e.Strokes, e.Hits, e.CuredUM, e.DeltaPercent}, true
		}
	}
	return best, found
}

// apply puts the swapped blades in, or the old one back.
func (b *bench) apply(swaps []Swap, blade string, back bool) {
	for _, s := range swaps {
		for _, u := range b.uses {
			if u.Where == s.Where {
				u.blade = s.Blade
				if back {
					u.blade = blade
				}
			}
		}
	}
}

// swap puts the blades that settle the clashes on the heads of their jobs.
func swap(presses []Press, clashes []Clash) {
	to := map[Where]string{}
	for _, c := range clashes {
		for _, s := range c.Swaps {
			to[s.Where] = s.Blade
		}
	}
	for _, p := range presses {
		for _, j := range p.Jobs {
			for i, l := range j.Plan.Locations {
				for _, s := range l.Screens {
					if blade, is := to[whereOf(p.Name, j, l, s)]; is {
						for _, head := range headsOf(s) {
							j.runs[i].blades[head] = blade
						}
					}
				}
			}
		}
	}
}
