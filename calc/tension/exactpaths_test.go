package tension

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/diff/fd"
	"pgregory.net/rapid"
)

type blade struct{ h, a, b float64 }

func draw(t *rapid.T) blade {
	a := rapid.Float64Range(30, 1500).Draw(t, "a")
	b := rapid.Float64Range(30, 1500).Draw(t, "b")
	return blade{rapid.Float64Range(0.1, math.Min(50, steepest*math.Min(a, b))).Draw(t, "h"), a, b}
}

// growth is what the straight path from the frame to the blade is longer than its distance,
// exactly: sqrt(a^2 + h^2) - a without the cancellation.
func growth(h, a float64) float64 { return h * h / (math.Hypot(a, h) + a) }

// TestAgainstExactPaths compares the small-angle formulas with the exact lengths. The cloth
// slides under the blade, so that the strain is even; its point under the blade then lay at
// L left/(left + right) at rest, with the whole paths left and right.
func TestAgainstExactPaths(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := draw(t)
		left, right := growth(m.h, m.a), growth(m.h, m.b)
		span := m.a + m.b
		near := m.h / math.Min(m.a, m.b)
		shift, err := ImageShiftMM(m.h, m.a, m.b)
		if err != nil {
			t.Fatal(err)
		}
		exactShift := (left*m.b - right*m.a) / (span + left + right)
		scale := m.h * m.h / 2 * (1/m.a + 1/m.b)
		if !(math.Abs(shift-exactShift) <= near*near*scale+1e-12) {
			t.Fatalf("shift %g, exact %g", shift, exactShift)
		}
	})
}

// TestForceIsSlopeOfLength gets the force from the work: tension times the growth of the path
// with the depth, by gonum's finite differences.
func TestForceIsSlopeOfLength(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := draw(t)
		tension := rapid.Float64Range(5, 50).Draw(t, "tension")
		q, err := TouchForceNPerCM(tension, m.h, m.a, m.b)
		if err != nil {
			t.Fatal(err)
		}
		slope := fd.Derivative(func(h float64) float64 {
			return growth(h, m.a) + growth(h, m.b)
		}, m.h, &fd.Settings{Formula: fd.Central, Step: 1e-3 * m.h})
		near := m.h / math.Min(m.a, m.b)
		if off := q/(tension*slope) - 1; !(off > -1e-5 && off < near*near/2+1e-5) {
			t.Fatalf("force %g, by the work %g", q, tension*slope)
		}
	})
}

// TestOrders checks what must hold for any frame: more gap stretches and costs more,
// and nearer to the frame all of it grows.
func TestOrders(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		span := rapid.Float64Range(200, 2000).Draw(t, "span")
		margin := rapid.Float64Range(60, 0.45*span).Draw(t, "margin")
		h := rapid.Float64Range(0.2, 10).Draw(t, "h")
		of := func(h, margin float64) [3]float64 {
			var out [3]float64
			var errs [3]error
			out[0], errs[0] = StretchMM(h, span, margin)
			out[1], errs[1] = TouchForceNPerCM(25, h, margin, span-margin)
			out[2], errs[2] = PeelAngleDeg(h, margin)
			for _, err := range errs {
				if err != nil {
					t.Fatal(err)
				}
			}
			return out
		}
		base, deeper, inner := of(h, margin), of(1.1*h, margin), of(h, 1.05*margin)
		for i := range base {
			if !(base[i] > 0 && deeper[i] > base[i] && inner[i] < base[i]) {
				t.Fatalf("figure %d: %g, deeper %g, farther from the frame %g", i, base[i], deeper[i], inner[i])
			}
		}
	})
}

// TestShortFrameIsMended checks that a frame wider by what was lacking holds both rules.
func TestShortFrameIsMended(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		frame := rapid.Float64Range(60, 1500).Draw(t, "frame")
		path := frame * rapid.Float64Range(0.1, 1).Draw(t, "path/frame")
		f, err := BladePathFits(frame, path)
		if err != nil {
			t.Fatal(err)
		}
		if (f.ShortMM == 0) != (f.MarginHolds && f.RatioHolds) || f.ShortMM < 0 {
			t.Fatalf("%+v", f)
		}
		g, err := BladePathFits(frame+f.ShortMM+1e-6, path)
		if err != nil || !g.MarginHolds || !g.RatioHolds {
			t.Fatalf("%+v mended: %+v, %v", f, g, err)
		}
	})
}
