package blade

import "bladecard/calc/internal/span"

// within and first hold the inputs to their ranges.
var (
	within = span.In("blade")
	first  = span.First
)
