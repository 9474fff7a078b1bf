package fit

import (
	"fmt"
	"math"
)

// Design foretells what planned prints would tell of a shop, print by print, before any of them is made: how far the
// films of its setups would still be open on a new day (I-optimality), and the effects of angle, hardness and a
// further stroke with them. The scatter of a print, which no plan makes less, is not in it.
type Design struct {
	meanDeg, meanShoreA float64
	meshes, days        map[string]int
	scatter             float64
	day                 float64     // one sigma
	cov                 [][]float64 // of the terms, for a scatter of one
	target              [][]float64 // mean of x x' over the targets
	aims                [][]float64 // Doubt is the sum over cov and aims
	gain                [][]float64 // cov aims cov, for Gain
}

// NewDesign starts a plan without prints. The targets are the setups whose films are to be known; the meshes of
// prints must be among theirs, and the days among days.
//
// Range: 1 target and 1 day or more, inside the ranges of Shop, priors above 0 and finite; an error outside. Kind:
// derived, see Gain.
func NewDesign(targets []Print, days []string, pr Priors) (*Design, error) {
	if len(targets) == 0 || len(days) == 0 {
		return nil, fmt.Errorf("fit: %d setups on %d days; 1 or more of each are accepted", len(targets), len(days))
	}
	d := &Design{meshes: map[string]int{}, days: map[string]int{}, scatter: pr.Scatter, day: pr.Day}
	priors := []float64{colShop: pr.Shop, colAngle: pr.Angle, colHardness: pr.Hardness, colStroke: pr.NextStroke}
	for _, p := range targets {
		d.meanDeg += p.AngleDeg / float64(len(targets))
		d.meanShoreA += p.HardnessShoreA / float64(len(targets))
		if d.meshes[p.Mesh] == 0 {
			d.meshes[p.Mesh] = len(priors)
			priors = append(priors, pr.Mesh)
		}
	}
	for _, day := range days {
		d.days[day] = len(priors)
		priors = append(priors, pr.Day)
	}
	d.cov, d.target = square0(len(priors)), square0(len(priors))
	for i, p := range priors {
		if !(p > 0) || math.IsInf(p, 1) {
			return nil, fmt.Errorf("fit: a prior of %g; above 0 and finite is accepted", p)
		}
		d.cov[i][i] = square(p / pr.Scatter)
	}
	for _, p := range targets {
		r, err := d.entry(p)
		if err != nil {
			return nil, err
		}
		r.day = 0 // a new one
		each(r, func(i int, x float64, j int, y float64) { d.target[i][j] += x * y / float64(len(targets)) })
	}
	d.aim(priors)
	d.refresh()
	return d, nil
}

// aim weighs what is to be learned: the films, and the effect of angle, hardness and further strokes, each as a
// share of what is open of it before a print is made.
func (d *Design) aim(priors []float64) {
	d.aims = square0(len(priors))
	open := square(d.Sigma()) - square(d.day)
	for i := range d.target {
		for j := range d.target {
			d.aims[i][j] = square(d.scatter) * d.target[i][j] / open * filmsShare
		}
	}
	for _, c := range []int{colAngle, colHardness, colStroke} {
		d.aims[c][c] += square(d.scatter/priors[c]) * (1 - filmsShare) / 3
	}
}

// filmsShare is how much the films count in Doubt; the effects share the rest (judgement: cards print films first,
// and the effects of changes with them).
const filmsShare = 0.75

func square0(n int) [][]float64 {
	m := make([][]float64, n)
	for i := range m {
		m[i] = make([]float64, n)
	}
	return m
}

// each calls f for each pair of the factors of an equation that are not zero.
func each(r entry, f func(i int, x float64, j int, y float64)) {
	col, x := r.factors()
	for a, i := range col {
		for b, j := range col {
			if x[a] != 0 && x[b] != 0 {
				f(i, x[a], j, x[b])
			}
		}
	}
}

func (d *Design) entry(p Print) (entry, error) {
	p.PredictedUM, p.MeasuredUM = 1, 1 // a film is neither asked nor used
	if err := p.check(); err != nil {
		return entry{}, err
	}
	_, slope, err := strokes(p.Strokes, NextStroke)
	return entry{
		angle: (p.AngleDeg - d.meanDeg) / 10, hardness: (p.HardnessShoreA - d.meanShoreA) / 10, slope: slope,
		mesh: d.meshes[p.Mesh], day: d.days[p.Day],
	}, err
}

// Sigma is the root of the mean squared error of the film of a target on a new day, on the logarithm.
//
// Range: any Design of NewDesign. Kind: derived.
func (d *Design) Sigma() float64 {
	return math.Sqrt(square(d.scatter)*over(d.cov, d.target) + square(d.day))
}

// Doubt is the share of what was open before the first print that is still open: three quarters of it are the
// squared error of the films, a twelfth each that of the effects of angle, hardness and a further stroke. It
// is 1 without prints.
//
// Range: any Design of NewDesign. Kind: derived.
func (d *Design) Doubt() float64 { return over(d.cov, d.aims) }

// over is the sum of the products of the entries of two matrices.
func over(a, b [][]float64) float64 {
	sum := 0.0
	for i := range a {
		for j := range a {
			sum += a[i][j] * b[i][j]
		}
	}
	return sum
}

// Gain is by how much Doubt falls when a print is added to the plan.
//
// Range: setups inside the ranges of Shop, on a mesh of the targets and a day of the plan; an error outside. Kind:
// textbook; the rank-one update of an inverse after Sherman and Morrison 1950, and of the mean variance with
// it (exchange of Fedorov 1972, from memory).
func (d *Design) Gain(p Print) (float64, error) {
	r, err := d.planned(p)
	if err != nil {
		return 0, err
	}
	num, den := 0.0, 1.0
	each(r, func(i int, x float64, j int, y float64) {
		num += x * y * d.gain[i][j]
		den += x * y * d.cov[i][j]
	})
	return num / den, nil
}

// Add puts a print into the plan, and Remove takes one out that is in it.
//
// Range: as Gain; an error outside. Kind: as Gain.
func (d *Design) Add(p Print) error { return d.update(p, 1) }

// Remove takes a print out of the plan that is in it.
//
// Range: as Gain; an error outside. Kind: as Gain.
func (d *Design) Remove(p Print) error { return d.update(p, -1) }

func (d *Design) planned(p Print) (entry, error) {
	r, err := d.entry(p)
	if err == nil && (r.mesh == 0 || r.day == 0) {
		err = fmt.Errorf("fit: mesh %q on day %q is not of this plan; a mesh of its targets and a day of its days are accepted", p.Mesh, p.Day)
	}
	return r, err
}

func (d *Design) update(p Print, sign float64) error {
	r, err := d.planned(p)
	if err != nil {
		return err
	}
	col, x := r.factors()
	v := make([]float64, len(d.cov))
	for i := range d.cov {
		for a, j := range col {
			v[i] += d.cov[i][j] * x[a]
		}
	}
	den := sign
	for a, j := range col {
		den += v[j] * x[a]
	}
	for i := range d.cov {
		for j := range d.cov {
			d.cov[i][j] -= v[i] * v[j] / den
		}
	}
	d.refresh()
	return nil
}

// refresh makes cov aims cov anew.
func (d *Design) refresh() { d.gain = times(times(d.cov, d.aims), d.cov) }

func times(a, b [][]float64) [][]float64 {
	out := square0(len(a))
	for i := range a {
		for k := range b {
			for j := range b[k] {
				out[i][j] += a[i][k] * b[k][j]
			}
		}
	}
	return out
}
