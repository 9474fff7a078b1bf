package choose

import (
	"errors"

	"bladecard/calc/blade"
	"bladecard/calc/film"
)

// isFold and isFloat tell the two ways in which a setup gives no figure from an error of the
// computation.
func isFold(err error) bool {
	var e blade.ErrFolds
	return errors.As(err, &e)
}

func isFloat(err error) bool {
	var e film.ErrFloats
	return errors.As(err, &e)
}
