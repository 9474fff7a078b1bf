package choose

import (
	"math"

	"bladecard/calc/film"
	"bladecard/calc/fit"
	"bladecard/calc/ink"
	"bladecard/calc/internal/sure"
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
	perDeg, perShoreA float64
	mesh              func(name string) float64
	share             plan.Band // nine of ten, of a stroke's deposit that the next wet stroke adds
}

// doubt is what is not known of this screen.
func (g given) doubt() doubt {
	prior := fit.Expected()
	if l := g.learned; l != nil {
		half := l.NinetyOf(l.NextStroke.Error, prior.NextStroke)
		return doubt{
			perDeg: l.NinetyOf(l.Angle.Error, prior.Angle) / ninety / 10, perShoreA: l.NinetyOf(l.Hardness.Error, prior.Hardness) / ninety / 10,
			mesh:  func(name string) float64 { return l.NinetyOf(l.MeshError(name), prior.Mesh) / ninety },
			share: plan.Band{Low: math.Max(0, l.NextStroke.Value-half), Value: l.NextStroke.Value, High: math.Min(mostStrokeShare, l.NextStroke.Value+half)},
		}
	}
	tail := 0.05 * (film.MostNextStroke - film.LeastNextStroke)
	return doubt{
		perDeg: prior.Angle / 10, perShoreA: prior.Hardness / 10, mesh: func(string) float64 { return prior.Mesh },
		share: plan.Band{Low: film.LeastNextStroke + tail, Value: fit.NextStroke, High: film.MostNextStroke - tail},
	}
}

// mostStrokeShare ends the range of film.Strokes.
const mostStrokeShare = 0.95

// strokes is how far the film of b wet strokes over that of a may lie below and above the computed ratio, on
// the logarithm, nine of ten. The sides differ: a share can be far above the computed one.
func (d doubt) strokes(a, b int) (below, above float64) {
	at := func(share float64) float64 {
		return math.Log(sure.Of(film.Strokes(b, share)) / sure.Of(film.Strokes(a, share)))
	}
	value, x, y := at(d.share.Value), at(d.share.Low), at(d.share.High)
	return value - math.Min(x, y), math.Max(x, y) - value
}

// hitsDoubt is what the later ones of several hits leave unknown: they all transfer alike.
func hitsDoubt(hits int) float64 { return hitSpread * (1 - 1/float64(max(1, hits))) }

// band is the band of a film. Out of the box its parts are the model's own band and what is not known of further
// wet strokes and hits. With a calibration they are the fit's error for this mesh, blade, angle, hardness
// and stroke count, the scatter of a measured print or the usual errors, whichever is more (the one holds
// the other), what a new day brings, and what an old calibration may have drifted.
func (g given) band(t trial) plan.Band {
	half := math.Hypot(fit.ModelBand, ninety*hitsDoubt(t.hits))
	below, above := g.doubt().strokes(1, t.strokes)
	if l := g.learned; l != nil {
		known := sure.Of(l.Error(g.meshName, t.stock.Name, t.angleDeg, t.stock.Hardness[0], t.strokes))
		half, below, above = l.Half(known, math.Min(1, t.moves.Together), math.Hypot(l.drift, hitsDoubt(t.hits))), 0, 0
	}
	return plan.Band{Low: t.curedUM * math.Exp(-math.Hypot(half, below)), Value: t.curedUM, High: t.curedUM * math.Exp(math.Hypot(half, above))}
}

// laidBand is the band of all the ink that a print takes: the wet film, and what sinks into the cloth, nine of
// ten of which lie inside its ends.
func laidBand(wet plan.Band, sinks ink.Sinks) plan.Band {
	value, half := sinks.LaidUM(wet.Value), sinks.HalfUM()
	return plan.Band{Low: value - math.Hypot(wet.Value-wet.Low, half), Value: value, High: value + math.Hypot(wet.High-wet.Value, half)}
}

// effectBand is the band of the change from setup a on screen x to setup b on screen y, on the logarithm.
func effectBand(a, b trial, x, y given, signSure bool) (low, high float64) {
	d, effect := x.doubt(), math.Log(b.curedUM/a.curedUM)
	parts := []float64{
		d.perDeg * (b.angleDeg - a.angleDeg),
		d.perShoreA * (b.stock.Hardness[0] - a.stock.Hardness[0]),
		hitsDoubt(b.hits) - hitsDoubt(a.hits),
	}
	switch {
	case x.meshName != y.meshName:
		parts = append(parts, d.mesh(x.meshName), d.mesh(y.meshName))
	case x.eomUM != y.eomUM:
		parts = append(parts, shapeSpread*effect)
	}
	switch {
	case a.stock.Edge != b.stock.Edge:
		parts = append(parts, shapeSpread*effect)
	case a.stock.Name != b.stock.Name:
		parts = append(parts, fit.UnseenBlade)
	}
	below, above := d.strokes(a.strokes, b.strokes)
	low, high = ninetyOf(effect, root(parts...), signSure && x.learned == nil)
	return effect - math.Hypot(effect-low, below), effect + math.Hypot(high-effect, above)
}

// ninetyOf is where nine of ten of a normal spread round an effect lie. Where the sign of the effect is sure, the
// part of the spread with the wrong sign is cut off first.
func ninetyOf(effect, spread float64, signSure bool) (low, high float64) {
	if spread == 0 || !signSure || effect == 0 {
		return effect - ninety*spread, effect + ninety*spread
	}
	cut := normalShare(-math.Abs(effect) / spread)
	at := func(share float64) float64 {
		return effect + math.Copysign(spread, effect)*normalAt(cut+share*(1-cut))
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
