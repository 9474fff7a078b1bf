package choose_test

import (
	"strings"
	"testing"
)

// TestNeedsBase: a light ink straight on darker cloth that cannot hide it asks for a base, with the film that
// would do and a base that is planned; a base under it, light cloth, dark ink and discharge ask for none.
func TestNeedsBase(t *testing.T) {
	const yellow, black, white = "swatch = \"#ffd200\"\n", "swatch = \"#151515\"\n", "swatch = \"#fbfbf6\"\n"
	for name, c := range map[string]struct {
		head, screen, before string
		wants                string
	}{
		"yellow straight on black":   {"[garment]\nshade = \"dark\"", "ink = \"plastisol\"\n" + yellow, "", "needs-base"},
		"red straight on black":      {"[garment]\nshade = \"dark\"", "ink = \"plastisol\"\nswatch = \"#d02020\"\n", "", "needs-base"},
		"red on light cloth":         {"[garment]\nshade = \"light\"", "ink = \"plastisol\"\nswatch = \"#d02020\"\n", "", ""},
		"yellow on a base":           {"[garment]\nshade = \"dark\"", "ink = \"plastisol\"\n" + yellow, "ink = \"plastisol white\"\nuse = \"underbase\"\n", ""},
		"yellow on light cloth":      {"[garment]\nshade = \"light\"", "ink = \"plastisol\"\n" + yellow, "", ""},
		"black on white cloth":       {"[garment]\nshade = \"light\"", "ink = \"plastisol\"\n" + black, "", ""},
		"black on dark cloth":        {"[garment]\nshade = \"dark\"", "ink = \"plastisol\"\n" + black, "", ""},
		"thin white on dark":         {"[garment]\nshade = \"dark\"", "ink = \"plastisol white\"\nfilm = \"18..24 um\"\n" + white, "", "needs-base"},
		"thin base on dark":          {"[garment]\nshade = \"dark\"", "ink = \"plastisol white\"\nuse = \"underbase\"\nfilm = \"14..18 um\"\n" + white, "", "base-thin"},
		"discharge straight on dark": {"[garment]\nshade = \"dark\"", "ink = \"discharge\"\n" + yellow, "", ""},
		"water-based on dark":        {"[garment]\nshade = \"dark\"", "ink = \"water-based\"\n" + yellow, "", "needs-base"},
		"shade not said":             {"", "ink = \"plastisol\"\n" + yellow, "", ""},
	} {
		src := "title = \"t\"\n" + c.head + "\n[[location]]\nwidth = \"25 cm\"\nheight = \"25 cm\"\n"
		if c.before != "" {
			src += "[[location.screen]]\n" + c.before
		}
		screens := planOf(t, src+"[[location.screen]]\n"+c.screen).Locations[0].Screens
		s := screens[len(screens)-1]
		got := ""
		for _, w := range s.Warnings {
			if w.Code == "needs-base" || w.Code == "base-thin" {
				got = w.Code
				if !(w.Values["hides_um"] > s.CuredUM.Value) || s.HidesUM == nil || *s.HidesUM != w.Values["hides_um"] {
					t.Errorf("%s: %+v beside %g um", name, w, s.CuredUM.Value)
				}
			}
		}
		if got != c.wants {
			t.Errorf("%s: %q is said; %q is wanted (%s)", name, got, c.wants, codesOf(s))
		}
		if (s.Base != nil) != (c.wants == "needs-base") {
			t.Errorf("%s: base %+v", name, s.Base)
		}
		if b := s.Base; b != nil && (!strings.Contains(b.Ink, "white") && !strings.Contains(b.Ink, "acrylic") || b.Mesh == "" || !(b.CuredUM > 0) || b.ChokeMM <= 0) {
			t.Errorf("%s: base %+v", name, *b)
		}
	}
}
