package cure

import (
	"fmt"

	"bladecard/calc/internal/span"
)

// within holds an input to its range.
var within = span.In("cure")

// first is no variable: its arguments then cost no memory.
func first(errs ...error) error { return span.First(errs...) }

func errFibre(fibre string) error {
	return fmt.Errorf("cure: the fibre %q is not known; cotton, polyester, blend, tri-blend or nylon is accepted", fibre)
}
