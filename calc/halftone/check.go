package halftone

import "bladecard/calc/internal/span"

// within and first hold the inputs to their ranges.
var (
	within = span.In("halftone")
	first  = span.First
)

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
