package fit

import (
	"math"

	"bladecard/calc/film"
)

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

// ModelBand is the band of the film of one stroke before the shop has measured, as a logarithm to either side:
// nine of ten films of all shops, meshes and days lie inside (judgement, from the spread of film.Tau and
// of the published rules).
const ModelBand = 0.35

// What is not known of each term, one sigma of the logarithm, of the next stroke one sigma of its share. Kind:
// derived for the angle (15 to 45 deg bring +2 to +40 % while the screen still clears, taken as even:
// width / sqrt 12 over three steps) and for the next stroke (nine of ten of an even spread from
// film.LeastNextStroke to film.MostNextStroke, which are from memory, lie inside); a judgement for
// the hardness (signs published, no size for textile), the mesh (the fit of fabric thickness to
// five published meshes, and the steps of the published wet-height rule) and the day (from memory:
// ink, room, blade and hand).
const (
	AngleSpread      = 0.0305 // per 10 deg
	HardnessSpread   = 0.04   // per 10 Shore A
	NextStrokeSpread = 0.20
	MeshSpread       = 0.10
	DaySpread        = 0.08
)

// Expected returns the priors for a shop that nothing was measured of.
//
// Kind: derived. Shop is what ModelBand leaves when meshes and days have taken their parts. Scatter: a
// film comb's step on a film of 50 um, from memory. The others: see there. Range: none is taken.
func Expected() Priors {
	all := ModelBand / normalNinety
	return Priors{
		Shop: math.Sqrt(square(all) - square(MeshSpread) - square(DaySpread)), Mesh: MeshSpread, Angle: AngleSpread,
		Hardness: HardnessSpread, NextStroke: NextStrokeSpread, Day: DaySpread, Scatter: 0.10, ScatterWeight: 1,
	}
}
