// Package day lays out a day of a shop from the plans of its jobs: for each press the order that needs the fewest
// changes, the blades to lay out and where two screens want the same one, the screens to make, the inks to mix, the
// settings of the dryer and the blades that are due for sharpening. It computes no film: every figure of a
// print is its plan's.
package day
