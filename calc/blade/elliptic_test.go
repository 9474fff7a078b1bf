package blade

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/mathext"
)

// cantilever is the closed solution of a clamped strip under a tip load across it, with
// elliptic integrals of the modulus m = (1 + sin tip)/2:
//
//	sqrt(P L^2/D) = K(m) - F(b, m),  deflection/L = 1 - 2 (E(m) - E(b, m))/sqrt(P L^2/D),
//	sin b = 1/sqrt(2 m)
//
// Published: Bisshopp and Drucker, Quarterly of Applied Mathematics, 1945 [3].
func cantilever(k float64) (tip, deflection float64) {
	at := func(tip float64) (root, deflection float64) {
		m := (1 + math.Sin(tip)) / 2
		b := math.Asin(1 / math.Sqrt(2*m))
		root = mathext.CompleteK(m) - mathext.EllipticF(b, m)
		return root, 1 - 2*(mathext.CompleteE(m)-mathext.EllipticE(b, m))/root
	}
	low, high := 1e-9, math.Pi/2-1e-9
	for range 100 {
		mid := (low + high) / 2
		if root, _ := at(mid); root*root < k {
			low = mid
		} else {
			high = mid
		}
	}
	_, deflection = at(low)
	return low, deflection
}

// TestElasticaByEllipticIntegrals holds the shooting of this package's tests and the printed
// table against the closed solution, with gonum's elliptic integrals.
func TestElasticaByEllipticIntegrals(t *testing.T) {
	printed := map[float64][2]float64{1: {0.4614, 0.3017}, 2: {0.7817, 0.4935}, 5: {1.2154, 0.7138}}
	for _, k := range []float64{0.2, 0.5, 1, 2, 3.5, 5, 8} {
		tip, deflection := cantilever(k)
		shotTip, shotDeflection := elastica(k, math.Pi/2, 0)
		if math.Abs(tip-shotTip) > 1e-6 || math.Abs(deflection-shotDeflection) > 1e-6 {
			t.Errorf("P L^2/D = %g: tip %.7f rad and %.7f L, by shooting %.7f and %.7f", k, tip, deflection, shotTip, shotDeflection)
		}
		if p, ok := printed[k]; ok && (math.Abs(tip-p[0]) > 5.1e-5 || math.Abs(deflection-p[1]) > 5.1e-5) {
			t.Errorf("P L^2/D = %g: tip %.5f rad and %.5f L, published %.4f and %.4f", k, tip, deflection, p[0], p[1])
		}
	}
}
