package span

import "fmt"

// Check is an error unless lo <= v <= hi; NaN is outside of everything.
type Check func(what string, v, lo, hi float64, unit string) error

// In returns the check of a package; its name leads the error.
func In(name string) Check {
	return func(what string, v, lo, hi float64, unit string) error {
		if !(v >= lo && v <= hi) {
			return fmt.Errorf("%s: %s %.6g %s is out of range; %g to %g %s is accepted", name, what, v, unit, lo, hi, unit)
		}
		return nil
	}
}

// First returns the first error that is one.
func First(errs ...error) error {
	for _, err := range errs {
		if err != nil {
			return err
		}
	}
	return nil
}
