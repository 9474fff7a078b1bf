package ink

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/optimize"
	"pgregory.net/rapid"
)

// fluxes solves the two light fluxes as they stand, with gonum's matrix exponential: down I and
// up J with dI = (-a I + J) S dx and dJ = (a J - I) S dx, and J = Rg I on the ground.
func fluxes(sx, rInf, rg float64) float64 {
	a := (1/rInf + rInf) / 2
	var e mat.Dense
	e.Exp(mat.NewDense(2, 2, []float64{-a * sx, sx, -sx, a * sx}))
	return (rg*e.At(0, 0) - e.At(1, 0)) / (e.At(1, 1) - rg*e.At(0, 1))
}

func TestReflectanceByFluxes(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		sx := rapid.Float64Range(0, 12).Draw(t, "sx")
		rInf := rapid.Float64Range(0.2, 1).Draw(t, "rInf")
		rg := rapid.Float64Range(0, 1).Draw(t, "ground")
		got := reflectance(sx, rInf, rg)
		if want := fluxes(sx, rInf, rg); !(math.Abs(got-want) <= 1e-8) {
			t.Fatalf("reflectance %.12g, from the fluxes %.12g", got, want)
		}
	})
}

// TestSXByMinimum finds the root with gonum: the least squared miss of the contrast, computed
// from the fluxes, over ln SX.
func TestSXByMinimum(t *testing.T) {
	for _, contrast := range []float64{0.3, 0.7, 0.9, 0.95, 0.98} {
		for _, rInf := range []float64{0.6, 0.85, 0.9, 1} {
			for _, cloth := range []float64{0, 0.04, 0.2} {
				got, err := SXOnCloth(contrast, rInf, cloth)
				if err != nil || !(got > 0) {
					t.Fatal(got, err)
				}
				miss := func(x []float64) float64 {
					sx := math.Exp(x[0])
					d := fluxes(sx, rInf, cloth)/fluxes(sx, rInf, WhiteBacking) - contrast
					return d * d
				}
				best, err := optimize.Minimize(optimize.Problem{Func: miss}, []float64{0}, nil, &optimize.NelderMead{})
				if err != nil {
					t.Fatal(err)
				}
				if want := math.Exp(best.X[0]); !(math.Abs(got-want) <= 1e-3*want) {
					t.Errorf("SX for %g at %g on %g: %.6g, by gonum %.6g", contrast, rInf, cloth, got, want)
				}
			}
		}
	}
}

func contrastOnCloth(sx, rInf, cloth float64) float64 {
	return reflectance(sx, rInf, cloth) / reflectance(sx, rInf, WhiteBacking)
}

// TestSXComesBack puts the root into the contrast ratio again.
func TestSXComesBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		contrast := rapid.Float64Range(0, 0.999).Draw(t, "contrast")
		rInf := rapid.Float64Range(0.01, 1).Draw(t, "rInf")
		cloth := rapid.Float64Range(0, 1).Draw(t, "cloth")
		sx, err := SXOnCloth(contrast, rInf, cloth)
		if err != nil {
			t.Fatal(err)
		}
		back := contrastOnCloth(sx, rInf, cloth)
		if sx == 0 && !(back >= contrast) || sx > 0 && !(math.Abs(back-contrast) <= 1e-9) {
			t.Fatalf("SX %g for %g gives %g", sx, contrast, back)
		}
	})
}

// TestMoreFilmHidesMore checks that hiding grows with the film, and that a lighter cloth or a
// lower demand never asks for more film.
func TestMoreFilmHidesMore(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		rInf := rapid.Float64Range(0.1, 1).Draw(t, "rInf")
		cloth := rapid.Float64Range(0, 0.78).Draw(t, "cloth")
		sx := rapid.Float64Range(0, 4).Draw(t, "sx")
		thin, thick := contrastOnCloth(sx, rInf, cloth), contrastOnCloth(sx*1.1+0.01, rInf, cloth)
		if !(thick > thin && thin >= 0 && thick <= 1+1e-12) && !(thin > 1-1e-9 && thick > 1-1e-9) {
			t.Fatalf("contrast %g of the thin film, %g of the thick", thin, thick)
		}
		contrast := rapid.Float64Range(0.05, 0.99).Draw(t, "contrast")
		film := func(contrast, s, cloth float64) float64 {
			um, err := HidingOnClothUM(contrast, rInf, s, cloth)
			if err != nil {
				t.Fatal(err)
			}
			return um
		}
		base := film(contrast, 80, cloth)
		if !(film(contrast, 80, cloth+0.02) <= base && film(0.99*contrast, 80, cloth) <= base && film(contrast, 90, cloth) <= base) {
			t.Fatalf("a lighter cloth, a lower demand or a stronger ink asks for more than %g um", base)
		}
	})
}

// TestMoreCoverageTakesMoreInk checks that every measure of a print and a run adds ink.
func TestMoreCoverageTakesMoreInk(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := rapid.Float64Range(5, 2000).Draw(t, "width")
		h := rapid.Float64Range(5, 2000).Draw(t, "height")
		c := rapid.Float64Range(0.001, 0.9).Draw(t, "coverage")
		um := rapid.Float64Range(1, 400).Draw(t, "um")
		d := rapid.Float64Range(0.6, 2).Draw(t, "density")
		n := rapid.IntRange(1, 100000).Draw(t, "prints")
		run := func(w, h, c, um, d float64, n int, waste float64) float64 {
			g, err := MassG(w, h, c, um, d)
			if err != nil {
				t.Fatal(err)
			}
			all, err := RunG(g, n, waste, 150)
			if err != nil {
				t.Fatal(err)
			}
			return all
		}
		base := run(w, h, c, um, d, n, 0.1)
		for i, more := range []float64{
			run(w*1.1, h, c, um, d, n, 0.1), run(w, h*1.1, c, um, d, n, 0.1), run(w, h, c*1.1, um, d, n, 0.1),
			run(w, h, c, um*1.1, d, n, 0.1), run(w, h, c, um, d*1.1, n, 0.1), run(w, h, c, um, d, n+1, 0.1), run(w, h, c, um, d, n, 0.2),
		} {
			if !(more > base) || math.IsInf(more, 0) {
				t.Fatalf("measure %d: %g g, before %g g", i, more, base)
			}
		}
	})
}
