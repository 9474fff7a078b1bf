package halftone

import "bladecard/calc/internal/span"

// within holds an input to its range.
var within = span.In("halftone")

// first is no variable: its arguments then cost no memory.
func first(errs ...error) error { return span.First(errs...) }

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
