package report

import (
	"slices"
	"testing"

	"bladecard/calc/plan"
	"bladecard/render/say"
)

// TestNoZeros: a difference that rounds to nothing is told in words and not as 0.0.
func TestNoZeros(t *testing.T) {
	for _, c := range []struct{ lang, reason, film, edge string }{
		{"en", "set by the job: blade 70 to 80: same film, working angle unchanged", "65/90/65 (a hair less per stroke)", "80 (edge a hair over the limit)"},
		{"es", "fijado por el trabajo: racleta de 70 a 80: la misma capa, ángulo de trabajo igual", "65/90/65 (un pelo menos por pasada)", "80 (filo un pelo sobre el límite)"},
	} {
		v, err := say.New(c.lang, "")
		if err != nil {
			t.Fatal(err)
		}
		if got := Reason(plan.Reason{Step: "blade", Short: "fixed", From: "70", To: "80", DeltaUM: 0.02, DeltaEdge: -0.3}, v); got != c.reason {
			t.Errorf("%q; %q is wanted", got, c.reason)
		}
		got := LostBlades([]plan.Lost{{Blade: "65/90/65", On: "less-film", By: 0.02}, {Blade: "80", On: "cut", By: 0.2}}, v)
		if want := []string{c.film, c.edge}; !slices.Equal(got, want) {
			t.Errorf("%q; %q is wanted", got, want)
		}
	}
}
