package choose_test

import (
	"fmt"
	"math"
	"testing"

	"bladecard/calc/plan"
	"bladecard/calc/plantest"
)

// pressPlan plans a base of two hits with a color on it, on a press of so many heads.
func pressPlan(t *testing.T, press string) plan.Location {
	t.Helper()
	shop := plantest.Shop(t, "stays-in-screen = \"100 g\"\n[[press]]\nname = \"p\"\nstroke-speed = \"0.3 m/s\"\n"+press)
	return plantest.Plan(t, "title = \"t\"\nquantity = 90\n[[location]]\nwidth = \"25 cm\"\nheight = \"35 cm\"\n"+
		"[[location.screen]]\nink = \"plastisol white\"\nuse = \"underbase\"\nhits = 2\nstrokes = 1\ncoverage = \"20 %\"\nflash = true\n[[location.screen]]\ncoverage = \"20 %\"\n", shop).Locations[0]
}

// TestPressTime: by free heads two hits take a second screen or a second turn, which costs ink, setup or time; on a
// manual press all adds up. A stroke of 0.45 m and back at 0.3 m/s takes 3 s.
func TestPressTime(t *testing.T) {
	wide, small, hand := pressPlan(t, "kind = \"automatic\"\nheads = 8\n"), pressPlan(t, "kind = \"automatic\"\nheads = 6\n"), pressPlan(t, "kind = \"manual\"\nheads = 6\n")
	flash := *hand.Screens[0].Flash.StartS
	slowest := math.Max(6, *wide.Screens[0].Flash.StartS) + 2
	for name, c := range map[string]struct {
		l                  plan.Location
		turns, extra       int
		pieceS, setupMin   float64
		turnScreens, heads string
	}{
		"a second screen": {wide, 1, 1, slowest, 15, "[]", "[1 4]"},
		"a second turn":   {small, 2, 0, 2 * slowest, 10, "[[1] [1 2]]", "[1]"},
		"by hand":         {hand, 1, 0, 20 + 3*3 + 2*(flash+4) + 7*3, 10, "[]", "[1]"},
	} {
		l := c.l
		if l.Time == nil || l.Time.RunMin == nil {
			t.Errorf("%s: no time", name)
			continue
		}
		if l.Turns != c.turns || l.ExtraScreens != c.extra || fmt.Sprint(l.TurnScreens) != c.turnScreens || fmt.Sprint(l.Screens[0].Heads) != c.heads {
			t.Errorf("%s: %d turns %v, %d extra screens, heads %v", name, l.Turns, l.TurnScreens, l.ExtraScreens, l.Screens[0].Heads)
		}
		if got := *l.Time; math.Abs(got.PieceS-c.pieceS) > 1e-9 || math.Abs(got.SetupMin-c.setupMin) > 1e-9 ||
			math.Abs(got.PiecesPerHour-3600/c.pieceS) > 1e-6 || math.Abs(*got.RunMin-90*c.pieceS/60) > 1e-9 || got.Sum != (name == "by hand") {
			t.Errorf("%s: %+v; %g s a piece and %g min setup are wanted", name, got, c.pieceS, c.setupMin)
		}
	}
	if more := *wide.Screens[0].InkGRun - *small.Screens[0].InkGRun; math.Abs(more-100) > 1e-9 {
		t.Errorf("the second screen holds %g g; 100 are wanted", more)
	}
	given := pressPlan(t, "kind = \"automatic\"\nheads = 8\nindex = \"5 s\"\nload-time = \"30 s\"\ncool-down = \"8 s\"\nsetup = \"10 min\"\n").Time
	if given.PieceS != 35 || given.Slowest != "load" || given.SetupMin != 30 {
		t.Errorf("with times of the shop: %+v", given)
	}
}
