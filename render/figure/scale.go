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
	size  func(chart.Tick) int               // of a label along the axis, in go-chart's units
	gap   int                                // between two labels
	over  float64                            // share of a label that both ends of the axis together take from it
	ticks []chart.Tick                       // that were asked for last
}

var _ chart.TicksProvider = (*scale)(nil)

// mostValue is the largest number that an axis takes: beyond, its labels are too long to read.
const mostValue = 1e9

// on sets the interval of a scale.
func (s scale) on(v Interval) (*scale, error) {
	if !(v.Low >= -mostValue && v.High <= mostValue) {
		return nil, fmt.Errorf("chart: an axis from %v to %v; accepted are numbers up to %g", v.Low, v.High, mostValue)
	}
	s.Min, s.Max = v.Low, v.High
	return &s, nil
}

// Translate is the place of a value, in go-chart's units from the start of the axis. It rounds,
// where that of go-chart goes up and so moves whole numbers by the last digit of a product.
func (s *scale) Translate(v float64) int {
	return int(math.Round((v - s.Min) / s.GetDelta() * float64(s.Domain)))
}

// GetTicks makes ticks at round numbers, as close as their labels allow. Where round numbers
// further apart would leave only one, it takes the first and the last of the closest.
func (s *scale) GetTicks(chart.Renderer, chart.Style, chart.ValueFormatter) []chart.Tick {
	step := roundStep(math.Max(s.least, s.GetDelta()/float64(s.steps)))
	closest := s.multiples(step)
	for s.ticks = closest; len(s.ticks) > 1; s.ticks = s.multiples(step) {
		if s.apart(s.ticks) {
			return s.ticks
		}
		step = roundStep(1.5 * step)
	}
	if n := len(closest); n > 1 {
		s.ticks = []chart.Tick{closest[0], closest[n-1]}
		if !s.apart(s.ticks) {
			s.ticks = s.ticks[:1]
		}
	}
	return s.ticks
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

// apart tells whether evenly spaced ticks have room for their labels, even where go-chart, once
// the ticks are made, takes from the axis what labels at its ends need.
func (s *scale) apart(ts []chart.Tick) bool {
	if len(ts) < 2 {
		return true
	}
	size := 0
	for _, t := range ts {
		size = max(size, s.size(t))
	}
	left := float64(s.Domain) - s.over*float64(size)
	return (ts[1].Value-ts[0].Value)/s.GetDelta()*left >= float64(size+s.gap)
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
