package ink

import (
	"fmt"
	"slices"
	"strings"
)

// Sinks is the wet film in um that bare cloth takes in beside the film that stands on it: nine of ten
// prints take between Low and High. The zero Sinks is a ground that takes nothing: a sheet, or a print.
type Sinks struct{ LowUM, HighUM float64 }

// Nothing is how the ground that takes nothing is called where cloth is told in words.
const Nothing = "none"

// The weaves of a garment that are told apart; where none is stated, Knit is meant.
const (
	Knit   = "knit"
	Woven  = "woven"
	Fleece = "fleece"
)

// takesIn is what cloth takes in by weave and fiber (from memory: cotton knit 10 to 15 um, the others set beside it by
// how open the cloth is and whether its fibers are smooth; not one of them was found measured).
var takesIn = map[string]map[string]Sinks{
	Knit:   {"": {10, 15}, "cotton": {10, 15}, "blend": {9, 15}, "tri-blend": {9, 16}, "polyester": {7, 14}, "nylon": {6, 13}},
	Woven:  {"": {4, 12}, "cotton": {6, 12}, "blend": {5, 11}, "tri-blend": {5, 11}, "polyester": {2, 7}, "nylon": {1, 5}},
	Fleece: {"": {12, 22}, "cotton": {12, 22}, "blend": {11, 21}, "tri-blend": {11, 21}, "polyester": {10, 21}, "nylon": {10, 21}},
}

// SinksOf is what bare cloth of a fiber and a weave takes in; an empty fiber is one that is not known, an
// empty weave a knit.
//
// Range: cotton, polyester, blend, tri-blend, nylon or empty; knit, woven, fleece or empty; an error for any
// other. Kind: from memory.
func SinksOf(fibre, weave string) (Sinks, error) {
	if weave == "" {
		weave = Knit
	}
	s, known := takesIn[weave][fibre]
	if !known {
		return Sinks{}, fmt.Errorf("ink: cloth of %q, %q is not known; cotton, polyester, blend, tri-blend and nylon are accepted, with knit, woven or fleece", fibre, weave)
	}
	return s, nil
}

// ClothOf is what a ground takes in that is told in words: a fiber, a weave or both, as "nylon woven",
// Nothing for a sheet or a print, and empty for a knit of which no more is known.
//
// Range: the words of SinksOf; an error for any other. Kind: from memory.
func ClothOf(words string) (Sinks, error) {
	words = strings.ToLower(strings.TrimSpace(words))
	if words == Nothing {
		return Sinks{}, nil
	}
	fibre, weave := "", ""
	for _, w := range strings.Fields(words) {
		if slices.Contains([]string{Knit, Woven, Fleece}, w) && weave == "" {
			weave = w
		} else if fibre == "" {
			fibre = w
		} else {
			fibre = words // no fiber
		}
	}
	return SinksOf(fibre, weave)
}

// MiddleUM is the wet film that is counted as taken in.
//
// Range: any Sinks. Kind: definition.
func (s Sinks) MiddleUM() float64 { return (s.LowUM + s.HighUM) / 2 }

// HalfUM is how far nine of ten lie from MiddleUM.
//
// Range: any Sinks. Kind: definition.
func (s Sinks) HalfUM() float64 { return (s.HighUM - s.LowUM) / 2 }

// LaidUM is all the ink that a print takes, in um of wet film, for the film that stands on the cloth. A print is
// heavier by it, and the ink of a run is that of all its prints.
//
// Range: any film; no error. Kind: definition.
func (s Sinks) LaidUM(standsUM float64) float64 { return standsUM + s.MiddleUM() }

// StandsUM turns LaidUM round: the wet film in um that stands on the cloth, for all that a weighed print took.
//
// Range: more than MiddleUM: less leaves no film; an error outside. Kind:
// definition.
func (s Sinks) StandsUM(laidUM float64) (float64, error) {
	if !(laidUM > s.MiddleUM()) {
		return 0, fmt.Errorf("ink: %.3g um of wet ink are no more than the %.3g um that the cloth takes in; more is accepted", laidUM, s.MiddleUM())
	}
	return laidUM - s.MiddleUM(), nil
}

// GainedUM is the wet ink in um over the inked area that a gain in weight means: all of it, that which
// sinks in too (StandsUM).
//
// Range: gain above 0 to 1e5 g, area 0.1 to 1e6 cm2, density 0.5 to 3 kg/L; an error outside. Kind: definition of
// density.
func GainedUM(gainG, areaCM2, densityKgPerL float64) (float64, error) {
	if err := first(
		within("gain", gainG, 1e-6, 1e5, "g"),
		within("inked area", areaCM2, 0.1, 1e6, "cm2"),
		within("density", densityKgPerL, 0.5, 3, "kg/L")); err != nil {
		return 0, err
	}
	return gainG / (areaCM2 * densityKgPerL) * 1e4, nil
}
