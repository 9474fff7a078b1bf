package choose

import (
	"fmt"
	"slices"
	"strings"
	"sync"
	"sync/atomic"

	"bladecard/calc/internal/sure"
	"bladecard/calc/job"
	"bladecard/calc/plan"
)

// Make computes the Plan of one resolved job on a shop; see Planner.Make.
func Make(j *job.Job, shop *job.Shop) (*plan.Plan, job.Errors) { return NewPlanner(shop).Make(j) }

// Planner makes the plans of jobs on one shop. What it works out of the shop's blades and flashes
// for one job serves the next; the plans are the same as without. It is not for two goroutines
// at once.
type Planner struct {
	shop    *job.Shop
	rack    rack
	broken  error // why the rack is none
	bends   bends // kept from job to job
	flux    map[job.Flash]float64
	flashes map[underLamp]flashTime
	others  []*Planner // of the same shop, for screens that are planned at the same time
}

// PlanOn makes plans of jobs on so many cores, screens of one job at the same time; without it, on
// one. The plans are the same.
func (pl *Planner) PlanOn(cores int) {
	pl.others = nil
	for range cores - 1 {
		pl.others = append(pl.others, NewPlanner(pl.shop))
	}
}

// NewPlanner readies a shop, which must have passed file.DecodeShop, for the plans of its jobs.
func NewPlanner(shop *job.Shop) *Planner {
	p := &Planner{shop: shop, bends: bends{}, flux: map[job.Flash]float64{}, flashes: map[underLamp]flashTime{}}
	p.rack, p.broken = newRack(shop.Blades)
	return p
}

// Make computes the Plan of a job that has passed job.Resolve on the planner's shop. What no
// setup can do (every blade folds over or floats, no film is customary) comes back as errors of
// the job, each at its screen; the Plan is then not to be used.
func (pl *Planner) Make(j *job.Job) (*plan.Plan, job.Errors) {
	if err := pl.broken; err != nil {
		return nil, job.Errors{{Pos: job.Pos{File: pl.shop.File}, Key: "blade", Wrong: err.Error(), Accepted: "at least one blade with a count of 1 or more"}}
	}
	w := pl.work(j)
	p := w.head()
	var errs job.Errors
	made := w.screens()
	for k, l := range j.Locations {
		loc := plan.Location{Name: l.Name, WidthMM: l.WidthMM, HeightMM: l.HeightMM, Warnings: []plan.Warning{}}
		for _, o := range made[k] {
			if o.fail != nil {
				errs = append(errs, *o.fail)
				continue
			}
			loc.Screens = append(loc.Screens, o.screen)
		}
		if len(loc.Screens) == len(l.Screens) {
			if fail := w.maker(k, 0).finish(&loc); fail != nil {
				errs = append(errs, *fail)
			}
		}
		p.Locations = append(p.Locations, loc)
	}
	if errs != nil {
		return nil, errs
	}
	if fail := w.cures(p); fail != nil {
		return nil, job.Errors{*fail}
	}
	w.dryerPace(p)
	p.Mix = mix(p.Locations)
	p.Time = jobTime(p.Locations)
	return p, nil
}

// work is a job on the planner's shop.
type work struct {
	*Planner
	job     *job.Job
	press   job.Press
	learned *learned
}

func (pl *Planner) work(j *job.Job) work {
	return work{Planner: pl, job: j, press: pressOf(j, pl.shop), learned: learn(pl.shop.Calibration, j.Due)}
}

// head is what a plan says of the whole job.
func (w work) head() *plan.Plan {
	j, press := w.job, w.press
	return &plan.Plan{
		Version: 1, Job: j.Number, Title: j.Title, Customer: j.Customer, Quantity: j.Quantity, Due: j.Due.ISO(),
		Shop: w.shop.Name, Press: plan.Press{
			Name: press.Name, Kind: press.Kind, Heads: press.Heads, StrokeMPS: press.StrokeMPerS, LoadNPerCM: press.LoadNPerCM,
		},
		Substrate: substrate(j), Calibration: calibrated(w.shop.Calibration, j.Due), Warnings: []plan.Warning{},
	}
}

// outcome is the plan of a screen, or why there is none.
type outcome struct {
	screen plan.Screen
	fail   *job.Error
}

// fewScreens is a job that is planned on one core: sharing it out would cost more than it saves.
const fewScreens = 4

// screens plans every screen by itself, location by location.
func (w work) screens() [][]outcome {
	var tasks []func(*Planner)
	made := make([][]outcome, len(w.job.Locations))
	for k, l := range w.job.Locations {
		made[k] = make([]outcome, len(l.Screens))
		for i := range l.Screens {
			tasks = append(tasks, func(by *Planner) {
				m := w.maker(k, i)
				m.Planner = by
				made[k][i].screen, made[k][i].fail = m.make()
			})
		}
	}
	planners := append([]*Planner{w.Planner}, w.others...)
	if len(tasks) <= fewScreens {
		planners = planners[:1]
	}
	var next atomic.Int64
	var all sync.WaitGroup
	for _, by := range planners {
		all.Go(func() {
			for n := next.Add(1) - 1; n < int64(len(tasks)); n = next.Add(1) - 1 {
				tasks[n](by)
			}
		})
	}
	all.Wait()
	return made
}

// maker makes the plan of one screen.
type maker struct {
	work
	location job.Location
	screen   job.Screen
	number   int // of the screen in its location, from 1
}

// maker is that of a screen, location and screen counted from 0.
func (w work) maker(location, screen int) maker {
	l := w.job.Locations[location]
	return maker{work: w, location: l, screen: l.Screens[screen], number: screen + 1}
}

// finish works out what depends on all screens of a location: the order on the press and the
// flashes.
func (m maker) finish(loc *plan.Location) *job.Error {
	loc.Placement = m.place()
	if fail := m.order(loc); fail != nil {
		return fail
	}
	loc.Base = underAll(loc.Screens)
	if fail := m.heat(loc); fail != nil {
		return fail
	}
	return m.pressTime(loc)
}

// fail is an error of the job at this screen.
func (m maker) fail(key, wrong, accepted string) *job.Error {
	i := slices.IndexFunc(m.job.Locations, func(l job.Location) bool { return l.Name == m.location.Name })
	return &job.Error{
		Pos:   m.screen.KeyPos(key),
		Where: job.ScreenWhere(i, &m.location, m.number-1),
		Key:   key, Wrong: strings.TrimPrefix(wrong, key+": "), Accepted: accepted, // a formula's error begins with its package
	}
}

// try runs a computation; what it refuses is an error of the job at a key of this screen.
func (m maker) try(key, accepted string, compute func()) *job.Error {
	if err := sure.Try(compute); err != nil {
		return m.fail(key, err.Error(), accepted)
	}
	return nil
}

func (m maker) make() (sc plan.Screen, fail *job.Error) {
	var d demand
	if fail = m.try("use", "figures inside the ranges of the formulas", func() { d = newDemand(m.screen, m.ground()) }); fail != nil {
		return sc, fail
	}
	if d.target == (plan.Target{}) {
		return sc, m.fail("film", fmt.Sprintf("ink class %q has no usual film for the use %q", m.screen.Ink.Name, use(m.screen)),
			`film = "30..60 um" in the screen, or a film for the use in the ink class`)
	}
	c, ch, fail := m.choose(d)
	if fail != nil {
		return sc, fail
	}
	fail = m.try("screen", "a setup inside the ranges of the formulas", func() { sc = m.screenPlan(c, ch) })
	return sc, fail
}

func substrate(j *job.Job) plan.Substrate {
	switch {
	case j.Stock != nil:
		return plan.Substrate{Name: j.Stock.Name, Kind: j.Stock.Kind}
	case j.Garment != nil:
		return plan.Substrate{Name: j.Garment.Name, Kind: "garment", Fibre: j.Garment.Fibre, Shade: j.Garment.Shade, Outline: j.Garment.Outline}
	}
	return plan.Substrate{Kind: "garment"}
}

// pressOf is the press that the job means, with its customary speed and load: the one that it names, else the shop's
// first, unless that takes no sheets or nothing else.
func pressOf(j *job.Job, shop *job.Shop) job.Press {
	press, sheets := shop.Presses[0], j.Stock != nil
	if j.On != nil {
		press = *j.On
	}
	if j.Press == "" && !takes(press, sheets) {
		i := slices.IndexFunc(shop.Presses, func(p job.Press) bool { return p.Kind == "flatbed" && sheets })
		if i < 0 {
			i = slices.IndexFunc(shop.Presses, func(p job.Press) bool { return takes(p, sheets) })
		}
		if i >= 0 {
			press = shop.Presses[i]
		}
	}
	if press.StrokeMPerS == 0 {
		press.StrokeMPerS = strokeSpeedMPerS
	}
	if press.LoadNPerCM == 0 {
		press.LoadNPerCM = workingLoadNPerCM
	}
	return press
}
