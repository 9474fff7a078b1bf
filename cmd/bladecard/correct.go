package main

import (
	"encoding/json"
	"flag"
	"fmt"

	"bladecard/calc/choose"
	"bladecard/calc/plan"
	"bladecard/calc/unit"
)

var correctCommand = command{
	name: "correct", args: "JOB --screen N --measured FILM",
	does: "tell what to change, from a measured film",
	more: `
FILM is a cured film with its unit, "38 um" or "1.5 mil"; with --wet, a wet film off the comb.
Every change that goes the right way is listed with the film that it should give: those that
reach the target first, then those that come nearest.`,
	run: correct,
}

func correct(c *call) int {
	var f struct {
		measured    string
		location    int
		screen      int
		wet, asJSON bool
	}
	if code, ok := c.parse(func(fs *flag.FlagSet) {
		c.language(fs)
		fs.StringVar(&f.measured, "measured", "", "the measured `FILM` with its unit (needed)")
		fs.IntVar(&f.location, "location", 1, "`N` of the location, as the file orders them")
		fs.IntVar(&f.screen, "screen", 1, "`N` of the screen")
		fs.BoolVar(&f.wet, "wet", false, "the film was measured wet")
		fs.BoolVar(&f.asJSON, "json", false, "print JSON, one object a job")
	}); !ok {
		return code
	}
	if f.measured == "" {
		return c.wrong("--measured is missing: the film with its unit, \"38 um\"")
	}
	um, err := unit.Parse(f.measured, "um")
	if err != nil {
		return c.wrong("--measured: " + err.Error())
	}
	return c.each(func(l loaded) int {
		if f.location < 1 || f.location > len(l.plan.Locations) {
			return c.wrong(fmt.Sprintf("--location %d: %s has 1 to %d", f.location, l.path, len(l.plan.Locations)))
		}
		loc := l.plan.Locations[f.location-1]
		if f.screen < 1 || f.screen > len(loc.Screens) {
			return c.wrong(fmt.Sprintf("--screen %d: location %q has 1 to %d", f.screen, loc.Name, len(loc.Screens)))
		}
		s := loc.Screens[f.screen-1]
		m, err := choose.Correct(s, um, f.wet)
		if err != nil {
			return c.wrong("--measured: " + err.Error())
		}
		if f.asJSON {
			enc := json.NewEncoder(c.stdout)
			enc.SetEscapeHTML(false)
			if err := enc.Encode(m); err != nil {
				return c.fail(err)
			}
			return exitDone
		}
		c.outcomes(l, s, m)
		return exitDone
	})
}

// outcomes prints a judged measurement in words.
func (c *call) outcomes(l loaded, s plan.Screen, m choose.Measurement) {
	v := l.voice
	fmt.Fprintln(c.stdout, v.T("correct.measured", "n", fmt.Sprint(s.Number), "film", v.FilmUM(m.MeasuredUM),
		"expected", v.FilmUM(m.ExpectedUM.Value), "band", v.FilmRange(m.ExpectedUM.Low, m.ExpectedUM.High), "target", v.FilmRange(s.TargetUM.Low, s.TargetUM.High)))
	switch {
	case m.InTarget:
		fmt.Fprintln(c.stdout, v.T("correct.good"))
		return
	case !m.InBand:
		fmt.Fprintln(c.stdout, v.T("correct.outside"))
	}
	if len(m.Outcomes) == 0 {
		fmt.Fprintln(c.stdout, v.T("correct.none"))
	}
	for _, o := range m.Outcomes {
		key := "correct.reaches"
		if !o.InRange {
			key = "correct.misses"
		}
		fmt.Fprintln(c.stdout, "  "+v.T(key, "change", o.Change, "film", v.FilmUM(o.FilmUM.Value), "band", v.FilmRange(o.FilmUM.Low, o.FilmUM.High), "off", v.Signed(o.OffUM))+v.Disturbs(o.Correction))
	}
}
