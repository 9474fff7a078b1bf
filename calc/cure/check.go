package cure

import (
	"fmt"

	"bladecard/calc/internal/span"
)

// within and first hold the inputs to their ranges.
var (
	within = span.In("cure")
	first  = span.First
)

func errFibre(fibre string) error {
	return fmt.Errorf("cure: the fibre %q is not known; cotton, polyester, blend, tri-blend or nylon is accepted", fibre)
}
