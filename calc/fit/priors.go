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
	Day        float64 // what the prints of a day have in common beside the shop's factor

	// Scatter is what one measurement of one print is expected to be off, and ScatterWeight how
	// many measurements that expectation counts for.
	Scatter, ScatterWeight float64
}

// NextStroke is the share of a further wet stroke that the predicted films were computed with.
const NextStroke = film.NextStrokeShare

// What is not known of the effects of angle and hardness, one sigma of the logarithm. Kind: derived for
// the angle (15 to 45 deg bring +2 to +40 % while the screen still clears, taken as even: width / sqrt 12
// over three steps); a judgement for the hardness (signs published, no size for textile).
const (
	AngleSpread    = 0.0305 // per 10 deg
	HardnessSpread = 0.04   // per 10 Shore A
)

// Expected returns the priors for a shop that nothing was measured of.
//
// Kind: derived. Shop: the published wet-height rule against the model over seven meshes, -20 to
// +25 % as extremes of seven draws, and as much again for press and ink. Mesh: the fit of fabric
// thickness to five published meshes, 6 %, and the rule's own steps. Angle and Hardness: see
// there. NextStroke: 0.1 to 0.8, even (from memory). Day: a judgement (from memory): ink, room, blade
// and hand of a day. Scatter: a film comb's
// step on a film of 50 um, from memory. Range: none is taken.
func Expected() Priors {
	return Priors{
		Shop: 0.25, Mesh: 0.10, Angle: AngleSpread, Hardness: HardnessSpread, NextStroke: 0.202, Day: 0.08,
		Scatter: 0.10, ScatterWeight: 1,
	}
}
