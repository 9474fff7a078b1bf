package seen

import (
	"fmt"
	"math"
	"slices"
	"sort"
	"strings"

	"bladecard/calc/internal/sure"
	"bladecard/calc/plan"
)

// Line is a sentence as a code with its figures; Text is the same in words.
type Line = plan.Warning

// Change is something to do otherwise. One that changes the film carries the plan's correction, and its
// figures are those after the change: film, bent edge, flash.
type Change struct {
	Line
	Correction *plan.Correction `json:"correction,omitempty"`
}

// Finding is the answer to one fault.
type Finding struct {
	Seen     string   `json:"seen"`
	Shows    bool     `json:"shows"`   // false: this screen cannot have the fault, and Instead says what it is
	Instead  []Line   `json:"instead"` //
	Look     []Line   `json:"look"`    // first, in seconds
	Against  []Line   `json:"against"` // where the measured film speaks against the fault
	Changes  []Change `json:"changes"` // the smallest first
	Measure  []Line   `json:"measure"`
	Not      []Line   `json:"not"` // what looks alike
	Cautions []Line   `json:"cautions"`
}

// Answer is what a printer saw and measured of a screen, judged.
type Answer struct {
	Screen int `json:"screen"`
	*Measurement
	Means    []Line    `json:"means,omitempty"` // of a film outside the expected band
	Findings []Finding `json:"findings,omitempty"`
	Opposed  []Line    `json:"opposed,omitempty"` // faults that one place cannot have both
}

// eyeSeesShare is the change of a film that an eye sees on the print (judgement); a change for a fault that
// was seen and not measured has to be as large, where the shop has one. mostFilms is how many are told.
const (
	eyeSeesShare = 0.10
	mostFilms    = 4
)

// Faults are the codes of all faults that Ask answers, in the order of a help page.
func Faults() []string {
	var out []string
	for _, r := range table {
		out = append(out, r.what)
	}
	return out
}

// Ask answers what was seen of a screen, numbered from 1 within its location, and what was measured, nil where
// nothing was. It is an error where the screen is not in the plan or a fault is not known.
func Ask(p *plan.Plan, location, screen int, faults []string, measured *Measurement) (Answer, error) {
	out := Answer{Screen: screen, Measurement: measured}
	if err := sure.Try(func() {
		a := askedOf(p, location, screen, measured)
		f := a.facts()
		if a.unexpected() {
			out.Means = f.lines(means)
		}
		for _, what := range faults {
			out.Findings = append(out.Findings, a.find(what, f))
		}
	}); err != nil {
		return Answer{}, err
	}
	for _, pair := range opposed {
		if slices.Contains(faults, pair[0]) && slices.Contains(faults, pair[1]) {
			out.Opposed = append(out.Opposed, Line{Code: "opposed", Names: map[string]string{"one": pair[0], "other": pair[1]}})
		}
	}
	return out, nil
}

// usual are the faults that a card has room for, the most usual first (judgement).
var usual = []string{InkLeft, PuffFallen, DotsPlugged, DotsLost, TooThin, RaggedEdge, PicksUp, DyeBleeds, TooHeavy}

// Likely answers the faults that a screen is most likely to show, at most so many: those that it can have and that
// something can be done about, the most usual first. Lost dots stand before plugged ones where the mesh does not hold
// them, and a film that is expected outside its target stands second; one that is too thin is left out where it is
// expected over its target, and one too heavy where it is expected under it. Changes of the film come without the flash
// after them. Screens are numbered as for Ask, and its errors are those of Ask. Kind: common practice; the order is a
// judgement.
func Likely(p *plan.Plan, location, screen, most int) ([]Finding, error) {
	var out []Finding
	err := sure.Try(func() {
		a := askedOf(p, location, screen, nil)
		a.brief = true
		f := a.facts()
		off := offTarget(a.screen, a.screen.CuredUM.Value)
		order := slices.Clone(usual)
		if i := slices.Index(order, DotsPlugged); f.holds["dots"] && !f.holds["dot-holds"] { // the mesh loses them for sure
			order[i], order[i+1] = DotsLost, DotsPlugged
		}
		expected := ""
		switch {
		case off > 0:
			expected = TooHeavy
		case off < 0:
			expected = TooThin
		}
		if i := slices.Index(order, expected); i > 0 { // right after the wipe test
			order = slices.Insert(slices.Delete(order, i, i+1), 1, expected)
		}
		for _, what := range order {
			if len(out) == most {
				return
			}
			if what == TooThin && off > 0 || what == TooHeavy && off < 0 {
				continue
			}
			if found := a.find(what, f); len(found.Changes) > 0 {
				out = append(out, found)
			}
		}
	})
	return out, err
}

// askedOf is what is asked of a screen of the plan.
func askedOf(p *plan.Plan, location, screen int, measured *Measurement) asked {
	if location < 1 || location > len(p.Locations) || screen < 1 || screen > len(p.Locations[location-1].Screens) {
		sure.Check(fmt.Errorf("location %d, screen %d is not in the plan", location, screen))
	}
	l := p.Locations[location-1]
	return asked{plan: p, location: l, screen: l.Screens[screen-1], measured: measured}
}

// find answers one fault.
func (a asked) find(what string, f facts) Finding {
	i := slices.IndexFunc(table, func(r row) bool { return r.what == what })
	if i < 0 {
		sure.Check(fmt.Errorf("%q is not known; %v are accepted", what, Faults()))
	}
	r := table[i]
	out := Finding{Seen: r.what, Shows: f.any(r.shows), Instead: []Line{}, Look: []Line{}, Against: []Line{}, Changes: []Change{}, Measure: []Line{}, Not: []Line{}, Cautions: []Line{}}
	if !out.Shows {
		out.Instead = f.lines(r.instead)
		return out
	}
	out.Look, out.Against = f.lines(r.look), f.lines(r.off)
	out.Measure, out.Not, out.Cautions = f.lines(r.measure), f.lines(r.not), f.lines(r.caution)
	for _, l := range r.changes {
		made, holds := f.line(l)
		switch {
		case l.code == "film" && holds && len(out.Against) == 0: // else the film is not what is wrong
			out.Changes = append(out.Changes, a.films(r.films)...)
		case l.code != "film" && holds:
			out.Changes = append(out.Changes, Change{Line: made})
		}
	}
	return out
}

// films are the corrections of the plan that mend a fault, the smallest first, each with the film, the edge
// and the flash after it. A change that neither a gauge nor an eye tells is none, nor is one that costs the detail
// where others do not.
func (a asked) films(w want) []Change {
	s := a.screen
	var fit []plan.Correction
	for _, c := range s.Corrections {
		lean := c.EdgeAngleDeg - s.EdgeAngleDeg
		told := math.Abs(c.DeltaUM)*a.filmUM()/s.CuredUM.Value >= s.TellsUM || !faint(c)
		switch {
		case w == more && c.DeltaUM > 0 && c.Clears && told,
			w == less && c.DeltaUM < 0 && told,
			w == finer && c.DeltaUM < 0 && told && lean <= 1e-9,
			w == upright && lean <= -leanSeenDeg && c.Clears && keepsFilm(s, c):
			fit = append(fit, c)
		}
	}
	if w != upright {
		if plain := slices.DeleteFunc(slices.Clone(fit), faint); len(plain) > 0 {
			fit = plain
		}
	}
	if sharp := slices.DeleteFunc(slices.Clone(fit), losesDetail); len(sharp) > 0 {
		fit = sharp
	}
	sort.SliceStable(fit, func(i, j int) bool { return fit[i].Cost < fit[j].Cost })
	out := []Change{}
	for _, c := range fit[:min(len(fit), mostFilms)] {
		out = append(out, a.film(c))
	}
	return out
}

// faint tells whether no eye sees a change of the film on the print.
func faint(c plan.Correction) bool { return math.Abs(c.DeltaPercent) < 100*eyeSeesShare }

// losesDetail tells whether a change costs the finest detail.
func losesDetail(c plan.Correction) bool { return slices.Contains(c.Disturbs, "detail") }

// leanSeenDeg is the change of a bent edge from which an edge prints otherwise (judgement).
const leanSeenDeg = 1.0

// keepsFilm tells whether a change that is made for the edge keeps the film of the screen in its target,
// where it is there before.
func keepsFilm(s plan.Screen, c plan.Correction) bool {
	in := func(um float64) bool { return um >= s.TargetUM.Low && um <= s.TargetUM.High }
	return in(c.CuredUM) || !in(s.CuredUM.Value) && faint(c)
}

// film is a correction laid on the film that is there.
func (a asked) film(c plan.Correction) Change {
	scale := a.filmUM() / a.screen.CuredUM.Value
	values := map[string]float64{
		"film_um": scale * c.CuredUM, "film_low_um": a.filmUM() + scale*c.DeltaBandUM.Low, "film_high_um": a.filmUM() + scale*c.DeltaBandUM.High,
		"edge_deg": c.EdgeAngleDeg,
	}
	if h := a.screen.Halftone; h != nil {
		values["film_of_dot_percent"] = 100 * scale * c.CuredUM / h.DotUM
	}
	if !a.brief && c.Kind != "hits" { // each hit has its own flash
		if s, known := a.flashS(scale * c.CuredUM); known {
			values["flash_s"] = s
		}
	}
	return Change{Line: Line{Code: "film", Values: values}, Correction: &c}
}

// any tells whether one of some facts holds; of none, it does.
func (f facts) any(needs string) bool {
	return needs == "" || slices.ContainsFunc(strings.Fields(needs), func(need string) bool {
		_, holds := f.line(line{needs: need})
		return holds
	})
}
