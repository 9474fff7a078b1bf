package figure

import (
	"math"
	"strconv"

	"bladecard/render/canvas"
)

// Tick is a mark on an axis. At is in the axis's own unit; an empty label marks without text.
type Tick struct {
	At    float64
	Label string
}

// scale is a linear axis from lo to hi with its ticks; the first tick is at lo, the last at hi.
type scale struct {
	lo, hi float64
	ticks  []Tick
}

// share is where v lies between lo (0) and hi (1).
func (s scale) share(v float64) float64 { return (v - s.lo) / (s.hi - s.lo) }

// roundStep is the smallest of 1, 2, 5, 10 ... times a power of ten that is not below step.
func roundStep(step float64) float64 {
	p := math.Pow(10, math.Floor(math.Log10(step)))
	for _, m := range []float64{1, 2, 5, 10} {
		if m*p >= step*(1-1e-9) {
			return m * p
		}
	}
	return 10 * p
}

// digits is the number of decimals that a multiple of a round step needs.
func digits(step float64) int {
	return max(0, -int(math.Floor(math.Log10(step)*(1+1e-12)+1e-9)))
}

// format writes a number without the caller's own format.
func format(v float64, digits int) string { return strconv.FormatFloat(v, 'f', digits, 64) }

// widen makes an interval of a single value, so that an axis has a length. Values that differ
// by less than a millionth of themselves, or 1e-9, are one.
func widen(lo, hi float64) (float64, float64) {
	if hi-lo > math.Max(1e-6*math.Max(math.Abs(lo), math.Abs(hi)), 1e-9) {
		return lo, hi
	}
	by := 0.1 * math.Abs(lo)
	if by < 1e-9 {
		by = 1
	}
	return lo - by, hi + by
}

// roundTicks makes ticks at round numbers: about n steps between lo and hi. With fixed ends
// the scale keeps them, else it is widened to the next ticks.
func roundTicks(lo, hi float64, n int, fixed bool, f func(float64, int) string) scale {
	step := roundStep((hi - lo) / float64(max(1, n)))
	d := digits(step)
	first, last := math.Floor(lo/step+1e-6), math.Ceil(hi/step-1e-6)
	if fixed {
		first, last = math.Ceil(lo/step-1e-6), math.Floor(hi/step+1e-6)
	}
	s := scale{lo: lo, hi: hi, ticks: make([]Tick, 0, max(0, int(math.Min(1e4, last-first+1))))}
	for k := first; k <= last; k++ {
		v := k*step + 0 // never -0
		s.ticks = append(s.ticks, Tick{v, f(v, d)})
	}
	if !fixed {
		s.lo, s.hi = first*step, last*step
	}
	return s.spanned()
}

// spanned makes the ticks reach from end to end, with unlabelled ones where there is none:
// go-chart takes the range of an axis from its ticks.
func (s scale) spanned() scale {
	near := 1e-6 * (s.hi - s.lo)
	in := make([]Tick, 0, len(s.ticks)+2)
	for _, t := range s.ticks {
		if t.At >= s.lo-near && t.At <= s.hi+near {
			in = append(in, Tick{clamp(t.At, s.lo, s.hi), t.Label})
		}
	}
	s.ticks = in
	if len(in) == 0 || in[0].At > s.lo+near {
		s.ticks = append([]Tick{{At: s.lo}}, s.ticks...)
	}
	s.ticks[0].At = s.lo
	if last := len(s.ticks) - 1; last > 0 && s.ticks[last].At >= s.hi-near {
		s.ticks[last].At = s.hi
	} else {
		s.ticks = append(s.ticks, Tick{At: s.hi})
	}
	return s
}

// thin drops the labels of ticks, every second, third ... kept, until they stand apart by half
// an em on an axis of the given length in mm.
func thin(c canvas.Canvas, ticks []Tick, s scale, length float64, f canvas.Font) []Tick {
	apart := func(stride int) bool {
		end := math.Inf(-1)
		for i := 0; i < len(ticks); i += stride {
			w := c.TextWidth(ticks[i].Label, f)
			at := s.share(ticks[i].At) * length
			if ticks[i].Label == "" {
				continue
			}
			if at-w/2 < end+0.5*em(f) {
				return false
			}
			end = at + w/2
		}
		return true
	}
	stride := 1
	for stride < len(ticks) && !apart(stride) {
		stride++
	}
	out := make([]Tick, len(ticks))
	for i, t := range ticks {
		if i%stride != 0 {
			t.Label = ""
		}
		out[i] = t
	}
	return out
}

// fitRound makes round ticks as close as their measured labels allow on the length.
func fitRound(c canvas.Canvas, lo, hi float64, fixed bool, length float64, f canvas.Font, form func(float64, int) string) scale {
	var s scale
	last := 0.0
	for n := min(12, max(1, int(length/(2*em(f))))); n >= 1; n-- {
		step := roundStep((hi - lo) / float64(n))
		if step == last {
			continue // the same ticks again
		}
		last = step
		s = roundTicks(lo, hi, n, fixed, form)
		whole := true
		for i, t := range thin(c, s.ticks, s, length, f) {
			whole = whole && t.Label == s.ticks[i].Label
		}
		if whole {
			return s
		}
	}
	s.ticks = thin(c, s.ticks, s, length, f)
	return s
}
