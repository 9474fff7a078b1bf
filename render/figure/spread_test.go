package figure

import (
	"math"
	"sort"
	"testing"

	"pgregory.net/rapid"
)

func TestSpread(t *testing.T) {
	tests := []struct {
		name       string
		want, size []float64
		lo, hi     float64
		at         []float64 // nil: no room
	}{
		{"none", nil, nil, 0, 1, []float64{}},
		{"apart stay", []float64{2, 8}, []float64{2, 2}, 0, 10, []float64{2, 8}},
		{"equal part evenly", []float64{5, 5}, []float64{2, 2}, 0, 10, []float64{4, 6}},
		{"order of wishes", []float64{6, 5}, []float64{2, 2}, 0, 10, []float64{6.5, 4.5}},
		{"pushed in at the top", []float64{-3}, []float64{2}, 0, 10, []float64{1}},
		{"pushed in at the bottom", []float64{20, 9}, []float64{2, 4}, 0, 10, []float64{9, 6}},
		{"three, one far", []float64{5, 5, 9}, []float64{1, 1, 1}, 0, 10, []float64{4.5, 5.5, 9}},
		{"just fits", []float64{0, 0}, []float64{5, 5}, 0, 10, []float64{2.5, 7.5}},
		{"does not fit", []float64{0, 0}, []float64{5, 5.1}, 0, 10, nil},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			at, ok := spread(tt.want, tt.size, tt.lo, tt.hi)
			if ok != (tt.at != nil) {
				t.Fatalf("ok %v", ok)
			}
			for i := range tt.at {
				if math.Abs(at[i]-tt.at[i]) > 1e-9 {
					t.Fatalf("at %v, want %v", at, tt.at)
				}
			}
		})
	}
}

func TestSpreadProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 9).Draw(t, "n")
		want := rapid.SliceOfN(rapid.Float64Range(-20, 120), n, n).Draw(t, "want")
		size := rapid.SliceOfN(rapid.Float64Range(0.5, 15), n, n).Draw(t, "size")
		at, ok := spread(want, size, 0, 100)
		total := 0.0
		for _, s := range size {
			total += s
		}
		if ok != (total <= 100) {
			t.Fatalf("ok %v for %v in 100", ok, total)
		}
		if !ok {
			return
		}
		order := make([]int, n)
		for i := range order {
			order[i] = i
		}
		sort.SliceStable(order, func(a, b int) bool { return want[order[a]] < want[order[b]] })
		end, free := 0.0, true
		for k, i := range order {
			if at[i]-size[i]/2 < end-1e-9 {
				t.Fatalf("label %d starts at %v, before %v", i, at[i]-size[i]/2, end)
			}
			end = at[i] + size[i]/2
			free = free && want[i]-size[i]/2 >= 0 && want[i]+size[i]/2 <= 100
			if k > 0 {
				j := order[k-1]
				free = free && want[i]-size[i]/2 >= want[j]+size[j]/2
			}
		}
		if end > 100+1e-9 {
			t.Fatalf("the last ends at %v", end)
		}
		for i := range want {
			if free && math.Abs(at[i]-want[i]) > 1e-9 {
				t.Fatalf("label %d moved from %v to %v for nothing", i, want[i], at[i])
			}
		}
		// Least squares: shifting any group that may move does not come nearer to the wishes.
		cost := func(move func(int) float64) (sum float64) {
			for i := range want {
				d := at[i] + move(i) - want[i]
				sum += d * d
			}
			return sum
		}
		base := cost(func(int) float64 { return 0 })
		for k := range order {
			for _, eps := range []float64{-1e-4, 1e-4} {
				// all from the k-th up, or all down to it, in the direction that opens a gap
				up := map[int]bool{}
				for m, i := range order {
					up[i] = eps > 0 && m >= k || eps < 0 && m <= k
				}
				last, first := order[n-1], order[0]
				if eps > 0 && at[last]+size[last]/2+eps > 100 || eps < 0 && at[first]-size[first]/2+eps < 0 {
					continue
				}
				if c := cost(func(i int) float64 {
					if up[i] {
						return eps
					}
					return 0
				}); c < base-1e-9 {
					t.Fatalf("moving group at %d by %v lowers the cost from %v to %v", k, eps, base, c)
				}
			}
		}
	})
}
