package unit

import (
	"regexp"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// What nearly quantities are made of. The blanks are those that Go's \s knows.
var (
	blanks  = []string{"", "", " ", "\t", " \n "}
	figures = []string{"0", "7", "12", "12.5", ".5", "5.", "-3", "+3", "-.5", "1e3", "1,5", "", "-", "inf", "x", "1 2"}
	written = []string{"", "mm", "um", "µm", "μm", "in", "IN", `"`, "C", "°C", "c", "F", "%", "share", "deg", "°", "lpi", "l/cm", "N/cm",
		"Pa.s", "Paxs", "Pa s", "Pa.s^n", "/mm", "kW/m²", "m/min", "s", "mmm", "mm."}
)

// nearly draws a text that is nearly a quantity.
func nearly(t *rapid.T) string {
	draw := func(from []string) string { return rapid.SampledFrom(from).Draw(t, "piece") }
	return draw(blanks) + draw(figures) + draw(blanks) + draw(written) + draw(blanks)
}

// A text matches the pattern where Parse takes it, and nowhere else.
func TestPatternIsParse(t *testing.T) {
	taken := 0
	rapid.Check(t, func(t *rapid.T) {
		for range 20 {
			text := nearly(t)
			for _, k := range kinds {
				to := k.units[0].names[0]
				_, err := Parse(text, to)
				if err == nil {
					taken++
				}
				if got := match(Pattern(true, to), text); got != (err == nil) {
					t.Fatalf("%q for %s: matches %v, Parse says %v", text, to, got, err)
				}
				negative := strings.HasPrefix(strings.TrimSpace(text), "-")
				if got := match(Pattern(false, to), text); got != (err == nil && !negative) {
					t.Fatalf("%q for %s without a minus: matches %v, Parse says %v", text, to, got, err)
				}
			}
		}
	})
	if taken < 100 {
		t.Errorf("only %d texts were quantities", taken)
	}
}

// The same of ranges, where only the order of the ends is not of the pattern.
func TestRangePatternIsParseRange(t *testing.T) {
	taken := 0
	signedPoint := regexp.MustCompile(`\.\.\s*[+-]\.`) // told in the comment
	rapid.Check(t, func(t *rapid.T) {
		for range 20 {
			text := nearly(t) + rapid.SampledFrom([]string{"..", "..", "...", ".", ""}).Draw(t, "points") + nearly(t)
			if signedPoint.MatchString(text) {
				continue
			}
			for _, to := range []string{"um", "C", "s", "m/min", "deg", "share"} {
				_, _, err := ParseRange(text, to)
				if err == nil {
					taken++
				}
				want := err == nil || strings.Contains(err.Error(), "runs downward")
				if got := match(RangePattern(true, to), text); got != want {
					t.Fatalf("%q for %s: matches %v, ParseRange says %v", text, to, got, err)
				}
			}
		}
	})
	if taken < 5 {
		t.Errorf("only %d texts were ranges", taken)
	}
}

var compiled = map[string]*regexp.Regexp{}

func match(pattern, text string) bool {
	if compiled[pattern] == nil {
		compiled[pattern] = regexp.MustCompile(pattern)
	}
	return compiled[pattern].MatchString(text)
}

func TestPatternOfSeveral(t *testing.T) {
	p := regexp.MustCompile(Pattern(false, "share", "um"))
	for text, want := range map[string]bool{"20 %": true, "25 um": true, "25": false, "20 s": false} {
		if p.MatchString(text) != want {
			t.Errorf("%q: want %v", text, want)
		}
	}
	if Pattern(true, "ell") != "" || RangePattern(true, "ell") != "" || Example("ell") != "" || RangeExample("ell") != "" {
		t.Error("an unknown unit has a pattern, a kind or an example")
	}
}

// Every example is one.
func TestExamplesAreTaken(t *testing.T) {
	for _, k := range kinds {
		for _, u := range k.units {
			if u.inner {
				continue
			}
			to := u.names[0]
			if _, err := Parse(Example(to), to); err != nil {
				t.Error(to, err)
			}
			if _, _, err := ParseRange(RangeExample(to), to); err != nil {
				t.Error(to, err)
			}
		}
	}
}
