package halftone

import "fmt"

// within reports a value outside lo to hi; NaN is outside of everything.
func within(what string, v, lo, hi float64, unit string) error {
	if !(v >= lo && v <= hi) {
		return fmt.Errorf("halftone: %s %g %s is out of range; %g to %g %s is accepted", what, v, unit, lo, hi, unit)
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

func checkLines(linesPerInch float64) error {
	return within("line count", linesPerInch, 1, 1000, "lines per inch")
}

func checkMesh(countPerInch float64) error {
	return within("mesh count", countPerInch, 2, 1000, "threads per inch")
}

func checkDPI(dpi float64) error {
	return within("resolution", dpi, 1, 20000, "dots per inch")
}

const umPerInch = 25400.0
