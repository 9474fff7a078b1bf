package halftone

// ToneStep is a tone on film and what a press printed of it, shares.
type ToneStep struct{ Film, Printed float64 }

// processLine is the measured curve, in per cent. The page also lists 53 -> 59 with a gain of
// 8, which contradicts itself: that point is left out.
// Source: Sefar, "Half-tone printing process line [26]" [26], www.sefar.com (published).
var processLine = [...]ToneStep{
	{1, 0}, {6, 2}, {11, 7}, {17, 15}, {22, 22}, {32, 35}, {40, 44}, {47, 53},
	{63, 76}, {69, 84}, {76, 89}, {83, 94}, {91, 98}, {99, 100},
}

// ProcessLine is a tone curve measured on a press, lightest step first, as shares: gain in the
// mid-tones, loss in the lights. Range: 1 to 99 % on film.
//
// Source: Sefar, "Half-tone printing process line [26]" [26] (published), without its step at 53 %,
// whose gain contradicts its tones. One press, one mesh: what to expect, not what to hold.
func ProcessLine() []ToneStep {
	out := make([]ToneStep, len(processLine))
	for i, s := range processLine {
		out[i] = ToneStep{Film: s.Film / 100, Printed: s.Printed / 100}
	}
	return out
}

// PrintedShare is the tone that a press is to be expected to print of a tone on film, both
// shares, by straight lines between the steps of ProcessLine.
//
// Range: 0.01 to 0.99; an error outside. Source: see ProcessLine (published); the straight
// lines are derived.
func PrintedShare(filmShare float64) (float64, error) {
	if err := within("tone on film", filmShare, 0.01, 0.99, "(a share)"); err != nil {
		return 0, err
	}
	x := filmShare * 100
	for i := 1; i < len(processLine); i++ {
		a, b := processLine[i-1], processLine[i]
		if x <= b.Film {
			return (a.Printed + (x-a.Film)/(b.Film-a.Film)*(b.Printed-a.Printed)) / 100, nil
		}
	}
	return processLine[len(processLine)-1].Printed / 100, nil
}
