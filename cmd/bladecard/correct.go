package main

import (
	"fmt"
	"strings"

	"bladecard/calc/plan"
	"bladecard/calc/seen"
	"bladecard/calc/unit"
	"bladecard/render/report"
	"bladecard/render/say"
)

var correctCommand = command{
	name: "correct", args: "JOB --screen N [--seen WHAT] [--measured FILM]",
	run: correct,
}

func correct(c *call) int {
	var o struct {
		seen        []string
		measured    string
		location    int
		screen      int
		wet, asJSON bool
	}
	if code, ok := c.parse(func(f *flags) {
		c.jobFlags(f)
		c.seenFlag(f, &o.seen)
		f.text(&o.measured, "measured", "FILM")
		screenFlags(f, &o.location, &o.screen)
		f.yes(&o.wet, "wet")
		f.yes(&o.asJSON, "json")
		c.quietFlag(f)
	}); !ok {
		return code
	}
	if o.measured == "" && o.seen == nil {
		return c.wrong("--seen and --measured are missing: what is seen on the print, such as too-thin, or the film with its unit, \"38 um\" or \"1.5 mil\"; or both")
	}
	var um, grams float64
	if _, err := unit.Of(o.measured, "g"); err == nil {
		grams, _ = unit.Parse(o.measured, "g")
	} else if o.measured != "" {
		if um, err = unit.Parse(o.measured, "um"); err != nil {
			return c.wrong("--measured: " + err.Error())
		}
	}
	return c.each(func(l loaded) int {
		c.tellShop(l.use, l.voice)
		s, code := c.screenOf(l, o.location, o.screen)
		if code != exitDone {
			return code
		}
		var measured *seen.Measurement
		if o.measured != "" {
			m, err := seen.Correct(s, um, o.wet)
			if grams != 0 {
				m, err = seen.CorrectWeighed(s, grams)
			}
			if err != nil {
				return c.wrong("--measured: " + strings.TrimPrefix(err.Error(), "ink: "))
			}
			measured = &m
		}
		a, err := seen.Ask(l.plan, o.location, o.screen, o.seen, measured)
		if err != nil {
			return c.fail(err)
		}
		v := filmVoice(l.voice, o.measured)
		v.Seen(&a)
		if o.asJSON {
			return c.json(a)
		}
		return c.failed(report.Correct(c.stdout, s, a, v, columns(c.stdout)))
	})
}

// screenOf is a screen of a plan, numbered as on the command line.
func (c *call) screenOf(l loaded, location, screen int) (plan.Screen, int) {
	if location > len(l.plan.Locations) {
		return plan.Screen{}, c.wrong(fmt.Sprintf("--location %d: %s has 1 to %d", location, l.path, len(l.plan.Locations)))
	}
	loc := l.plan.Locations[location-1]
	if screen > len(loc.Screens) {
		return plan.Screen{}, c.wrong(fmt.Sprintf("--screen %d: location %q has 1 to %d", screen, l.voice.Location(loc.Name), len(loc.Screens)))
	}
	return loc.Screens[screen-1], exitDone
}

// filmVoice is a voice that says films in the unit that a measured film was given in.
func filmVoice(v *say.Voice, measured string) *say.Voice {
	if measured == "" {
		return v
	}
	switch u, _ := unit.Of(measured, "um"); u {
	case "mil", "in", "ft":
		return v.InMil()
	}
	return v
}
