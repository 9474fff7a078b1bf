package mesh

import (
	"math"
	"testing"

	"bladecard/calc/internal/checks"
)

// TestPublishedFigures holds the figures that others have printed. kind and source stand
// beside each; "own input" means a published formula at an input of our own.
func TestPublishedFigures(t *testing.T) {
	ok := checks.Taken(t)
	cloth := func(s Spec) Cloth {
		t.Helper()
		c, err := New(s)
		if err != nil {
			t.Fatal(err)
		}
		return c
	}
	thin, thick := cloth(Spec{CountPerInch: 225, ThreadUM: 40}), cloth(Spec{CountPerInch: 225, ThreadUM: 48})
	thin59 := cloth(Spec{CountPerInch: 225, ThreadUM: 40, FabricUM: 59})
	thick72 := cloth(Spec{CountPerInch: 225, ThreadUM: 48, FabricUM: 72})
	twill := cloth(Spec{CountPerInch: 480, ThreadUM: 31, Twill: true})
	twillMeasured := cloth(Spec{CountPerInch: 480, ThreadUM: 31, OpeningUM: 16, FabricUM: 55, Twill: true})
	c110 := cloth(Spec{CountPerInch: 110, ThreadUM: 80})
	c305 := cloth(Spec{CountPerInch: 120 * CMPerInch, ThreadUM: 40})
	wire := cloth(Spec{CountPerInch: 40, ThreadUM: 254})
	coarse := cloth(Spec{CountPerInch: 100, ThreadUM: 50})
	for _, c := range []struct {
		name           string
		got, want, tol float64
		kind, source   string
	}{
		{"opening 225-40, um", thin.OpeningUM, 73, 0.5, "published", "nt-jp.com [13] screen specifications [13]"},
		{"opening 225-40, um, unrounded", thin.OpeningUM, 72.89, 0.005, "derived", "25 400/225 - 40"},
		{"open area 225-40, %", 100 * thin.OpenArea, 42, 0.5, "published", "nt-jp.com [13] screen specifications [13]"},
		{"open area 225-40, %, unrounded", 100 * thin.OpenArea, 41.69, 0.005, "derived", "(72.89/112.89)^2"},
		{"opening 225-48, um", thick.OpeningUM, 65, 0.5, "published", "nt-jp.com [13] screen specifications [13]"},
		{"open area 225-48, %", 100 * thick.OpenArea, 33, 0.5, "published", "nt-jp.com [13] screen specifications [13]"},
		{"ink volume 225-40 at 59 um, cm3/m2", thin59.VolumeUM, 25, 0.5, "published", "nt-jp.com [13] screen specifications [13]"},
		{"ink volume 225-40, unrounded", thin59.VolumeUM, 24.60, 0.005, "derived", "0.4169 x 59"},
		{"ink volume 225-48 at 72 um, cm3/m2", thick72.VolumeUM, 24, 0.5, "published", "nt-jp.com [13] screen specifications [13]"},
		{"open area wire 40 mesh, 0.010 in, %", 100 * wire.OpenArea, 36, 1e-9, "published", "wovenwire.com, worked example 1 [17]"},
		{"open area 480 twill, opening 16 um, %", 100 * twillMeasured.OpenArea, 9, 0.5, "published", "AGH Krakow [14], technical data on investigated fabrics [14]"},
		{"opening 480-31 twill by geometry, um", twill.OpeningUM, 21.9, 0.05, "derived", "25 400/480 - 31"},
		{"measured opening under geometry, 480-31 twill, %", 100 * (16/twill.OpeningUM - 1), -27, 0.5, "published", "AGH Krakow [14]: 16 um"},
		{"thickness 480-31 twill, um", twill.FabricUM, 55, 3, "published", "AGH Krakow [14]: 55 +- 3 um"},
		{"open area 110-80, %", 100 * c110.OpenArea, 43, 0.5, "published", "Catspit Productions, Thin Mesh [16]"},
		{"open area 120/cm-40, %, geometry", 100 * c305.OpenArea, 27.0, 0.1, "derived", "(43.33/83.33)^2"},
		{"open area 120/cm-40, %, measured cloth", 100 * c305.OpenArea, 25, 2.5, "published", "Mesh Matters, Screen Printing, June 2009 [15]"},
		{"of the fit's own five cloths: thickness 305-40, um", c305.FabricUM, 63, 0.05 * 63, "published", "Mesh Matters, Screen Printing, June 2009 [15]"},
		{"of the fit's own five cloths: thickness 225-40, um", thin.FabricUM, 59, 0.06 * 59, "published", "nt-jp.com [13]; the fit's own 6 %"},
		{"of the fit's own five cloths: thickness 225-48, um", thick.FabricUM, 72, 0.06 * 72, "published", "nt-jp.com [13]; the fit's own 6 %"},
		{"a cloth that the fit has not seen: thickness 225-54, um", cloth(Spec{CountPerInch: 225, ThreadUM: 54}).FabricUM, 84, 0.06 * 84, "published", "nt-jp.com [13] screen specifications [13]"},
		{"ink volume 100/in-50 by the fit under what is printed, %", 100 * (coarse.VolumeUM/48.25 - 1), -12, 6, "published", "Clarke, Stencil Matters [21]: slightly less than 2 mil, taken as 45.7 to 50.8 um; the fit lies below it"},
		{"304.8 per inch, per cm", PerCM(304.8), 120, 1e-12, "published", "Coudray, Screen Printing, April 2003 [20]"},
		{"393.7 per inch, per cm", PerCM(393.7), 155, 1e-12, "published", "Coudray, Screen Printing, April 2003 [20]"},
		{"most wet film, Tm 60, AO 0.40, Te 15, um", ok(HoldsUM(0.40, 60, 15)), 39, 1e-12, "published formula, own input", "micrasem.com [23], Tw = Tm AO + Te"},
		{"stencil share at 9.5 mm", ok(StencilShare(9.5)), 0.5, 1e-15, "form from memory, width published", "Printwear, November 2015, p. 73 [22]"},
	} {
		if !(math.Abs(c.got-c.want) <= c.tol) {
			t.Errorf("%s: got %.5g, want %g +- %g (%s: %s)", c.name, c.got, c.want, c.tol, c.kind, c.source)
		}
	}
}
