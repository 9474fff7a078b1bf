package press

import "bladecard/calc/internal/span"

// within holds the inputs to their ranges.
var within = span.In("press")
