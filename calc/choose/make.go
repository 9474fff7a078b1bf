package choose

import (
	"fmt"
	"slices"
	"strings"
	"sync"
	"sync/atomic"

	"bladecard/calc/job"
	"bladecard/calc/plan"
)

// Make computes the Plan of one resolved job on a shop; see Planner.Make.
func Make(j *job.Job, shop *job.Shop) (*plan.Plan, job.Errors) { return NewPlanner(shop).Make(j) }

// Planner makes the plans of jobs on one shop. What it works out of the shop's blades and flashes
// for one job serves the next; the plans are the same as without. It is not for two goroutines
// at once.
type Planner struct {
	shop   *job.Shop
	rack   rack
	broken error // why the rack is none
	flux   map[job.Flash]float64
	others []*Planner // of the same shop, for screens that are planned at the same time
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
	p := &Planner{shop: shop, flux: map[job.Flash]float64{}}
	p.rack, p.broken = newRack(shop.Blades)
	return p
}

// Make computes the Plan of a job that has passed job.Resolve on the planner's shop. What no
// setup can do (every blade folds over or floats, no film is customary) comes back as errors of
// the job, each at its screen; the Plan is then not to be used.
func (pl *Planner) Make(j *job.Job) (*plan.Plan, job.Errors) {
	shop, press := pl.shop, pressOf(j, pl.shop)
	p := &plan.Plan{
		Version: 1, Job: j.Number, Title: j.Title, Customer: j.Customer, Quantity: j.Quantity,
		Shop: shop.Name, Press: plan.Press{
			Name: press.Name, Kind: press.Kind, Heads: press.Heads,
			StrokeMPS: press.StrokeMPerS, LoadNPerCM: press.LoadNPerCM,
		},
		Substrate: substrate(j), Warnings: []plan.Warning{},
	}
	p.Due = j.Due.ISO()
	p.Calibration = calibrated(shop.Calibration, j.Due)
	if err := pl.broken; err != nil {
		return nil, job.Errors{{Pos: job.Pos{File: shop.File}, Key: "blade", Wrong: err.Error(), Accepted: "at least one blade with a count of 1 or more"}}
	}
	var errs job.Errors
	made := pl.screens(j, press)
	for k, l := range j.Locations {
		loc := plan.Location{Name: l.Name, WidthMM: l.WidthMM, HeightMM: l.HeightMM}
		for _, o := range made[k] {
			if o.fail != nil {
				errs = append(errs, *o.fail)
				continue
			}
			loc.Screens = append(loc.Screens, o.screen)
		}
		if len(loc.Screens) == len(l.Screens) {
			m := maker{Planner: pl, job: j, press: press, location: l, screen: l.Screens[0], number: 1}
			if fail := m.finish(&loc); fail != nil {
				errs = append(errs, *fail)
			}
		}
		p.Locations = append(p.Locations, loc)
	}
	if errs != nil {
		return nil, errs
	}
	if fail := pl.cures(j, press, p); fail != nil {
		return nil, job.Errors{*fail}
	}
	p.Mix = mix(p.Locations)
	p.Time = jobTime(p.Locations)
	return p, nil
}

// outcome is the plan of a screen, or why there is none.
type outcome struct {
	screen plan.Screen
	fail   *job.Error
}

// fewScreens is a job that is planned on one core: sharing it out would cost more than it saves.
const fewScreens = 4

// screens plans every screen by itself, location by location.
func (pl *Planner) screens(j *job.Job, press job.Press) [][]outcome {
	var tasks []func(*Planner)
	made := make([][]outcome, len(j.Locations))
	for k, l := range j.Locations {
		made[k] = make([]outcome, len(l.Screens))
		for i, s := range l.Screens {
			tasks = append(tasks, func(by *Planner) {
				m := maker{Planner: by, job: j, press: press, location: l, screen: s, number: i + 1}
				made[k][i].screen, made[k][i].fail = m.make()
			})
		}
	}
	if len(tasks) <= fewScreens || pl.others == nil {
		for _, do := range tasks {
			do(pl)
		}
		return made
	}
	var next atomic.Int64
	work := func(by *Planner) {
		for n := next.Add(1) - 1; n < int64(len(tasks)); n = next.Add(1) - 1 {
			tasks[n](by)
		}
	}
	var all sync.WaitGroup
	for _, by := range pl.others {
		all.Go(func() { work(by) })
	}
	work(pl)
	all.Wait()
	return made
}

// finish works out what depends on all screens of a location: the order on the press and the
// flashes.
func (m maker) finish(loc *plan.Location) *job.Error {
	loc.Warnings = []plan.Warning{}
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

// maker makes the plan of one screen.
type maker struct {
	*Planner
	job      *job.Job
	press    job.Press
	location job.Location
	screen   job.Screen
	number   int
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

func (m maker) make() (plan.Screen, *job.Error) {
	d, err := newDemand(m.screen, m.ground())
	if err != nil {
		return plan.Screen{}, m.fail("use", err.Error(), "figures inside the ranges of the formulas")
	}
	if d.target == (plan.Target{}) {
		return plan.Screen{}, m.fail("film", fmt.Sprintf("ink class %q has no customary film for the use %q", m.screen.Ink.Name, use(m.screen)),
			`film = "30..60 um" in the screen, or a film for the use in the ink class`)
	}
	c, ch, fail := m.choose(d)
	if fail != nil {
		return plan.Screen{}, fail
	}
	sc, err := m.screenPlan(c, ch)
	if err != nil {
		return plan.Screen{}, m.fail("screen", err.Error(), "a setup inside the ranges of the formulas")
	}
	return sc, nil
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

func pressOf(j *job.Job, shop *job.Shop) job.Press {
	press := shop.Presses[0]
	if j.On != nil {
		press = *j.On
	}
	if press.StrokeMPerS == 0 {
		press.StrokeMPerS = strokeSpeedMPerS
	}
	if press.LoadNPerCM == 0 {
		press.LoadNPerCM = workingLoadNPerCM
	}
	return press
}
