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
	"bladecard/render/canvas/pdf"
	"bladecard/render/page"
	"bladecard/render/say"
	"bladecard/render/trialsheet"
)

var trialCommand = command{
	name: "trial", args: "[SHOP] [-o FILE] [--log FILE]",
	does: "plan the fewest test prints that tell how your shop prints",
	more: `
Chooses mesh, blade, angle and strokes of each print from the racks of SHOP, or else of the nearest
shop.toml in this folder or above it, so that they narrow the expected range of its films most for
the time they take, and says by how much before you print. -o writes the sheet to print by, with
boxes to fill in; --log writes the log for the same prints, to type the readings into. Then run fit
on that log.

All prints are of one solid square, 100 x 100 mm, on a screen of each mesh.`,
	run: planTrial,
}

func planTrial(c *call) int {
	var target, logPath, paperName, press, ink string
	var asJSON bool
	l := trials.Usual()
	days, hours, perHour, seed := l.Days, int(l.DayMinutes/60), int(60/l.PrintMinutes), 1
	if code, ok := c.parse(func(f *flags) {
		f.text(&target, "o", "`FILE` writes the sheet to print by, a PDF, to this file; - is standard output")
		f.text(&logPath, "log", "`FILE` writes the log of the prints, a CSV file, to this file")
		f.count(&days, "days", "`N` days to print on; two tell what a new day brings; default: 1")
		f.count(&hours, "hours", "`N` hours on the press each day; default: 3")
		f.count(&perHour, "prints-per-hour", "`N` prints made and measured an hour, without changes; default: 15")
		f.count(&l.MostBlades, "blades", "`N` most blades to use; default: any number")
		f.count(&l.MostMeshes, "screens", "`N` most screens to make; default: any number")
		f.text(&press, "press", "`NAME` press of the shop file; default: its first")
		f.text(&ink, "ink", "`NAME` ink of the shop file or class; default: plastisol")
		f.count(&seed, "draw", "`N` draws another order of the prints; default: 1")
		paperFlag(f, &paperName)
		f.yes(&asJSON, "json", "print the trial as JSON")
		c.langFlag(f)
		c.forceFlag(f)
		c.quietFlag(f)
	}); !ok {
		return code
	}
	if len(c.args) > 1 {
		return c.wrong(fmt.Sprintf("%d shop files are named; one is accepted", len(c.args)))
	}
	f, use, err := c.shopArg(c.args, ".")
	if err != nil {
		return c.failed(err)
	}
	c.tellShop(use, f.voice)
	patches, errs := choose.PatchesOf(f.shop, press, ink)
	if len(errs) > 0 {
		for i := range errs {
			errs[i].Pos.File = f.shop.File
		}
		return c.jobErrors(errs)
	}
	l.Days, l.DayMinutes, l.PrintMinutes = days, 60*float64(hours), 60/float64(perHour)
	t, err := trials.Plan(patches.Setups, fit.Expected(), l, uint64(seed))
	switch {
	case errors.Is(err, trials.ErrNoTime):
		fmt.Fprintf(c.stderr, "error: %s\n", f.voice.T("trial.no-time", "least", fmt.Sprint(fit.Least)))
		return exitUsage
	case err != nil:
		return c.wrong(strings.TrimPrefix(err.Error(), "trials: "))
	}
	to := c.writer(use.path)
	if logPath != "" {
		if err := c.put(to, logPath, func(w io.Writer) error { return presslog.Write(w, choose.LogOfTrial(t, patches)) }); err != nil {
			return c.fail(err)
		}
	}
	if target != "" {
		faces, err := trialsheet.Pages(t, trialsheet.Shop{Name: f.shop.Name, Press: patches.Press, Ink: patches.Ink}, paperOf(paperName, f.shop), f.voice)
		if err == nil {
			err = c.put(to, target, func(w io.Writer) error {
				return page.Write(w, pdf.Meta{
					Title: f.voice.T("trial.title"), Author: f.shop.Name, Subject: f.voice.T("trial.subject"), Language: f.voice.Code,
				}, page.Pages(faces...))
			})
		}
		if err != nil {
			return c.fail(err)
		}
	}
	if asJSON {
		return c.json(newTrialJSON(t, patches))
	}
	if target != "-" && logPath != "-" {
		tellTrial(c.stdout, f.voice, f.shop, t)
	}
	return exitDone
}

// tellTrial says what the trial takes and what it will tell.
func tellTrial(w io.Writer, v *say.Voice, shop *job.Shop, t trials.Trial) {
	for d, minutes := range t.Minutes {
		n := 0
		for _, p := range t.Prints {
			if p.Day == fmt.Sprint(d+1) {
				n++
			}
		}
		fmt.Fprintln(w, v.T("trial.day", "n", fmt.Sprint(d+1), "prints", v.Many("trial.prints", n), "minutes", fmt.Sprintf("%.0f", minutes)))
	}
	for i, p := range t.Prints {
		fmt.Fprintf(w, "  %2d  %s\n", i+1, strings.Join([]string{p.Mesh, p.Blade, v.Angle(p.AngleDeg), v.Many("change.strokes", p.Strokes)}, "  "))
	}
	fmt.Fprintln(w, v.T("trial.all", "before", v.Around(t.Before), "after", v.Around(t.After)))
	for _, m := range t.Meshes {
		fmt.Fprintln(w, "  "+v.T("trial.mesh", "mesh", m.Name, "before", v.Around(m.Before), "after", v.Around(m.After), "prints", v.Many("trial.prints", m.Prints)))
	}
	for _, line := range v.TrialEffects(t) {
		fmt.Fprintln(w, "  "+line)
	}
	if shop.Calibration != nil {
		fmt.Fprintln(w, v.T("trial.calibrated"))
	}
}
