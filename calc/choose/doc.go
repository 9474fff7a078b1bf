// Package choose makes the Plan of a job on a shop: for every screen the setup that meets its two
// demands, a film and a cut, with the least departure from the workhorse; what should come of
// it, with its band; and what the press, the flash and the dryer must do.
//
// The way through: Make (make.go) goes over the screens of a job. A demand (demand.go) says what each must
// do. What a setup is judged with and does not change is given (given.go): mesh, stencil, ink and press. A
// chooser (choose.go) tries every blade, angle and stroke count and judges each trial (judge.go). screen.go
// writes the choice down with its angle range, band, path, corrections, equivalents, curves and warnings.
// order.go and heat.go finish a location. Customs of the trade are data, all in practice.go.
//
// A formula that refuses its figures ends the computation of a screen (package sure) and becomes an error of
// the job at that screen.
//
// Sources are named in the packages of the formulas (mesh, blade, film, halftone, tension, ink,
// cure, press). What is decided here is common practice or derived, and marked so. The trade's
// tolerance of blade hardness, 5 Shore A, is from Elliot 2007 [5] (published).
package choose
