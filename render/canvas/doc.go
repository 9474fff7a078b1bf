// Package canvas is what every drawing of the paper draws on: a small set of strokes, fills and
// texts in millimeters, from the top left corner, y downward. It holds the interface, a recorder, the
// document's font with its measures, and pictures. Each backend is a folder: pdf, svg, png.
package canvas
