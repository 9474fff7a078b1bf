package unit

import (
	"regexp"
	"strings"
)

// Pattern returns a regular expression that matches the texts which Parse takes for a field
// kept in one of the units to: a number and one of the units, spelled as the tables spell it,
// with blanks round it. It holds to what RE2, ECMA 262 and PCRE have in common. Texts with a
// minus are matched where signed is true. Not in the pattern is the length of the text, at most
// Longest bytes. An engine whose \s knows ASCII only asks for plain blanks, where Parse takes any.
// It is empty for an unknown unit. The spellings are those of the tables (derived).
func Pattern(signed bool, to ...string) string {
	units, bare, number := unitsPattern(to...), "", decimal
	if units == "" {
		return ""
	}
	for _, u := range to {
		if Bare(u) {
			bare = "?"
		}
		if isLength(named[u]) {
			number = `(` + decimal + `|` + broken + `)`
		}
	}
	return `^\s*` + sign(signed) + number + `\s*` + units + bare + `\s*$`
}

// RangePattern returns a regular expression that matches the texts which ParseRange takes for
// a field kept in the unit to, but for whether the range runs upward. The rest is as in
// Pattern; a second end that starts with a sign and a point is not matched.
func RangePattern(signed bool, to string) string {
	units := unitsPattern(to)
	if units == "" {
		return ""
	}
	last := units
	if Bare(to) {
		last += "?"
	}
	return `^\s*` + sign(signed) + decimal + `(\s*` + units + `)?\s*\.\.\s*` + sign(signed) + `[0-9]+(\.[0-9]+)?\s*` + last + `\s*$`
}

// decimal is a number without sign: digits and a point with digits after it.
const decimal = `([0-9]+(\.[0-9]+)?|\.[0-9]+)`

func sign(signed bool) string {
	if signed {
		return `[+-]?`
	}
	return `\+?`
}

// unitsPattern is one of the units of the fields, in any spelling; empty when none is known.
func unitsPattern(to ...string) string {
	var all []string
	for _, field := range to {
		if f, ok := named[field]; ok {
			for _, u := range f.kind.units {
				for _, name := range u.names {
					if !u.inner {
						all = append(all, regexp.QuoteMeta(name))
					}
				}
			}
		}
	}
	if len(all) == 0 {
		return ""
	}
	return `(` + strings.Join(all, "|") + `)`
}

// Example is a likely text for a field kept in the unit to, "30 cm"; empty for an unknown unit.
func Example(to string) string {
	if _, ok := named[to]; !ok {
		return ""
	}
	return strings.Split(example(to), `"`)[1]
}

// RangeExample is a likely text for a range kept in the unit to, "45..70 um"; empty for an
// unknown unit.
func RangeExample(to string) string {
	e := Example(to)
	_, u, ok := strings.Cut(e, " ")
	if !ok {
		return ""
	}
	return "45..70 " + u
}
