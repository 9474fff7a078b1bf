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

// TestDryerSetsThePace: a press that prints faster than the shop's one dryer takes is slowed to it, but not
// to a dryer that the shop file does not state, to one without a belt width, or where there are two.
func TestDryerSetsThePace(t *testing.T) {
	const press, dryer, belt = "[[press]]\nname = \"p\"\nkind = \"automatic\"\nheads = 8\n", "[[dryer]]\nname = \"d\"\nheated-length = \"2.4 m\"\n", "belt-width = \"90 cm\"\n"
	const hand = "[[press]]\nname = \"p\"\nkind = \"manual\"\nheads = 4\n"
	for name, c := range map[string]struct {
		shop, garment string
		perHour       float64 // 2.4 m hold 3.2 shirts, which pass in 45 s at the quickest: 256 an hour
	}{
		"a small dryer":             {press + dryer + belt, "", 256},
		"by hand":                   {hand + dryer + belt, "", 0},
		"the built-in dryer":        {press, "", 0},
		"a belt of unknown width":   {press + dryer, "", 0},
		"two dryers":                {press + dryer + belt + "[[dryer]]\nname = \"e\"\nheated-length = \"2.4 m\"\n" + belt, "", 0},
		"two garments side by side": {press + dryer + "belt-width = \"130 cm\"\n", "", 0},
		"caps":                      {press + dryer + belt, "[garment]\noutline = \"cap\"\n", 0},
	} {
		p := plantest.Plan(t, "title = \"t\"\nquantity = 128\n"+c.garment+"[[location]]\n[[location.screen]]\nink = \"plastisol\"\n", plantest.Shop(t, c.shop))
		l := p.Locations[0]
		if (l.Time.Slowest == "dryer") != (c.perHour > 0) {
			t.Errorf("%s: %s sets the pace at %g an hour", name, l.Time.Slowest, l.Time.PiecesPerHour)
			continue
		}
		if c.perHour == 0 {
			continue
		}
		if got := l.Time; math.Abs(got.PiecesPerHour-c.perHour) > 1e-9 || math.Abs(got.PieceS-3600/c.perHour) > 1e-9 || math.Abs(*got.RunMin-128*60/c.perHour) > 1e-9 ||
			got.PressPerHour != 450 || math.Abs(p.Time.RunMin-*got.RunMin) > 1e-9 {
			t.Errorf("%s: %+v; %g an hour are wanted, where the press could print 450", name, got, c.perHour)
		}
	}
}

// TestPrintedAgainComesRound: what a small automatic prints twice comes round to its own head before the next one.
func TestPrintedAgainComesRound(t *testing.T) {
	if small := pressPlan(t, "kind = \"automatic\"\nheads = 6\n").Screens; small[0].Next == nil || small[0].Next.Screen != 1 || small[0].Next.Head != small[0].Head || small[1].Next != nil {
		t.Errorf("after the first hit comes %v, and after the last screen %v", small[0].Next, small[1].Next)
	}
	if wide := pressPlan(t, "kind = \"automatic\"\nheads = 8\n").Screens; wide[0].Next == nil || wide[0].Next.Head != 4 {
		t.Errorf("with a second screen of it, %v comes after the first hit", wide[0].Next)
	}
}
