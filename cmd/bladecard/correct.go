package main

import (
	"fmt"

	"bladecard/calc/choose"
	"bladecard/calc/plan"
	"bladecard/calc/unit"
	"bladecard/render/say"
)

var correctCommand = command{
	name: "correct", args: "JOB --screen N --measured FILM",
	does: "say what to change when a measured film is off",
	more: `
FILM is a cured film with its unit, "38 um" or "1.5 mil"; with --wet, a wet film off the comb. The
answer comes in the same unit.
Every change that goes the right way is listed with the film that it should give: those that
reach the target first, then those that come nearest.`,
	run: correct,
}

func correct(c *call) int {
	var o struct {
		measured    string
		location    int
		screen      int
		wet, asJSON bool
	}
	if code, ok := c.parse(func(f *flags) {
		c.jobFlags(f)
		f.text(&o.measured, "measured", "`FILM` the measured film with its unit, \"38 um\" or \"1.5 mil\" (needed)")
		screenFlags(f, &o.location, &o.screen)
		f.yes(&o.wet, "wet", "the film was measured wet")
		f.yes(&o.asJSON, "json", "print JSON, one object per job and line; films in um")
		c.quietFlag(f)
	}); !ok {
		return code
	}
	if o.measured == "" {
		return c.wrong("--measured is missing: the film with its unit, \"38 um\" or \"1.5 mil\"")
	}
	um, err := unit.Parse(o.measured, "um")
	if err != nil {
		return c.wrong("--measured: " + err.Error())
	}
	return c.each(func(l loaded) int {
		c.tellShop(l.use, l.voice)
		if o.location > len(l.plan.Locations) {
			return c.wrong(fmt.Sprintf("--location %d: %s has 1 to %d", o.location, l.path, len(l.plan.Locations)))
		}
		loc := l.plan.Locations[o.location-1]
		if o.screen > len(loc.Screens) {
			return c.wrong(fmt.Sprintf("--screen %d: location %q has 1 to %d", o.screen, loc.Name, len(loc.Screens)))
		}
		s := loc.Screens[o.screen-1]
		m, err := choose.Correct(s, um, o.wet)
		if err != nil {
			return c.wrong("--measured: " + err.Error())
		}
		if o.asJSON {
			return c.json(m)
		}
		c.outcomes(filmVoice(l.voice, o.measured), s, m)
		return exitDone
	})
}

// filmVoice is a voice that says films in the unit that a measured film was given in.
func filmVoice(v *say.Voice, measured string) *say.Voice {
	switch u, _ := unit.Of(measured, "um"); u {
	case "mil", "in", "ft":
		return v.InMil()
	}
	return v
}

// outcomes prints a judged measurement in words.
func (c *call) outcomes(v *say.Voice, s plan.Screen, m choose.Measurement) {
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
		fmt.Fprintln(c.stdout, "  "+v.T(key, "change", v.Change(o.Correction), "film", v.FilmUM(o.FilmUM.Value), "band", v.FilmRange(o.FilmUM.Low, o.FilmUM.High), "off", v.Signed(o.OffUM))+v.Disturbs(o.Correction))
	}
}
