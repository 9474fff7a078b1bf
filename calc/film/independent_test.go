package film

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/integrate/quad"
	"pgregory.net/rapid"
)

// TestWedgeByStreamFunction checks Taylor's factor against the flow they come from. In the
// wedge the stream function is r f(a), f = A sin a + B cos a + C a sin a + D a cos a, with the
// mesh (a = 0) moving at speed 1 and the blade (a = b) at rest; G is the pressure
// on the mesh over 2 eta U/r. The conditions are solved here as they stand.
func TestWedgeByStreamFunction(t *testing.T) {
	for deg := 5.0; deg <= 175; deg += 5 {
		b := deg * math.Pi / 180
		s, c := math.Sincos(b)
		// f(0) = 0: B = 0. f'(0) = 1: A + D = 1. f(b) = 0 and f'(b) = 0 for A and C, D = 1 - A:
		//   A (s - b c) + C b s         = -b c
		//   A b s       + C (s + b c)   = b s - c
		det := (s-b*c)*(s+b*c) - b*s*b*s
		a := (-b*c*(s+b*c) - b*s*(b*s-c)) / det
		d := 1 - a
		// The pressure on the mesh is 2 eta D/r up to sign.
		wantG := math.Abs(d)
		g, err := WedgePressureFactor(deg)
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(g-wantG) > 1e-8*wantG+1e-12 {
			t.Errorf("%g deg: G %.8g, from the stream function %.8g", deg, g, wantG)
		}
	}
}

// TestFillDepthByQuadrature fills the duct in small steps: dz/dt = p w^2/(28.45 eta z) under
// p = 2 eta U G/r from the bead to half an opening before the edge.
func TestFillDepthByQuadrature(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := rapid.Float64Range(20, 400).Draw(t, "opening")
		wedge := rapid.Float64Range(10, 90).Draw(t, "wedge")
		bead := rapid.Float64Range(2, 30).Draw(t, "bead")
		got, err := FillDepthUM(w, wedge, bead)
		if err != nil {
			t.Fatal(err)
		}
		g, err := WedgePressureFactor(wedge)
		if err != nil {
			t.Fatal(err)
		}
		// In ln r the integrand is smooth: z^2/2 = w^2/28.45 * integral of 2 G dln r.
		half := quad.Fixed(func(lnr float64) float64 {
			r := math.Exp(lnr)
			return w * w / 28.45 * 2 * g / r * r
		}, math.Log(w/2), math.Log(bead*1e3), 32, nil, 0)
		want := math.Sqrt(2 * half)
		if math.Abs(got-want) > 2e-3*want {
			t.Fatalf("got %g um, by quadrature %g um", got, want)
		}
	})
}

// contact draws a contact inside the range of a press.
func contact(t *rapid.T) Contact {
	return Contact{
		ModulusMPa: rapid.Float64Range(2, 40).Draw(t, "MPa"),
		RadiusMM:   rapid.Float64Range(0.05, 1).Draw(t, "radius"),
		LoadNPerCM: rapid.Float64Range(0.5, 20).Draw(t, "load"),
		SpeedMPerS: rapid.Float64Range(0.02, 2).Draw(t, "speed"),
		Flow: Flow{
			EtaInfPaS: rapid.Float64Range(0.1, 20).Draw(t, "eta inf"),
			KPaSn:     rapid.Float64Range(0, 200).Draw(t, "K"),
			N:         rapid.SampledFrom([]float64{0.1, 0.3, 0.5, 0.8, 0.999, 1}).Draw(t, "n"),
		},
	}
}

// TestHydroplaneByQuadrature sums eta U/r over the wedge with gonum and takes the film from it.
func TestHydroplaneByQuadrature(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := contact(t)
		wedge := rapid.Float64Range(10, 90).Draw(t, "wedge")
		um, ratio, err := Hydroplane(c, wedge, BeadMM)
		if err != nil {
			t.Fatal(err)
		}
		w, rb := c.LoadNPerCM*100, BeadMM/1e3
		ac := math.Sqrt(4 * w * c.RadiusMM / 1e3 * 0.75 / (math.Pi * c.ModulusMPa * 1e6))
		g, err := WedgePressureFactor(wedge)
		if err != nil {
			t.Fatal(err)
		}
		sum := quad.Fixed(func(lnr float64) float64 {
			r := math.Exp(lnr)
			eta, err := c.Flow.ViscosityPaS(c.SpeedMPerS / r)
			if err != nil {
				t.Fatal(err)
			}
			return eta * c.SpeedMPerS / r * r
		}, math.Log(ac), math.Log(rb), 64, nil, 0)
		want := 2 * g * sum / w
		if math.Abs(ratio-want) > 1e-9*want {
			t.Fatalf("lift ratio %g, by quadrature %g", ratio, want)
		}
		film := 0.5 * BeadMM * 1e3 * math.Exp(-math.Log(rb/ac)/want)
		if math.Abs(um-film) > 1e-6*film+1e-300 {
			t.Fatalf("film %g um, by quadrature %g um", um, film)
		}
	})
}

// TestEdgeFilmByBisection finds the film that agrees with its own shear rate by bisection,
// where the package iterates.
func TestEdgeFilmByBisection(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := contact(t)
		got, err := EdgeFilmUM(c)
		if err != nil {
			t.Fatal(err)
		}
		e, r := c.ModulusMPa*1e6/0.375, c.RadiusMM/1e3
		over := func(lnh float64) float64 {
			eta, err := c.Flow.ViscosityPaS(c.SpeedMPerS / math.Exp(lnh))
			if err != nil {
				t.Fatal(err)
			}
			return math.Log(3.10*r) + 0.6*math.Log(eta*c.SpeedMPerS/2/e/r) - 0.2*math.Log(c.LoadNPerCM*100/e/r) - lnh
		}
		low, high := math.Log(1e-9), math.Log(1e-1)
		for range 100 {
			mid := (low + high) / 2
			if over(mid) > 0 {
				low = mid
			} else {
				high = mid
			}
		}
		if want := math.Exp(low) * 1e6; math.Abs(got-want) > 1e-9*want {
			t.Fatalf("got %g um, by bisection %g um", got, want)
		}
	})
}
