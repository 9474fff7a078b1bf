package main

import (
	"io"
	"path/filepath"

	"bladecard/render/canvas"
	"bladecard/render/canvas/png"
	"bladecard/render/canvas/svg"
	"bladecard/render/card"
)

var cardsCommand = command{
	name: "cards", args: "JOB... -o DIR",
	does: "make the cards to clip on the screens, one PDF per job",
	more: `
The PDF alternates front sheets and back sheets: print it duplex. The sheet margin says on which
edge the printer must flip. Cut at the crop marks, laminate, clip at the empty strip.`,
	run: cards,
}

func cards(c *call) int {
	var p paperFlags
	var dir, charts string
	if code, ok := c.parse(func(f *flags) {
		c.jobFlags(f)
		p.declare(f)
		f.folder(&dir)
		f.text(&charts, "charts", "`DIR` also writes the charts to this folder, as SVG and PNG for slides")
		c.quietFlag(f)
	}); !ok {
		return code
	}
	if dir == "" {
		return c.wrong("-o is missing: the folder to write to")
	}
	d := p.documents()
	out := newOutputs(dir, "-cards.pdf")
	return c.each(func(l loaded) int {
		c.tellShop(l.use, l.voice)
		path, ok := out.path(c, l.path)
		if !ok {
			return exitUsage
		}
		if err := writeFile(path, func(w io.Writer) error { return d.cards(w, l) }); err != nil {
			return c.fail(err)
		}
		c.wrote(path)
		if charts != "" {
			if err := writeCharts(l, charts, out.name(l.path)); err != nil {
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
		if err := writeFile(base+".svg", func(w io.Writer) error { return svg.Write(w, chartWidthMM, chartHeightMM, draw) }); err != nil {
			return err
		}
		if err := writeFile(base+".png", func(w io.Writer) error { return png.Write(w, chartWidthMM, chartHeightMM, chartDPI, draw) }); err != nil {
			return err
		}
	}
	return nil
}
