package ink_test

import (
	"fmt"

	"bladecard/calc/ink"
)

func ExampleSXOnCloth() {
	dark, _ := ink.SXOnCloth(0.90, 0.88, 0.04)
	light, _ := ink.SXOnCloth(0.90, 0.88, 0.6)
	fmt.Printf("dark %.2f, light %.2f\n", dark, light)
	// Output: dark 3.60, light 1.72
}

func ExampleHidingOnClothUM() {
	for _, shade := range []string{"dark", "medium", "light"} {
		cloth, _ := ink.ClothReflectance(shade)
		um, _ := ink.HidingOnClothUM(0.90, 0.88, 80, cloth)
		fmt.Printf("%s: %.0f um\n", shade, um)
	}
	// Output:
	// dark: 45 um
	// medium: 41 um
	// light: 21 um
}

func ExampleOnKnitUM() {
	low, high, err := ink.OnKnitUM(46)
	fmt.Printf("%g to %g um %v\n", low, high, err)
	// Output: 56 to 61 um <nil>
}

func ExampleClothReflectance() {
	r, err := ink.ClothReflectance("dark")
	fmt.Println(r, err)
	// Output: 0.04 <nil>
}

func ExampleHeightUM() {
	h, err := ink.HeightUM(150, 1.94)
	fmt.Printf("%.0f um %v\n", h, err)
	// Output: 291 um <nil>
}

func ExampleFilmForHeightUM() {
	um, err := ink.FilmForHeightUM(400, 1.94)
	fmt.Printf("%.0f um %v\n", um, err)
	// Output: 206 um <nil>
}

func ExampleVolumeML() {
	ml, err := ink.VolumeML(300, 350, 0.6, 60)
	fmt.Printf("%.2f mL %v\n", ml, err)
	// Output: 3.78 mL <nil>
}

func ExampleMassG() {
	g, err := ink.MassG(300, 350, 0.6, 60, 1.2)
	fmt.Printf("%.3f g %v\n", g, err)
	// Output: 4.536 g <nil>
}

func ExampleRunG() {
	g, err := ink.RunG(4.536, 288, 0.10, 150)
	fmt.Printf("%.0f g %v\n", g, err)
	// Output: 1587 g <nil>
}

func ExampleGToML() {
	ml, err := ink.GToML(1200, 1.2)
	fmt.Printf("%.0f mL %v\n", ml, err)
	// Output: 1000 mL <nil>
}

func ExampleLightnessFilmUM() {
	um, err := ink.LightnessFilmUM(5, ink.Color{0.9, 0.64, 0.02}, 40, 0.04)
	fmt.Printf("%.0f um %v\n", um, err)
	// Output: 51 um <nil>
}

func ExampleLightnessOf() {
	for _, share := range []float64{0, 0.184, 0.9, 1} {
		l, err := ink.LightnessOf(share)
		fmt.Printf("%.2f %v\n", l, err)
	}
	// Output:
	// 0.00 <nil>
	// 0.50 <nil>
	// 0.96 <nil>
	// 1.00 <nil>
}

func ExampleLightness() {
	fmt.Printf("%.2f %.2f %.2f\n", ink.Lightness(0, 0, 0), ink.Lightness(128, 128, 128), ink.Lightness(255, 255, 255))
	// Output: 0.00 0.54 1.00
}

func ExampleColorOf() {
	fmt.Printf("%.3f\n", ink.ColorOf(255, 188, 0))
	// Output: [1.000 0.503 0.000]
}

func ExampleLuminance() {
	fmt.Printf("%.3f %.3f\n", ink.Luminance(255, 210, 0), ink.Luminance(29, 43, 79))
	// Output: 0.674 0.026
}

func ExampleSinksOf() {
	s, err := ink.SinksOf("cotton", "")
	fmt.Println(s.LowUM, s.HighUM, err)
	// Output: 10 15 <nil>
}

func ExampleClothOf() {
	s, err := ink.ClothOf("nylon woven")
	fmt.Println(s.MiddleUM(), s.HalfUM(), err)
	// Output: 3 2 <nil>
}

func ExampleSinks_LaidUM() {
	cotton := ink.Sinks{LowUM: 10, HighUM: 15}
	fmt.Println(cotton.LaidUM(40))
	// Output: 52.5
}

func ExampleSinks_StandsUM() {
	cotton := ink.Sinks{LowUM: 10, HighUM: 15}
	fmt.Println(cotton.StandsUM(52.5))
	// Output: 40 <nil>
}

func ExampleSinks_MiddleUM() {
	fmt.Println(ink.Sinks{LowUM: 10, HighUM: 15}.MiddleUM())
	// Output: 12.5
}

func ExampleSinks_HalfUM() {
	fmt.Println(ink.Sinks{LowUM: 10, HighUM: 15}.HalfUM())
	// Output: 2.5
}

func ExampleGainedUM() {
	um, err := ink.GainedUM(1.62, 300, 1.2)
	fmt.Printf("%.0f um %v\n", um, err)
	// Output: 45 um <nil>
}

func ExampleSwatch() {
	r, g, b, known := ink.Swatch("#d02020")
	fmt.Println(r, g, b, known)
	// Output: 208 32 32 true
}
