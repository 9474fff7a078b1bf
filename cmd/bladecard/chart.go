package main

import (
	"errors"
	"io"
	"path/filepath"
	"strings"

	"bladecard/render/canvas"
	"bladecard/render/export"
	"bladecard/render/figure"
)

// chartFlag declares --chart.
func chartFlag(f *flags, to *string, what string) {
	f.value("chart", "`FILE` also draws "+what+" to this file, .svg or .png", func(path string) error {
		*to = path
		switch strings.ToLower(filepath.Ext(path)) {
		case ".svg", ".png":
			return nil
		}
		return errors.New("not a name of a chart; accepted: names that end in .svg or .png")
	})
}

// writeChart draws a chart by itself, as the ending of its file says. A chart of many lines is
// higher, so that the label of each has room and all of them are drawn.
func writeChart(path string, ch figure.Chart) error {
	const restMM, lineMM = 28.0, 3.75
	high := max(chartHeightMM, restMM+lineMM*float64(len(ch.Lines)))
	draw := func(c canvas.Canvas) error {
		return ch.Draw(c, figure.Rect{X: 2, Y: 2, W: chartWidthMM - 4, H: high - 4})
	}
	return writeFile(path, func(w io.Writer) error {
		if strings.EqualFold(filepath.Ext(path), ".png") {
			return export.PNG(w, chartWidthMM, high, chartDPI, draw)
		}
		return export.SVG(w, chartWidthMM, high, draw)
	})
}
