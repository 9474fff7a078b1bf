package ink

import "bladecard/calc/internal/span"

// within and first hold the inputs to their ranges.
var (
	within = span.In("ink")
	first  = span.First
)
