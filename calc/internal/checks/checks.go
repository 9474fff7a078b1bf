// Package checks is what the tests of the formulas share; the program does not link it.
package checks

import (
	"strings"
	"testing"
)

// Taken hands on what a formula gives for figures that it must take.
func Taken(t *testing.T) func(v float64, err error) float64 {
	return func(v float64, err error) float64 {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
}

// Refused fails where figures that a formula must refuse gave no error, or one that names neither the formula's package
// nor what is accepted.
func Refused(t *testing.T, pkg, figures string, err error) {
	t.Helper()
	if err == nil {
		t.Error(figures, "is taken")
	} else if !strings.HasPrefix(err.Error(), pkg+": ") || !strings.Contains(err.Error(), "accepted") {
		t.Error(figures, "gives an error that does not tell what is accepted:", err)
	}
}
