package film

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
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
	stroke := func(change func(*Setup)) []error {
		s := reference(t, cloth(t, 156, 64), 15, 1)
		change(&s)
		_, err := Stroke(s)
		_, lay := Lay(s, Edge{FilmUM: 4, LiftRatio: 0.1})
		_, edge := EdgeOf(Contact{ModulusMPa: s.EdgeModulusMPa, RadiusMM: s.EdgeRadiusMM, LoadNPerCM: s.LoadNPerCM, SpeedMPerS: s.SpeedMPerS, Flow: s.Flow}, s.EdgeAngleDeg)
		if (lay != nil || edge != nil) != (err != nil) {
			t.Errorf("Stroke says %v, EdgeOf %v, Lay %v", err, edge, lay)
		}
		return []error{err, one(WetUM(s, 1, NextStrokeShare, 1))}
	}
	for _, err := range append(touch(func(*Contact) {}), stroke(func(*Setup) {})...) {
		if err != nil {
			t.Fatal(err)
		}
	}
	hydro := func(wedge, bead float64) error {
		_, _, err := Hydroplane(Contact{ModulusMPa: 5, RadiusMM: 5, LoadNPerCM: 100, SpeedMPerS: 0.3, Flow: DefaultFlow}, wedge, bead)
		return err
	}
	good := reference(t, cloth(t, 156, 64), 15, 1)
	for name, errs := range map[string][]error{
		"G 0":                 {one(WedgePressureFactor(0))},
		"G 181":               {one(WedgePressureFactor(181))},
		"G NaN":               {one(WedgePressureFactor(nan))},
		"H 0":                 {one(WedgeDragFactor(0))},
		"H NaN":               {one(WedgeDragFactor(nan))},
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
		"stroke, speed 0":     stroke(func(s *Setup) { s.SpeedMPerS = 0 }),
		"stroke, speed NaN":   stroke(func(s *Setup) { s.SpeedMPerS = nan }),
		"stroke, no cloth":    stroke(func(s *Setup) { s.Cloth.OpenArea = 0 }),
		"stroke, opening NaN": stroke(func(s *Setup) { s.Cloth.OpeningUM = nan }),
		"stroke, fabric inf":  stroke(func(s *Setup) { s.Cloth.FabricUM = inf }),
		"stroke, EOM -1":      stroke(func(s *Setup) { s.EOMUM = -1 }),
		"stroke, share 2":     stroke(func(s *Setup) { s.StencilShare = 2 }),
		"stroke, edge 81":     stroke(func(s *Setup) { s.EdgeAngleDeg = 81 }),
		"stroke, edge -1":     stroke(func(s *Setup) { s.EdgeAngleDeg = -1 }),
		"stroke, edge NaN":    stroke(func(s *Setup) { s.EdgeAngleDeg = nan }),
		"stroke, flow empty":  stroke(func(s *Setup) { s.Flow = Flow{} }),
		"strokes 0":           {one(Strokes(0, 0.4)), one(WetUM(good, 0, 0.4, 1))},
		"strokes 21":          {one(Strokes(21, 0.4))},
		"q 1":                 {one(Strokes(2, 1)), one(WetUM(good, 2, 1, 1))},
		"q NaN":               {one(Strokes(2, nan))},
		"factor 0":            {one(WetUM(good, 1, 0.4, 0))},
		"factor NaN":          {one(WetUM(good, 1, 0.4, nan))},
		"cured of NaN":        {one(CuredUM(nan, 1))},
		"solids 0":            {one(CuredUM(60, 0))},
		"solids 1.1":          {one(CuredUM(60, 1.1))},
	} {
		for _, err := range errs {
			if err == nil {
				t.Errorf("%s: taken", name)
			} else if !strings.HasPrefix(err.Error(), "film: ") || !strings.Contains(err.Error(), "accepted") {
				t.Errorf("%s: the error does not tell what is accepted: %v", name, err)
			}
		}
	}
	if Clears(Deposit{LiftRatio: nan}) {
		t.Error("a lift ratio of NaN clears")
	}
}

// TestWetIsProduct checks that the wet film is Tau x deposit x row of strokes x factor, that a
// stroke more never takes ink away, and that the row stays below its sum to infinity.
func TestWetIsProduct(t *testing.T) {
	s := reference(t, cloth(t, 110, 80), 20, 0.6)
	d, err := Stroke(s)
	if err != nil {
		t.Fatal(err)
	}
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 19).Draw(t, "strokes")
		q := rapid.Float64Range(0, 0.8).Draw(t, "q")
		factor := rapid.Float64Range(0.2, 5).Draw(t, "factor")
		got, err := WetUM(s, n, q, factor)
		if err != nil {
			t.Fatal(err)
		}
		row := (1 - math.Pow(q, float64(n))) / (1 - q)
		if want := 0.76 * d.TotalUM * row * factor; math.Abs(got-want) > 1e-12*want {
			t.Fatalf("got %g um, want %g um", got, want)
		}
		a, _ := Strokes(n, q)
		b, err := Strokes(n+1, q)
		if err != nil || b < a || b > 1/(1-q)+1e-12 {
			t.Fatalf("%d strokes %g, one more %g, %v", n, a, b, err)
		}
	})
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
