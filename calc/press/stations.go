package press

import (
	"fmt"
	"slices"
)

// Screen is what the layout has to know of a screen.
type Screen struct {
	Use       string   // underbase, blocker, solid, detail, halftone, highlight, raised, clear
	Coverage  float64  // of the location's area; 0: not known
	Lightness *float64 // of the ink, 0 black to 1 white, see Lightness; nil: not known
	Flash     bool     // must be flashed before the next screen, whatever its use
	Cool      bool     // must cool down after its flash
	Hits      int      // prints with a flash between; 0 is 1
	Forced    bool     // flashed even where nothing asks for it, after the last print too
	Forbidden bool     // never flashed, whatever its use
}

// The kinds of Station.
const (
	Print = "print"
	Flash = "flash"
	Cool  = "cool"
)

// Station is one stop of the garment.
type Station struct {
	Kind   string // Print, Flash or Cool
	Screen int    // that prints here, or whose print is flashed or cooled here
}

// Stations lays the screens out in the order of the job, one station after another.
//
// An underbase and a blocker are followed by a flash and a cool-down; a screen with Flash by a
// flash, and a cool-down if it says Cool. A screen with several Hits prints, is flashed and cooled,
// and prints again on a head of its own, once for each. After the last print nothing follows: it goes to the
// dryer, which is why thick films, last by custom (Advice), take no flash; a Forced flash stands there
// all the same.
//
// Range: any number of screens, none gives none. Kind: common practice; the count is published
// (6 colors, 1 flash, 1 cool-down: 8).
func Stations(screens []Screen) []Station {
	var out []Station
	for i, s := range screens {
		for range s.Hits - 1 {
			out = append(out, Station{Print, i}, Station{Flash, i}, Station{Cool, i})
		}
		out = append(out, Station{Print, i})
		if i < len(screens)-1 || s.Forced {
			out = append(out, s.after(i, s.Hits > 1)...)
		}
	}
	return out
}

// after are the stations that follow the print of screen i before the next one.
func (s Screen) after(i int, cool bool) []Station {
	ground := s.Use == "underbase" || s.Use == "blocker" || cool
	switch {
	case s.Forbidden || !ground && !s.Flash && !s.Forced:
		return nil
	case ground || s.Cool:
		return []Station{{Flash, i}, {Cool, i}}
	}
	return []Station{{Flash, i}}
}

// OneTurn lays the screens out as Stations does, with one head a screen, for a press that sends the
// garments round again where a screen has several Hits: each such screen is flashed and cooled after
// its head, the last one too. Turns has the screens that print in each turn: the order of the job is kept, so
// that a screen prints its last hit before the next one prints.
//
// Range: any number of screens, none gives none and no turn. Kind: common practice.
func OneTurn(screens []Screen) (stations []Station, turns [][]int) {
	for i, s := range screens {
		for hit := range max(1, s.Hits) {
			if hit > 0 || turns == nil {
				turns = append(turns, nil)
			}
			turns[len(turns)-1] = append(turns[len(turns)-1], i)
		}
		stations = append(stations, Station{Print, i})
		if i < len(screens)-1 || s.Forced || s.Hits > 1 {
			stations = append(stations, s.after(i, s.Hits > 1)...)
		}
	}
	return stations, turns
}

// Runs splits the prints into rows without a flash between them: the first screen of a row
// prints on cloth or on gelled ink, each later one on the wet ink of those before it. A row of
// one screen prints nothing on wet ink. It holds where the garment goes from head to head; on a
// flatbed, where each print dries before the next, every row has one screen.
//
// Range: any stations, none give none. Kind: derived from the layout.
func Runs(stations []Station) [][]int {
	var runs [][]int
	dry := true
	for _, s := range stations {
		switch {
		case s.Kind == Flash:
			dry = true
		case s.Kind == Print && dry:
			runs = append(runs, []int{s.Screen})
			dry = false
		case s.Kind == Print:
			runs[len(runs)-1] = append(runs[len(runs)-1], s.Screen)
		}
	}
	return runs
}

// OnWet lists the screens that print on wet ink, in print order: all of Runs but the first of
// each row.
//
// Range: any stations, none give none. Kind: derived from the layout.
func OnWet(stations []Station) []int {
	var wet []int
	for _, run := range Runs(stations) {
		wet = append(wet, run[1:]...)
	}
	return wet
}

// ErrNoPress is a layout that none of the presses can take.
type ErrNoPress struct {
	Needs []int     // heads that the layout takes, press by press
	Press []Machine // the presses that were tried
}

func (e ErrNoPress) Error() string {
	if len(e.Press) == 0 {
		return "press: there is no press; one or more are accepted"
	}
	text := "press: no press has the heads:"
	for i, m := range e.Press {
		if i > 0 {
			text += ","
		}
		text += fmt.Sprintf(" press %d (%s) has %d of %d", i+1, m.Kind, m.Heads, e.Needs[i])
	}
	return text + "; fewer screens, fewer flashes, or a press with more heads are accepted"
}

// Machine is what the layout has to know of a press.
type Machine struct {
	Kind  string // manual, automatic, flatbed
	Heads int    // stations that can hold a screen
}

// Needs is the number of heads that a layout takes on a kind of press:
//
//	automatic  every station: prints, flashes, cool-downs
//	manual     every screen, and one more if anything is flashed: the printer turns each pallet
//	           back to the one flash, lets it cool while the others are printed, and prints a
//	           screen with several Hits from its one head
//	flatbed    1, one screen at a time, a pass of the stock for each
//
// Range: the three kinds; an error for any other. Kind: automatic published (glossaries [47]), manual
// and flatbed common practice.
func Needs(stations []Station, kind string) (int, error) {
	switch kind {
	case "automatic":
		return len(stations), nil
	case "manual":
		heads := map[int]bool{} // by screen, the flash as -1
		for _, s := range stations {
			switch s.Kind {
			case Print:
				heads[s.Screen] = true
			case Flash:
				heads[-1] = true
			}
		}
		return len(heads), nil
	case "flatbed":
		return min(len(stations), 1), nil
	}
	return 0, fmt.Errorf("press: the kind %q is not known; manual, automatic and flatbed are accepted", kind)
}

// Choose returns the index of the first press that has the heads for a layout; if none has,
// the error is an ErrNoPress that tells how many each would need.
//
// Range: kinds of Needs, 1 to 1000 heads a press; an error outside. Kind: as Needs.
func Choose(stations []Station, presses []Machine) (int, error) {
	needs := make([]int, len(presses))
	for i, m := range presses {
		if err := within("number of heads", float64(m.Heads), 1, 1000, "heads"); err != nil {
			return 0, err
		}
		var err error
		if needs[i], err = Needs(stations, m.Kind); err != nil {
			return 0, err
		}
	}
	for i, m := range presses {
		if needs[i] <= m.Heads {
			return i, nil
		}
	}
	return 0, ErrNoPress{Needs: needs, Press: slices.Clone(presses)}
}
