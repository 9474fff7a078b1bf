package fit

import "math"

// normalNinety is how many standard deviations lie to either side of nine in ten of a normal spread.
const normalNinety = 1.6448536269514722

// NinetyTimes is how many standard errors lie on either side within which nine of ten draws
// fall: the 0.95 quantile of Student's t for the given degrees of freedom.
//
// Range: 2 degrees of freedom and more, +Inf included; an error below. Kind: textbook, Abramowitz
// and Stegun 1964 [52], equation 26.7.5 (first four terms; within 0.02 from 2 degrees on).
func NinetyTimes(freedom float64) (float64, error) {
	if !(freedom >= 2) {
		return 0, within("degrees of freedom", freedom, 2, math.Inf(1), "")
	}
	const z = normalNinety
	z2 := z * z
	g1 := z * (z2 + 1) / 4
	g2 := z * ((5*z2+16)*z2 + 3) / 96
	g3 := z * (((3*z2+19)*z2+17)*z2 - 15) / 384
	g4 := z * ((((79*z2+776)*z2+1482)*z2-1920)*z2 - 945) / 92160
	v := freedom
	return z + g1/v + g2/(v*v) + g3/(v*v*v) + g4/(v*v*v*v), nil
}

// HalfOfNormal is half of the band of nine in ten of a normal spread of one sigma.
//
// Range: any sigma. Kind: textbook, the 0.95 quantile of the normal distribution.
func HalfOfNormal(sigma float64) float64 { return normalNinety * sigma }
