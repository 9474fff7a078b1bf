package choose_test

import "testing"

// TestSoftForThick: a thick flat film is laid with the soft blade, a usual one and thick work with a wall of its own
// with the workhorse; fine detail still wants a stiff one, and where a blade is fixed it stays.
func TestSoftForThick(t *testing.T) {
	for name, c := range map[string]struct{ keys, blade string }{
		"thick":          {"film = \"62..110 um\"", "60"},
		"usual":          {"film = \"55..110 um\"", "70"},
		"thick and fine": {"film = \"62..110 um\"\nfinest = \"0.2 mm\"", "70/90/70"},
		"gel":            {"ink = \"plastisol clear gel\"\nuse = \"clear\"\neom = \"200 um\"\nfilm = \"200..260 um\"", "70"},
		"fixed":          {"film = \"62..110 um\"\nblade = \"80\"", "80"},
	} {
		s := planOf(t, "title = \"t\"\n[[location]]\nwidth = \"25 cm\"\nheight = \"25 cm\"\n[[location.screen]]\nmesh = \"110-80\"\n"+c.keys+"\n").Locations[0].Screens[0]
		if s.Blade.Layup != c.blade || s.Reasons[0].To != "70" {
			t.Errorf("%s: %s, from %s; %s is wanted", name, s.Blade.Layup, s.Reasons[0].To, c.blade)
		}
	}
}
