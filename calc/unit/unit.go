package unit

import (
	"bladecard/calc/internal/words"
	"cmp"
	"errors"
	"fmt"
	"math/big"
	"strconv"
	"strings"
	"unicode"
)

// Error tells what is wrong with the text of a quantity and what would be accepted.
type Error struct{ Wrong, Accepted string }

func (e *Error) Error() string { return e.Wrong + "; " + e.Accepted }

// WrongOf returns the first half of an *Error, without what is accepted; empty for any other error.
func WrongOf(err error) string {
	var e *Error
	if errors.As(err, &e) {
		return e.Wrong
	}
	return ""
}

// Longest is the longest text of a quantity, in bytes: with no exponents this bounds the work.
const Longest = 64

// Parse reads a quantity such as "12 in" and returns it in the unit to, which is any unit that
// Accepted knows: Parse("12 in", "mm") is 304.8. Numbers are plain decimals with a point and
// without an exponent, of lengths also "11 1/2 in" and "3/16 in", so the result is always finite. A number without a unit is an error,
// except for angles, which are then degrees. Texts hold at most 64 bytes; the range of the
// value is the caller's business. The error is an *Error. Factors: see the package (published).
func Parse(text, to string) (float64, error) {
	number, from, err := read(text, to, true)
	if err != nil {
		return 0, err
	}
	return convert(number, from, named[to].unit), nil
}

// ParseRange reads a range such as "45..70 um" and returns both ends in the unit to. The unit
// is written once, at the end, or at both ends. Both ends are needed and the first must not be
// above the second. Everything else is as in Parse.
func ParseRange(text, to string) (low, high float64, err error) {
	target, ok := named[to]
	if !ok {
		return 0, 0, unknown(to)
	}
	fail := func(wrong string) (float64, float64, error) {
		return 0, 0, &Error{words.Quote(text) + " " + wrong, AcceptedRange(to)}
	}
	if len(text) > Longest {
		return fail("is too long")
	}
	left, right, ok := strings.Cut(text, "..")
	left, right = strings.TrimFunc(left, unicode.IsSpace), strings.TrimFunc(right, unicode.IsSpace)
	if !ok {
		return fail("is not a range")
	}
	if left == "" || right == "" {
		return fail("has one end only")
	}
	if strings.HasPrefix(right, ".") {
		return fail("has too many points")
	}
	if i := numeral(left); i == len(left) {
		left += " " + right[numeral(right):]
	}
	var ends [2]float64
	for i, end := range []string{left, right} {
		number, from, err := read(end, to, false)
		if err != nil {
			return fail("is not a range: " + err.Wrong)
		}
		ends[i] = convert(number, from, target.unit)
	}
	if !(ends[0] <= ends[1]) {
		return fail("runs downward")
	}
	return ends[0], ends[1], nil
}

// Of returns the plain spelling of the unit that a text is written in, for a field kept in the unit
// to: Of("1.5 mil", "um") is "mil". Which texts are taken, and the errors, are those of Parse.
func Of(text, to string) (string, error) {
	_, from, err := read(text, to, true)
	if err != nil {
		return "", err
	}
	return from.names[0], nil
}

// Convert turns a figure in the unit from into the unit to: Convert(1, "lbf/in", "N/cm") is
// 1.7513. It fails when the units are unknown or not of one kind, or when the figure or the
// result is not finite. Factors: see the package (published).
func Convert(value float64, from, to string) (float64, error) {
	a, ok := named[from]
	if !ok {
		return 0, unknown(from)
	}
	b, ok := named[to]
	if !ok {
		return 0, unknown(to)
	}
	if a.kind != b.kind {
		return 0, &Error{fmt.Sprintf("%s is no unit of %s", words.Quote(from), bareNoun(b.kind)), Accepted(to)}
	}
	number := new(big.Rat).SetFloat64(value)
	if number == nil {
		return 0, &Error{fmt.Sprintf("%g is not a finite number", value), Accepted(to)}
	}
	result := convert(number, a.unit, b.unit)
	if !(result-result == 0) {
		return 0, &Error{fmt.Sprintf("%g %s is too large for %s", value, from, to), Accepted(to)}
	}
	return result, nil
}

// Accepted says in words which texts Parse takes for a field kept in the unit to:
// `a line load such as "20 N/cm" is accepted, in N/cm, N/m, N/mm, lbf/in or kgf/cm`.
// It is empty for an unknown unit.
func Accepted(to string) string {
	return accepted(to, "", example(to))
}

// AcceptedRange says in words which texts ParseRange takes for a field kept in the unit to.
// It is empty for an unknown unit.
func AcceptedRange(to string) string {
	return accepted(to, " range", strconv.Quote(RangeExample(to)))
}

func accepted(to, more, example string) string {
	f, ok := named[to]
	if !ok {
		return ""
	}
	return fmt.Sprintf("%s%s such as %s is accepted, in %s", f.kind.noun, more, example, words.List(units(to)))
}

func example(to string) string {
	return cmp.Or(examples[to], fmt.Sprintf(`"10 %s"`, to))
}

// units lists the units that Parse takes for a field kept in the unit to, each by its plain
// spelling; nil for an unknown unit.
func units(to string) []string {
	var list []string
	if f, ok := named[to]; ok {
		for _, u := range f.kind.units {
			if !u.inner {
				list = append(list, u.names[0])
			}
		}
	}
	return list
}

// Bare tells whether a number without a unit is taken for a field kept in the unit to.
func Bare(to string) bool {
	f, ok := named[to]
	return ok && f.kind.bare
}

// read takes a text apart into its number and the unit that it is written in. A number may have
// a fraction, of a length and where fractions is set.
func read(text, to string, fractions bool) (*big.Rat, *one, *Error) {
	target, ok := named[to]
	if !ok {
		return nil, nil, unknown(to)
	}
	fail := func(wrong string) (*big.Rat, *one, *Error) {
		return nil, nil, &Error{words.Quote(text) + " " + wrong, Accepted(to)}
	}
	if len(text) > Longest {
		return fail("is too long")
	}
	text = strings.TrimFunc(text, unicode.IsSpace)
	end := numeral(text)
	number, isNumber := new(big.Rat).SetString(text[:end])
	if broken := brokenNumber.FindString(text); fractions && isLength(target) && broken != "" {
		end = len(broken)
		number, isNumber = fraction(broken), true
	}
	name := strings.TrimFunc(text[end:], unicode.IsSpace)
	from, known := named[name]
	switch {
	case strings.HasPrefix(name, ","):
		return fail("has a comma, where the decimal sign is a point")
	case !isNumber:
		return fail("does not start with a number")
	case name == "" && target.kind.bare:
		return number, &target.kind.units[0], nil
	case name == "":
		return fail("has no unit")
	case !known || from.unit.inner:
		return fail("has the unknown unit " + words.Quote(name))
	case from.kind != target.kind:
		return fail("is not " + target.kind.noun)
	}
	return number, from.unit, nil
}

// numeral returns the length of the plain decimal that text starts with: a sign, digits, and
// a point with digits after it.
func numeral(text string) int {
	i := 0
	digits := func() {
		for i < len(text) && text[i] >= '0' && text[i] <= '9' {
			i++
		}
	}
	if i < len(text) && (text[i] == '+' || text[i] == '-') {
		i++
	}
	digits()
	if i+1 < len(text) && text[i] == '.' && text[i+1] >= '0' && text[i+1] <= '9' {
		i++
		digits()
	}
	return i
}

// convert is exact but for one rounding.
func convert(number *big.Rat, from, to *one) float64 {
	v := new(big.Rat).Set(number)
	if from.zero != nil {
		v.Sub(v, from.zero)
	}
	v.Mul(v, from.factor)
	v.Quo(v, to.factor)
	if to.zero != nil {
		v.Add(v, to.zero)
	}
	f, _ := v.Float64()
	return f
}

func unknown(name string) *Error {
	return &Error{"the program knows no unit " + words.Quote(name), "the units of the tables are accepted"}
}

func bareNoun(k *kind) string {
	_, noun, _ := strings.Cut(k.noun, " ")
	return noun
}
