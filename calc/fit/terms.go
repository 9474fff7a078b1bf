package fit

import (
	"math"
	"slices"
)

// Terms are what a shop keeps of a fit: enough to correct any predicted film and to tell how far
// the correction may be off.
type Terms struct {
	Shop       Estimate // factor of a mesh that is not listed; Error is relative and holds what meshes differ by
	Meshes     []MeshFactor
	MeanDeg    float64  // angle of the prints
	MeanShoreA float64  // hardness of their edges
	MeanSlope  float64  // what a change of the next stroke's share does to ln(film)
	Angle      Estimate // relative, per 10 deg from MeanDeg
	Hardness   Estimate // relative, per 10 Shore A from MeanShoreA
	NextStroke Estimate // share that a further wet stroke adds
	Blades     []string // that were measured
	Scatter    float64  // of one measurement, standard deviation of ln(film)
	Day        float64  // one sigma of what a new day brings
	Count      int      // prints that the terms stand on
}

// Times is how many standard errors lie on either side of nine in ten of the shop's prints: Student's, with
// the prints less the terms that they have to tell as degrees of freedom, 2 at the least.
//
// Range: any Terms; no error. Kind: textbook, see NinetyTimes.
func (t Terms) Times() float64 {
	times, _ := NinetyTimes(math.Max(2, float64(t.Count-len(t.Meshes)-(columns-1)))) // 2 and more is in its range
	return times
}

// UnseenBlade is one sigma of what a blade that was not measured may differ by beyond its
// hardness, relative (derived: the band of differences between layups of one edge hardness, 0.5
// to 2.6 %, taken as even, and as much again for its thickness and free height).
const UnseenBlade = 0.01

// Factor is what a predicted film of the given setup is multiplied by; further strokes are
// counted with NextStroke beforehand.
//
// Range: angles of 0 to 90 deg, hardness of 1 to 100 Shore A; beyond the prints it runs straight
// on, with Error growing. Kind: derived, the fitted terms of Shop.
func (t Terms) Factor(mesh string, angleDeg, hardnessShoreA float64) float64 {
	ln := math.Log(t.mesh(mesh).Factor)
	ln += t.Angle.Value*(angleDeg-t.MeanDeg)/10 + t.Hardness.Value*(hardnessShoreA-t.MeanShoreA)/10
	return math.Exp(ln)
}

// Error is one sigma of how far Factor and the further strokes together may be off, relative,
// for a blade of the rack; the scatter of the prints themselves is not in it.
//
// Range: 1 to 20 strokes; an error outside. Kind: derived, the errors of the terms at the mean of
// the prints, where they go with no other, and of each term with the distance from it.
func (t Terms) Error(mesh, blade string, angleDeg, hardnessShoreA float64, times int) (float64, error) {
	_, slope, err := strokes(times, t.NextStroke.Value)
	if err != nil {
		return 0, err
	}
	sum := square(t.mesh(mesh).Error) + square(t.Angle.Error*(angleDeg-t.MeanDeg)/10) +
		square(t.Hardness.Error*(hardnessShoreA-t.MeanShoreA)/10) + square(t.NextStroke.Error*(slope-t.MeanSlope))
	if !t.HasBlade(blade) {
		sum += square(UnseenBlade)
	}
	return math.Sqrt(sum), nil
}

func (t Terms) mesh(name string) MeshFactor {
	for _, m := range t.Meshes {
		if m.Name == name {
			return m
		}
	}
	return MeshFactor{Name: name, Factor: t.Shop.Value, Error: t.Shop.Error}
}

// MeshError is one sigma of what is not known of how a mesh differs from the others, relative.
//
// Range: any name; one that was not measured differs by MeshSpread. Kind: derived, see Result.
func (t Terms) MeshError(name string) float64 {
	switch m := t.mesh(name); {
	case m.Count == 0:
		return MeshSpread
	case m.Own == 0:
		return m.Error
	default:
		return m.Own
	}
}

// NinetyOf is half of the band of nine in ten of a term with an error of which prior was known beforehand. As far
// as the prints narrowed it, it hangs on their scatter, which is estimated: that part is Student's.
//
// Range: errors above 0. Kind: derived.
func (t Terms) NinetyOf(err, prior float64) float64 {
	before := math.Min(1, square(err/prior))
	return err * math.Sqrt(square(normalNinety)*before+square(t.Times())*(1-before))
}

// Half is half of the band of nine in ten of a print on a new day, as a logarithm: what Error leaves, the scatter
// of a print or what else moves it (the larger; Student's, as it is estimated), the day, and drift,
// what is not known beside them.
//
// Range: standard deviations of 0 and more. Kind: derived.
func (t Terms) Half(known, moves, drift float64) float64 {
	return math.Hypot(t.Times()*math.Max(t.Scatter, moves), normalNinety*math.Sqrt(square(known)+square(t.Day)+square(drift)))
}

// HasMesh tells whether a mesh was measured.
//
// Range: any name. Kind: definition.
func (t Terms) HasMesh(name string) bool { return t.mesh(name).Count > 0 }

// HasBlade tells whether a blade was measured.
//
// Range: any name. Kind: definition.
func (t Terms) HasBlade(name string) bool {
	return slices.Contains(t.Blades, name)
}
