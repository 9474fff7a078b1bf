package main

import (
	"errors"
	"fmt"
	"io"
	"path/filepath"
	"strings"

	"bladecard/cmd/bladecard/internal/disk"
	"bladecard/render/canvas"
	"bladecard/render/canvas/png"
	"bladecard/render/canvas/svg"
	"bladecard/render/figure"
	"bladecard/render/say"
)

// chartFlag declares --chart.
func chartFlag(f *flags, to *string) {
	f.value("chart", "FILE", func(path string) error {
		*to = path
		switch strings.ToLower(filepath.Ext(path)) {
		case ".svg", ".png":
			return nil
		}
		return errors.New("not a name of a chart; accepted: names that end in .svg or .png")
	})
}

// exportChart writes a drawing as the ending of its file says.
func exportChart(w io.Writer, ext string, high float64, draw func(canvas.Canvas) error) error {
	if strings.EqualFold(ext, ".png") {
		return png.Write(w, chartWidthMM, high, chartDPI, draw)
	}
	return svg.Write(w, chartWidthMM, high, draw)
}

// writeChart draws a chart to a file of its own. A chart of many lines is higher, so that the label of each
// has room and all of them are drawn.
func writeChart(to *disk.Writer, path string, ch figure.Chart) error {
	const restMM, lineMM = 28.0, 3.75
	high := max(chartHeightMM, restMM+lineMM*float64(len(ch.Lines)))
	data, err := filled(func(w io.Writer) error {
		return exportChart(w, filepath.Ext(path), high, func(c canvas.Canvas) error {
			return ch.Draw(c, figure.Rect{X: 2, Y: 2, W: chartWidthMM - 4, H: high - 4})
		})
	})
	if err != nil {
		return err
	}
	return to.File(path, data)
}

// evenly returns at most so many of the indexes 0 to count-1, evenly spread, the ends among them.
func evenly(count, most int) []int {
	out := make([]int, min(count, most))
	for i := range out {
		out[i] = i
		if count > most {
			out[i] = i * (count - 1) / (most - 1)
		}
	}
	return out
}

// drawn is what a chart says of an even choice; the empty text where it draws all.
func drawn(v *say.Voice, key string, count, most int) string {
	if count <= most {
		return ""
	}
	return v.T(key, "n", fmt.Sprint(most), "all", fmt.Sprint(count))
}

// titled is the title of an axis with what the chart says of its choice.
func titled(title, drawn string) string {
	if drawn == "" {
		return title
	}
	return title + " (" + drawn + ")"
}
