package main

import (
	"io"

	"bladecard/cmd/bladecard/internal/disk"
	"bladecard/render/canvas"
	"bladecard/render/charts"
)

var cardsCommand = command{
	name: "cards", args: "JOB... -o DIR",
	run: cards,
}

func cards(c *call) int {
	var d documents
	var out destination
	var charts string
	if code, ok := c.parse(func(f *flags) {
		c.jobFlags(f)
		d.declare(f)
		out.declare(f)
		f.text(&charts, "charts", "DIR")
		c.writeFlags(f)
	}); !ok {
		return code
	}
	if charts == disk.Stdout {
		return c.wrong("--charts - is standard output, which takes one file; a folder is wanted")
	}
	return c.print(&out, cardsSuffix, func(w io.Writer, l loaded) error {
		err := d.cards(w, l)
		if err == nil && charts != "" {
			err = writeCharts(l, out.Writer, charts)
		}
		return err
	})
}

const cardsSuffix = "-cards.pdf"

// The charts that stand by themselves.
const (
	chartWidthMM  = 140.0
	chartHeightMM = 90.0
	chartDPI      = 200.0
)

// writeCharts writes the charts of a job as SVG and PNG.
func writeCharts(l loaded, to *disk.Writer, dir string) error {
	var files []disk.Claim
	for _, fig := range charts.Files(l.plan, l.voice) {
		draw := func(c canvas.Canvas) error { return fig.Draw(c, chartWidthMM, chartHeightMM) }
		for _, ext := range []string{".svg", ".png"} {
			data, err := filled(func(w io.Writer) error { return exportChart(w, ext, chartHeightMM, draw) })
			if err != nil {
				return err
			}
			name := jobName(l.path) + "-" + fig.Name + ext
			files = append(files, disk.Claim{File: disk.File{Name: name, Data: data}, Job: l.path})
		}
	}
	return to.Files(dir, files...)
}
