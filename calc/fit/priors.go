package fit

import "bladecard/calc/film"

// Priors are one sigma of what is known of each term before anything is measured, on the
// logarithm. +Inf holds a term by nothing.
type Priors struct {
	Shop       float64 // the shop's factor
	Mesh       float64 // a mesh's factor beside the shop's
	Angle      float64 // per 10 deg
	Hardness   float64 // per 10 Shore A of the edge
	NextStroke float64 // of the share that a further wet stroke adds

	// Scatter is what one measurement of one print is expected to be off, and ScatterWeight how
	// many measurements that expectation counts for.
	Scatter, ScatterWeight float64
}

// NextStroke is the share of a further wet stroke that the predicted films were computed with.
const NextStroke = film.NextStrokeShare

// Expected returns the priors for a shop that nothing was measured of.
//
// Kind: derived. Shop: the published wet-height rule against the model over seven meshes, -20 to
// +25 % as extremes of seven draws, and as much again for press and ink. Mesh: the fit of fabric
// thickness to five published meshes, 6 %, and the rule's own steps. Angle and Hardness: the
// bands of differences over all plausible constants (15 to 45 deg +2 to +107 %; 70 to 80 Shore A
// -2 to -9 %), taken as even. NextStroke: 0 to 0.8, even (from memory). Scatter: a film comb's
// step on a film of 50 um, from memory. Range: none is taken.
func Expected() Priors {
	return Priors{
		Shop: 0.25, Mesh: 0.10, Angle: 0.068, Hardness: 0.025, NextStroke: 0.231,
		Scatter: 0.10, ScatterWeight: 1,
	}
}
