package film_test

import (
	"errors"
	"fmt"

	"bladecard/calc/blade"
	"bladecard/calc/film"
	"bladecard/calc/mesh"
)

func ExampleWedgePressureFactor() {
	for _, deg := range []float64{75, 60, 45} {
		g, _ := film.WedgePressureFactor(deg)
		fmt.Printf("%g deg: %.2f\n", deg, g)
	}
	// Output:
	// 75 deg: 1.20
	// 60 deg: 2.16
	// 45 deg: 4.28
}

func ExampleFlow_ViscosityPaS() {
	for _, rate := range []float64{1, 100, 10000} {
		eta, _ := film.DefaultFlow.ViscosityPaS(rate)
		fmt.Printf("%g /s: %.1f Pa s\n", rate, eta)
	}
	// Output:
	// 1 /s: 53.0 Pa s
	// 100 /s: 8.0 Pa s
	// 10000 /s: 3.5 Pa s
}

func ExampleFillDepthUM() {
	z, err := film.FillDepthUM(95, 63.2, film.BeadMM)
	fmt.Printf("%.0f um %v\n", z, err)
	// Output: 113 um <nil>
}

func ExampleFill() {
	f, err := film.Fill(116, 113.4, film.Prefill)
	fmt.Printf("%.3f %v\n", f, err)
	// Output: 0.877 <nil>
}

func ExampleEdgeRadiusMM() {
	r, err := film.EdgeRadiusMM("used")
	fmt.Println(r, err)
	_, err = film.EdgeRadiusMM("blunt")
	fmt.Println(err)
	// Output:
	// 0.3 <nil>
	// film: edge "blunt" is not known; new, used and worn are accepted
}

func ExampleEdgeFilmUM() {
	h, err := film.EdgeFilmUM(film.Contact{
		ModulusMPa: 5.52, RadiusMM: 0.15, LoadNPerCM: 5, SpeedMPerS: 0.3,
		Flow: film.Flow{EtaInfPaS: 5, N: 1},
	})
	fmt.Printf("%.2f um %v\n", h, err)
	// Output: 5.19 um <nil>
}

func ExampleHydroplane() {
	c := film.Contact{ModulusMPa: 5.52, RadiusMM: 0.15, LoadNPerCM: 2, SpeedMPerS: 0.3, Flow: film.DefaultFlow}
	for _, wedge := range []float64{65, 38} {
		um, ratio, _ := film.Hydroplane(c, wedge, film.BeadMM)
		fmt.Printf("wedge %g deg: the ink carries %.0f %% of the load, film %.1f um\n", wedge, 100*ratio, um)
	}
	// Output:
	// wedge 65 deg: the ink carries 17 % of the load, film 0.0 um
	// wedge 38 deg: the ink carries 59 % of the load, film 1.2 um
}

// workhorse is a 70 Shore A blade, new, at an angle and a load on a 156-64 cloth.
func workhorse(setDeg, loadNPerCM float64) (film.Setup, film.Contact, error) {
	cloth, err := mesh.New(mesh.Spec{CountPerInch: 156, ThreadUM: 64})
	if err != nil {
		return film.Setup{}, film.Contact{}, err
	}
	c := film.Contact{ModulusMPa: 5.52, RadiusMM: 0.15, LoadNPerCM: loadNPerCM, SpeedMPerS: 0.3, Flow: film.DefaultFlow}
	d, err := blade.RigidityNM([]blade.Layer{{ThicknessMM: 9.5, ModulusMPa: c.ModulusMPa}})
	if err != nil {
		return film.Setup{}, c, err
	}
	edge, err := blade.EdgeAngleDeg(blade.Bend{SetDeg: setDeg, LoadNPerCM: loadNPerCM, FreeHeightMM: 25, RigidityNM: d, Friction: blade.Friction})
	return film.Setup{Cloth: cloth, EOMUM: 15, StencilShare: 0.5, EdgeAngleDeg: edge, Flood: true}, c, err
}

func ExampleEdgeOf() {
	s, c, _ := workhorse(15, 5)
	e, err := film.EdgeOf(c, s.EdgeAngleDeg)
	fmt.Printf("%.1f um, lift %.2f %v\n", e.FilmUM, e.LiftRatio, err)
	_, err = film.EdgeOf(c, 75)
	var floats film.ErrFloats
	fmt.Println(errors.As(err, &floats))
	// Output:
	// 4.0 um, lift 0.07 <nil>
	// true
}

func ExampleLay() {
	s, c, _ := workhorse(15, 5)
	e, _ := film.EdgeOf(c, s.EdgeAngleDeg)
	d, err := film.Lay(s, e)
	fmt.Printf("%.0f %% filled, deposit %.0f um %v\n", 100*d.Fill, d.TotalUM, err)
	// Output: 92 % filled, deposit 41 um <nil>
}

func ExampleClears() {
	for _, load := range []float64{2, 5} {
		s, c, _ := workhorse(45, load)
		e, _ := film.EdgeOf(c, s.EdgeAngleDeg)
		d, _ := film.Lay(s, e)
		fmt.Printf("45 deg, %g N/cm: lift ratio %.2f, clears: %t\n", load, d.LiftRatio, film.Clears(d))
	}
	// Output:
	// 45 deg, 2 N/cm: lift ratio 0.57, clears: false
	// 45 deg, 5 N/cm: lift ratio 0.44, clears: true
}

func ExampleStrokes() {
	n, err := film.Strokes(2, film.NextStrokeShare)
	fmt.Println(n, err)
	// Output: 1.4 <nil>
}

func ExampleCuredUM() {
	c, err := film.CuredUM(48, 0.4)
	fmt.Printf("%.1f um %v\n", c, err)
	// Output: 19.2 um <nil>
}
