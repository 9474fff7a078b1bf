package daysheet

import (
	"fmt"
	"strings"

	"bladecard/calc/day"
	"bladecard/render/canvas"
	"bladecard/render/flow"
	"bladecard/render/page"
	"bladecard/render/say"
)

const titlePT = 16.0

// Pages lays out the list of a day. when is the days in words; empty where none were named.
func Pages(d day.Day, shop, when string, paper page.Paper, v *say.Voice) ([]page.Face, error) {
	heading := v.T("day.title")
	if when != "" {
		heading += ": " + when
	}
	f := flow.New(paper, "day list", heading, 1)
	f.Paragraph("heading", heading, flow.Bold(titlePT))
	f.Paragraph("shop", shop, flow.Regular(flow.BodyPT))
	f.Paragraph("saves", v.T("day.saves", "now", fmt.Sprint(d.Changes), "given", fmt.Sprint(d.FileOrder)), flow.Regular(flow.BodyPT))
	parts := map[string]say.Part{}
	for _, p := range v.Day(d) {
		parts[p.Name] = p
	}
	for _, p := range d.Presses {
		t := table("press "+p.Name, v, "n", "job", "pieces", "heads", "due", "change", "setup", "run", "done")
		for i, j := range p.Jobs {
			setup, run := "", ""
			if j.Time != nil {
				setup, run = v.Minutes(j.Time.SetupMin), v.Minutes(j.Time.RunMin)
			}
			due := ""
			if j.Due != "" {
				due = v.Date(j.Due)
			}
			pieces := ""
			if j.Pieces > 0 {
				pieces = fmt.Sprint(j.Pieces)
			}
			t.Row(flow.Plain(fmt.Sprint(i+1), strings.TrimSpace(j.Job+" "+j.Title), pieces, v.T("day.heads", "n", fmt.Sprint(j.Heads), "of", fmt.Sprint(p.Heads)),
				due, v.DayChanges(i, j), setup, run, box)...)
		}
		f.Part("press "+p.Name, parts["press "+p.Name].Title, "", t)
	}
	if c := parts["clashes"]; len(c.Lines) > 0 {
		f.Heading("clashes", c.Title, canvas.LineHeight(flow.Regular(flow.BodyPT)))
		for i, line := range c.Lines {
			f.Paragraph(fmt.Sprintf("clash %d", i+1), line, flow.Regular(flow.BodyPT))
		}
	}
	blades := table("blades", v, "blade", "wanted", "count", "done")
	for _, b := range d.Blades {
		blades.Row(flow.Plain(v.BladeLength(b), fmt.Sprint(b.Wanted), fmt.Sprint(b.Count), box)...)
	}
	f.Part("blades", v.T("day.blades"), "", blades)
	screens := table("screens", v, "mesh", "stencil", "tension", "dots", "color", "for", "done")
	for _, s := range d.Screens {
		screens.Row(flow.Plain(append(v.DayScreen(s), box)...)...)
	}
	f.Part("screens", v.T("day.screens"), "", screens)
	inks := table("inks", v, "ink", "color", "mass", "volume", "for", "done")
	for _, x := range d.Inks {
		inks.Row(flow.Plain(x.Ink, x.Color, v.Mass(x.G), v.Volume(x.ML), strings.Join(x.Jobs, ", "), box)...)
	}
	if len(inks.Rows) > 0 {
		f.Part("inks", v.T("day.inks"), "", inks)
	}
	dryers := table("dryers", v, "dryer", "film", "belt", "for", "done")
	for _, x := range d.Dryers {
		dryers.Row(flow.Plain(x.Dryer, v.TemperatureRange(x.Film.Low, x.Film.High), v.BeltSpeed(x.Belt.Low, x.Belt.High), strings.Join(x.Jobs, ", "), box)...)
	}
	if len(dryers.Rows) > 0 {
		f.Part("dryers", v.T("day.dryers"), v.T("day.dryer-note"), dryers)
	}
	if s := parts["sharpen"]; len(s.Lines) > 0 {
		f.Heading("sharpen", s.Title, canvas.LineHeight(flow.Regular(flow.BodyPT)))
		for i, line := range s.Lines {
			f.Paragraph(fmt.Sprintf("sharpen %d", i+1), line, flow.Regular(flow.BodyPT))
		}
	}
	f.Space(flow.GapMM)
	f.Paragraph("caution", v.T("day.caution"), flow.Regular(flow.BodyPT))
	f.Number(func(n, of int) string { return v.T("sheet-doc.page", "n", fmt.Sprint(n), "of", fmt.Sprint(of)) })
	return f.Pages, f.Err
}

// box is a place for a tick.
const box = "____"

func table(name string, v *say.Voice, columns ...string) flow.Table {
	t := flow.Table{Name: name}
	for _, c := range columns {
		t.Header = append(t.Header, v.T("day.col-"+c))
	}
	return t
}
