package seen

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"sort"

	"bladecard/calc/ink"
	"bladecard/calc/plan"
)

// Outcome is what a correction makes of a measured film.
type Outcome struct {
	plan.Correction
	FilmUM  plan.Band `json:"film_um"` // cured, after the change, with the band of the effect
	InRange bool      `json:"in_range"`
	OffUM   float64   `json:"off_um"` // from the nearer end of the target; negative: too thin
}

// Measurement is a measured film against what a screen asks for, and what would mend it.
type Measurement struct {
	Screen     int       `json:"screen"`
	MeasuredUM float64   `json:"measured_um"` // cured
	DoubtUM    float64   `json:"doubt_um"`    // how far nine of ten lie from it: of a weighed print, what the cloth takes in
	Gauged     bool      `json:"gauged"`      // read off a cured print, and neither wet nor by weight
	ExpectedUM plan.Band `json:"expected_um"`
	InBand     bool      `json:"in_band"`   // the measurement is one that the plan expected
	InTarget   bool      `json:"in_target"` // with InBand: nothing need be changed
	OffUM      float64   `json:"off_um"`    // from the nearer end of the target; negative: too thin
	Outcomes   []Outcome `json:"outcomes"`  // changes the right way, the most fitting first
}

// Correct judges a measured film of a screen, um (0.5 to 3000 cured), and lists what every single
// change that goes the right way would make of it: the plan's effects, laid on the measured film.
// Those that reach the target come first, the least costly before; then those that come nearest.
// A wet film is what the comb reads, of one hit; the ink's solids and the hits make it a cured film first.
func Correct(s plan.Screen, measuredUM float64, wet bool) (Measurement, error) {
	if wet {
		measuredUM *= s.CuredUM.Value / s.CombUM.Value
	}
	m, err := judge(s, measuredUM, 0)
	m.Gauged = !wet && err == nil
	return m, err
}

// CorrectWeighed is Correct for what a print of a screen gained in weight, g, weighed wet: the film that stands
// on the cloth, which the gain holds beside what the cloth takes in. The size of the location and the
// coverage have to be stated.
func CorrectWeighed(s plan.Screen, gainG float64) (Measurement, error) {
	if s.InkGPerPrint == nil {
		return Measurement{}, fmt.Errorf("a gain of %g g says no film, since the inked area is not known; a film is accepted, or width and height of the location and coverage of the screen in the job file", gainG)
	}
	cloth := ink.Sinks{LowUM: s.SinksUM - s.SinksHalfUM, HighUM: s.SinksUM + s.SinksHalfUM}
	wetUM, err := cloth.StandsUM(gainG / *s.InkGPerPrint * cloth.LaidUM(s.WetUM.Value))
	if err != nil {
		return Measurement{}, err
	}
	solids := s.CuredUM.Value / s.WetUM.Value
	return judge(s, wetUM*solids, cloth.HalfUM()*solids)
}

// judge is Correct for a cured film that may be off by doubtUM to either side.
func judge(s plan.Screen, measuredUM, doubtUM float64) (Measurement, error) {
	if !(measuredUM >= 0.5 && measuredUM <= 3000) {
		return Measurement{}, fmt.Errorf("a measured film of %.6g um is out of range; 0.5 to 3000 um is accepted", measuredUM)
	}
	off := func(um float64) float64 { return offTarget(s, um) }
	m := Measurement{
		Screen: s.Number, MeasuredUM: measuredUM, DoubtUM: doubtUM, ExpectedUM: s.CuredUM, OffUM: off(measuredUM),
		InBand: s.CuredUM.Value-measuredUM <= math.Hypot(s.CuredUM.Value-s.CuredUM.Low, doubtUM) &&
			measuredUM-s.CuredUM.Value <= math.Hypot(s.CuredUM.High-s.CuredUM.Value, doubtUM),
		Outcomes: []Outcome{},
	}
	if m.InTarget = m.OffUM == 0; m.InTarget {
		return m, nil
	}
	scale := measuredUM / s.CuredUM.Value
	for _, c := range s.Corrections {
		if c.DeltaUM*m.OffUM >= 0 || math.Abs(scale*c.DeltaUM) < s.TellsUM {
			continue // the wrong way, or nothing that could be measured
		}
		um := scale * c.CuredUM
		m.Outcomes = append(m.Outcomes, Outcome{
			Correction: c, InRange: off(um) == 0, OffUM: off(um),
			FilmUM: plan.Band{Low: um - math.Hypot(scale*(c.DeltaUM-c.DeltaBandUM.Low), doubtUM), Value: um, High: um + math.Hypot(scale*(c.DeltaBandUM.High-c.DeltaUM), doubtUM)},
		})
	}
	sort.SliceStable(m.Outcomes, func(i, j int) bool {
		a, b := m.Outcomes[i], m.Outcomes[j]
		if a.InRange != b.InRange {
			return a.InRange
		}
		if a.InRange {
			return a.Cost < b.Cost
		}
		return math.Abs(a.OffUM) < math.Abs(b.OffUM)
	})
	return m, nil
}

// offTarget is how far a film lies from the nearer end of a screen's target; negative: too thin.
func offTarget(s plan.Screen, um float64) float64 {
	return math.Max(0, um-s.TargetUM.High) + math.Min(0, um-s.TargetUM.Low)
}

// Told are the changes of a screen that are large enough to be measured, at most so many: in turn of those that thicken
// and those that thin the film, of each the least costly first, as Likely has them, and those that no eye would see at
// the end. Those that take a new screen come last. Where the film is expected out of its target, none leads further away.
func Told(s plan.Screen, most int) []plan.Correction {
	var ways [2][]plan.Correction
	off := offTarget(s, s.CuredUM.Value)
	for _, c := range s.Corrections {
		switch {
		case c.Seen && c.DeltaUM < 0 && off >= 0:
			ways[1] = append(ways[1], c)
		case c.Seen && c.DeltaUM > 0 && off <= 0:
			ways[0] = append(ways[0], c)
		}
	}
	cost := func(c plan.Correction) float64 {
		if faint(c) {
			return math.Inf(1)
		}
		return c.Cost
	}
	for _, way := range ways {
		slices.SortStableFunc(way, func(a, b plan.Correction) int { return cmp.Compare(cost(a), cost(b)) })
	}
	var press, screen []plan.Correction
	for i := 0; len(press)+len(screen) < most && len(ways[0])+len(ways[1]) > 0; i++ {
		if way := &ways[i%2]; len(*way) > 0 {
			c := (*way)[0]
			if *way = (*way)[1:]; slices.Contains(c.Disturbs, "screen") {
				screen = append(screen, c)
			} else {
				press = append(press, c)
			}
		}
	}
	return append(press, screen...)
}
