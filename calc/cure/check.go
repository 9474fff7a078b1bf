package cure

import "fmt"

// within is an error unless lo <= v <= hi; NaN is outside.
func within(what string, v, lo, hi float64, unit string) error {
	if !(v >= lo && v <= hi) {
		return fmt.Errorf("cure: %s %g %s is out of range; %g to %g %s is accepted", what, v, unit, lo, hi, unit)
	}
	return nil
}

func first(errs ...error) error {
	for _, err := range errs {
		if err != nil {
			return err
		}
	}
	return nil
}

func errFibre(fibre string) error {
	return fmt.Errorf("cure: the fibre %q is not known; cotton, polyester, blend, tri-blend or nylon is accepted", fibre)
}
