// Package halftone computes what the dots of a halftone or a bitmap meet on a screen cloth:
// dot sizes, openings per cell, dots that fall wholly on threads, moire beats, and the tone
// curve that a press gives.
//
// Line counts and mesh counts are per inch, bitmap resolutions dots per inch, dots
// micrometres, shares 0 to 1, angles degrees.
//
// Sources: mesh to line count after weavers' guidance [25]; the rest is geometry, derived here.
package halftone
