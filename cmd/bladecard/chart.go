package main

import (
	"fmt"
	"io"
	"path/filepath"
	"strings"

	"bladecard/render/canvas"
	"bladecard/render/export"
	"bladecard/render/figure"
)

// isChart tells whether a name is one of a chart's file.
func isChart(path string) bool {
	ext := strings.ToLower(filepath.Ext(path))
	return ext == ".svg" || ext == ".png"
}

func wrongChart(path string) string {
	return fmt.Sprintf("--chart %q: accepted are names that end in .svg or .png", path)
}

// writeChart draws a chart by itself, as the ending of its file says.
func writeChart(path string, ch figure.Chart) error {
	draw := func(c canvas.Canvas) error {
		at := figure.Rect{X: 2, Y: 2, W: chartWidthMM - 4, H: chartHeightMM - 4}
		return ch.Draw(c, at)
	}
	return writeFile(path, func(w io.Writer) error {
		if strings.EqualFold(filepath.Ext(path), ".png") {
			return export.PNG(w, chartWidthMM, chartHeightMM, chartDPI, draw)
		}
		return export.SVG(w, chartWidthMM, chartHeightMM, draw)
	})
}
