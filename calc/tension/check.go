package tension

import "bladecard/calc/internal/span"

// within and first hold the inputs to their ranges.
var (
	within = span.In("tension")
	first  = span.First
)
