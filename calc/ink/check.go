package ink

import "bladecard/calc/internal/span"

// within holds an input to its range.
var within = span.In("ink")

// first is no variable: its arguments then cost no memory.
func first(errs ...error) error { return span.First(errs...) }
