package mesh

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
	cloth := func(s Spec) error { _, err := New(s); return err }
	good := Spec{CountPerInch: 156, ThreadUM: 64}
	with := func(change func(*Spec)) error { s := good; change(&s); return cloth(s) }
	if err := cloth(good); err != nil {
		t.Fatal(err)
	}
	for name, err := range map[string]error{
		"pitch of count 0":         one(PitchUM(0)),
		"pitch of count -1":        one(PitchUM(-1)),
		"pitch of NaN":             one(PitchUM(nan)),
		"pitch of inf":             one(PitchUM(inf)),
		"opening, thread = pitch":  one(OpeningUM(100, 100)),
		"opening, thread NaN":      one(OpeningUM(100, nan)),
		"opening, pitch NaN":       one(OpeningUM(nan, 40)),
		"open area, opening 0":     one(OpenArea(0, 100)),
		"open area, opening pitch": one(OpenArea(100, 100)),
		"open area, opening NaN":   one(OpenArea(nan, 100)),
		"open area, pitch inf":     one(OpenArea(50, inf)),
		"fabric, too open":         one(FabricUM(9, 100, false)),
		"fabric, too tight":        one(FabricUM(81, 100, false)),
		"fabric, thread NaN":       one(FabricUM(nan, 100, true)),
		"volume, area 0":           one(VolumeUM(0, 60)),
		"volume, area above 1":     one(VolumeUM(1.01, 60)),
		"volume, area NaN":         one(VolumeUM(nan, 60)),
		"volume, thickness inf":    one(VolumeUM(0.4, inf)),
		"share, width 0":           one(StencilShare(0)),
		"share, width NaN":         one(StencilShare(nan)),
		"holds, eom NaN":           one(HoldsUM(0.4, 60, nan)),
		"holds, area 0":            one(HoldsUM(0, 60, 15)),
		"cloth, count 0":           with(func(s *Spec) { s.CountPerInch = 0 }),
		"cloth, thread 0":          with(func(s *Spec) { s.ThreadUM = 0 }),
		"cloth, thread too thick":  with(func(s *Spec) { s.ThreadUM = 170 }),
		"cloth, opening > pitch":   with(func(s *Spec) { s.OpeningUM = 163 }),
		"cloth, opening NaN":       with(func(s *Spec) { s.OpeningUM = nan }),
		"cloth, opening < 0":       with(func(s *Spec) { s.OpeningUM = -3 }),
		"cloth, fabric thin":       with(func(s *Spec) { s.FabricUM = 31 }),
		"cloth, fabric NaN":        with(func(s *Spec) { s.FabricUM = nan }),
	} {
		checks.Refused(t, "mesh", name, err)
	}
}

// TestClothHangsTogether checks any cloth against its own parts.
func TestClothHangsTogether(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		count := rapid.Float64Range(20, 500).Draw(t, "count")
		thread := 25400 / count * rapid.Float64Range(0.11, 0.79).Draw(t, "thread/pitch")
		s := Spec{CountPerInch: count, ThreadUM: thread, Twill: rapid.Bool().Draw(t, "twill")}
		c, err := New(s)
		if err != nil {
			if thread < 5 || thread > 10000 {
				return
			}
			t.Fatal(err)
		}
		if math.Abs(c.OpeningUM+c.ThreadUM-c.PitchUM) > 1e-9*c.PitchUM {
			t.Fatalf("opening + thread = %g, pitch %g", c.OpeningUM+c.ThreadUM, c.PitchUM)
		}
		if c.MeasuredOpening || c.MeasuredFabric {
			t.Fatal("geometry is marked as measured")
		}
		if !(c.FabricUM > c.ThreadUM && c.FabricUM < 2*c.ThreadUM) {
			t.Fatalf("fabric %g um of threads of %g um", c.FabricUM, c.ThreadUM)
		}
		s.OpeningUM, s.FabricUM = 0.9*c.OpeningUM, 1.1*c.FabricUM
		m, err := New(s)
		if err != nil {
			t.Fatal(err)
		}
		if !m.MeasuredOpening || !m.MeasuredFabric || m.OpeningUM != s.OpeningUM || m.FabricUM != s.FabricUM {
			t.Fatalf("what was measured did not win: %+v", m)
		}
		if want := c.VolumeUM * 0.81 * 1.1; math.Abs(m.VolumeUM-want) > 1e-9*want {
			t.Fatalf("volume %g, want %g", m.VolumeUM, want)
		}
	})
}

// TestStencilShareFalls checks that a wider feature never gets more of the stencil.
func TestStencilShareFalls(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := rapid.Float64Range(0.01, 4000).Draw(t, "a")
		b := a * rapid.Float64Range(1.01, 1.2).Draw(t, "b/a")
		sa, err1 := StencilShare(a)
		sb, err2 := StencilShare(b)
		if err1 != nil || err2 != nil {
			t.Fatal(err1, err2)
		}
		if !(sa > sb && sa <= 1 && sb > 0) {
			t.Fatalf("share %g at %g mm, %g at %g mm", sa, a, sb, b)
		}
	})
}
