package choose_test

import (
	"math"
	"slices"
	"testing"
)

// TestLocationBase: one base lies under all screens that need one; its ink sets and cures with the job's, and it
// covers what they cover where all of them say so.
func TestLocationBase(t *testing.T) {
	const yellow = "swatch = \"#ffd200\"\n"
	screen := func(ink, keys string) string { return "[[location.screen]]\nink = \"" + ink + "\"\n" + yellow + keys }
	black := "[[location.screen]]\nink = \"plastisol\"\nswatch = \"#141414\"\n"
	for name, c := range map[string]struct {
		screens  string
		ink      string
		under    []int
		coverage float64
	}{
		"plastisol":            {screen("plastisol", "coverage = \"20 %\"\n") + black + screen("plastisol", "coverage = \"15 %\"\n"), "plastisol white", []int{1, 3}, 0.35},
		"more than everything": {screen("plastisol", "coverage = \"70 %\"\n") + screen("plastisol", "coverage = \"60 %\"\n"), "plastisol white", []int{1, 2}, 1},
		"one does not say":     {screen("plastisol", "coverage = \"20 %\"\n") + screen("plastisol", ""), "plastisol white", []int{1, 2}, 0},
		"low cure":             {screen("plastisol low-cure", ""), "plastisol low-cure white", []int{1}, 0},
		"water":                {screen("water-based", ""), "high-solids acrylic white", []int{1}, 0},
		"its own class":        {screen("silicone", ""), "silicone", []int{1}, 0},
		"none needed":          {black, "", nil, 0},
	} {
		b := planOf(t, "title = \"t\"\n[garment]\nshade = \"dark\"\n[[location]]\n"+c.screens).Locations[0].Base
		if c.ink == "" {
			if b != nil {
				t.Errorf("%s: %+v", name, b)
			}
			continue
		}
		if b == nil || b.Ink != c.ink || !slices.Equal(b.Under, c.under) || b.Before != 1 || math.Abs(b.Coverage-c.coverage) > 1e-9 {
			t.Errorf("%s: %+v; %s under %v with %g is wanted", name, b, c.ink, c.under, c.coverage)
			continue
		}
		if b.FilmAsked != (name == "its own class") || !b.MeetsAll || b.CuredUM < b.TargetUM.Low {
			t.Errorf("%s: %+v", name, b)
		}
	}
}
