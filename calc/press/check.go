package press

import "fmt"

// within reports a value outside lo to hi; NaN is outside of everything.
func within(what string, v, lo, hi float64, unit string) error {
	if !(v >= lo && v <= hi) {
		return fmt.Errorf("press: %s %g %s is out of range; %g to %g %s is accepted", what, v, unit, lo, hi, unit)
	}
	return nil
}
