package main

import (
	"errors"
	"fmt"
	"io"
	"strings"

	"bladecard/calc/choose"
	"bladecard/calc/fit"
	"bladecard/calc/job"
	"bladecard/calc/presslog"
	"bladecard/calc/trials"
	"bladecard/cmd/bladecard/internal/disk"
	"bladecard/render/report"
	"bladecard/render/say"
	"bladecard/render/trialsheet"
)

var trialCommand = command{
	name: "trial", args: "[SHOP] [-o FILE] [--log FILE]",
	run: planTrial,
}

// trialAsked is what the command line says of a trial.
type trialAsked struct {
	target, log, paper, press, ink string
	days, hours, perHour, seed     int
	mostBlades, mostMeshes         int
	asJSON                         bool
}

func (o *trialAsked) declare(f *flags) {
	usual := trials.Usual()
	o.days, o.hours, o.perHour, o.seed = usual.Days, int(usual.DayMinutes/60), int(60/usual.PrintMinutes), 1
	o.mostBlades, o.mostMeshes = usual.MostBlades, usual.MostMeshes
	f.text(&o.target, "o", "FILE")
	f.text(&o.log, "log", "FILE")
	f.count(&o.days, "days")
	f.count(&o.hours, "hours")
	f.count(&o.perHour, "prints-per-hour")
	f.count(&o.mostBlades, "blades")
	f.count(&o.mostMeshes, "screens")
	f.text(&o.press, "press", "NAME")
	f.text(&o.ink, "ink", "NAME")
	f.count(&o.seed, "draw")
	paperFlag(f, &o.paper)
	f.yes(&o.asJSON, "json")
}

// limits are the usual limits with those of the command line.
func (o *trialAsked) limits() trials.Limits {
	l := trials.Usual()
	l.Days, l.DayMinutes, l.PrintMinutes = o.days, 60*float64(o.hours), 60/float64(o.perHour)
	l.MostBlades, l.MostMeshes = o.mostBlades, o.mostMeshes
	return l
}

func planTrial(c *call) int {
	var o trialAsked
	if code, ok := c.parse(func(f *flags) {
		o.declare(f)
		c.langFlag(f)
		c.writeFlags(f)
	}); !ok {
		return code
	}
	f, use, code := c.oneShop()
	if code != exitDone {
		return code
	}
	patches, errs := choose.PatchesOf(f.shop, o.press, o.ink)
	if len(errs) > 0 {
		for i := range errs {
			errs[i].Pos.File = f.shop.File
		}
		return c.jobErrors(errs)
	}
	t, err := trials.Plan(patches.Setups, fit.Expected(), o.limits(), uint64(o.seed))
	switch {
	case errors.Is(err, trials.ErrNoTime):
		fmt.Fprintf(c.stderr, "error: %s\n", f.voice.T("trial.no-time", "least", fmt.Sprint(fit.Least)))
		return exitUsage
	case err != nil:
		return c.wrong(strings.TrimPrefix(err.Error(), "trials: "))
	}
	to := c.writer(use.path)
	if o.log != "" {
		err = c.put(to, o.log, func(w io.Writer) error {
			return presslog.Write(w, choose.LogOfTrial(t, patches), f.voice.DecimalComma())
		})
	}
	if err == nil && o.target != "" {
		faces, wrong := trialsheet.Pages(t, trialsheet.Shop{Name: f.shop.Name, Press: patches.Press, Ink: patches.Ink, PatchMM: patches.SideMM}, paperOf(o.paper, f.shop), f.voice)
		if err = wrong; err == nil {
			err = c.putPages(to, o.target, f, "trial", faces)
		}
	}
	switch {
	case err != nil:
		return c.failed(err)
	case o.asJSON:
		return c.json(newTrialJSON(t, patches))
	case o.target != disk.Stdout && o.log != disk.Stdout:
		return c.failed(tellTrial(c.stdout, f.voice, f.shop, t))
	}
	return exitDone
}

// tellTrial says what the trial takes and what it will tell.
func tellTrial(w io.Writer, v *say.Voice, shop *job.Shop, t trials.Trial) error {
	var parts []say.Part
	for d, minutes := range t.Minutes {
		var of [][]string
		for i, p := range t.Prints {
			if p.Day == fmt.Sprint(d+1) {
				of = append(of, v.TrialPrint(i+1, p))
			}
		}
		title := v.T("trial.day", "n", fmt.Sprint(d+1), "prints", v.Many("trial.prints", len(of)), "minutes", v.Minutes(minutes))
		parts = append(parts, say.Part{Title: title, Rows: of})
	}
	all := say.Part{Title: v.T("trial.all", "before", v.Around(t.Before), "after", v.Around(t.After))}
	for _, m := range t.Meshes {
		all.Lines = append(all.Lines, v.T("trial.mesh", "mesh", m.Name, "before", v.Around(m.Before), "after", v.Around(m.After), "prints", v.Many("trial.prints", m.Prints)))
	}
	for _, e := range v.TrialEffects(t) {
		all.Lines = append(all.Lines, v.T("trial.effect", "what", e.What, "before", e.Before, "after", e.After))
	}
	parts = append(parts, all)
	if shop.Calibration != nil {
		parts = append(parts, say.Part{Title: v.T("trial.calibrated")})
	}
	return report.Parts(w, parts, columns(w))
}
