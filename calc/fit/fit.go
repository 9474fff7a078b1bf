package fit

import (
	"errors"
	"fmt"
	"maps"
	"math"
	"slices"
)

// Least is the fewest prints that a fit is made from.
const Least = 3

// Estimate is a term with its standard error.
type Estimate struct {
	Value, Error float64
	Told         bool // the prints narrowed it: the error is below four fifths of the prior
}

// MeshFactor is the whole factor of one mesh, shop's and its own, at the mean angle and hardness.
type MeshFactor struct {
	Name   string
	Count  int
	Factor float64 // measured / predicted
	Error  float64 // relative standard error, at the prints' mean of all terms
	Own    float64 // relative standard error of what it differs by from the other meshes; 0: as Error
}

// Outlier is a print that does not agree with the others; it is left out of the terms.
type Outlier struct {
	Print
	FittedUM float64 // what the others lead to expect
	Index    int     // among the prints given
}

// Spread is the least and the most that prints were made with.
type Spread struct{ Low, High float64 }

// take widens a spread to hold x; the first one makes it.
func (s *Spread) take(x float64, first bool) {
	if first {
		*s = Spread{x, x}
	}
	s.Low, s.High = min(s.Low, x), max(s.High, x)
}

// Result is what the prints say.
type Result struct {
	Terms

	AngleDeg, ShoreA, Strokes Spread // of the prints; where both ends are one, nothing is told of the effect

	Freedom  float64 // degrees of freedom behind Scatter
	LeaveOut float64 // root mean square of ln(film) when each print is predicted from the others
	Outliers []Outlier
	FittedUM []float64 // of every print given, in order
}

// ErrFew is returned for fewer than Least prints.
var ErrFew = fmt.Errorf("fit: at least %d measured prints are needed", Least)

// ErrDisagree is returned when more than a quarter of the prints do not agree with the others.
var ErrDisagree = errors.New("fit: more than a quarter of the measured prints disagree with the others")

// ErrScattered is returned when the prints differ from one another, without rule, by more than a
// factor of e.
var ErrScattered = errors.New("fit: the measured prints differ so much from one another that they tell nothing")

// mostScatter is the scatter from which prints tell nothing, as a standard deviation of ln(film).
const mostScatter = 1.0

// MostMeshes is how many different meshes a fit takes: those of a shop's racks.
const MostMeshes = 256

// The factors between which a shop may print: measured over predicted films (common practice: some
// four standard deviations of what shops are expected to differ by, see Expected). A mesh may be off by
// meshTimes more, four standard deviations of what meshes are expected to differ by.
const leastTimes, mostTimes, meshTimes = 0.4, 2.5, 1.5

// WrongUnit is returned when films are so far from the predicted ones that their unit must be wrong.
type WrongUnit struct {
	Times float64 // measured / predicted
	Mesh  string  // on which; empty: on all
}

// Error says by how much the films are off.
func (e WrongUnit) Error() string {
	on := ""
	if e.Mesh != "" {
		on = " on mesh " + e.Mesh
	}
	return fmt.Sprintf("fit: films%s run %.3g x predicted: check the unit", on, e.Times)
}

// Shop fits the terms to the measured prints of one shop. Prints that stand out by more than four
// times the scatter of the others (six prints or more) are named and left out.
//
// Range: Least to 1 000 000 prints of at most MostMeshes meshes, films of 0.01 to 100 000 um; an
// error outside (ErrFew, ErrDisagree, ErrScattered, WrongUnit). Kind: textbook; penalised (ridge) least
// squares after Hoerl and Kennard 1970 [50], first weights after Huber 1964 [51], scale from the median absolute
// deviation.
func Shop(prints []Print, pr Priors) (Result, error) {
	if err := check(prints); err != nil {
		return Result{}, err
	}
	f := newFitter(prints, pr)
	if err := f.settle(f.reweigh); err != nil { // large residuals are held back
		return Result{}, err
	}
	out, err := f.leaveOut()
	if err != nil {
		return Result{}, err
	}
	if err := f.settle(f.rescale); err != nil { // those that are left weigh the same
		return Result{}, err
	}
	if f.sigma > mostScatter {
		return Result{}, ErrScattered
	}
	return f.result(out)
}

// check refuses prints that no fit can be made from.
func check(prints []Print) error {
	if len(prints) < Least {
		return ErrFew
	}
	ratios := make([]float64, len(prints))
	meshes := map[string]bool{}
	for i, p := range prints {
		if err := p.check(); err != nil {
			return err
		}
		ratios[i] = p.ratio()
		meshes[p.Mesh] = true
	}
	slices.Sort(ratios)
	if times := math.Exp(ratios[len(ratios)/2]); times < leastTimes || times > mostTimes {
		return WrongUnit{Times: times}
	}
	if n := len(meshes); n > MostMeshes {
		return fmt.Errorf("fit: the prints are of %d meshes; at most %d are accepted", n, MostMeshes)
	}
	return nil
}

// fitter holds the equations of a fit, and what they said at the last step.
type fitter struct {
	prints []Print
	rows   []entry
	prior  Priors
	priors []float64 // by column
	meshes []string
	index  map[string]int // column of each mesh
	days   map[string]int // column of each day
	sol    solution

	meanDeg, meanShoreA, meanSlope float64
	q                              float64 // where the strokes' term is taken as straight
	sigma                          float64 // scatter
	free                           float64 // degrees of freedom
}

func newFitter(prints []Print, pr Priors) *fitter {
	f := &fitter{prints: prints, prior: pr, index: map[string]int{}, q: NextStroke, sigma: pr.Scatter}
	for _, p := range prints {
		f.meanDeg += p.AngleDeg / float64(len(prints))
		f.meanShoreA += p.HardnessShoreA / float64(len(prints))
		if _, known := f.index[p.Mesh]; !known {
			f.index[p.Mesh] = columns + len(f.meshes)
			f.meshes = append(f.meshes, p.Mesh)
		}
	}
	f.priors = []float64{colShop: pr.Shop, colAngle: pr.Angle, colHardness: pr.Hardness, colStroke: pr.NextStroke}
	for range f.meshes {
		f.priors = append(f.priors, pr.Mesh)
	}
	f.days = dayColumns(prints, len(f.priors))
	for range min(len(f.days), MostDays) {
		f.priors = append(f.priors, pr.Day)
	}
	f.rows = make([]entry, len(prints))
	for i := range f.rows {
		f.rows[i].w = 1
	}
	return f
}

// MostDays is how many days a fit tells apart. Of more, neighbors share a term.
const MostDays = 64

// dayColumns gives each day of the prints a column from first on, in the order of their texts.
func dayColumns(prints []Print, first int) map[string]int {
	columns := map[string]int{}
	for _, p := range prints {
		columns[p.Day] = 0
	}
	for i, day := range slices.Sorted(maps.Keys(columns)) {
		columns[day] = first + i*min(len(columns), MostDays)/len(columns)
	}
	return columns
}

// straighten writes the equations with the strokes' term straight at q.
func (f *fitter) straighten() error {
	sum := 0.0
	for i, p := range f.prints {
		value, slope, err := strokes(p.Strokes, f.q)
		if err != nil {
			return err
		}
		r := &f.rows[i]
		r.angle, r.hardness, r.slope, r.mesh = (p.AngleDeg-f.meanDeg)/10, (p.HardnessShoreA-f.meanShoreA)/10, slope, f.index[p.Mesh]
		r.day = f.days[p.Day]
		r.y = p.ratio() - value + slope*(f.q-NextStroke)
		sum += slope / float64(len(f.prints))
	}
	f.meanSlope = sum
	return nil
}

// step solves for the terms at the present weights, scatter and q.
func (f *fitter) step() error {
	if err := f.straighten(); err != nil {
		return err
	}
	sol, err := solve(f.rows, f.priors, f.sigma*f.sigma)
	if err != nil {
		return err
	}
	f.sol = sol
	f.q = math.Max(0, math.Min(mostShare, NextStroke+sol.term[colStroke]))
	return nil
}

// settle repeats the step, and takes the scatter and the weights anew, until neither terms nor scatter move.
func (f *fitter) settle(scatter func()) error {
	const most, still = 60, 1e-12
	for range most {
		sigma, terms := f.sigma, f.sol.term
		if err := f.step(); err != nil {
			return err
		}
		scatter()
		moved := math.Abs(f.sigma - sigma)
		for i, before := range terms {
			moved = math.Max(moved, math.Abs(f.sol.term[i]-before))
		}
		if terms != nil && moved < still {
			return nil
		}
	}
	return nil // the last digits only
}

func (f *fitter) residual(i int) float64 { return f.rows[i].y - f.sol.of(f.rows[i]) }

// leastScatter is what no shop's measurements get below: a comb or a gauge has steps.
const leastScatter = 0.01

// left is the share of a print's scatter that its residual shows: the rest has pulled the terms.
func (f *fitter) left(i int) float64 { return math.Max(0.05, 1-f.rows[i].w*f.sol.spread(f.rows[i])) }

// reweigh takes the scatter from the median of the residuals, each of which shows only a share of it, and
// weighs those beyond 1.345 of it down.
func (f *fitter) reweigh() {
	abs := make([]float64, len(f.rows))
	for i := range f.rows {
		abs[i] = math.Abs(f.residual(i)) / math.Sqrt(f.left(i))
	}
	sorted := slices.Clone(abs)
	slices.Sort(sorted)
	mad := sorted[len(sorted)/2]
	// What is expected counts for a few residuals more.
	n, n0 := float64(len(abs)), f.prior.ScatterWeight
	f.sigma = math.Max(leastScatter, math.Sqrt((n*square(1.4826*mad)+n0*square(f.prior.Scatter))/(n+n0)))
	for i, a := range abs {
		f.rows[i].w = 1
		if limit := 1.345 * f.sigma; a > limit {
			f.rows[i].w = limit / a
		}
	}
}

// rescale takes the scatter from the residuals and the degrees of freedom that the terms leave.
func (f *fitter) rescale() {
	f.free = f.freedom()
	if f.free <= 0 { // as many terms as prints, and nothing expected
		f.free, f.sigma = 0, math.Max(leastScatter, f.prior.Scatter)
		return
	}
	sum := f.prior.ScatterWeight * square(f.prior.Scatter)
	for i, r := range f.rows {
		if r.w > 0 {
			sum += square(f.residual(i))
		}
	}
	f.sigma = math.Max(leastScatter, math.Sqrt(sum/f.free))
}

// freedom is how many prints, and prints that are expected, are left when the terms have used theirs.
func (f *fitter) freedom() float64 {
	left := f.prior.ScatterWeight
	for _, r := range f.rows {
		if r.w > 0 {
			left += 1 - f.sol.spread(r)
		}
	}
	return left
}

// What makes an outlier: at least leastToJudge prints, and a residual of more than standOutTimes
// the scatter, of which its own pull on the terms is taken off.
const (
	leastToJudge  = 6
	standOutTimes = 4.0
)

// leaveOut lists the prints that do not agree with the others, and takes all weight from them; the others weigh the same
// again.
func (f *fitter) leaveOut() (out []int, err error) {
	for i := range f.rows {
		residual, left := math.Abs(f.residual(i)), f.left(i)
		if len(f.rows) >= leastToJudge && residual > standOutTimes*f.sigma*math.Sqrt(left) && residual/left > standOutTimes*f.sigma {
			out = append(out, i)
		}
	}
	for i := range f.rows {
		f.rows[i].w = 1
	}
	for _, i := range out {
		f.rows[i].w = 0
	}
	if 4*len(out) > len(f.rows) {
		return nil, ErrDisagree
	}
	return out, nil
}

// result writes down what was found.
func (f *fitter) result(out []int) (Result, error) {
	r := Result{Terms: f.terms(), Freedom: f.free, FittedUM: make([]float64, len(f.prints))}
	r.Count = len(f.prints) - len(out)
	for _, m := range r.Meshes {
		if m.Factor < leastTimes/meshTimes || m.Factor > mostTimes*meshTimes {
			return Result{}, WrongUnit{m.Factor, m.Name}
		}
	}
	sum := 0.0
	for i, p := range f.prints {
		r.AngleDeg.take(p.AngleDeg, i == 0)
		r.ShoreA.take(p.HardnessShoreA, i == 0)
		r.Strokes.take(float64(p.Strokes), i == 0)
		left := f.residual(i)
		r.FittedUM[i] = p.MeasuredUM * math.Exp(-left)
		if f.rows[i].w > 0 {
			if !r.HasBlade(p.Blade) {
				r.Blades = append(r.Blades, p.Blade)
			}
			sum += square(left / math.Max(1e-9, 1-f.sol.spread(f.rows[i])))
		}
	}
	r.LeaveOut = math.Sqrt(sum / float64(r.Count))
	for _, i := range out {
		r.Outliers = append(r.Outliers, Outlier{Print: f.prints[i], FittedUM: r.FittedUM[i], Index: i})
	}
	return r, nil
}

// terms are the terms with their errors. The error of a factor is that at the mean of all terms, where it is least and goes with no
// other; its value is that of one stroke.
func (f *fitter) terms() Terms {
	estimate := func(value, err, prior float64) Estimate { return Estimate{value, err, err < 0.8*prior} }
	err := func(c int) float64 { return f.sigma * math.Sqrt(f.sol.cov[c][c]) }
	t := Terms{
		MeanDeg: f.meanDeg, MeanShoreA: f.meanShoreA, MeanSlope: f.meanSlope, Scatter: f.sigma, Day: f.prior.Day,
		Shop:       estimate(math.Exp(f.sol.term[colShop]), f.errorAtMean(colShop), f.prior.Shop),
		Angle:      estimate(f.sol.term[colAngle], err(colAngle), f.prior.Angle),
		Hardness:   estimate(f.sol.term[colHardness], err(colHardness), f.prior.Hardness),
		NextStroke: estimate(f.q, err(colStroke), f.prior.NextStroke),
	}
	t.Shop.Error = math.Hypot(t.Shop.Error, f.prior.Mesh)
	counts := map[int]int{}
	for _, row := range f.rows {
		if row.w > 0 {
			counts[row.mesh]++
		}
	}
	for i, name := range f.meshes {
		if col := columns + i; counts[col] > 0 {
			t.Meshes = append(t.Meshes, MeshFactor{
				Name: name, Count: counts[col], Factor: math.Exp(f.sol.term[colShop] + f.sol.term[col]),
				Error: f.errorAtMean(col), Own: f.ownError(i),
			})
		}
	}
	return t
}

// errorAtMean is the error of the factor of a mesh, or of the shop, at the mean of the other terms.
func (f *fitter) errorAtMean(col int) float64 {
	return math.Hypot(f.common(), f.sigma*math.Sqrt(f.sol.spread(entry{slope: f.meanSlope, mesh: col})))
}

// common is what all measurements may be off together, one sigma of ln(film): more prints do not tell it.
func (f *fitter) common() float64 {
	sum, n := 0.0, 0.0
	for i, p := range f.prints {
		if f.rows[i].w > 0 {
			sum += p.Doubt
			n++
		}
	}
	return sum / math.Max(1, n)
}

// ownError is the error of what a mesh differs by from the others: of two meshes, the root of the sum of both
// squares is the error of their difference.
func (f *fitter) ownError(mesh int) float64 {
	at, all := columns+mesh, len(f.meshes)
	if all == 1 {
		return f.sigma * math.Sqrt(f.sol.cov[at][at])
	}
	sum := 0.0
	for other := columns; other < columns+all; other++ {
		sum += f.sol.cov[at][at] + f.sol.cov[other][other] - 2*f.sol.cov[at][other]
	}
	return f.sigma * math.Sqrt(sum/2/float64(all-1))
}

func square(x float64) float64 { return x * x }
