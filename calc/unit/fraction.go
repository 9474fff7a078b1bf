package unit

import (
	"math/big"
	"regexp"
	"strings"
)

// broken is a number with a fraction, as rulers say it: "11 1/2", "3/16".
const broken = `([0-9]+ +)?[0-9]+/0*[1-9][0-9]*`

var brokenNumber = regexp.MustCompile(`^[+-]?(` + broken + `)`)

// fraction is the number of a text that brokenNumber matches.
func fraction(text string) *big.Rat {
	sum := new(big.Rat)
	for _, part := range strings.Fields(strings.TrimLeft(text, "+-")) {
		number, _ := new(big.Rat).SetString(part)
		sum.Add(sum, number)
	}
	if text[0] == '-' {
		sum.Neg(sum)
	}
	return sum
}

// isLength tells whether a field is kept in a unit of length. Only lengths are written with fractions.
func isLength(f found) bool { return f.kind == named["mm"].kind }
