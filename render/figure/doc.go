// Package figure draws the pictures of the paper on a canvas.Canvas: charts, the angle dial,
// the blade in section, the color patch. It gets plain data and finished texts, computes no
// process value and says no word of its own. Every drawing stays inside its Rect, keeps its
// texts apart, and tells things apart by width, dash and hatch, never by color alone.
//
// A drawing that has no room, or data that make no picture, is an error and nothing is
// promised about what was drawn before it. ErrNoRoom and ErrNoData are the kinds to test for.
//
// The axes of a chart are drawn by go-chart through a chart.Renderer that writes canvas paths
// (renderer.go). What go-chart draws badly on a small card (bands, grid, lines with gaps, end
// labels, axis titles) are series of this package's own (series.go).
package figure
