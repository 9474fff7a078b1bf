package unit_test

import (
	"fmt"
	"regexp"

	"bladecard/calc/unit"
)

func ExampleParse() {
	mm, _ := unit.Parse("12 in", "mm")
	_, err := unit.Parse("12", "N/cm")
	fmt.Println(mm)
	fmt.Println(err)
	// Output:
	// 304.8
	// "12" has no unit; a line load such as "20 N/cm" is accepted, in N/cm, N/m, N/mm, lbf/in or kgf/cm
}

func ExampleOf() {
	fmt.Println(unit.Of("1.5 mil", "um"))
	fmt.Println(unit.Of("38µm", "um"))
	fmt.Println(unit.Of("1/64 in", "um"))
	fmt.Println(unit.Of("38", "um"))
	// Output:
	// mil <nil>
	// um <nil>
	// in <nil>
	//  "38" has no unit; a length such as "25 um" is accepted, in mm, um, cm, m, in, ft or mil
}

func ExampleWrongOf() {
	_, err := unit.Parse("12", "mm")
	fmt.Println(unit.WrongOf(err))
	// Output: "12" has no unit
}

func ExampleParseRange() {
	low, high, _ := unit.ParseRange("1..2 mil", "um")
	fmt.Println(low, high)
	// Output: 25.4 50.8
}

func ExampleConvert() {
	v, _ := unit.Convert(1, "lbf/in", "N/cm")
	fmt.Printf("%.4f\n", v)
	// Output: 1.7513
}

func ExampleAccepted() {
	fmt.Println(unit.Accepted("C"))
	// Output: a temperature such as "160 C" or "320 F" is accepted, in C, F or K
}

func ExampleAcceptedRange() {
	fmt.Println(unit.AcceptedRange("s"))
	// Output: a time range such as "45..70 s" is accepted, in s or min
}

func ExampleBare() {
	fmt.Println(unit.Bare("deg"), unit.Bare("share"))
	// Output: true false
}

func ExamplePattern() {
	p := regexp.MustCompile(unit.Pattern(false, "N/cm"))
	fmt.Println(p.MatchString("20 N/cm"), p.MatchString("20"))
	// Output: true false
}

func ExampleRangePattern() {
	p := regexp.MustCompile(unit.RangePattern(false, "um"))
	fmt.Println(p.MatchString("45..70 um"), p.MatchString("45 um"))
	// Output: true false
}

func ExampleExample() {
	fmt.Println(unit.Example("mm"))
	// Output: 30 cm
}

func ExampleRangeExample() {
	fmt.Println(unit.RangeExample("C"))
	// Output: 45..70 C
}
