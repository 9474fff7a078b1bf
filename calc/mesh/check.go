package mesh

import "bladecard/calc/internal/span"

// within and first hold the inputs to their ranges.
var (
	within = span.In("mesh")
	first  = span.First
)
