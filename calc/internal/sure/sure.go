// Package sure lets a computation call its formulas one after the other, as on paper. A formula that refuses
// its figures ends the computation, and Try, which runs it, returns the refusal as an error. No refusal
// leaves a package: each function that a package exports runs its computation with Try.
package sure

// refusal is the panic by which a computation ends.
type refusal struct{ err error }

// Of returns a formula's value. An error ends the computation.
func Of[T any](value T, err error) T {
	Check(err)
	return value
}

// Both is Of for a formula of two values.
func Both[A, B any](a A, b B, err error) (A, B) {
	Check(err)
	return a, b
}

// Check ends the computation where there is an error.
func Check(err error) {
	if err != nil {
		panic(refusal{err})
	}
}

// Try runs a computation and returns the error that ended it, nil where none did. Any other panic goes on.
func Try(compute func()) (err error) {
	defer func() {
		switch r := recover().(type) {
		case nil:
		case refusal:
			err = r.err
		default:
			panic(r)
		}
	}()
	compute()
	return nil
}
