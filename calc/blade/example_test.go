package blade_test

import (
	"errors"
	"fmt"

	"bladecard/calc/blade"
)

func ExampleModulusGentMPa() {
	e, err := blade.ModulusGentMPa(70)
	fmt.Printf("%.2f MPa %v\n", e, err)
	// Output: 5.52 MPa <nil>
}

func ExampleModulusRuessMPa() {
	e, err := blade.ModulusRuessMPa(70)
	fmt.Printf("%.2f MPa %v\n", e, err)
	// Output: 10.11 MPa <nil>
}

func ExampleRigidityNM() {
	soft, _ := blade.ModulusGentMPa(65)
	hard, _ := blade.ModulusGentMPa(90)
	third := 9.5 / 3
	d, err := blade.RigidityNM([]blade.Layer{{third, soft}, {third, hard}, {third, soft}})
	fmt.Printf("%.3f N m %v\n", d, err)
	// Output: 0.480 N m <nil>
}

func ExampleEdgeAngleDeg() {
	b := blade.Bend{SetDeg: 15, LoadNPerCM: 5, FreeHeightMM: 25, RigidityNM: 0.526, Friction: blade.Friction}
	a, err := blade.EdgeAngleDeg(b)
	fmt.Printf("%.1f deg %v\n", a, err)

	b.FreeHeightMM = 60
	_, err = blade.EdgeAngleDeg(b)
	var folds blade.ErrFolds
	fmt.Println(errors.As(err, &folds), folds.Bend.FreeHeightMM)
	// Output:
	// 26.8 deg <nil>
	// true 60
}

func ExampleClassOf() {
	c, err := blade.ClassOf(5)
	fmt.Println(c, err)
	// Output: medium <nil>
}

func ExampleCylinderPressureBar() {
	p, err := blade.CylinderPressureBar(5, 25, 2, 380)
	fmt.Printf("%.2f bar %v\n", p, err)
	// Output: 1.94 bar <nil>
}
