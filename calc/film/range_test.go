package film

import (
	"math"
	"testing"

	"bladecard/calc/internal/checks"
)

// TestRefusals gives every function what it must refuse; the error says what is accepted.
func TestRefusals(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	one := func(_ float64, err error) error { return err }
	touch := func(change func(*Contact)) []error {
		c := Contact{ModulusMPa: 5, RadiusMM: 0.15, LoadNPerCM: 5, SpeedMPerS: 0.3, Flow: DefaultFlow}
		change(&c)
		_, _, err := Hydroplane(c, 60, BeadMM)
		return []error{one(EdgeFilmUM(c)), err}
	}
	pull := func(change func(*stroke)) []error {
		s := reference(t, cloth(t, 156, 64), 15, 1)
		change(&s)
		_, err := laid(s)
		return []error{err}
	}
	for _, err := range append(touch(func(*Contact) {}), pull(func(*stroke) {})...) {
		if err != nil {
			t.Fatal(err)
		}
	}
	hydro := func(wedge, bead float64) error {
		_, _, err := Hydroplane(Contact{ModulusMPa: 5, RadiusMM: 5, LoadNPerCM: 100, SpeedMPerS: 0.3, Flow: DefaultFlow}, wedge, bead)
		return err
	}
	for name, errs := range map[string][]error{
		"G 0":                 {one(WedgePressureFactor(0))},
		"G 181":               {one(WedgePressureFactor(181))},
		"G NaN":               {one(WedgePressureFactor(nan))},
		"rate 0":              {one(DefaultFlow.ViscosityPaS(0))},
		"rate NaN":            {one(DefaultFlow.ViscosityPaS(nan))},
		"flow n 0":            {one(Flow{3, 50, 0}.ViscosityPaS(1))},
		"flow n 1.1":          {one(Flow{3, 50, 1.1}.ViscosityPaS(1))},
		"flow K -1":           {one(Flow{3, -1, 0.5}.ViscosityPaS(1))},
		"flow eta 0":          {one(Flow{0, 50, 0.5}.ViscosityPaS(1))},
		"depth, opening 0":    {one(FillDepthUM(0, 60, 10))},
		"depth, wedge 0":      {one(FillDepthUM(95, 0, 10))},
		"depth, wedge NaN":    {one(FillDepthUM(95, nan, 10))},
		"depth, small bead":   {one(FillDepthUM(1000, 60, 0.4))},
		"fill, column 0":      {one(Fill(0, 100, 0.5))},
		"fill, depth 0":       {one(Fill(100, 0, 0.5))},
		"fill, depth NaN":     {one(Fill(100, nan, 0.5))},
		"fill, prefill 1.1":   {one(Fill(100, 100, 1.1))},
		"edge unknown":        {one(EdgeRadiusMM("blunt"))},
		"edge empty":          {one(EdgeRadiusMM(""))},
		"modulus 0":           touch(func(c *Contact) { c.ModulusMPa = 0 }),
		"radius NaN":          touch(func(c *Contact) { c.RadiusMM = nan }),
		"load 0":              touch(func(c *Contact) { c.LoadNPerCM = 0 }),
		"speed 0":             touch(func(c *Contact) { c.SpeedMPerS = 0 }),
		"speed -1":            touch(func(c *Contact) { c.SpeedMPerS = -1 }),
		"speed NaN":           touch(func(c *Contact) { c.SpeedMPerS = nan }),
		"flow n NaN":          touch(func(c *Contact) { c.Flow.N = nan }),
		"flow eta inf":        touch(func(c *Contact) { c.Flow.EtaInfPaS = inf }),
		"hydroplane, bead":    {hydro(60, 0.5)},
		"hydroplane, wedge":   {hydro(0, 10)},
		"stroke, speed 0":     pull(func(s *stroke) { s.SpeedMPerS = 0 }),
		"stroke, speed NaN":   pull(func(s *stroke) { s.SpeedMPerS = nan }),
		"stroke, no cloth":    pull(func(s *stroke) { s.Cloth.OpenArea = 0 }),
		"stroke, opening NaN": pull(func(s *stroke) { s.Cloth.OpeningUM = nan }),
		"stroke, fabric inf":  pull(func(s *stroke) { s.Cloth.FabricUM = inf }),
		"stroke, EOM -1":      pull(func(s *stroke) { s.EOMUM = -1 }),
		"stroke, share 2":     pull(func(s *stroke) { s.StencilShare = 2 }),
		"stroke, edge 81":     pull(func(s *stroke) { s.EdgeAngleDeg = 81 }),
		"stroke, edge -1":     pull(func(s *stroke) { s.EdgeAngleDeg = -1 }),
		"stroke, edge NaN":    pull(func(s *stroke) { s.EdgeAngleDeg = nan }),
		"stroke, flow empty":  pull(func(s *stroke) { s.Flow = Flow{} }),
		"strokes 0":           {one(Strokes(0, 0.4))},
		"strokes 21":          {one(Strokes(21, 0.4))},
		"q 1":                 {one(Strokes(2, 1))},
		"q NaN":               {one(Strokes(2, nan))},
		"cured of NaN":        {one(CuredUM(nan, 1))},
		"solids 0":            {one(CuredUM(60, 0))},
		"solids 1.1":          {one(CuredUM(60, 1.1))},
	} {
		for _, err := range errs {
			checks.Refused(t, "film", name, err)
		}
	}
	if Clears(Deposit{LiftRatio: nan}) {
		t.Error("a lift ratio of NaN clears")
	}
}

// TestFillLimits checks both ends of the filling: a shallow fill reaches z of the column, a
// deep one all of it; prefill alone leaves its share.
func TestFillLimits(t *testing.T) {
	for _, c := range []struct{ column, zw, prefill, want float64 }{
		{1000, 1, 0, 1e-3},
		{10, 1e6, 0, 1},
		{1000, 1e-3, 0.5, math.Pow(17, -0.25)},
		{100, 100, 0, math.Pow(2, -0.25)},
	} {
		got, err := Fill(c.column, c.zw, c.prefill)
		if err != nil || math.Abs(got-c.want) > 1e-6*c.want {
			t.Errorf("column %g, depth %g, prefill %g: %g, %v; want %g", c.column, c.zw, c.prefill, got, err, c.want)
		}
	}
}
