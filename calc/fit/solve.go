package fit

import (
	"errors"
	"math"
)

// The terms that every print has; a column per mesh follows, then one per day.
const (
	colShop = iota
	colAngle
	colHardness
	colStroke
	columns
)

// entry is one equation. Few of its factors are not zero, so they are kept by name.
type entry struct {
	angle, hardness, slope float64 // factors of the terms that every print has, beside the shop's 1
	mesh, day              int     // columns of its mesh and its day; below columns: none
	y                      float64
	w                      float64 // weight
}

// wide is how many factors of an equation may not be zero.
const wide = columns + 2

// factors lists the columns of an equation and the factors in them.
func (r entry) factors() (col [wide]int, x [wide]float64) {
	col = [wide]int{colShop, colAngle, colHardness, colStroke, r.mesh, r.day}
	x = [wide]float64{1, r.angle, r.hardness, r.slope, 1, 1}
	for i := columns; i < wide; i++ {
		if col[i] < columns {
			x[i] = 0
		}
	}
	return col, x
}

// solution of the penalised least squares: the terms, and their covariance for a scatter of one.
type solution struct {
	term []float64
	cov  [][]float64
}

var errSingular = errors.New("fit: the prints cannot tell the terms apart, and nothing else holds them; a prior on each is accepted")

// solve minimises sum w (y - x.b)^2 + lambda sum (b - 0)^2 / prior^2 over b by the normal equations
// and Cholesky's factor; lambda is the square of the scatter.
func solve(rows []entry, priors []float64, lambda float64) (solution, error) {
	n := len(priors)
	a := make([][]float64, n)
	for i := range a {
		a[i] = make([]float64, n)
		if !math.IsInf(priors[i], 1) {
			a[i][i] = lambda / (priors[i] * priors[i])
		}
	}
	b := make([]float64, n)
	for _, r := range rows {
		col, x := r.factors()
		for i, c := range col {
			if x[i] == 0 {
				continue
			}
			b[c] += r.w * x[i] * r.y
			for j, d := range col {
				a[c][d] += r.w * x[i] * x[j]
			}
		}
	}
	l, err := cholesky(a)
	if err != nil {
		return solution{}, err
	}
	s := solution{term: substitute(l, b), cov: make([][]float64, n)}
	for i := range n {
		unit := make([]float64, n)
		unit[i] = 1
		s.cov[i] = substitute(l, unit)
	}
	return s, nil
}

// cholesky returns the lower factor of a symmetric positive definite matrix.
func cholesky(a [][]float64) ([][]float64, error) {
	n := len(a)
	l := make([][]float64, n)
	for i := range n {
		l[i] = make([]float64, n)
		for j := range i + 1 {
			sum := a[i][j]
			for k := range j {
				sum -= l[i][k] * l[j][k]
			}
			if i != j {
				l[i][j] = sum / l[j][j]
				continue
			}
			if !(sum > 1e-12*math.Max(a[i][i], 1e-300)) {
				return nil, errSingular
			}
			l[i][i] = math.Sqrt(sum)
		}
	}
	return l, nil
}

// substitute solves l l' x = b.
func substitute(l [][]float64, b []float64) []float64 {
	n := len(b)
	x := append([]float64(nil), b...)
	for i := range n {
		for k := range i {
			x[i] -= l[i][k] * x[k]
		}
		x[i] /= l[i][i]
	}
	for i := n - 1; i >= 0; i-- {
		for k := i + 1; k < n; k++ {
			x[i] -= l[k][i] * x[k]
		}
		x[i] /= l[i][i]
	}
	return x
}

// of is the fitted value of an equation.
func (s solution) of(r entry) float64 {
	v := 0.0
	col, x := r.factors()
	for i, c := range col {
		v += x[i] * s.term[c]
	}
	return v
}

// spread is x' cov x: the squared error of the fitted value for a scatter of one.
func (s solution) spread(r entry) float64 {
	v := 0.0
	col, x := r.factors()
	for i, c := range col {
		for j, d := range col {
			v += x[i] * x[j] * s.cov[c][d]
		}
	}
	return v
}
