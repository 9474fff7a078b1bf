package blade

import "math"

// Poisson is Poisson's ratio of rubber, taken as incompressible (from memory).
const Poisson = 0.5

// ToleranceShoreA is the trade's tolerance of blade hardness, in Shore A, up and down
// (published: Elliot 2007 [5]).
const ToleranceShoreA = 5.0

// Range of hardness that the relations cover, Shore A.
const (
	MinShoreA = 40.0
	MaxShoreA = 95.0
)

// ModulusGentMPa is Young's modulus in MPa of a rubber of the given Shore A hardness S,
// 0.0981 (56 + 7.62336 S) / (0.137505 (254 - 2.54 S)).
//
// Range: 40 to 95 Shore A; an error outside. The figure is uncertain by about 30 %: two
// relations and makers' data differ by that much. Source: Gent 1958 [1] (published), constants
// from memory.
func ModulusGentMPa(shoreA float64) (float64, error) {
	if err := within("hardness", shoreA, MinShoreA, MaxShoreA, "Shore A"); err != nil {
		return 0, err
	}
	return 0.0981 * (56 + 7.62336*shoreA) / (0.137505 * (254 - 2.54*shoreA)), nil
}

// ModulusRuessMPa is a second relation for Young's modulus in MPa from Shore A hardness S,
// log10 E = 0.0235 S - 0.6403. It serves to judge the band of ModulusGentMPa.
//
// Range: 40 to 95 Shore A; an error outside. Source: Ruess, as quoted by Qi, Joyce and Boyce
// 2003 [2] (published). The logarithm is to base 10; some copies print it to base e.
func ModulusRuessMPa(shoreA float64) (float64, error) {
	if err := within("hardness", shoreA, MinShoreA, MaxShoreA, "Shore A"); err != nil {
		return 0, err
	}
	return math.Pow(10, 0.0235*shoreA-0.6403), nil
}
