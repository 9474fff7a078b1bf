package ink

import (
	"math"
	"testing"
)

// TestSinksBothWays: what a print weighs and the film that its weight says are one figure, on every cloth.
func TestSinksBothWays(t *testing.T) {
	for _, words := range []string{"", Nothing, "cotton", "cotton knit", "Nylon woven", "fleece", "blend fleece", "polyester"} {
		s, err := ClothOf(words)
		if err != nil {
			t.Fatal(err)
		}
		for _, stands := range []float64{0.5, 12, 40, 300} {
			const width, height, coverage, density = 200.0, 150.0, 0.4, 1.2
			g, err := MassG(width, height, coverage, s.LaidUM(stands), density)
			if err != nil {
				t.Fatal(err)
			}
			laid, err := GainedUM(g, width*height*coverage/100, density)
			if err != nil {
				t.Fatal(err)
			}
			back, err := s.StandsUM(laid)
			if err != nil || math.Abs(back-stands) > 1e-9 {
				t.Errorf("%q: a film of %g um weighs %g g, which says %g um, %v", words, stands, g, back, err)
			}
		}
	}
}

// TestSinksOrder: fleece takes more than a knit, a knit more than woven cloth, and smooth fibers less than
// cotton; an unknown fiber lies between nylon and cotton.
func TestSinksOrder(t *testing.T) {
	of := func(fibre, weave string) Sinks {
		s, err := SinksOf(fibre, weave)
		if err != nil || !(s.LowUM < s.HighUM) {
			t.Fatal(fibre, weave, s, err)
		}
		return s
	}
	for _, fibre := range []string{"", "cotton", "blend", "tri-blend", "polyester", "nylon"} {
		if !(of(fibre, Fleece).MiddleUM() > of(fibre, Knit).MiddleUM() && of(fibre, Knit).MiddleUM() > of(fibre, Woven).MiddleUM()) {
			t.Errorf("%q: fleece %v, knit %v, woven %v", fibre, of(fibre, Fleece), of(fibre, Knit), of(fibre, Woven))
		}
	}
	for _, weave := range []string{"", Knit, Woven, Fleece} {
		cotton, nylon, any := of("cotton", weave), of("nylon", weave), of("", weave)
		if !(nylon.MiddleUM() < cotton.MiddleUM() && any.LowUM >= nylon.LowUM && any.HighUM <= cotton.HighUM) {
			t.Errorf("%q: cotton %v, nylon %v, any %v", weave, cotton, nylon, any)
		}
	}
	if of("", "") != (Sinks{KnitLossLowUM, KnitLossHighUM}) {
		t.Errorf("a knit of which nothing is known takes %v", of("", ""))
	}
}

func TestSinksRefuse(t *testing.T) {
	for _, words := range []string{"wool", "cotton nylon", "knit woven", "none cotton"} {
		if s, err := ClothOf(words); err == nil {
			t.Errorf("%q is taken as %v", words, s)
		}
	}
	s, err := ClothOf("cotton")
	if err != nil {
		t.Fatal(err)
	}
	if um, err := s.StandsUM(s.MiddleUM()); err == nil {
		t.Errorf("no film stands, and %g um are told", um)
	}
}
