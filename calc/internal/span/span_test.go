package span

import (
	"errors"
	"math"
	"testing"
)

func TestIn(t *testing.T) {
	check := In("blade")
	for _, v := range []float64{1, 1.5, 2} {
		if err := check("load", v, 1, 2, "N/cm"); err != nil {
			t.Errorf("%g: %v", v, err)
		}
	}
	for _, v := range []float64{0.999, 2.001, math.NaN(), math.Inf(1), math.Inf(-1)} {
		if check("load", v, 1, 2, "N/cm") == nil {
			t.Errorf("%g is taken", v)
		}
	}
	if got := check("load", 3, 1, 2, "N/cm").Error(); got != "blade: load 3 N/cm is out of range; 1 to 2 N/cm is accepted" {
		t.Error(got)
	}
}

func TestFirst(t *testing.T) {
	a, b := errors.New("a"), errors.New("b")
	if First(nil, nil) != nil || First(nil, a, b) != a {
		t.Error("the first error that is one is wanted")
	}
}
