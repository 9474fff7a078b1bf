package choose

import (
	"cmp"
	"slices"

	"bladecard/calc/internal/sure"
	"bladecard/calc/job"
	"bladecard/calc/plan"
	"bladecard/calc/press"
)

// The times of a press where the shop file states none, s, and the image along the stroke where the job states
// no height: a full front (all common practice).
const (
	coolS       = 4.0
	setupS      = 300.0
	fullFrontMM = 355.6
)

var (
	indexS = map[string]float64{"automatic": 2, "manual": 3}
	loadS  = map[string]float64{"automatic": 6, "manual": 20, "flatbed": 10}
)

// pressTime works out how long a location takes on the press. It is not known where a flash has no time.
func (m maker) pressTime(loc *plan.Location) *job.Error {
	p := m.press
	pace := press.Pace{
		Kind: p.Kind, StrokeMPS: p.StrokeMPerS, IndexS: cmp.Or(p.IndexS, indexS[p.Kind]), LoadS: cmp.Or(p.LoadS, loadS[p.Kind]),
		CoolS: cmp.Or(p.CoolS, coolS), SetupS: cmp.Or(p.SetupS, setupS), ImageMM: cmp.Or(loc.HeightMM, fullFrontMM),
		Turns: loc.Turns, SetScreens: len(loc.Screens) + loc.ExtraScreens,
	}
	for _, s := range loc.Screens {
		flash, known := flashS(s.Flash)
		if !known {
			return nil
		}
		pace.StrokesOf, pace.FlashSOf = append(pace.StrokesOf, s.Strokes), append(pace.FlashSOf, flash)
	}
	var stations []press.Station
	for _, s := range loc.Stations {
		stations = append(stations, press.Station{Kind: s.Kind, Screen: s.Screen - 1})
	}
	return m.try("screen", "times of the press inside the ranges of the formula", func() {
		t := sure.Of(press.TimeOf(stations, pace))
		out := &plan.PressTime{
			PieceS: t.PieceS, Sum: p.Kind != "automatic", Slowest: "load", SetupMin: t.SetupS / 60, PiecesPerHour: sure.Of(press.PiecesPerHour(t.PieceS)),
		}
		out.PressPerHour = out.PiecesPerHour
		if !t.Load {
			out.Slowest, out.SlowestScreen = t.Slowest.Kind, t.Slowest.Screen+1
		}
		if m.job.Quantity > 0 {
			run := sure.Of(press.RunS(t.PieceS, m.job.Quantity)) / 60
			out.RunMin = &run
		}
		loc.Time = out
	})
}

// dryerPace slows a location down to what the shop's one dryer takes on its fastest belt: prints that wait for it pile
// up (common practice). It leaves alone a shop whose file states no dryer, several, or not how wide the belt is.
func (w work) dryerPace(p *plan.Plan) {
	if slices.Contains(w.shop.BuiltIn, "dryer") || len(w.shop.Dryers) != 1 || w.shop.Dryers[0].BeltMM == 0 {
		return
	}
	for _, l := range p.Locations {
		for _, s := range l.Screens {
			if g := s.Cure.GarmentsPerHour; g != nil && l.Time != nil && g.High < l.Time.PiecesPerHour {
				slowTo(l.Time, g.High)
			}
		}
	}
}

// slowTo has a dryer that takes so many pieces in an hour set the pace.
func slowTo(t *plan.PressTime, piecesPerHour float64) {
	times := t.PiecesPerHour / piecesPerHour
	t.PieceS, t.PiecesPerHour, t.Slowest, t.SlowestScreen = t.PieceS*times, piecesPerHour, "dryer", 0
	if t.RunMin != nil {
		run := *t.RunMin * times
		t.RunMin = &run
	}
}

// flashS is the time of a flash in seconds, where to start or the middle of its range; 0 where none is needed.
func flashS(f plan.Flash) (s float64, known bool) {
	switch {
	case !f.Needed:
		return 0, true
	case f.StartS != nil:
		return *f.StartS, true
	case f.Seconds != nil:
		return (f.Seconds.Low + f.Seconds.High) / 2, true
	}
	return 0, false
}

// jobTime adds up the locations; nil where one is not known.
func jobTime(locations []plan.Location) *plan.JobTime {
	out := &plan.JobTime{}
	for _, l := range locations {
		if l.Time == nil || l.Time.RunMin == nil {
			return nil
		}
		out.SetupMin += l.Time.SetupMin
		out.RunMin += *l.Time.RunMin
	}
	return out
}
