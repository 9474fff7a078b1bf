package fit

import "fmt"

// known are the terms of a shop that measured one mesh with one blade.
func known() Terms {
	return Terms{
		Shop: Estimate{Value: 1.05, Error: 0.12}, Meshes: []MeshFactor{{Name: "156-64", Count: 12, Factor: 1.1, Error: 0.03}},
		MeanDeg: 15, MeanShoreA: 70, Angle: Estimate{Value: 0.02, Error: 0.04}, Hardness: Estimate{Value: -0.01, Error: 0.02},
		NextStroke: Estimate{Value: 0.35, Error: 0.1}, Blades: []string{"70"}, Scatter: 0.08, Count: 12,
	}
}

func ExampleTerms_Factor() {
	fmt.Printf("%.3f %.3f %.3f\n", known().Factor("156-64", 15, 70), known().Factor("156-64", 25, 70), known().Factor("305-40", 15, 70))
	// Output: 1.100 1.122 1.050
}

func ExampleTerms_Error() {
	for _, s := range []struct {
		mesh, blade string
		angle       float64
		strokes     int
	}{{"156-64", "70", 15, 1}, {"156-64", "70", 35, 1}, {"156-64", "70", 15, 2}, {"156-64", "80", 15, 1}, {"305-40", "70", 15, 1}} {
		e, err := known().Error(s.mesh, s.blade, s.angle, 70, s.strokes)
		fmt.Printf("%.3f %v\n", e, err)
	}
	// Output:
	// 0.030 <nil>
	// 0.085 <nil>
	// 0.080 <nil>
	// 0.032 <nil>
	// 0.120 <nil>
}

func ExampleTerms_HasMesh() {
	fmt.Println(known().HasMesh("156-64"), known().HasMesh("305-40"))
	// Output: true false
}

func ExampleTerms_HasBlade() {
	fmt.Println(known().HasBlade("70"), known().HasBlade("80"))
	// Output: true false
}

func ExampleTerms_Half() {
	t := Terms{Count: 400, Scatter: 0.06, Day: 0.08}
	fmt.Printf("%.2f %.2f\n", t.Half(0.03, 0, 0), t.Half(0.03, 0.10, 0))
	// Output: 0.17 0.22
}

func ExampleTerms_MeshError() {
	t := Terms{Meshes: []MeshFactor{{Name: "156-64", Count: 9, Error: 0.05, Own: 0.03}}}
	fmt.Println(t.MeshError("156-64"), t.MeshError("230-48"))
	// Output: 0.03 0.1
}

func ExampleTerms_Times() {
	few, many := Terms{Count: 8, Meshes: make([]MeshFactor, 2)}, Terms{Count: 400}
	fmt.Printf("%.2f %.2f\n", few.Times(), many.Times())
	// Output: 2.35 1.65
}

func ExampleTerms_NinetyOf() {
	t := Terms{Count: 9}
	fmt.Printf("%.3f %.3f\n", t.NinetyOf(0.10, 0.10), t.NinetyOf(0.02, 0.10))
	// Output: 0.164 0.039
}
