package press

// The codes of Advice.
const (
	GroundNotFirst = "ground-not-first" // an underbase or a blocker after a screen that prints on it
	BlockerAfter   = "blocker-after"    // a blocker after the underbase that it should lie under
	LargeFirst     = "large-first"      // a larger coverage before a smaller one
	DarkFirst      = "dark-first"       // a darker ink before a lighter one
	BlackNotLast   = "black-not-last"   // black before another color
	ThickNotLast   = "thick-not-last"   // a raised or clear film before a thinner one
)

// Note is one place where the order of the job departs from the custom: Screen comes after
// Earlier, and the custom has it before.
type Note struct {
	Code    string
	Screen  int
	Earlier int
}

// BlackLightness is the lightness up to which an ink counts as black here (from memory).
const BlackLightness = 0.1

const (
	largerBy  = 1.25 // coverage from which one screen is clearly larger than another
	lighterBy = 0.1  // lightness from which one ink is clearly lighter than another
)

// places in the customary order
const (
	blocker = iota
	underbase
	color
	black
	thick
)

func place(s Screen) int {
	switch {
	case s.Use == "blocker":
		return blocker
	case s.Use == "underbase":
		return underbase
	case s.Use == "raised" || s.Use == "clear":
		return thick
	case s.Lightness != nil && *s.Lightness <= BlackLightness:
		return black
	}
	return color
}

// Advice compares the order of the screens with the customary one and tells where it departs:
// blocker, then underbase, then the colors from small coverage to large and from light to
// dark, black last, raised and clear films after all. It changes nothing, and each later screen
// is named once per code, against the first screen that it should precede.
//
// The two rules of the colors often pull against each other. A pair departs only if one rule
// says so clearly (a quarter more coverage, a tenth of the lightness scale) and the other does
// not clearly speak for the order as it is. A highlight is free among the colors: it prints on
// top of them by intent. A coverage of 0 and a lightness of nil say nothing.
//
// Range: any screens; NaN says nothing. Kind: common practice; the two margins and
// BlackLightness are from memory.
func Advice(screens []Screen) []Note {
	var notes []Note
	for j := range screens {
		said := map[string]bool{}
		for i := range j {
			for _, code := range departs(screens[i], screens[j]) {
				if !said[code] {
					said[code] = true
					notes = append(notes, Note{Code: code, Screen: j, Earlier: i})
				}
			}
		}
	}
	return notes
}

// departs tells what speaks against printing a before b.
func departs(a, b Screen) []string {
	pa, pb := place(a), place(b)
	switch {
	case pb == blocker && pa == underbase:
		return []string{BlockerAfter}
	case pb <= underbase && pa > underbase:
		return []string{GroundNotFirst}
	case pa == thick && pb != thick:
		return []string{ThickNotLast}
	case a.Use == "highlight" || b.Use == "highlight":
		return nil
	case pa == black && pb == color:
		return []string{BlackNotLast}
	case pa != color || pb != color:
		return nil
	}
	size := compare(a.Coverage, b.Coverage)
	tone := 0
	if a.Lightness != nil && b.Lightness != nil {
		tone = shade(*a.Lightness, *b.Lightness)
	}
	var codes []string
	if size > 0 && tone >= 0 {
		codes = append(codes, LargeFirst)
	}
	if tone > 0 && size >= 0 {
		codes = append(codes, DarkFirst)
	}
	return codes
}

// compare is 1 when a is clearly larger than b, -1 when it is clearly smaller, 0 between.
func compare(a, b float64) int {
	switch {
	case !(a > 0 && b > 0):
		return 0
	case a >= largerBy*b:
		return 1
	case b >= largerBy*a:
		return -1
	}
	return 0
}

// shade is 1 when a is clearly darker than b, -1 when it is clearly lighter, 0 between.
func shade(a, b float64) int {
	switch {
	case b-a >= lighterBy:
		return 1
	case a-b >= lighterBy:
		return -1
	}
	return 0
}
