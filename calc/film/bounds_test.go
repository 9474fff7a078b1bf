package film

import (
	"errors"
	"testing"

	"bladecard/calc/blade"

	"pgregory.net/rapid"
)

// TestBounds: mesh volume x fill <= deposit, and the wet film Tau f is at most what mesh and
// stencil hold (published: Tw = Tm AO + Te, micrasem.com [23]), for any press at all.
func TestBounds(t *testing.T) {
	strokes := 0
	rapid.Check(t, func(t *rapid.T) {
		c, eom, share, high := screen(t)
		p := draw(t)
		p.set = rapid.Float64Range(0, 60).Draw(t, "any set")
		p.load = rapid.Float64Range(0.5, 20).Draw(t, "any load")
		p.shore = rapid.SampledFrom(layups).Draw(t, "layup")
		s, err := bent(t, c, eom, share, p)
		var folds blade.ErrFolds
		if errors.As(err, &folds) {
			return
		}
		s.Flood = rapid.Bool().Draw(t, "flood")
		s.SpeedMPerS = rapid.Float64Range(0.05, 1).Draw(t, "speed")
		d, err := laid(s)
		var floats ErrFloats
		if errors.As(err, &floats) {
			if floats.LiftRatio <= FloatRatio || d != (Deposit{LiftRatio: floats.LiftRatio}) {
				t.Fatalf("floats at a lift ratio of %g with %+v", floats.LiftRatio, d)
			}
			return
		}
		if err != nil {
			t.Fatal(err)
		}
		if low := c.VolumeUM * d.Fill; !(d.TotalUM >= low) {
			t.Fatalf("deposit %g um, mesh volume x fill %g um", d.TotalUM, low)
		}
		if !(Tau*d.TotalUM <= high*(1+1e-12)) {
			t.Fatalf("wet film %g um, mesh and stencil hold %g um", Tau*d.TotalUM, high)
		}
		if !(d.Fill > 0 && d.Fill < 1) || d.HydroplaneUM > d.ColumnUM {
			t.Fatalf("%+v", d)
		}
		strokes++
	})
	if strokes < 30 {
		t.Errorf("only %d strokes were looked at", strokes)
	}
}
