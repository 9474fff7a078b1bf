package choose

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"bladecard/calc/internal/sure"
	"bladecard/calc/job"
	"bladecard/calc/plan"
	"bladecard/calc/press"
)

// thickFilmUM is the cured film from which a print is flashed before the next screen comes down
// on it: a wet film of that depth smears (common practice).
const thickFilmUM = 80.0

// order lays the location out on the press: stations, wet-on-wet, which of the shop's presses
// can take it, and where the job's order departs from the custom.
func (m maker) order(loc *plan.Location) *job.Error {
	screens := m.pressScreens(loc)
	stations := m.layout(loc, screens)
	var wet []int
	if !m.onSheet() {
		wet = press.OnWet(stations)
	}
	loc.Stations = []plan.Station{}
	for _, s := range stations {
		loc.Stations = append(loc.Stations, plan.Station{Kind: s.Kind, Screen: s.Screen + 1, Wet: s.Kind == press.Print && slices.Contains(wet, s.Screen)})
	}
	for i := range loc.Screens {
		loc.Screens[i].Flash = m.flashWord(i, stations, screens, loc.Screens[i])
		for k, s := range stations {
			if s.Kind == press.Print && s.Screen == i {
				if head := m.head(k, stations); !slices.Contains(loc.Screens[i].Heads, head) {
					loc.Screens[i].Heads = append(loc.Screens[i].Heads, head)
				}
			}
		}
		loc.Screens[i].Head = loc.Screens[i].Heads[0]
	}
	m.next(loc, stations)
	for _, n := range press.Advice(screens) {
		loc.Warnings = append(loc.Warnings, warn("order-"+n.Code, vals{"screen": float64(n.Screen + 1), "earlier": float64(n.Earlier + 1)}))
	}
	loc.Warnings = append(loc.Warnings, m.unflashed(screens)...)
	if fail := m.try("ink", "a mass and a density inside the ranges of the formulas", func() { m.extraInk(loc) }); fail != nil {
		return fail
	}
	return m.presses(loc, screens, stations)
}

// pressScreens are the screens of a location as the press sees them.
func (m maker) pressScreens(loc *plan.Location) []press.Screen {
	screens := make([]press.Screen, len(loc.Screens))
	for i := range loc.Screens {
		sc, s := &loc.Screens[i], m.location.Screens[i]
		screens[i] = press.Screen{
			Use: sc.Use, Coverage: s.Coverage,
			Flash: !m.onSheet() && (s.Ink.FlashEach || sc.CuredUM.Value >= thickFilmUM || m.whiteTwice(i)), Cool: s.Ink.FlashEach,
			Hits: sc.Hits, Forbidden: s.FlashWish == job.FlashNo,
			Forced: s.FlashWish == job.FlashYes || s.FlashWish == job.FlashDry,
		}
		if l, known := inkLightness(s); known {
			screens[i].Lightness = &l
		}
		if m.onSheet() {
			screens[i].Use = "solid" // a sheet dries between its passes: nothing is flashed
		}
	}
	return screens
}

// next tells each screen which print comes after its first, and whether it is to cool before.
func (m maker) next(loc *plan.Location, stations []press.Station) {
	last := -1 // screen whose first print was the print before
	for k, s := range stations {
		if last >= 0 && s.Kind == press.Cool {
			loc.Screens[last].Flash.Cool = true
		}
		if s.Kind != press.Print {
			continue
		}
		if last >= 0 && loc.Screens[last].Next == nil {
			to := loc.Screens[s.Screen]
			loc.Screens[last].Next = &plan.Next{Head: m.head(k, stations), Screen: to.Number, Color: cmp.Or(to.Color, to.Ink), Wet: loc.Stations[k].Wet}
		}
		last = s.Screen
	}
	if loc.Turns > 1 {
		for i, sc := range loc.Screens { // what is printed again comes round to its own head first
			if sc.Hits > 1 {
				loc.Screens[i].Next = &plan.Next{Head: sc.Head, Screen: sc.Number, Color: cmp.Or(sc.Color, sc.Ink)}
			}
		}
	}
}

// layout is the order of stations on the press that the job means. An automatic that has not the heads
// for a second screen of what is printed twice sends the garments round again.
func (m maker) layout(loc *plan.Location, screens []press.Screen) []press.Station {
	stations := press.Stations(screens)
	loc.Turns = 1
	if m.press.Kind != "automatic" {
		return stations
	}
	for _, s := range screens {
		loc.ExtraScreens += max(0, s.Hits-1)
	}
	if again, turns := press.OneTurn(screens); len(turns) > 1 && len(stations) > headsOf(m.press) {
		loc.Turns, loc.ExtraScreens = len(turns), 0
		for _, prints := range turns {
			loc.TurnScreens = append(loc.TurnScreens, numbers(prints))
		}
		return again
	}
	return stations
}

// numbers are screens counted from 1.
func numbers(screens []int) []int {
	out := make([]int, len(screens))
	for i, n := range screens {
		out[i] = n + 1
	}
	return out
}

// head is the head at which a station stands: every station has one on an automatic; on other presses
// only the screens have.
func (m maker) head(at int, stations []press.Station) int {
	if m.press.Kind == "automatic" {
		return at + 1
	}
	return stations[at].Screen + 1
}

// whiteTwice tells whether a white print is followed by another white one: without a flash the second
// would sink into the first.
func (m maker) whiteTwice(i int) bool {
	if i+1 >= len(m.location.Screens) {
		return false
	}
	return isWhite(m.location.Screens[i]) && isWhite(m.location.Screens[i+1])
}

// whiteLightness is the lightness from which an ink counts as white (from memory).
const whiteLightness = 0.9

// isWhite tells whether a screen prints white: by its swatch, else by its ink class.
func isWhite(s job.Screen) bool {
	if l, known := lightness(s); known {
		return l >= whiteLightness
	}
	return s.Ink.Whiteness > 0
}

// flashWord tells whether a screen is flashed, and why or why not.
func (m maker) flashWord(i int, stations []press.Station, screens []press.Screen, sc plan.Screen) plan.Flash {
	var f plan.Flash
	for _, s := range stations {
		f.Needed = f.Needed || s.Kind == press.Flash && s.Screen == i
	}
	switch {
	case m.onSheet():
		f.Why = "sheet"
	case f.Needed && screens[i].Hits > 1:
		f.Why = "twice"
	case screens[i].Forced:
		f.Why = "forced"
	case screens[i].Forbidden:
		f.Why = "forbidden"
	case len(screens) == 1:
		f.Why = "alone"
	case i == len(screens)-1:
		f.Why = "last"
	case !f.Needed:
		f.Why = "wet-on-wet"
	case sc.Use == "underbase" || sc.Use == "blocker":
		f.Why = "base"
	case m.location.Screens[i].Ink.FlashEach:
		f.Why = "water"
	case m.whiteTwice(i):
		f.Why = "white"
	default:
		f.Why = "thick"
	}
	return f
}

// presses lists the shop's presses that can take a location. It is an error of the job when
// none can, and a warning when the one that the job means cannot.
func (m maker) presses(loc *plan.Location, screens []press.Screen, stations []press.Station) *job.Error {
	if fail := m.try("screen", "a press of a known kind", func() { loc.HeadsNeeded = sure.Of(press.Needs(stations, m.press.Kind)) }); fail != nil {
		return fail
	}
	again, _ := press.OneTurn(screens)
	loc.Presses = []string{}
	for _, p := range m.shop.Presses {
		if m.takes(p) && (hasHeads(p, stations) || p.Kind == "automatic" && hasHeads(p, again)) {
			loc.Presses = append(loc.Presses, p.Name)
		}
	}
	needs := vals{"heads": float64(loc.HeadsNeeded)}
	switch {
	case len(loc.Presses) > 0:
	case !slices.ContainsFunc(m.shop.Presses, m.takes) && slices.ContainsFunc(m.shop.Presses, func(p job.Press) bool { return hasHeads(p, stations) }):
		loc.Warnings = append(loc.Warnings, warn("press-kind", nil))
		return nil
	default:
		return m.noPress(stations)
	}
	if m.press.Heads == 0 {
		loc.Warnings = append(loc.Warnings, plan.Warning{Code: "heads-unknown", Values: needs, Names: map[string]string{"press": m.press.Name}})
	}
	switch {
	case slices.Contains(loc.Presses, m.press.Name):
	case !m.takes(m.press):
		loc.Warnings = append(loc.Warnings, plan.Warning{Code: "press-stock", Names: map[string]string{"press": m.press.Name, "other": loc.Presses[0]}})
	default:
		loc.Warnings = append(loc.Warnings, plan.Warning{Code: "press-other", Values: needs, Names: map[string]string{"press": m.press.Name, "other": loc.Presses[0]}})
	}
	return nil
}

// hasHeads tells whether a press has the heads for some stations.
func hasHeads(p job.Press, stations []press.Station) bool {
	_, err := press.Choose(stations, []press.Machine{{Kind: p.Kind, Heads: headsOf(p)}})
	return err == nil
}

// headsOf is how many heads a press has; one that the shop file leaves out is taken for enough.
func headsOf(p job.Press) int {
	if p.Heads == 0 {
		return 1000
	}
	return p.Heads
}

// takes tells whether a press is of the kind that the stock needs.
func (m maker) takes(p job.Press) bool { return takes(p, m.onSheet()) }

// takes tells whether a press takes sheets, or garments: a carousel takes garments, a flatbed sheets, a manual press
// both.
func takes(p job.Press, sheets bool) bool {
	return p.Kind == "manual" || (p.Kind == "flatbed") == sheets
}

// noPress is the error of a location that no press of the shop can take.
func (m maker) noPress(stations []press.Station) *job.Error {
	var lacks []string
	for _, p := range m.shop.Presses {
		needs, err := press.Needs(stations, p.Kind)
		if err != nil || !m.takes(p) {
			continue
		}
		lacks = append(lacks, fmt.Sprintf("%s %d/%d", p.Name, p.Heads, needs))
	}
	return &job.Error{
		Pos: m.location.Pos, Where: fmt.Sprintf("location %q", m.location.Name), Key: "screen",
		Wrong:    "no press has the stations for prints, flashes and cool-downs (heads there / needed): " + strings.Join(lacks, ", "),
		Accepted: "a press with more heads in the shop file, fewer flashes, or the location split into two",
	}
}
