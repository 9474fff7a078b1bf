package unit

import (
	"math/big"
	"regexp"
	"strings"
	"unicode"
)

// broken is a number with a fraction, as rulers say it: "11 1/2", "3/16".
const broken = `([0-9]+ +)?[0-9]+/0*[1-9][0-9]*`

var brokenNumber = regexp.MustCompile(`^([+-]?)(` + broken + `)`)

// fraction reads the number of "11 1/2 in" and what follows it; ok tells whether there is one. Only
// lengths are written so.
func fraction(text string, target found) (number *big.Rat, rest string, ok bool) {
	text = strings.TrimFunc(text, unicode.IsSpace)
	match := brokenNumber.FindStringSubmatch(text)
	if match == nil || !isLength(target) || len(text) > Longest {
		return nil, "", false
	}
	whole, part, mixed := strings.Cut(match[2], " ")
	if !mixed {
		whole, part = "0", whole
	}
	number, _ = new(big.Rat).SetString(whole)
	over, _ := new(big.Rat).SetString(strings.TrimLeft(part, " "))
	number.Add(number, over)
	if match[1] == "-" {
		number.Neg(number)
	}
	return number, strings.TrimFunc(text[len(match[0]):], unicode.IsSpace), true
}

// isLength tells whether a field is kept in a unit of length.
func isLength(f found) bool { return f.kind == named["mm"].kind }
