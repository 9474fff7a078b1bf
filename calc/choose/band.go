package choose

import (
	"math"

	"bladecard/calc/film"
	"bladecard/calc/fit"
	"bladecard/calc/plan"
)

// A band holds nine of ten, wherever one is printed: around a film, around the effect of a change, before the
// shop has measured and after. What is not known is stated as one standard deviation of the logarithm;
// parts that do not depend on each other are added as a root of squares.

// ninety is how many standard deviations lie to either side of nine in ten of a normal spread.
const ninety = 1.6449

// What is not known of a change beside what fit states of angle, hardness, strokes and meshes, at one
// standard deviation of the logarithm (judgement).
const (
	hitSpread   = 0.20 // of each hit after the first: gelled ink takes more or less than cloth
	shapeSpread = 0.5  // of the effect of a stencil or an edge: the form of its curve is an assumption
)

// doubt is what is not known of the effects on the film, at one standard deviation of the logarithm: what is
// known beforehand, or what the shop's own prints leave.
type doubt struct {
	perDeg, perShoreA, nextStroke float64
	mesh                          func(name string) float64
}

// doubt is what is not known on this bench.
func (b bench) doubt() doubt {
	prior := fit.Expected()
	d := doubt{
		perDeg: prior.Angle / 10, perShoreA: prior.Hardness / 10, nextStroke: prior.NextStroke,
		mesh: func(string) float64 { return prior.Mesh },
	}
	if l := b.learned; l != nil {
		d = doubt{perDeg: l.Angle.Error / 10, perShoreA: l.Hardness.Error / 10, nextStroke: l.NextStroke.Error, mesh: l.MeshError}
	}
	return d
}

// strokes is what the share of the next stroke leaves unknown in a row of wet strokes.
func (d doubt) strokes(n int, share float64) float64 {
	low, err1 := film.Strokes(n, math.Max(0, share-d.nextStroke))
	high, err2 := film.Strokes(n, math.Min(mostStrokeShare, share+d.nextStroke))
	if err1 != nil || err2 != nil {
		return 1
	}
	return math.Log(high/low) / 2
}

// mostStrokeShare ends the range of film.Strokes.
const mostStrokeShare = 0.95

// hitsDoubt is what the later ones of several hits leave unknown: they all transfer alike.
func hitsDoubt(hits int) float64 { return hitSpread * (1 - 1/float64(max(1, hits))) }

// band is the band of a film. Out of the box its parts are the model's own band and what is not known of further
// wet strokes and hits. With a calibration they are the fit's error for this mesh, blade, angle, hardness
// and stroke count, the scatter of a measured print or the usual errors, whichever is more (the one holds
// the other), what a new day brings, and what an old calibration may have drifted.
func (c chooser) band(value float64, t trial) (plan.Band, error) {
	b := c.bench
	half := math.Hypot(fit.ModelBand, ninety*math.Hypot(b.doubt().strokes(t.strokes, b.nextStroke()), hitsDoubt(t.hits)))
	if l := b.learned; l != nil {
		known, err := l.Error(b.meshName, bladeName(t.stock), t.angleDeg, t.stock.Hardness[0], t.strokes)
		if err != nil {
			return plan.Band{}, err
		}
		print := math.Max(l.Scatter, math.Min(1, t.moves.Together))
		half = l.times * root(known, print, l.Day, l.drift, hitsDoubt(t.hits))
	}
	return plan.Band{Low: value * math.Exp(-half), Value: value, High: value * math.Exp(half)}, nil
}

// differenceSpread is what is not known of the change from setup a on bench x to setup b on bench y.
func differenceSpread(a, b trial, x, y bench) float64 {
	d, share := x.doubt(), x.nextStroke()
	parts := []float64{
		d.perDeg * (b.angleDeg - a.angleDeg),
		d.perShoreA * (b.stock.Hardness[0] - a.stock.Hardness[0]),
		d.strokes(b.strokes, share) - d.strokes(a.strokes, share),
		hitsDoubt(b.hits) - hitsDoubt(a.hits),
	}
	shape := shapeSpread * math.Log(b.curedUM/a.curedUM)
	switch {
	case x.meshName != y.meshName:
		parts = append(parts, d.mesh(x.meshName), d.mesh(y.meshName))
	case x.eomUM != y.eomUM:
		parts = append(parts, shape)
	}
	switch {
	case a.stock.Edge != b.stock.Edge:
		parts = append(parts, shape)
	case bladeName(a.stock) != bladeName(b.stock):
		parts = append(parts, fit.UnseenBlade)
	}
	return root(parts...)
}

// effectBand is the band of an effect on the logarithm. Where its sign is sure, the part of the spread with
// the wrong sign is cut off, and nine of ten of the rest lie inside.
func effectBand(ln, spread float64, signSure bool) (low, high float64) {
	if spread == 0 || !signSure || ln == 0 {
		return ln - ninety*spread, ln + ninety*spread
	}
	cut := normalShare(-math.Abs(ln) / spread)
	at := func(share float64) float64 {
		return ln + math.Copysign(spread, ln)*normalAt(cut+share*(1-cut))
	}
	return math.Min(at(0.05), at(0.95)), math.Max(at(0.05), at(0.95))
}

// normalShare is the share of a normal spread below z standard deviations, and normalAt turns it round.
func normalShare(z float64) float64  { return math.Erfc(-z/math.Sqrt2) / 2 }
func normalAt(share float64) float64 { return math.Sqrt2 * math.Erfinv(2*share-1) }

// root is the root of the sum of squares.
func root(parts ...float64) float64 {
	sum := 0.0
	for _, p := range parts {
		sum += p * p
	}
	return math.Sqrt(sum)
}
