package day

import (
	"cmp"
	"slices"

	"bladecard/calc/job"
	"bladecard/calc/plan"
)

// Day is what a shop has to do for some jobs.
type Day struct {
	Presses   []Press   `json:"presses"`
	Blades    []Blades  `json:"blades"`
	Clashes   []Clash   `json:"clashes"`
	Screens   []Screen  `json:"screens"`
	Inks      []Ink     `json:"inks"`
	Dryers    []Dryer   `json:"dryers"`
	Sharpen   []Sharpen `json:"sharpen"`
	Changes   int       `json:"changes"`       // between jobs, in this order
	FileOrder int       `json:"changes_given"` // in the order in which the jobs were given
}

// Press is the jobs of one press in their order.
type Press struct {
	Name     string  `json:"name"`
	Heads    int     `json:"heads"`
	Jobs     []Job   `json:"jobs"`
	Changes  int     `json:"changes"`
	SetupMin float64 `json:"setup_min"`
	RunMin   float64 `json:"run_min"`
	Untimed  int     `json:"untimed"` // jobs whose time is not known and not in the sums
}

// Job is one job in the order of its press.
type Job struct {
	Plan    *plan.Plan `json:"-"`
	Job     string     `json:"job"`
	Title   string     `json:"title"`
	Due     string     `json:"due,omitempty"`
	Pieces  int        `json:"pieces"`
	Heads   int        `json:"heads_needed"` // of its location that needs the most
	Changes int        `json:"changes"`      // from the job before
	Of      ChangesOf  `json:"changes_of"`
	Time    *TimeOfJob `json:"press_time"` // null: not known
	at      int        // among the plans given
	runs    []run
}

// TimeOfJob is how long a job is on its press, in minutes.
type TimeOfJob struct {
	SetupMin float64 `json:"setup_min"`
	RunMin   float64 `json:"run_min"`
}

// Of is the work of a day with the plans of its jobs, which are all of one shop.
//
// No plan leads to an empty day.
func Of(shop *job.Shop, plans []*plan.Plan) Day {
	d := Day{}
	for _, group := range groups(jobsOf(plans), func(j Job) string { return j.Plan.Press.Name }) {
		d.Presses = append(d.Presses, Press{Name: group[0].Plan.Press.Name, Heads: group[0].Plan.Press.Heads, Jobs: group})
	}
	d.Blades, d.Clashes = blades(shop, d.Presses)
	swap(d.Presses, d.Clashes) // before the order: changes are counted with the blades that are put in
	for k := range d.Presses {
		p := &d.Presses[k]
		d.FileOrder += changes(p.Jobs)
		p.Jobs = inOrder(p.Jobs)
		for i := range p.Jobs {
			j := &p.Jobs[i]
			if i > 0 {
				j.Of = between(p.Jobs[i-1], *j)
				j.Changes = j.Of.sum()
			}
			p.Changes += j.Changes
			if j.Time == nil {
				p.Untimed++
				continue
			}
			p.SetupMin += j.Time.SetupMin
			p.RunMin += j.Time.RunMin
		}
		d.Changes += p.Changes
	}
	d.Screens = screens(d.Presses)
	d.Inks = inks(d.Presses)
	d.Dryers = dryers(d.Presses)
	d.Sharpen = sharpen(shop, d.Presses)
	return d
}

// jobsOf makes a Job of each plan.
func jobsOf(plans []*plan.Plan) []Job {
	var out []Job
	for i, p := range plans {
		j := Job{Plan: p, Job: p.Job, Title: p.Title, Due: p.Due, Pieces: p.Quantity, at: i}
		if t := p.Time; t != nil {
			j.Time = &TimeOfJob{t.SetupMin, t.RunMin}
		}
		for _, l := range p.Locations {
			j.Heads = max(j.Heads, l.HeadsNeeded)
			j.runs = append(j.runs, runOf(l))
		}
		out = append(out, j)
	}
	return out
}

// groups parts a list by a key, in the order in which the keys come up.
func groups[T any](list []T, key func(T) string) [][]T {
	at := map[string]int{}
	var out [][]T
	for _, x := range list {
		k := key(x)
		if _, known := at[k]; !known {
			at[k] = len(out)
			out = append(out, nil)
		}
		out[at[k]] = append(out[at[k]], x)
	}
	return out
}

// sorted is a list in the order of one or more keys.
func sorted[T any](list []T, compare ...func(a, b T) int) []T {
	slices.SortStableFunc(list, func(a, b T) int {
		for _, c := range compare {
			if n := c(a, b); n != 0 {
				return n
			}
		}
		return 0
	})
	return list
}

func by[T any, K cmp.Ordered](key func(T) K) func(a, b T) int {
	return func(a, b T) int { return cmp.Compare(key(a), key(b)) }
}
