package figure

import "sort"

// thinned keeps n lines, those of kept.
func (ch Chart) thinned(n int) Chart {
	lines := make([]Line, 0, n)
	for _, i := range ch.kept(n) {
		lines = append(lines, ch.Lines[i])
	}
	ch.Lines = lines
	return ch
}

// kept are the indexes of n lines: the chosen ones first, and of the others an even choice by their
// height at the end, the lowest and the highest among them. The order stays.
func (ch Chart) kept(n int) []int {
	var rest []int
	keep := map[int]bool{}
	height := make([]float64, len(ch.Lines))
	for i, l := range ch.Lines {
		end, ok := l.last()
		height[i] = end.Y
		if l.Strong && len(keep) < n {
			keep[i] = true
		} else if ok {
			rest = append(rest, i)
		}
	}
	sort.SliceStable(rest, func(a, b int) bool { return height[rest[a]] < height[rest[b]] })
	left := min(n-len(keep), len(rest))
	for k := range left {
		at := 0
		if left > 1 {
			at = k * (len(rest) - 1) / (left - 1)
		}
		keep[rest[at]] = true
	}
	out := make([]int, 0, n)
	for i := range ch.Lines {
		if keep[i] {
			out = append(out, i)
		}
	}
	return out
}
