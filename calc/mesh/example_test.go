package mesh_test

import (
	"fmt"

	"bladecard/calc/mesh"
)

func ExamplePerCM() {
	fmt.Printf("%.1f\n", mesh.PerCM(156))
	// Output: 61.4
}

func ExamplePitchUM() {
	p, err := mesh.PitchUM(156)
	fmt.Printf("%.1f um %v\n", p, err)
	// Output: 162.8 um <nil>
}

func ExampleOpeningUM() {
	w, err := mesh.OpeningUM(162.8, 64)
	fmt.Printf("%.1f um %v\n", w, err)
	_, err = mesh.OpeningUM(60, 64)
	fmt.Println(err)
	// Output:
	// 98.8 um <nil>
	// mesh: thread 64 um fills the whole pitch of 60 um, no opening is left; a thread thinner than the pitch is accepted
}

func ExampleOpenArea() {
	a, err := mesh.OpenArea(73, 113)
	fmt.Printf("%.0f %% %v\n", 100*a, err)
	// Output: 42 % <nil>
}

func ExampleFabricUM() {
	plain, _ := mesh.FabricUM(40, 25400.0/305, false)
	twill, _ := mesh.FabricUM(40, 25400.0/305, true)
	fmt.Printf("%.0f and %.0f um\n", plain, twill)
	// Output: 62 and 67 um
}

func ExampleVolumeUM() {
	v, err := mesh.VolumeUM(0.417, 59)
	fmt.Printf("%.1f cm3/m2 %v\n", v, err)
	// Output: 24.6 cm3/m2 <nil>
}

func ExampleNew() {
	c, err := mesh.New(mesh.Spec{CountPerInch: 156, ThreadUM: 64, FabricUM: 98})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("opening %.0f um, open area %.0f %%, thickness %.0f um (measured: %t), volume %.0f cm3/m2\n",
		c.OpeningUM, 100*c.OpenArea, c.FabricUM, c.MeasuredFabric, c.VolumeUM)
	// Output: opening 99 um, open area 37 %, thickness 98 um (measured: true), volume 36 cm3/m2
}

func ExampleStencilShare() {
	for _, mm := range []float64{1, 9.5, 50} {
		s, _ := mesh.StencilShare(mm)
		fmt.Printf("%g mm: %.2f\n", mm, s)
	}
	// Output:
	// 1 mm: 0.99
	// 9.5 mm: 0.50
	// 50 mm: 0.03
}

func ExampleHoldsUM() {
	h, err := mesh.HoldsUM(0.40, 60, 15)
	fmt.Printf("%.0f um %v\n", h, err)
	// Output: 39 um <nil>
}

func ExampleBuildFor() {
	thin, _ := mesh.BuildFor(19)
	thick, err := mesh.BuildFor(130)
	fmt.Println(thin.Coats, "coats;", thick.FilmsUM, "um film", err)
	// Output: 4 coats; [150] um film <nil>
}
