package cure_test

import (
	"errors"
	"fmt"

	"bladecard/calc/cure"
)

func ExampleFlashSeconds() {
	f := cure.Flash{FilmUM: 100, FluxKWM2: 10, GelC: 105, InkC: 25, PlatenC: 40}
	s, err := cure.FlashSeconds(f)
	fmt.Printf("%.1f s %v\n", s, err)

	f.FluxKWM2, f.PlatenC = 6, 25
	_, err = cure.FlashSeconds(f)
	var never cure.ErrNeverGels
	fmt.Println(errors.As(err, &never))
	// Output:
	// 3.6 s <nil>
	// true
}

func ExampleFlashRange() {
	f := cure.Flash{FilmUM: 50, FluxKWM2: cure.PanelKWM2, GelC: 112.5, InkC: 25, PlatenC: 45, ClothMoisture: 0.07}
	low, s, high, err := cure.FlashRange(f, cure.Doubt{FluxShare: cure.FluxDoubtUntimed, FilmLowUM: 35, FilmHighUM: 70, GelLowC: 104, GelHighC: 121})
	fmt.Printf("%.1f, from %.1f to %.0f s %v\n", s, low, high, err)
	// Output: 5.6, from 2.7 to 19 s <nil>
}

func ExampleFluxFromTimed() {
	flux, err := cure.FluxFromTimed(cure.Flash{FilmUM: 100, GelC: 105, InkC: 25, PlatenC: 40}, 3.6)
	fmt.Printf("%.0f kW/m2 %v\n", flux, err)
	// Output: 10 kW/m2 <nil>
}

func ExampleWaterGPerM2() {
	g, err := cure.WaterGPerM2(40, 1.05, 0.40)
	fmt.Printf("%.1f g/m2 %v\n", g, err)
	// Output: 25.2 g/m2 <nil>
}

func ExampleMassSolids() {
	stated, err := cure.MassSolids(0.52, 1.40, 1.20)
	mixed, _ := cure.MassSolids(0.52, 0, 1.20) // solids and water whose volumes add up
	fmt.Printf("%.2f %.2f %v\n", stated, mixed, err)
	// Output: 0.61 0.60 <nil>
}

func ExampleDryC() {
	fmt.Println(cure.DryC(0.8))
	// Output: 100 <nil>
}

func ExampleMoisture() {
	fmt.Println(cure.Moisture("cotton"))
	// Output: 0.07 <nil>
}

func ExampleBeltMPerMin() {
	v, err := cure.BeltMPerMin(6*304.8, 60)
	fmt.Printf("%.2f m/min %v\n", v, err)
	// Output: 1.83 m/min <nil>
}

func ExampleGarmentsPerHour() {
	n, err := cure.GarmentsPerHour(1, 3000, 60, 500)
	fmt.Println(n, err)
	// Output: 360 <nil>
}

func ExampleFibreLimit() {
	f, err := cure.FibreLimit("polyester")
	fmt.Println(f.WarnC, f.StopC, err)
	// Output: 129 154 <nil>
}

func ExampleHeatKJPerM2() {
	once, err := cure.HeatKJPerM2(40, 0, 0.07, 160)
	twice, _ := cure.HeatKJPerM2(80, 0, 0.07, 160)
	fmt.Printf("%.1f kJ/m2, twice the film %.2f times %v\n", once, twice/once, err)
	// Output: 63.0 kJ/m2, twice the film 1.14 times <nil>
}
