package cure

import (
	"math"
	"testing"
)

// TestExplicitScheme: Incropera and DeWitt [39] ex. 5.10, as solved in a notebook (see textbook_test.go), by the book's own explicit scheme: copper, 20 C, 3e5
// W/m2, k 401, a 117e-6, nodes 75 mm apart, Fo 1/2, 120 s in 5 steps -> 125.2 C at the surface
// (125.19 published), 48.1 C at 150 mm (published). It is the scheme that explicitFlash uses.
func TestExplicitScheme(t *testing.T) {
	const q, k, dx, fo = 3e5, 401.0, 0.075, 0.5
	old := make([]float64, 20)
	for i := range old {
		old[i] = 20
	}
	for range 5 {
		next := append([]float64(nil), old...)
		next[0] = 2*fo*(old[1]+q*dx/k) + (1-2*fo)*old[0]
		for i := 1; i < len(old)-1; i++ {
			next[i] = fo*(old[i-1]+old[i+1]) + (1-2*fo)*old[i]
		}
		old = next
	}
	if math.Abs(old[0]-125.2) > 0.3 || math.Abs(old[2]-48.1) > 0.2 {
		t.Errorf("surface %.2f C, 150 mm %.2f C; 125.2 and 48.1 are published", old[0], old[2])
	}
}

// explicitFlash is FlashSeconds a second way: an explicit march over three times the ink cells and
// twice the others, each face's flux from the two cells beside it, figures written out anew.
func explicitFlash(f Flash) float64 {
	type slab struct{ thick, k, c, start, contact, n float64 }
	slabs := []slab{
		{f.FilmUM * 1e-6, 0.17, 1250 * 1300, f.InkC, 0, 24},
		{0.5e-3, 0.06, 320 * 1340, (f.InkC + f.PlatenC) / 2, 2e-4, 24},
		{1.5e-3, 0.2, 1.9e6, f.PlatenC, 0, 16},
		{5e-3, 150, 2.43e6, f.PlatenC, 0, 6},
	}
	var temp, heat, half, contact []float64
	dt := 1e-3
	for _, s := range slabs {
		dx := s.thick / s.n
		dt = math.Min(dt, 0.3*dx*dx*s.c/s.k)
		for i := 0.0; i < s.n; i++ {
			temp, heat = append(temp, s.start), append(heat, dx*s.c)
			half = append(half, dx/(2*s.k))
			r := 0.0
			if i == s.n-1 {
				r = s.contact
			}
			contact = append(contact, r)
		}
	}
	const lowest = 22 // its middle lies at 15/16 of the film, as that of the lowest of 8 cells
	flux := make([]float64, len(temp)+1)
	for s := 0.0; s < 60; s += dt {
		loss := 10*(temp[0]-25) + 0.9*5.670374e-8*(math.Pow(temp[0]+273.15, 4)-math.Pow(298.15, 4))
		flux[0] = f.FluxKWM2*1000 - loss
		for i := 1; i < len(temp); i++ {
			flux[i] = (temp[i-1] - temp[i]) / (half[i-1] + contact[i-1] + half[i])
		}
		before := temp[lowest]
		for i := range temp {
			temp[i] += dt * (flux[i] - flux[i+1]) / heat[i]
		}
		if temp[lowest] >= f.GelC {
			return s + dt*(f.GelC-before)/(temp[lowest]-before)
		}
	}
	return math.Inf(1)
}

// TestAgainstExplicit holds a flash to the explicit march, with radiation, within 0.5 %.
func TestAgainstExplicit(t *testing.T) {
	for _, f := range []Flash{
		{FilmUM: 100, FluxKWM2: 10, GelC: 105, InkC: 25, PlatenC: 40},
		{FilmUM: 60, FluxKWM2: 25, GelC: 110, InkC: 20, PlatenC: 55},
		{FilmUM: 250, FluxKWM2: 12, GelC: 120, InkC: 25, PlatenC: 25},
		{FilmUM: 100, FluxKWM2: 8, GelC: 105, InkC: 25, PlatenC: 25},
	} {
		got, err := FlashSeconds(f)
		if want := explicitFlash(f); err != nil || math.Abs(got/want-1) > 0.005 {
			t.Errorf("%+v: %.4g s; explicitly %.4g s (%v)", f, got, want, err)
		}
	}
}

// TestAffineInThickness: flash times lie on a straight line over the film within 1 % (derived).
func TestAffineInThickness(t *testing.T) {
	for _, flux := range []float64{10, 25} {
		at := func(filmUM float64) float64 {
			s, err := FlashSeconds(Flash{FilmUM: filmUM, FluxKWM2: flux, GelC: 105, InkC: 25, PlatenC: 40})
			if err != nil {
				t.Fatal(err)
			}
			return s
		}
		thin, thick := at(25), at(200)
		for _, film := range []float64{50, 75, 100, 150} {
			line := thin + (thick-thin)*(film-25)/175
			if got := at(film); math.Abs(got/line-1) > 0.01 {
				t.Errorf("%g um, %g kW/m2: %.4g s; %.4g s on the line", film, flux, got, line)
			}
		}
	}
}
