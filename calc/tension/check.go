package tension

import "fmt"

// within reports a value outside lo to hi; NaN is outside of everything.
func within(what string, v, lo, hi float64, unit string) error {
	if !(v >= lo && v <= hi) {
		return fmt.Errorf("tension: %s %g %s is out of range; %g to %g %s is accepted", what, v, unit, lo, hi, unit)
	}
	return nil
}

// first returns the first error that is one.
func first(errs ...error) error {
	for _, err := range errs {
		if err != nil {
			return err
		}
	}
	return nil
}
