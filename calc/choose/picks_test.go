package choose_test

import (
	"slices"
	"strings"
	"testing"

	"bladecard/calc/file"
	"bladecard/calc/plan"
	"bladecard/calc/plantest"
)

// screenOf computes the first screen of a job text on the built-in shop.
func screenOf(t *testing.T, src string) plan.Screen {
	t.Helper()
	return plantest.Screen(t, src)
}

// screenIn is screenOf on a shop of its own.
func screenIn(t *testing.T, src, shop string) plan.Screen {
	t.Helper()
	return plantest.Plan(t, src, plantest.Shop(t, shop)).Locations[0].Screens[0]
}

func planOf(t *testing.T, src string) *plan.Plan {
	t.Helper()
	return plantest.Plan(t, src, file.BuiltInShop())
}

// one is a job text with one screen.
func one(head, screen string) string { return plantest.OneScreen(head, screen) }

// TestPicks: what the trade picks for common work comes out of the computation with the
// built-in rack. All of it is common practice: no source is claimed.
func TestPicks(t *testing.T) {
	tests := []struct {
		work    string
		head    string // garment or stock
		screen  string
		blades  []string
		strokes []int
		low     float64 // set angle
		high    float64
	}{
		{"puff through 110 and a thick stencil", "", `ink = "plastisol puff"
			use = "raised"
			mesh = "110-80"
			eom = "100 %"`, []string{"60", "65/90/65"}, []int{2, 3}, 30, 45},
		{"puff through 86 and a thick stencil", "", `ink = "plastisol puff"
			use = "raised"
			mesh = "86-100"
			eom = "100 %"`, []string{"60", "65/90/65"}, []int{2, 3}, 30, 45},
		{"puff, mesh and stencil left open", "", `ink = "plastisol puff"
			use = "raised"`, []string{"60", "65/90/65"}, []int{2, 3}, 30, 45},
		{"clear gel on a thick stencil", "", `ink = "plastisol clear gel"
			use = "clear"
			mesh = "110-80"
			eom = "100 um"
			film = "150..260 um"`, []string{"65/90/65", "70"}, []int{1, 2, 3}, 10, 25},
		{"clear gel of 400 um on a thick stencil", "", `ink = "plastisol clear gel"
			use = "clear"
			mesh = "110-80"
			eom = "400 um"
			film = "360..440 um"`, []string{"65/90/65", "70"}, []int{1, 2, 3}, 10, 25},
		{"coarse halftone, 35 lines", "", `ink = "plastisol"
			mesh = "156-64"
			halftone = { lines = "35 lpi", smallest = "10 %" }`, []string{"65/90/65", "70"}, []int{1}, 15, 20},
		{"spot colour on a light tee", "[garment]\nshade = \"light\"", `ink = "plastisol"
			use = "solid"
			mesh = "156-64"`, []string{"65/90/65", "70"}, []int{1}, 15, 25},
		{"spot colour through a coarser mesh", "[garment]\nshade = \"light\"", `ink = "plastisol"
			use = "solid"
			mesh = "110-80"`, []string{"65/90/65", "70"}, []int{1}, 15, 25},
		{"white underbase", "[garment]\nshade = \"dark\"", `ink = "plastisol white"
			use = "underbase"
			mesh = "156-64"`, []string{"65/90/65", "70"}, []int{1, 2}, 15, 25},
		{"simulated process, 45 lines", "", `ink = "plastisol"
			use = "halftone"
			mesh = "230-48"
			halftone = { lines = "45 lpi", smallest = "5 %" }`, []string{"70/90/70"}, []int{1}, 15, 15},
		{"simulated process, 55 lines", "", `ink = "plastisol"
			use = "halftone"
			mesh = "230-40"
			halftone = { lines = "55 lpi", smallest = "5 %" }`, []string{"70/90/70"}, []int{1}, 15, 15},
		{"simulated process, its white", "[garment]\nshade = \"dark\"", `ink = "plastisol white"
			use = "underbase"
			mesh = "230-48"
			halftone = { lines = "55 lpi", smallest = "5 %" }`, []string{"70"}, []int{1, 2}, 15, 15},
		{"65 lines", "", `ink = "plastisol"
			use = "halftone"
			mesh = "305-40"
			halftone = { lines = "65 lpi", smallest = "5 %" }`, []string{"80"}, []int{1}, 15, 15},
		{"75 lines", "", `ink = "plastisol"
			use = "halftone"
			mesh = "355-34"
			halftone = { lines = "75 lpi", smallest = "5 %" }`, []string{"80"}, []int{1}, 15, 15},
		{"300 dpi bitmap", "", `ink = "plastisol"
			use = "halftone"
			mesh = "305-40"
			bitmap = "300 dpi"`, []string{"80"}, []int{1}, 15, 15},
		{"solvent graphics on paper", "[stock]\nkind = \"paper\"", `ink = "solvent graphics"
			mesh = "305-40"`, []string{"80"}, []int{1}, 15, 15},
		{"solvent graphics on metal", "[stock]\nkind = \"metal\"", `ink = "solvent graphics"
			mesh = "355-34"
			use = "detail"`, []string{"80"}, []int{1}, 15, 15},
		{"solvent graphics, stock not said", "", `ink = "solvent graphics"`, []string{"80"}, []int{1}, 15, 15},
		{"nothing said", "", ``, []string{"70"}, []int{1}, 15, 15},
	}
	for _, tt := range tests {
		t.Run(tt.work, func(t *testing.T) {
			s := screenOf(t, "title = \"pick\"\n"+tt.head+"\n[[location]]\n[[location.screen]]\n"+tt.screen)
			t.Logf("%s, %g° (%g to %g), %d strokes, edge %.1f°, cured %.1f um of %g to %g", s.Blade.Layup,
				s.AngleDeg.Set, s.AngleDeg.Low, s.AngleDeg.High, s.Strokes, s.EdgeAngleDeg, s.CuredUM.Value, s.TargetUM.Low, s.TargetUM.High)
			if !slices.Contains(tt.blades, s.Blade.Layup) {
				t.Errorf("blade %s; the trade takes %v", s.Blade.Layup, tt.blades)
			}
			if !slices.Contains(tt.strokes, s.Strokes) {
				t.Errorf("%d strokes; the trade takes %v", s.Strokes, tt.strokes)
			}
			if s.AngleDeg.Set < tt.low || s.AngleDeg.Set > tt.high {
				t.Errorf("angle %g; the trade takes %g to %g", s.AngleDeg.Set, tt.low, tt.high)
			}
			for _, w := range s.Warnings {
				if strings.HasPrefix(w.Code, "dot-small") || w.Code == "bitmap-fine" {
					continue // true of the trade's custom: its finest dots are finer than two threads and an opening
				}
				t.Errorf("warning %s %v", w.Code, w.Values)
			}
		})
	}
}
