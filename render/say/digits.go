package say

import (
	"math"
	"strconv"
	"strings"
)

// fixed writes a value with the given decimals, zeros kept. A half is rounded away from zero, and so is what a
// hair's breadth keeps from it: processors differ in the last digit.
func (v *Voice) fixed(x float64, decimals int) string {
	s := strconv.FormatFloat(x*(1+1e-12), 'f', decimals, 64)
	if strings.Trim(s, "-0.") == "" {
		s = strings.TrimPrefix(s, "-")
	}
	return strings.Replace(s, ".", v.point, 1)
}

// some is Number with as many more decimals as it takes to show that a small value is more than nothing: one
// digit, within three decimals of those that are asked for.
func (v *Voice) some(x float64, decimals int) string {
	for d := decimals; d < decimals+3; d++ {
		if s := v.Number(x, d); s != "0" {
			return s
		}
	}
	return v.Number(x, decimals+3)
}

// kept is some with its zeros kept, so that the figures of a column end alike.
func (v *Voice) kept(x float64, decimals int) string {
	return v.fixed(x, max(decimals, v.decimals(v.some(x, decimals))))
}

// pair writes both ends of a range with the same decimals, as many as the longer end needs; a single figure where
// they are alike.
func (v *Voice) pair(low, high float64, decimals int) string {
	a, b := v.some(low, decimals), v.some(high, decimals)
	if a == b {
		return a
	}
	longest := max(v.decimals(a), v.decimals(b))
	return v.fixed(low, longest) + "–" + v.fixed(high, longest)
}

func (v *Voice) decimals(s string) int {
	if _, after, is := strings.Cut(s, v.point); is {
		return len(after)
	}
	return 0
}

// figures is a number of two figures, zeros kept: 2.0, 16, 0.33.
func (v *Voice) figures(x, like float64) string {
	return v.fixed(x, max(0, 1-int(math.Floor(math.Log10(math.Max(math.Abs(like), 0.01))))))
}

// middle is the value that a range goes by, from which its digits follow: a range and its value are written alike.
func middle(low, high float64) float64 {
	if low <= 0 || high <= 0 {
		return (low + high) / 2
	}
	return math.Sqrt(low * high)
}

// An inch shop sets its lengths by a rule that is parted in sixteenths. A length is read off it where the nearest
// mark is within 2 % of it; else it is written in decimals, since rounding would tell another length.
const (
	marksPerInch = 16
	markWithin   = 0.02
)

// inches is a length by the marks of a rule, "13 3/4", or in decimals.
func (v *Voice) inches(mm float64, decimals int) string {
	in := mm / 25.4
	if marks := math.Round(in * marksPerInch); marks > 0 && math.Abs(marks/marksPerInch-in) <= markWithin*in {
		return mixed(int(marks), marksPerInch)
	}
	return v.some(in, decimals)
}

// mixed is n parts of a whole of so many, "13 3/4"; the space does not break.
func mixed(n, parts int) string {
	whole, n := n/parts, n%parts
	for n > 0 && n%2 == 0 {
		n, parts = n/2, parts/2
	}
	switch fraction := strconv.Itoa(n) + "/" + strconv.Itoa(parts); {
	case n == 0:
		return strconv.Itoa(whole)
	case whole == 0:
		return fraction
	default:
		return strconv.Itoa(whole) + nbsp + fraction
	}
}

// shims is an off-contact of an inch shop, to the thirty-second, the thinnest shim: "1/16", "3/32".
func (v *Voice) shims(mm float64) string {
	return mixed(int(math.Max(1, math.Round(mm/25.4*32))), 32)
}
