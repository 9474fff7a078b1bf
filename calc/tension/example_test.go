package tension_test

import (
	"fmt"

	"bladecard/calc/tension"
)

func ExampleImageShiftMM() {
	s, err := tension.ImageShiftMM(3.175, 100, 433.4)
	fmt.Printf("%.4f mm %v\n", s, err)
	// Output: 0.0388 mm <nil>
}

func ExampleStretchMM() {
	s, err := tension.StretchMM(3.175, 533.4, 100)
	fmt.Printf("%.4f mm %v\n", s, err)
	// Output: 0.0775 mm <nil>
}

func ExampleTouchForceNPerCM() {
	mid, _ := tension.TouchForceNPerCM(25, 3.175, 266.7, 266.7)
	end, _ := tension.TouchForceNPerCM(25, 3.175, 100, 433.4)
	fmt.Printf("%.3f in mid-span, %.3f N/cm at 100 mm\n", mid, end)
	// Output: 0.595 in mid-span, 0.977 N/cm at 100 mm
}

func ExamplePeelAngleDeg() {
	a, err := tension.PeelAngleDeg(3.2, 100)
	fmt.Printf("%.1f deg %v\n", a, err)
	// Output: 1.8 deg <nil>
}

func ExampleOffContactMM() {
	for _, dries := range []string{"water", "fuse"} {
		low, high, _ := tension.OffContactMM(dries, 508)
		fmt.Printf("%s: %g to %g mm\n", dries, low, high)
	}
	// Output:
	// water: 1.6 to 1.6 mm
	// fuse: 1.6 to 3.2 mm
}

func ExampleTensionVerdict() {
	for _, n := range []float64{8, 18, 28} {
		plain, _ := tension.TensionVerdict(n, 64, false)
		raised, _ := tension.TensionVerdict(n, 64, true)
		fmt.Println(n, plain, raised)
	}
	// Output:
	// 8 restretch restretch
	// 18 acceptable low
	// 28 ideal low
}

func ExampleBladePathFits() {
	f, err := tension.BladePathFits(508, 355)
	fmt.Printf("margin %.1f mm (%t), ratio %.2f (%t), short by %.1f mm %v\n",
		f.MarginMM, f.MarginHolds, f.Ratio, f.RatioHolds, f.ShortMM, err)
	// Output: margin 76.5 mm (true), ratio 1.43 (false), short by 24.5 mm <nil>
}

func ExampleBladeLengthMM() {
	b, err := tension.BladeLengthMM(304.8)
	fmt.Printf("%.1f mm %v\n", b, err)
	// Output: 354.8 mm <nil>
}
