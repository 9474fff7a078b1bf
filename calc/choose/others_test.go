package choose_test

import (
	"strconv"
	"testing"

	"bladecard/calc/plan"
)

// TestOthers: a job that is fixed to another blade at the furthest angle of its lean keeps the cut and clears,
// further over it does not; and its film at an angle of the range lies between those that are told.
func TestOthers(t *testing.T) {
	const src = "title = \"t\"\n[[location]]\n[[location.screen]]\nmesh = \"225-40\"\nuse = \"detail\"\nfinest = \"0.4 mm\"\n"
	s := planOf(t, src).Locations[0].Screens[0]
	if len(s.Others.Leans) < 3 {
		t.Fatalf("%d other blades", len(s.Others.Leans))
	}
	fixed := func(blade string, deg float64) plan.Screen {
		return planOf(t, src+"blade = \""+blade+"\"\nstrokes = 1\nhits = 1\nangle = "+strconv.FormatFloat(deg, 'f', 1, 64)+"\n").Locations[0].Screens[0]
	}
	for _, l := range s.Others.Leans {
		if l.ToDeg == nil {
			continue
		}
		if at := fixed(l.Blade, *l.ToDeg); !at.Clears || at.EdgeAngleDeg > *at.EdgeLimitDeg+1e-9 {
			t.Errorf("%s at %g deg: edge %.1f of %.1f, clears %v", l.Blade, *l.ToDeg, at.EdgeAngleDeg, *at.EdgeLimitDeg, at.Clears)
		}
		if further := fixed(l.Blade, *l.ToDeg+2.5); further.Clears && further.EdgeAngleDeg <= *further.EdgeLimitDeg {
			t.Errorf("%s holds at %g deg too", l.Blade, *l.ToDeg+2.5)
		}
		um := fixed(l.Blade, s.AngleDeg.Set).CuredUM.Value
		if um < s.Others.FilmUM.Low-1e-9 || um > s.Others.FilmUM.High+1e-9 {
			t.Errorf("%s lays %.2f um; %v is told", l.Blade, um, s.Others.FilmUM)
		}
	}
}

// TestNext: every screen knows the print after it, and the last one that there is none.
func TestNext(t *testing.T) {
	p := planOf(t, "title = \"t\"\n[garment]\nname = \"tee\"\nshade = \"dark\"\n[[location]]\n[[location.screen]]\ncolor = \"white\"\nink = \"plastisol white\"\nuse = \"underbase\"\n[[location.screen]]\ncolor = \"red\"\n[[location.screen]]\nink = \"plastisol\"\n")
	screens := p.Locations[0].Screens
	for i, s := range screens {
		if i == len(screens)-1 {
			if s.Next != nil {
				t.Errorf("after the last screen comes %v", *s.Next)
			}
			continue
		}
		to := screens[i+1]
		color := to.Color
		if color == "" {
			color = to.Ink
		}
		if want := (plan.Next{Head: to.Head, Screen: to.Number, Color: color, Wet: i == 1}); s.Next == nil || *s.Next != want {
			t.Errorf("after screen %d comes %v; %v is wanted", i+1, s.Next, want)
		}
	}
	if !screens[0].Flash.Cool || screens[1].Flash.Cool {
		t.Errorf("cools after screen 1: %v, after screen 2: %v", screens[0].Flash.Cool, screens[1].Flash.Cool)
	}
}
