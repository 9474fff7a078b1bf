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

func ExampleFluxFromTimed() {
	flux, err := cure.FluxFromTimed(cure.Flash{FilmUM: 100, GelC: 105, InkC: 25, PlatenC: 40}, 3.6)
	fmt.Printf("%.0f kW/m2 %v\n", flux, err)
	// Output: 10 kW/m2 <nil>
}

func ExampleFlashBandS() {
	fmt.Println(cure.FlashBandS(3.6))
	// Output: 1.8 7.2 <nil>
}

func ExampleWaterGPerM2() {
	g, err := cure.WaterGPerM2(40, 1.05, 0.40)
	fmt.Printf("%.1f g/m2 %v\n", g, err)
	// Output: 25.2 g/m2 <nil>
}

func ExampleEvaporationKJPerM2() {
	kj, err := cure.EvaporationKJPerM2(25.2)
	fmt.Printf("%.1f kJ/m2 %v\n", kj, err)
	// Output: 56.9 kJ/m2 <nil>
}

func ExampleEvaporationSeconds() {
	s, err := cure.EvaporationSeconds(25.2, 10)
	fmt.Printf("%.1f s %v\n", s, err)
	// Output: 5.7 s <nil>
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
