package halftone_test

import (
	"fmt"

	"bladecard/calc/halftone"
)

func ExampleMeshRatio() {
	r, err := halftone.MeshRatio(305, 65)
	fmt.Printf("%.1f, usual: %t, %v\n", r, r >= halftone.MinRatio && r <= halftone.MaxRatio, err)
	// Output: 4.7, usual: true, <nil>
}

func ExampleMeshForRatio() {
	n, err := halftone.MeshForRatio(65, 3.5)
	fmt.Println(n, err)
	// Output: 227.5 <nil>
}

func ExampleLinesForRatio() {
	f, err := halftone.LinesForRatio(230, 5)
	fmt.Println(f, err)
	// Output: 46 <nil>
}

func ExampleUsualAnglesDeg() {
	fmt.Println(halftone.UsualAnglesDeg())
	// Output: [7.5 22.5 52.5 82.5]
}

func ExampleOpeningsPerCell() {
	n, err := halftone.OpeningsPerCell(305, 65)
	fmt.Printf("%.1f %v\n", n, err)
	// Output: 22.0 <nil>
}

func ExampleDotDiameterUM() {
	d, err := halftone.DotDiameterUM(65, 0.05)
	fmt.Printf("%.1f um %v\n", d, err)
	// Output: 98.6 um <nil>
}

func ExampleBlockedShare() {
	for _, dot := range []float64{20, 34, 48.1} {
		p, _ := halftone.BlockedShare(dot, 34, 83.33)
		fmt.Printf("%g um: %.1f %%\n", dot, 100*p)
	}
	// Output:
	// 20 um: 32.0 %
	// 34 um: 3.6 %
	// 48.1 um: 0.0 %
}

func ExampleSmallestDotUM() {
	d, err := halftone.SmallestDotUM(34, 49)
	fmt.Println(d, "um", err)
	// Output: 117 um <nil>
}

func ExampleBitmapDotUM() {
	d, err := halftone.BitmapDotUM(300)
	fmt.Printf("%.1f um %v\n", d, err)
	// Output: 84.7 um <nil>
}

func ExampleMoireBeat() {
	locked, _ := halftone.MoireBeat(260, 65, 0)
	banded, _ := halftone.MoireBeat(262, 65, 0)
	turned, _ := halftone.MoireBeat(262, 65, 22.5)
	fmt.Printf("%g mm, %.1f mm, %.1f mm\n", locked.PeriodMM, banded.PeriodMM, turned.PeriodMM)
	// Output: +Inf mm, 12.7 mm, 1.2 mm
}
