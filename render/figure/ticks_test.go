package figure

import (
	"math"
	"strconv"
	"testing"

	"pgregory.net/rapid"

	"bladecard/render/canvas"
)

func labels(ts []Tick) string {
	s := ""
	for i, t := range ts {
		if i > 0 {
			s += " "
		}
		if t.Label == "" {
			s += "."
		}
		s += t.Label
	}
	return s
}

func TestRoundTicks(t *testing.T) {
	for _, tt := range []struct {
		lo, hi float64
		n      int
		fixed  bool
		want   string
	}{
		{0, 10, 5, false, "0 2 4 6 8 10"},
		{3, 47, 5, false, "0 10 20 30 40 50"},
		{3, 47, 5, true, ". 10 20 30 40 ."},
		{5, 45, 8, true, "5 10 15 20 25 30 35 40 45"},
		{0, 1, 4, false, "0.0 0.5 1.0"},
		{0.02, 0.07, 5, false, "0.02 0.03 0.04 0.05 0.06 0.07"},
		{-4, 4, 4, false, "-4 -2 0 2 4"},
		{1200, 3400, 3, false, "1000 2000 3000 4000"},
		{12, 18, 1, true, ". ."},
	} {
		if got := labels(roundTicks(tt.lo, tt.hi, tt.n, tt.fixed, format).ticks); got != tt.want {
			t.Errorf("%v to %v in %d: %s, want %s", tt.lo, tt.hi, tt.n, got, tt.want)
		}
	}
}

func TestThin(t *testing.T) {
	rec, f := &recorder{}, canvas.Font{SizePT: 72} // a figure is 12.7 mm wide, the least gap too
	ticks := []Tick{{0, "0"}, {1, "1"}, {2, "2"}, {3, "3"}, {4, "4"}}
	s := scale{0, 4, ticks}
	for length, want := range map[float64]string{
		4 * 25.5: "0 1 2 3 4", 4 * 25.3: "0 . 2 . 4", 4 * 12: "0 . . . 4", 20: "0 . . . .",
	} {
		if got := labels(thin(rec, ticks, s, length, f)); got != want && !(length == 48 && got == "0 . . 3 .") {
			t.Errorf("on %v mm: %s, want %s", length, got, want)
		}
	}
	if ticks[1].Label != "1" {
		t.Error("the ticks themselves were changed")
	}
}

func TestTicksAreRoundAndApart(t *testing.T) {
	rec, f := &recorder{}, canvas.Font{SizePT: 9}
	rapid.Check(t, func(t *rapid.T) {
		lo := rapid.Float64Range(-1000, 1000).Draw(t, "lo")
		hi := lo + rapid.Float64Range(0.001, 5000).Draw(t, "span")
		length := rapid.Float64Range(10, 110).Draw(t, "length")
		fixed := rapid.Bool().Draw(t, "fixed")
		s := fitRound(rec, lo, hi, fixed, length, f, format)
		if fixed && (s.lo != lo || s.hi != hi) || s.lo > lo+1e-5*(hi-lo) || s.hi < hi-1e-5*(hi-lo) {
			t.Fatalf("axis from %v to %v for %v to %v", s.lo, s.hi, lo, hi)
		}
		if s.ticks[0].At != s.lo || s.ticks[len(s.ticks)-1].At != s.hi {
			t.Fatalf("ticks %v do not reach from %v to %v", s.ticks, s.lo, s.hi)
		}
		end, step := math.Inf(-1), 0.0
		var last *Tick
		for _, k := range s.ticks {
			if k.Label == "" {
				continue
			}
			v, err := strconv.ParseFloat(k.Label, 64)
			if err != nil || math.Abs(v-k.At) > 1e-6*(hi-lo) {
				t.Fatalf("label %q at %v", k.Label, k.At)
			}
			w := rec.TextWidth(k.Label, f)
			at := s.share(k.At) * length
			if at-w/2 < end {
				t.Fatalf("labels overlap in %v", s.ticks)
			}
			end = at + w/2
			if last != nil {
				if d := k.At - last.At; step != 0 && math.Abs(d-step) > 1e-5*(hi-lo) {
					t.Fatalf("steps of %v and %v", step, d)
				} else {
					step = d
				}
			}
			here := k
			last = &here
		}
		if step > 0 { // 1, 2 or 5 times a power of ten, or whole multiples of such where thinned
			m := step / math.Pow(10, math.Floor(math.Log10(step)+1e-9))
			if math.Abs(m-math.Round(m)) > 1e-4 {
				t.Fatalf("step %v", step)
			}
		}
	})
}
