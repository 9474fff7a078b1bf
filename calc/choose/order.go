package choose

import (
	"fmt"
	"strings"

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
	screens := make([]press.Screen, len(loc.Screens))
	for i := range loc.Screens {
		sc, s := &loc.Screens[i], m.location.Screens[i]
		screens[i] = press.Screen{
			Use: sc.Use, Coverage: s.Coverage,
			Flash: !m.onSheet() && (s.Ink.FlashEach || sc.CuredUM.Value >= thickFilmUM), Cool: s.Ink.FlashEach,
		}
		var r, g, b uint8
		if n, _ := fmt.Sscanf(s.Swatch, "#%02x%02x%02x", &r, &g, &b); n == 3 {
			l := press.Lightness(r, g, b)
			screens[i].Lightness = &l
		}
		if m.onSheet() {
			screens[i].Use = "solid" // a sheet dries between its passes: nothing is flashed
		}
	}
	stations := press.Stations(screens)
	wet := map[int]bool{}
	if !m.onSheet() {
		for _, i := range press.OnWet(stations) {
			wet[i] = true
		}
	}
	loc.Stations = []plan.Station{}
	for _, s := range stations {
		loc.Stations = append(loc.Stations, plan.Station{Kind: s.Kind, Screen: s.Screen + 1, Wet: s.Kind == press.Print && wet[s.Screen]})
	}
	for i := range loc.Screens {
		loc.Screens[i].Flash = m.flashWord(i, stations, screens, loc.Screens[i])
	}
	for _, n := range press.Advice(screens) {
		loc.Warnings = append(loc.Warnings, warn("order-"+n.Code, vals{"screen": float64(n.Screen + 1), "earlier": float64(n.Earlier + 1)}))
	}
	return m.presses(loc, stations)
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
	default:
		f.Why = "thick"
	}
	return f
}

// presses lists the shop's presses that can take a location. It is an error of the job when
// none can, and a warning when the one that the job means cannot.
func (m maker) presses(loc *plan.Location, stations []press.Station) *job.Error {
	loc.Presses = []string{}
	var machines []press.Machine
	for _, p := range m.shop.Presses {
		machines = append(machines, press.Machine{Kind: p.Kind, Heads: max(1, p.Heads)})
	}
	meant := false
	for i, p := range m.shop.Presses {
		if (p.Kind == "flatbed") != m.onSheet() && p.Kind != "manual" {
			continue // a carousel takes garments, a flatbed sheets; a manual press takes both
		}
		if _, err := press.Choose(stations, machines[i:i+1]); err == nil {
			loc.Presses = append(loc.Presses, p.Name)
			meant = meant || p.Name == m.press.Name
		}
	}
	needs, err := press.Needs(stations, m.press.Kind)
	if err != nil {
		e := m.fail("screen", err.Error(), "a press of a known kind")
		return e
	}
	loc.HeadsNeeded = needs
	if len(loc.Presses) == 0 {
		if _, err := press.Choose(stations, machines); err == nil {
			loc.Warnings = append(loc.Warnings, warn("press-kind", nil))
			return nil
		}
		return m.noPress(stations)
	}
	if !meant {
		loc.Warnings = append(loc.Warnings, plan.Warning{Code: "press-other", Values: vals{"heads": float64(needs)}, Names: map[string]string{"press": m.press.Name, "other": loc.Presses[0]}})
	}
	return nil
}

// noPress is the error of a location that no press of the shop can take.
func (m maker) noPress(stations []press.Station) *job.Error {
	var lacks []string
	for _, p := range m.shop.Presses {
		needs, err := press.Needs(stations, p.Kind)
		if err != nil {
			continue
		}
		lacks = append(lacks, fmt.Sprintf("%s has %d of %d", p.Name, p.Heads, needs))
	}
	return &job.Error{
		Pos: m.location.Pos, Where: fmt.Sprintf("location %q", m.location.Name), Key: "screen",
		Wrong:    "no press has the stations for prints, flashes and cool-downs: " + strings.Join(lacks, ", "),
		Accepted: "a press with more heads in the shop file, fewer flashes, or the location split into two",
	}
}

// onSheet tells whether the location is printed on sheets and not on garments.
func (m maker) onSheet() bool { return m.hardStock() }
