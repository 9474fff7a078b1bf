package choose_test

import (
	"math"
	"testing"

	"bladecard/calc/choose"
	"bladecard/calc/file"
	"bladecard/calc/job"
	"bladecard/calc/plan"
	"bladecard/calc/plantest"
)

// setUp plans a job of one screen and keeps the resolved job.
func setUp(t *testing.T, src string) (*job.Job, *job.Shop, plan.Screen) {
	t.Helper()
	shop := file.BuiltInShop()
	return plantest.Job(t, src, shop), shop, plantest.Plan(t, src, shop).Locations[0].Screens[0]
}

// Where a curve says that it begins to fail, the setup stands at its limit, and beyond it past the limit.
func TestCurvesEndAtTheLimits(t *testing.T) {
	for _, tt := range []struct{ screen, fails string }{
		{"ink = \"plastisol\"\nmesh = \"225-40\"\nblade = \"70\"\nfinest = \"0.3 mm\"\nload = \"5 N/cm\"", "detail"},
		{"ink = \"plastisol clear gel\"\nmesh = \"110-80\"\nblade = \"70\"\nfinest = \"8 mm\"\nload = \"1.5 N/cm\"", "ink"},
	} {
		j, shop, s := setUp(t, one("", tt.screen))
		ends := 0
		for _, c := range s.Charts.Angle {
			if !c.Chosen {
				continue
			}
			for i, p := range c.Points {
				got, err := choose.Sweep(j, shop, 1, 1, []choose.Axis{{What: "angle", Values: []float64{p.X}}})
				if err != nil {
					t.Fatal(err)
				}
				at := got[0]
				if p.Fails != "" || i+1 == len(c.Points) || c.Points[i+1].Fails == "" {
					if at.Fails != p.Fails || math.Abs(at.CuredUM-p.UM) > 1e-9 {
						t.Errorf("at %g the curve has %q and %g um, the sweep %q and %g", p.X, p.Fails, p.UM, at.Fails, at.CuredUM)
					}
					continue
				}
				ends++
				if c.Points[i+1].Fails != tt.fails {
					t.Errorf("%s follows at %g; %s is wanted", c.Points[i+1].Fails, p.X, tt.fails)
				}
				if tt.fails == "detail" && math.Abs(at.EdgeDeg-*s.EdgeLimitDeg) > 0.05 {
					t.Errorf("the line ends at %.2f deg, where the edge has %.2f; its limit is %.2f", p.X, at.EdgeDeg, *s.EdgeLimitDeg)
				}
				if math.Abs(at.CuredUM/p.UM-1) > 0.01 {
					t.Errorf("the line ends at %g um; the film there is %g", p.UM, at.CuredUM)
				}
			}
		}
		if ends != 1 {
			t.Errorf("%s: %d ends of the chosen line; 1 is wanted", tt.fails, ends)
		}
	}
}

// TestShortBladesHaveNoCurve: what cannot print a screen is not drawn for it, and keeps its place among the others.
func TestShortBladesHaveNoCurve(t *testing.T) {
	shop, errs := file.DecodeShop("shop.toml", []byte("[[blade]]\nlayup = \"60\"\nlengths = [\"20 cm\"]\n[[blade]]\nlayup = \"70\"\nlengths = [\"40 cm\"]\n[[blade]]\nlayup = \"80\"\nlengths = [\"40 cm\"]\n"))
	if errs != nil {
		t.Fatal(errs)
	}
	for width, drawn := range map[string]bool{"10 cm": true, "30 cm": false} {
		s := plantest.Plan(t, "title = \"t\"\n[[location]]\nwidth = \""+width+"\"\nheight = \"20 cm\"\n[[location.screen]]\n", shop).Locations[0].Screens[0]
		if c := s.Charts.Angle; len(c) != 3 || c[0].Name != "60" || (len(c[0].Points) > 0) != drawn || len(c[1].Points) == 0 || len(c[2].Points) == 0 {
			t.Errorf("%s wide: %+v", width, c)
		}
	}
}
