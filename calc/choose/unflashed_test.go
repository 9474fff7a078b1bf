package choose_test

import (
	"strings"
	"testing"
)

// TestUnflashed: a flash that the order needs and the job forbids is told; one that nothing asks for is not. Of two
// whites in a row the first is flashed.
func TestUnflashed(t *testing.T) {
	const white, color = "ink = \"plastisol white\"\nhits = 1\n", "ink = \"plastisol\"\n"
	for name, c := range map[string]struct {
		first, then   string
		warns, needed bool
	}{
		"two whites":           {white, white, false, true},
		"two whites, no flash": {white + "flash = false\n", white, true, false},
		"base, no flash":       {white + "use = \"underbase\"\nflash = false\n", color, true, false},
		"a color, no flash":    {color + "flash = false\n", color, false, false},
		"water, no flash":      {"ink = \"high-solids acrylic\"\nhits = 1\nflash = false\n", "ink = \"high-solids acrylic\"\n", true, false},
	} {
		l := planOf(t, "title = \"t\"\n[[location]]\n[[location.screen]]\n"+c.first+"[[location.screen]]\n"+c.then).Locations[0]
		warns := false
		for _, w := range l.Warnings {
			warns = warns || w.Code == "flash-forbidden" && w.Values["screen"] == 1 && w.Values["next"] == 2
		}
		if warns != c.warns || l.Screens[0].Flash.Needed != c.needed {
			t.Errorf("%s: told %v, flashed %v (%s)", name, warns, l.Screens[0].Flash.Needed, l.Screens[0].Flash.Why)
		}
	}
}

// TestHighlightOnWhite: a highlight on an earlier white needs no base, straight on dark cloth it does.
func TestHighlightOnWhite(t *testing.T) {
	const head, highlight = "title = \"t\"\n[garment]\nshade = \"dark\"\n[[location]]\n", "[[location.screen]]\nink = \"plastisol white\"\nuse = \"highlight\"\nhits = 1\nfilm = \"14..20 um\"\n"
	for before, want := range map[string]bool{"": true, "[[location.screen]]\nink = \"plastisol white\"\n": false, "[[location.screen]]\nink = \"plastisol\"\nswatch = \"#101010\"\n": true} {
		screens := planOf(t, head+before+highlight).Locations[0].Screens
		if s := screens[len(screens)-1]; strings.Contains(codesOf(s), "needs-base") != want {
			t.Errorf("after %q: %s", before, codesOf(s))
		}
	}
}
