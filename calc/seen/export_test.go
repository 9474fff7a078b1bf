package seen

import "strings"

// Needs are the figures that each line of the table gets, by its code.
func Needs() map[string][]string {
	out := map[string][]string{}
	add := func(all []line) {
		for _, l := range all {
			if l.code == "film" {
				continue
			}
			figures := []string{}
			for _, need := range strings.Fields(l.needs) {
				if need[0] != '?' && need[0] != '!' {
					figures = append(figures, need)
				}
			}
			out[l.code] = figures
		}
	}
	add(means)
	for _, r := range table {
		for _, lines := range [][]line{r.instead, r.look, r.off, r.changes, r.measure, r.not, r.caution} {
			add(lines)
		}
	}
	return out
}
