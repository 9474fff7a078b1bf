package figure

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/wcharczuk/go-chart/v2"
	"pgregory.net/rapid"
)

func labels(ts []chart.Tick) string {
	var s []string
	for _, t := range ts {
		s = append(s, t.Label)
	}
	return strings.Join(s, " ")
}

// ticks are those of a scale on a length, where a letter takes ten units.
func ticks(t testing.TB, v Interval, least float64, steps, length int) string {
	s, err := (scale{least: least, steps: steps, label: Chart{}.number, size: func(t chart.Tick) int { return 10 * len(t.Label) }}).on(v)
	if err != nil {
		t.Fatal(err)
	}
	s.SetDomain(length)
	return labels(s.GetTicks(nil, chart.Style{}, nil))
}

func TestTicks(t *testing.T) {
	for _, tt := range []struct {
		lo, hi float64
		steps  int
		length int
		want   string
	}{
		{0, 10, 5, 1000, "0 2 4 6 8 10"},
		{3, 47, 5, 1000, "10 20 30 40"},
		{5, 45, 8, 1000, "5 10 15 20 25 30 35 40 45"},
		{0, 1, 4, 1000, "0.0 0.5 1.0"},
		{0.02, 0.07, 5, 1000, "0.02 0.03 0.04 0.05 0.06 0.07"},
		{-4, 4, 4, 1000, "-4 -2 0 2 4"},
		{1200, 3400, 3, 1000, "2000 3000"},
		{0, 45, 12, 181, "0 5 10 15 20 25 30 35 40 45"},
		{0, 45, 12, 179, "0 10 20 30 40"},
		{0, 45, 12, 46, "0 20 40"},
		{0, 45, 12, 44, "0 45"},
		{0, 45, 12, 1, "0"},
	} {
		if got := ticks(t, Interval{tt.lo, tt.hi}, 0, tt.steps, tt.length); got != tt.want {
			t.Errorf("%v to %v in %d on %d: %s, want %s", tt.lo, tt.hi, tt.steps, tt.length, got, tt.want)
		}
	}
	if got := ticks(t, Interval{1, 3}, Axis{Whole: true}.least(), 12, 1000); got != "1 2 3" {
		t.Errorf("whole numbers from 1 to 3: %s", got)
	}
}

func TestTicksAreRoundAndApart(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		lo := rapid.Float64Range(-1000, 1000).Draw(t, "lo")
		hi := lo + rapid.Float64Range(0.001, 5000).Draw(t, "span")
		length := rapid.IntRange(1, 2000).Draw(t, "length")
		steps := rapid.IntRange(2, 12).Draw(t, "steps")
		v := Interval{lo, hi}
		s, err := (scale{steps: steps, label: Chart{}.number, size: func(t chart.Tick) int { return 10 * len(t.Label) }}).on(v)
		if err != nil {
			t.Fatal(err)
		}
		s.SetDomain(length)
		end := -1000
		got := s.GetTicks(nil, chart.Style{}, nil)
		for i, k := range got {
			v, err := strconv.ParseFloat(k.Label, 64)
			if err != nil || math.Abs(v-k.Value) > 1e-5*(hi-lo) || k.Value < lo || k.Value > hi {
				t.Fatalf("label %q at %v of %v to %v", k.Label, k.Value, lo, hi)
			}
			at := s.Translate(k.Value)
			if at < 0 || at > length {
				t.Fatalf("%v stands at %d of %d", k.Value, at, length)
			}
			if at-5*len(k.Label) < end-1 { // a unit of rounding
				t.Fatalf("labels overlap in %v on %d", got, length)
			}
			end = at + 5*len(k.Label)
			if i > 0 {
				step := k.Value - got[i-1].Value
				if m := step / roundStep(0.999*step); math.Abs(m-1) > 1e-3 && i > 1 && i < len(got)-1 {
					t.Fatalf("step %v", step)
				}
			}
		}
		if length > 1000 && len(got) < 2 && steps >= 6 {
			t.Fatalf("%v on %d units", got, length)
		}
	})
}

func TestScaleRefuses(t *testing.T) {
	for _, v := range []Interval{{0, 1e300}, {-1.7e308, 1}, {math.NaN(), 1}, {0, math.Inf(1)}} {
		if _, err := (scale{}).on(v); err == nil {
			t.Errorf("%v is taken", v)
		}
	}
}
