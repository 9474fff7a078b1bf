package main

import (
	"flag"
	"fmt"
	"io"
	"path/filepath"
	"strings"
	"time"

	"bladecard/render/canvas"
	"bladecard/render/card"
	"bladecard/render/export"
	"bladecard/render/page"
)

var cardsCommand = command{
	name: "cards", args: "JOB... -o DIR",
	does: "print the cards of each job, a PDF a job",
	more: `
The PDF alternates front sheets and back sheets: print it duplex. The sheet margin says about
which edge the printer must flip. Cut at the crop marks, laminate, clip at the empty strip.`,
	run: cards,
}

// cardFlags is what the command line says of the paper.
type cardFlags struct {
	dir, size, paper, flip string
	charts                 string
	single                 bool
	dx, dy                 float64
}

func cards(c *call) int {
	var f cardFlags
	if code, ok := c.parse(func(fs *flag.FlagSet) {
		c.language(fs)
		fs.StringVar(&f.dir, "o", "", "folder `DIR` for the PDFs (needed)")
		fs.StringVar(&f.size, "size", page.Sizes[0].Name, "card size in mm or in, one of "+sizeNames()+"; the `SIZE`")
		fs.StringVar(&f.paper, "paper", "", "`PAPER` a4 or letter; left out: the shop's")
		fs.StringVar(&f.flip, "flip", "long", "`EDGE` about which the printer turns the sheet: long or short")
		fs.BoolVar(&f.single, "single", false, "one card a page of the card's size, without marks")
		fs.StringVar(&f.charts, "charts", "", "also write the charts as SVG and PNG, for slides, to the folder `DIR`")
		fs.Float64Var(&f.dx, "back-right", 0, "shift the backs right by `MM`, for a printer that is off")
		fs.Float64Var(&f.dy, "back-down", 0, "shift the backs down by `MM`")
	}); !ok {
		return code
	}
	if f.dir == "" {
		return c.wrong("-o is missing: the folder to write to")
	}
	size, ok := sizeOf(f.size)
	if !ok {
		return c.wrong(fmt.Sprintf("--size %q is not a card size; accepted: %s", f.size, sizeNames()))
	}
	if wrong := wrongPaper(f.paper); wrong != "" {
		return c.wrong(wrong)
	}
	flips := map[string]page.Flip{"long": page.LongEdge, "short": page.ShortEdge}
	flip, ok := flips[f.flip]
	if !ok {
		return c.wrong(fmt.Sprintf("--flip %q is not an edge; accepted: long, short", f.flip))
	}
	out := newOutputs(f.dir, "-cards.pdf")
	return c.each(func(l loaded) int {
		path, ok := out.path(c, l.path)
		if !ok {
			return exitUsage
		}
		sheets, err := cardSheets(l, f, size, flip)
		if err == nil {
			err = writeFile(path, func(w io.Writer) error { return page.Write(w, meta(l), sheets) })
		}
		if err != nil {
			return c.fail(err)
		}
		fmt.Fprintln(c.stdout, path)
		if f.charts != "" {
			if err := writeCharts(l, f.charts, out.name(l.path)); err != nil {
				return c.fail(err)
			}
		}
		return exitDone
	})
}

// The charts that stand by themselves.
const (
	chartWidthMM  = 140.0
	chartHeightMM = 90.0
	chartDPI      = 200.0
)

// writeCharts writes the charts of a job as SVG and PNG.
func writeCharts(l loaded, dir, name string) error {
	for _, fig := range card.Figures(l.plan, l.voice) {
		draw := func(c canvas.Canvas) error { return fig.Draw(c, chartWidthMM, chartHeightMM) }
		base := filepath.Join(dir, name+"-"+fig.Name)
		if err := writeFile(base+".svg", func(w io.Writer) error { return export.SVG(w, chartWidthMM, chartHeightMM, draw) }); err != nil {
			return err
		}
		if err := writeFile(base+".png", func(w io.Writer) error { return export.PNG(w, chartWidthMM, chartHeightMM, chartDPI, draw) }); err != nil {
			return err
		}
	}
	return nil
}

func cardSheets(l loaded, f cardFlags, size page.Size, flip page.Flip) ([]page.Sheet, error) {
	list, err := card.All(l.plan, size, l.voice)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", l.path, err)
	}
	note := l.voice.T("sheet.flip-long")
	if flip == page.ShortEdge {
		note = l.voice.T("sheet.flip-short")
	}
	return page.Impose(paperOf(f.paper, l.shop), size, list, page.Options{
		Single: f.single, Flip: flip, BackDX: f.dx, BackDY: f.dy,
		Title: strings.TrimSpace(l.plan.Job + " " + l.plan.Title), FlipNote: note,
		FrontNote: l.voice.T("sheet.front"), BackNote: l.voice.T("sheet.back"),
	})
}

// meta is what the PDF says of itself. Its date is the job's day of delivery, never the clock's.
func meta(l loaded) page.Meta {
	m := page.Meta{
		Title:    strings.TrimSpace(l.plan.Job + " " + l.plan.Title),
		Author:   l.plan.Shop,
		Subject:  l.voice.T("sheet.subject"),
		Language: l.voice.Code,
	}
	if day, err := time.Parse(time.DateOnly, l.plan.Due); err == nil {
		m.Date = day
	}
	return m
}

func sizeOf(name string) (page.Size, bool) {
	for _, s := range page.Sizes {
		if s.Name == name {
			return s, true
		}
	}
	return page.Size{}, false
}

func sizeNames() string {
	var out []string
	for _, s := range page.Sizes {
		out = append(out, s.Name)
	}
	return strings.Join(out, ", ")
}
