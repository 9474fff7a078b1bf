package mesh

import "fmt"

// Weave is how the threads cross.
type Weave int

// The weaves of printing cloth.
const (
	Plain Weave = iota // one over, one under
	Twill              // one over two, or two over two
)

// WetHeightRuleUM is the published rule of thumb for the wet film of a cloth, in micrometres.
// It is a cross-check of package film and nothing else: it jumps where the formula changes,
// between 42 and 43 threads per cm, and is a third low on thin threads.
//
//	plain, up to 42 threads/cm:  1.82 D (1 - M D)^2   D thread, M count
//	plain, 43 to 139:            0.285 F              F fabric thickness
//	plain, 140 and more:         0.35 F
//	twill:                       0.31 F
//
// A count between two of the steps belongs to the lower one. Range: count 1 to 400 threads
// per cm, thread 5 to 10 000 um, thickness 5 to 20 000 um (not used up to 42 threads/cm, then
// 0 is taken); an error outside, or when the threads leave no opening. Source: "How Much Ink
// Do You Need?", Screen Printing, April 2000, Table 1 and Fig. 1 [12] (published).
func WetHeightRuleUM(countPerCM, threadUM, fabricUM float64, weave Weave) (float64, error) {
	if err := first(
		within("count", countPerCM, 1, 400, "threads per cm"),
		within("thread", threadUM, 5, 10000, "um")); err != nil {
		return 0, err
	}
	if weave != Plain && weave != Twill {
		return 0, fmt.Errorf("mesh: weave %d is not known; Plain and Twill are accepted", weave)
	}
	if weave == Plain && countPerCM < 43 {
		open := 1 - countPerCM*threadUM/1e4
		if !(open > 0) {
			return 0, fmt.Errorf("mesh: a thread of %g um at %g per cm leaves no opening; below %g um is accepted", threadUM, countPerCM, 1e4/countPerCM)
		}
		return 1.82 * threadUM * open * open, nil
	}
	if err := within("fabric thickness", fabricUM, 5, 20000, "um"); err != nil {
		return 0, err
	}
	switch {
	case weave == Twill:
		return 0.31 * fabricUM, nil
	case countPerCM < 140:
		return 0.285 * fabricUM, nil
	}
	return 0.35 * fabricUM, nil
}
