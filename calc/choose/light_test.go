package choose_test

import (
	"slices"
	"testing"
)

// TestLightFirst: a dark ink before a light one is told by the computed lightness, of a class's white without a
// swatch too; where sizes speak for the order, or nothing is known, nothing is said.
func TestLightFirst(t *testing.T) {
	const navy, yellow, black = "ink = \"plastisol\"\nswatch = \"#1d2b4f\"\n", "ink = \"plastisol\"\nswatch = \"#ffd200\"\n", "ink = \"plastisol\"\nswatch = \"#141414\"\n"
	const white, open = "ink = \"plastisol white\"\nuse = \"detail\"\n", "ink = \"plastisol\"\n"
	for name, c := range map[string]struct{ first, then, want string }{
		"navy, then yellow":               {navy, yellow, "order-dark-first"},
		"yellow, then navy":               {yellow, navy, ""},
		"navy, then a class's white":      {navy, white, "order-dark-first"},
		"a class's white, then navy":      {white, navy, ""},
		"black, then a class's white":     {black, white, "order-black-not-last"},
		"nothing known of the second":     {navy, open, ""},
		"small navy, then large yellow":   {navy + "coverage = \"5 %\"\n", yellow + "coverage = \"30 %\"\n", ""},
		"large navy, then small yellow":   {navy + "coverage = \"30 %\"\n", yellow + "coverage = \"5 %\"\n", "order-dark-first"},
		"large yellow, then small orange": {yellow + "coverage = \"30 %\"\n", "ink = \"plastisol\"\nswatch = \"#ffcc10\"\ncoverage = \"5 %\"\n", "order-large-first"},
	} {
		var codes []string
		for _, w := range planOf(t, "title = \"t\"\n[[location]]\n[[location.screen]]\n"+c.first+"[[location.screen]]\n"+c.then).Locations[0].Warnings {
			codes = append(codes, w.Code)
		}
		if c.want == "" && codes != nil || c.want != "" && !slices.Contains(codes, c.want) {
			t.Errorf("%s: %q; %q is wanted", name, codes, c.want)
		}
	}
}
