// Package canvas is what every drawing of the paper draws on: a small set of strokes, fills and
// texts in millimetres, from the top left corner, y downward. render/page draws it on PDF;
// another backend is one more file that implements Canvas.
package canvas
