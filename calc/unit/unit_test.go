package unit

import (
	"errors"
	"math"
	"math/big"
	"strings"
	"testing"
)

// Expected values: from memory are none; each is the definition named in the package comment,
// worked out by hand (exact) or as printed in NIST SP 811 Appendix B (seven digits).
func TestParse(t *testing.T) {
	for _, c := range []struct {
		text, to string
		want     float64
	}{
		{"11 1/2 in", "mm", 292.1}, {"3/16 in", "mm", 4.7625}, {" -1/8in ", "mm", -3.175}, {"12 in", "mm", 304.8}, {`12"`, "mm", 304.8}, {"12inch", "mm", 304.8}, {"1 ft", "mm", 304.8},
		{"30 cm", "mm", 300}, {"1.2 m", "mm", 1200}, {"25 um", "um", 25}, {"25 µm", "um", 25}, {"25 μm", "um", 25},
		{"0.1 mm", "um", 100}, {"1 mil", "um", 25.4}, {".5 in", "mm", 12.7}, {"+3 mm", "mm", 3}, {" 7\u00a0mm ", "mm", 7},
		{"5 N/cm", "N/cm", 5}, {"500 N/m", "N/cm", 5}, {"0.5 N/mm", "N/cm", 5},
		{"1 lbf/in", "N/cm", 1.751268}, {"1 kgf/cm", "N/cm", 9.80665},
		{"150 C", "C", 150}, {"320 F", "C", 160}, {"300 °F", "C", 148.8888888888889}, {"433.15 K", "C", 160}, {"-22 F", "C", -30},
		{"38 %", "share", 0.38}, {"100%", "share", 1},
		{"22.5 deg", "deg", 22.5}, {"22.5°", "deg", 22.5}, {"22.5", "deg", 22.5},
		{"45 lpi", "lpi", 45}, {"45 l/in", "lpi", 45}, {"18 l/cm", "lpi", 45.72}, {"18 lpcm", "lpi", 45.72},
		{"300 dpi", "dpi", 300},
		{"5.5 MPa", "MPa", 5.5}, {"400 kPa", "MPa", 0.4}, {"100 psi", "MPa", 0.6894757},
		{"60 s", "s", 60}, {"1.5 min", "s", 90},
		{"0.3 m/s", "m/s", 0.3}, {"10 in/s", "m/s", 0.254}, {"6 ft/min", "m/min", 1.8288}, {"1.8 m/min", "m/min", 1.8}, {"1.8 m/min", "m/s", 0.03},
		{"1.2 kg/L", "kg/L", 1.2}, {"1.2 g/cm3", "kg/L", 1.2}, {"1.2 g/mL", "kg/L", 1.2}, {"12 lb/gal", "kg/L", 1.437917},
		{"10 kW/m2", "kW/m2", 10}, {"10 kW/m²", "kW/m2", 10},
		{"3 Pa.s", "Pa.s", 3}, {"3000 mPa.s", "Pa.s", 3}, {"3000 cP", "Pa.s", 3}, {"30 P", "Pa.s", 3}, {"3 Pa·s", "Pa.s", 3},
		{"50 Pa.s^n", "Pa.s^n", 50},
	} {
		got, err := Parse(c.text, c.to)
		if err != nil || !(math.Abs(got-c.want) <= 5e-7*math.Abs(c.want)) {
			t.Errorf("Parse(%q, %q) = %v, %v; want %v", c.text, c.to, got, err, c.want)
		}
	}
}

// A decimal text must come out as the float64 that the same decimal in Go source is.
func TestParseRoundsOnce(t *testing.T) {
	if got, _ := Parse("12 in", "mm"); got != 304.8 {
		t.Errorf("12 in = %v mm, want 304.8 to the last bit", got)
	}
	if got, _ := Parse("7 %", "share"); got != 0.07 {
		t.Errorf("7 %% = %v, want 0.07 to the last bit", got)
	}
}

func TestParseErrors(t *testing.T) {
	for _, c := range []struct{ text, to, wrong, accepted string }{
		{"20", "N/cm", `"20" has no unit`, `a line load such as "20 N/cm" is accepted, in N/cm, N/m, N/mm, lbf/in or kgf/cm`},
		{"0.38", "share", `"0.38" has no unit`, `a share such as "38 %" is accepted, in %`},
		{"0.38 share", "share", `"0.38 share" has the unknown unit "share"`, `in %`},
		{"12 st", "mm", `"12 st" has the unknown unit "st"`, `a length such as "30 cm" or "12 in" is accepted, in mm, um, cm, m, in, ft or mil`},
		{"12 s", "mm", `"12 s" is not a length`, "mil"},
		{"12 MM", "mm", `unknown unit "MM"`, "mm"},
		{"2,5 mm", "mm", "comma", "mm"},
		{"", "mm", "does not start with a number", "mm"},
		{"mm", "mm", "does not start with a number", "mm"},
		{"- mm", "mm", "does not start with a number", "mm"},
		{"nan mm", "mm", "does not start with a number", "mm"},
		{"inf mm", "mm", "does not start with a number", "mm"},
		{"1e9 mm", "mm", `unknown unit "e9 mm"`, "mm"},
		{"1/0 in", "mm", `unknown unit "/0 in"`, "mm"},
		{"1.5 1/2 in", "mm", `unknown unit "1/2 in"`, "mm"},
		{"1/2 s", "s", `unknown unit "/2 s"`, "s"},
		{strings.Repeat("9", 65) + " mm", "mm", "too long", "mm"},
		{"1 mm", "furlong", "knows no unit", ""},
	} {
		got, err := Parse(c.text, c.to)
		var e *Error
		if !errors.As(err, &e) || got != 0 || !strings.Contains(e.Wrong, c.wrong) || !strings.Contains(e.Accepted, c.accepted) {
			t.Errorf("Parse(%q, %q) = %v, %v; want an error with %q and %q", c.text, c.to, got, err, c.wrong, c.accepted)
		}
	}
}

func TestParseRange(t *testing.T) {
	for _, c := range []struct {
		text, to  string
		low, high float64
	}{
		{"45..70 um", "um", 45, 70}, {"45 .. 70 um", "um", 45, 70}, {"4.5..7.25 um", "um", 4.5, 7.25},
		{"1..2 mil", "um", 25.4, 50.8}, {"45 um..0.07 mm", "um", 45, 70}, {"220..230 F", "C", 104.44444444444444, 110},
		{"10..10 s", "s", 10, 10}, {"-4..-2 C", "C", -4, -2}, {"10..20", "deg", 10, 20},
	} {
		low, high, err := ParseRange(c.text, c.to)
		if err != nil || low != c.low || high != c.high {
			t.Errorf("ParseRange(%q, %q) = %v, %v, %v; want %v, %v", c.text, c.to, low, high, err, c.low, c.high)
		}
	}
}

func TestParseRangeErrors(t *testing.T) {
	for _, c := range []struct{ text, to, want string }{
		{"45 um", "um", `"45 um" is not a range; a length range such as "45..70 um" is accepted`},
		{"45.. um", "um", "is not a range: "}, {"45..", "um", "one end only"}, {"..70 um", "um", "one end only"},
		{"70..45 um", "um", "runs downward"}, {"45...70 um", "um", "too many points"}, {"45..70", "um", "has no unit"},
		{"45 s..70 um", "um", "is not a length"}, {"45..70 s", "um", "is not a length"}, {"a..b um", "um", "does not start with a number"},
		{"1..2 um" + strings.Repeat(" ", 64), "um", "too long"}, {"1..2 um", "ell", "knows no unit"},
	} {
		_, _, err := ParseRange(c.text, c.to)
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("ParseRange(%q, %q): error %v, want one with %q", c.text, c.to, err, c.want)
		}
	}
}

func TestConvertErrors(t *testing.T) {
	for _, c := range []struct {
		value    float64
		from, to string
	}{{math.NaN(), "mm", "in"}, {math.Inf(1), "mm", "in"}, {1, "mm", "s"}, {1, "ell", "mm"}, {1, "mm", "ell"}, {math.MaxFloat64, "mm", "um"}} {
		if v, err := Convert(c.value, c.from, c.to); err == nil || v != 0 {
			t.Errorf("Convert(%v, %q, %q) = %v, %v; want an error", c.value, c.from, c.to, v, err)
		}
	}
}

// A figure in each unit is itself, however the unit is spelled, and every example of an error text is accepted.
func TestTablesAgree(t *testing.T) {
	seen := map[string]bool{}
	for _, k := range kinds {
		for _, u := range k.units {
			for _, name := range u.names {
				if seen[name] {
					t.Errorf("the unit %q stands in the tables twice", name)
				}
				seen[name] = true
				if got, err := Parse("2.5 "+name, u.names[0]); !u.inner && (err != nil || got != 2.5) {
					t.Errorf("2.5 %s is %v, %v", name, got, err)
				}
			}
		}
		if k.units[0].factor.Cmp(big.NewRat(1, 1)) != 0 || k.units[0].zero != nil {
			t.Errorf("the first unit of %s is not the one that the factors lead to", k.noun)
		}
	}
	for to, list := range examples {
		for _, e := range strings.Split(list, " or ") {
			if _, err := Parse(strings.Trim(e, `"`), to); err != nil {
				t.Errorf("the example %s for %s is not accepted: %v", e, to, err)
			}
		}
		_, rest, _ := strings.Cut(AcceptedRange(to), `such as "`)
		e, _, _ := strings.Cut(rest, `"`)
		if _, _, err := ParseRange(e, to); err != nil {
			t.Errorf("the range example %q for %s is not accepted: %v", e, to, err)
		}
	}
	if Accepted("ell") != "" || units("ell") != nil || Bare("ell") || !Bare("deg") || Bare("mm") {
		t.Error("Accepted, Units or Bare is wrong about an unknown unit")
	}
}

func FuzzParse(f *testing.F) {
	for _, s := range []string{"12 in", "45..70 um", "300 F", "38 %", "22.5", "-0.0 K", "9..", "..", "1e5 mm", "\u00a0", `3"`, "١ mm"} {
		f.Add(s, "mm")
		f.Add(s, "C")
	}
	f.Add("5", "deg")
	f.Fuzz(func(t *testing.T, text, to string) {
		if v, err := Parse(text, to); err == nil && !(v-v == 0) {
			t.Errorf("Parse(%q, %q) = %v", text, to, v)
		}
		if low, high, err := ParseRange(text, to); err == nil && !(low <= high && high-low >= 0) {
			t.Errorf("ParseRange(%q, %q) = %v, %v", text, to, low, high)
		}
	})
}
