// Package figure draws the pictures of the paper on a canvas.Canvas: charts, the angle dial,
// bent blades, the color patch. It gets plain data and finished texts, computes no
// process value and says no word of its own. Every drawing stays inside its Rect, keeps its
// texts apart, and tells things apart by width, dash and hatch, never by color alone.
//
// A drawing that has no room, or data that make no picture, is an error and nothing is
// promised about what was drawn before it. ErrNoRoom and ErrNoData are the kinds to test for.
//
// go-chart draws the lines, the dots, the axes and their ticks of a chart (plot.go), through a
// chart.Renderer that writes canvas paths (renderer.go). What it lacks (round ticks, a tinted
// band under the grid, labels at the ends of lines, level titles, a second axis of x) is a range
// and some series of this package's own (scale.go, layers.go).
package figure
