package cure

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/mat"
)

// TestAgainstMatrixExponential solves the same stack of cells exactly, dT/dt = A T + b by the
// exponential of the matrix (gonum), and marches it with small steps.
func TestAgainstMatrixExponential(t *testing.T) {
	layers := []layer{
		{thicknessM: 1e-4, conductivity: inkConductivity, heatCapacity: inkHeatCapacity, startC: 25, cells: 4},
		{thicknessM: fabricM, conductivity: fabricConductivity, heatCapacity: fabricHeatCapacity, startC: 32, cells: 5, contactM2KPerW: contactM2KPerW},
		{thicknessM: padM, conductivity: padConductivity, heatCapacity: padHeatCapacity, startC: 40, cells: 3},
	}
	const flux, until = 12e3, 2.0
	h := newHeating(layers, air{lossWM2K: surfaceLossWM2K, airC: airC}) // no radiation: the system is linear
	n := len(h.tempC)
	a := mat.NewDense(n+1, n+1, nil) // the last row and column carry b
	for i := range n {
		var out float64
		if i > 0 {
			a.Set(i, i-1, h.conduct[i-1]/h.capacity[i])
			out += h.conduct[i-1]
		}
		if i < n-1 {
			a.Set(i, i+1, h.conduct[i]/h.capacity[i])
			out += h.conduct[i]
		}
		if i == 0 {
			out += surfaceLossWM2K
			a.Set(0, n, (flux+surfaceLossWM2K*airC)/h.capacity[0])
		}
		a.Set(i, i, -out/h.capacity[i])
	}
	start := mat.NewVecDense(n+1, nil)
	for i, c := range h.tempC {
		start.SetVec(i, c)
	}
	start.SetVec(n, 1)
	var scaled, e mat.Dense
	scaled.Scale(until, a)
	e.Exp(&scaled)
	var want mat.VecDense
	want.MulVec(&e, start)
	const dt = 2e-4
	for s := 0.0; s < until-dt/2; s += dt {
		h.step(flux, dt)
	}
	for i := range n {
		if got := h.tempC[i]; math.Abs(got-want.AtVec(i)) > 0.05 {
			t.Errorf("cell %d: %.3f C marched, %.3f C exact", i, got, want.AtVec(i))
		}
	}
	if rise := want.AtVec(0) - 25; rise < 50 {
		t.Errorf("the ink rises by %g K in %g s: the check does not bite", rise, until)
	}
}
