// Package fit learns from measured films how a shop prints: its factor against the predicted
// film, how that differs by mesh, and, where the prints carry it, how angle, hardness and further
// strokes act there.
//
// The model is linear on the logarithm: ln(measured / predicted) = shop + mesh + angle x (deg
// from the mean) / 10 + hardness x (Shore A from the mean) / 10 + what another share of the
// further strokes does + day, plus scatter. Prints of one day share that day's error. It is solved by penalised least squares, each term held
// near zero by what is known beforehand (its prior), so that a term that the prints do not tell
// stays at its prior with the prior's error. The scatter is estimated with it.
package fit
