package figure

import (
	"fmt"
	"math"

	"github.com/wcharczuk/go-chart/v2"
)

// scale is the range of an axis and makes its ticks: go-chart asks for them each time that it has
// measured the plot anew. It is our own because the ticks of go-chart are neither round nor
// thinned by the width of their labels.
type scale struct {
	chart.ContinuousRange
	least float64                            // step of the ticks that may be
	steps int                                // as many as may be
	label func(v float64, digits int) string // writes the label of a tick
	room  func(chart.Tick) int               // of go-chart's units along the axis that a label needs
	ticks []chart.Tick                       // that were asked for last
}

var _ chart.TicksProvider = (*scale)(nil)

// mostValue is the largest number that an axis takes: beyond, its labels are too long to read.
const mostValue = 1e9

// newScale is a scale over v.
func newScale(v Interval, least float64, steps int, label func(float64, int) string, room func(chart.Tick) int) (*scale, error) {
	if !(v.Low >= -mostValue && v.High <= mostValue) {
		return nil, fmt.Errorf("chart: an axis from %v to %v; accepted are numbers up to %g", v.Low, v.High, mostValue)
	}
	return &scale{ContinuousRange: chart.ContinuousRange{Min: v.Low, Max: v.High}, least: least, steps: steps, label: label, room: room}, nil
}

// Translate is the place of a value, in go-chart's units from the start of the axis. It rounds,
// where that of go-chart goes up and so moves whole numbers by the last digit of a product.
func (s *scale) Translate(v float64) int {
	return int(math.Round((v - s.Min) / s.GetDelta() * float64(s.Domain)))
}

// GetTicks makes ticks at round numbers, as close as their labels allow: two at least, the first
// and the last of closer ones where round numbers further apart would leave only one.
func (s *scale) GetTicks(chart.Renderer, chart.Style, chart.ValueFormatter) []chart.Tick {
	s.ticks = nil
	for step := roundStep(math.Max(s.least, s.GetDelta()/float64(s.steps))); ; step = roundStep(1.5 * step) {
		closer := s.ticks
		s.ticks = s.multiples(step)
		if n := len(closer); len(s.ticks) < 2 && n > 1 {
			if ends := []chart.Tick{closer[0], closer[n-1]}; s.apart(ends) {
				s.ticks = ends
			}
			return s.ticks
		}
		if s.apart(s.ticks) {
			return s.ticks
		}
	}
}

// multiples are ticks at the multiples of a step.
func (s *scale) multiples(step float64) (out []chart.Tick) {
	last := math.Floor(s.Max/step + 1e-6)
	for k := math.Ceil(s.Min/step - 1e-6); k <= last; k++ {
		v := k*step + 0 // never -0
		out = append(out, chart.Tick{Value: clamp(v, s.Min, s.Max), Label: s.label(v, digits(step))})
	}
	return out
}

// apart tells whether evenly spaced ticks have room for their labels.
func (s *scale) apart(ts []chart.Tick) bool {
	if len(ts) < 2 {
		return true
	}
	pitch := (ts[1].Value - ts[0].Value) / s.GetDelta() * float64(s.Domain)
	for _, t := range ts {
		if float64(s.room(t)) > pitch {
			return false
		}
	}
	return true
}

// roundStep is the smallest of 1, 2, 5, 10 ... times a power of ten that is not below step.
func roundStep(step float64) float64 {
	p := math.Pow(10, math.Floor(math.Log10(step)))
	for _, m := range []float64{1, 2, 5} {
		if m*p >= step*(1-1e-9) {
			return m * p
		}
	}
	return 10 * p
}

// digits is the number of decimals that a multiple of a round step needs.
func digits(step float64) int { return max(0, -int(math.Floor(math.Log10(step)+1e-9))) }
