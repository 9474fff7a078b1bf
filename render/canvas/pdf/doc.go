// Package pdf draws canvases on the pages of a PDF. It is the only package that knows the PDF
// library.
//
// Write gives the same bytes for the same input, on every machine: its dates come from Meta.Date,
// never from the clock, and lengths are rounded before the library sees them. It may be called from
// many goroutines at once; each document works on its own copy of the font.
package pdf
