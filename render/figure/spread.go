package figure

import "sort"

// spread places labels of the given sizes along a line from lo to hi, each with its middle as
// near to the wanted place as the others let it (least squares), none overlapping, in the
// order of the wanted places. ok is false when they do not fit; then nothing is placed.
func spread(want, size []float64, lo, hi float64) (at []float64, ok bool) {
	n := len(want)
	order := make([]int, n)
	total := 0.0
	for i := range order {
		order[i] = i
		total += size[i]
	}
	if !(total <= hi-lo) {
		return nil, false
	}
	sort.SliceStable(order, func(a, b int) bool { return want[order[a]] < want[order[b]] })

	// With the sizes before it taken off, each label's start must not be below the one before:
	// an isotonic regression, solved by pooling neighbors that violate it.
	type pool struct {
		sum   float64
		count int
	}
	var pools []pool
	before := 0.0
	for _, i := range order {
		pools = append(pools, pool{want[i] - size[i]/2 - before, 1})
		before += size[i]
		for k := len(pools) - 1; k > 0 && pools[k-1].sum/float64(pools[k-1].count) > pools[k].sum/float64(pools[k].count); k-- {
			pools[k-1].sum += pools[k].sum
			pools[k-1].count += pools[k].count
			pools = pools[:k]
		}
	}
	at = make([]float64, n)
	before, next := 0.0, 0
	for _, p := range pools {
		start := clamp(p.sum/float64(p.count), lo, hi-total)
		for range p.count {
			i := order[next]
			at[i] = start + before + size[i]/2
			before += size[i]
			next++
		}
	}
	return at, true
}
