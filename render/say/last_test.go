package say_test

import (
	"testing"

	"bladecard/calc/plan"
	"bladecard/render/say"
)

// TestLast: what a screen ran with last, in sentences; a difference of the film is told with what was measured.
func TestLast(t *testing.T) {
	f := func(v float64) *float64 { return &v }
	usual := plan.LastRun{
		Date: "2026-11-10", Mesh: "156-64", Blade: "70", AngleDeg: 20, LoadNPerCM: f(5), Strokes: 1, Hits: 1, CuredUM: f(41.6), CuredFrom: "comb",
		Wiped: "yes", CureC: f(162), Wash: "pass", Name: "Ana",
		Differences: []plan.Difference{{What: "blade", Then: "70", Now: "65/90/65"}, {What: "angle", Was: f(20), Is: f(12.5)}},
	}
	bare := plan.LastRun{Mesh: "156-64", Blade: "70", AngleDeg: 15, AirBar: f(2), Strokes: 1, Hits: 2}
	thick := bare
	thick.CuredUM, thick.CuredFrom, thick.Wiped = f(60), "gauge", "no"
	thick.Differences = []plan.Difference{{What: "film", Was: f(60), Is: f(34), Range: &plan.Band{Low: 24, Value: 34, High: 48}}}
	for _, c := range []struct {
		lang, units, want string
		last              *plan.LastRun
	}{
		{"en", "metric", "", nil},
		{"en", "metric", "Last run 2026-11-10: 156-64, blade 70, 20°, 1 stroke, 5\u00a0N/cm. Differs: blade 70 then, 65/90/65 now; angle 20° then, 12.5° now. " +
			"Measured 42\u00a0µm cured by the wet comb, 34\u00a0µm expected now. Signed off by Ana, came clean, cure reached 162\u00a0°C, wash passed.", &usual},
		{"es", "metric", "Última vez 10/11/2026: 156-64, racleta 70, 20°, 1 pasada, 5\u00a0N/cm. Distinto: racleta 70 entonces, 65/90/65 ahora; ángulo 20° entonces, 12,5° ahora. " +
			"Midió 42\u00a0µm de capa curada, según el peine, ahora se esperan 34\u00a0µm. Visto bueno de Ana, quedó limpia, el curado llegó a 162\u00a0°C, pasó el lavado.", &usual},
		{"en", "inch", "Last run: 156-64, blade 70, 15°, 2 hits, 29\u00a0psi. The same setup as now.", &bare},
		{"en", "metric", "Last run: 156-64, blade 70, 15°, 2 hits, 2\u00a0bar. The same setup as now. Measured 60\u00a0µm cured, outside of the 24–48\u00a0µm expected now. Did not come clean.", &thick},
	} {
		v, err := say.New(c.lang, c.units)
		if err != nil {
			t.Fatal(err)
		}
		if got := v.Last(plan.Screen{Last: c.last, CuredUM: plan.Band{Low: 24, Value: 34, High: 48}}); got != c.want {
			t.Errorf("%s %s:\n%s\n%s is wanted", c.lang, c.units, got, c.want)
		}
	}
}
