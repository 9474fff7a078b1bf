package halftone

import (
	"math"
	"testing"

	"bladecard/calc/internal/checks"

	"pgregory.net/rapid"
)

// TestRefusals gives every function what it must refuse; the error says what is accepted.
func TestRefusals(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	one := func(_ float64, err error) error { return err }
	beat := func(_ Beat, err error) error { return err }
	for name, err := range map[string]error{
		"ratio, mesh 0":         one(MeshRatio(0, 65)),
		"ratio, lines 0":        one(MeshRatio(305, 0)),
		"ratio, lines NaN":      one(MeshRatio(305, nan)),
		"mesh, ratio 0":         one(MeshForRatio(65, 0)),
		"mesh, lines inf":       one(MeshForRatio(inf, 4)),
		"lines, ratio NaN":      one(LinesForRatio(305, nan)),
		"lines, mesh 0":         one(LinesForRatio(0, 4)),
		"openings, lines 0":     one(OpeningsPerCell(305, 0)),
		"dot, share 0":          one(DotDiameterUM(65, 0)),
		"dot, dots touch":       one(DotDiameterUM(65, 0.79)),
		"dot, share NaN":        one(DotDiameterUM(65, nan)),
		"dot, lines 0":          one(DotDiameterUM(0, 0.05)),
		"blocked, dot 0":        one(BlockedShare(0, 34, 83)),
		"blocked, dot NaN":      one(BlockedShare(nan, 34, 83)),
		"blocked, thick thread": one(BlockedShare(20, 84, 83)),
		"blocked, pitch NaN":    one(BlockedShare(20, 34, nan)),
		"smallest, thread 0":    one(SmallestDotUM(0, 49)),
		"smallest, opening NaN": one(SmallestDotUM(34, nan)),
		"bitmap 0":              one(BitmapDotUM(0)),
		"bitmap NaN":            one(BitmapDotUM(nan)),
		"moire, mesh NaN":       beat(MoireBeat(nan, 65, 0)),
		"moire, mesh coarse":    beat(MoireBeat(40, 65, 0)),
		"moire, angle NaN":      beat(MoireBeat(260, 65, nan)),
		"moire, angle inf":      beat(MoireBeat(260, 65, inf)),
	} {
		checks.Refused(t, "halftone", name, err)
	}
}

// TestBlockedFalls checks that a larger dot is never more often blocked, that the two branches
// meet, and that from 1.4142 threads on none is.
func TestBlockedFalls(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		pitch := rapid.Float64Range(50, 400).Draw(t, "pitch")
		thread := pitch * rapid.Float64Range(0.2, 0.8).Draw(t, "thread/pitch")
		a := thread * rapid.Float64Range(0.01, 1.6).Draw(t, "dot/thread")
		b := a * rapid.Float64Range(1, 1.05).Draw(t, "larger")
		pa, err1 := BlockedShare(a, thread, pitch)
		pb, err2 := BlockedShare(b, thread, pitch)
		if err1 != nil || err2 != nil {
			t.Fatal(err1, err2)
		}
		if !(pa >= pb-1e-12 && pa >= 0 && pa < 1) {
			t.Fatalf("dot %g: %g, dot %g: %g", a, pa, b, pb)
		}
		if a >= math.Sqrt2*thread && pa != 0 {
			t.Fatalf("dot %g on thread %g: %g blocked", a, thread, pa)
		}
		below, _ := BlockedShare(thread, thread, pitch)
		above, _ := BlockedShare(thread*(1+1e-9), thread, pitch)
		if math.Abs(below-above) > 1e-6 {
			t.Fatalf("at one thread the share jumps from %g to %g", below, above)
		}
	})
}

// TestDotArea goes from share to diameter and back.
func TestDotArea(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		lines := rapid.Float64Range(10, 150).Draw(t, "lines")
		share := rapid.Float64Range(0.001, 0.78).Draw(t, "share")
		d, err := DotDiameterUM(lines, share)
		if err != nil {
			t.Fatal(err)
		}
		cell := 25400 / lines
		if back := math.Pi * d * d / 4 / (cell * cell); math.Abs(back-share) > 1e-12 {
			t.Fatalf("share %g came back as %g", share, back)
		}
		if d > cell*(1+1e-12) {
			t.Fatalf("a dot of %g um in a cell of %g um", d, cell)
		}
	})
}
