package cure

import (
	"errors"
	"math"
	"strings"
	"testing"
)

// TestRange: every function takes its good inputs, and refuses each one of them when it is NaN,
// infinite, below or above the range.
func TestRange(t *testing.T) {
	for _, c := range []struct {
		name string
		good []float64
		call func(v []float64) error
	}{
		{"FlashSeconds", []float64{100, 10, 105, 25, 40}, func(v []float64) error {
			_, err := FlashSeconds(Flash{FilmUM: v[0], FluxKWM2: v[1], GelC: v[2], InkC: v[3], PlatenC: v[4]})
			return err
		}},
		{"FlashSeconds, moist", []float64{28, 0.07}, func(v []float64) error {
			_, err := FlashSeconds(Flash{FilmUM: 40, FluxKWM2: 10, GelC: 100, InkC: 25, PlatenC: 45, InkWaterGM2: v[0], ClothMoisture: v[1]})
			return err
		}},
		{"FlashRange", []float64{0.3, 40, 60, 104, 121}, func(v []float64) error {
			_, _, _, err := FlashRange(Flash{FilmUM: 50, FluxKWM2: 10, GelC: 112, InkC: 25, PlatenC: 45},
				Doubt{FluxShare: v[0], FilmLowUM: v[1], FilmHighUM: v[2], GelLowC: v[3], GelHighC: v[4]})
			return err
		}},
		{"MassSolids", []float64{0.5, 1.3, 1.1}, func(v []float64) error { _, err := MassSolids(v[0], v[1], v[2]); return err }},
		{"DryC", []float64{0.8}, func(v []float64) error { _, err := DryC(v[0]); return err }},
		{"FluxFromTimed", []float64{100, 105, 25, 40, 4}, func(v []float64) error {
			_, err := FluxFromTimed(Flash{FilmUM: v[0], GelC: v[1], InkC: v[2], PlatenC: v[3]}, v[4])
			return err
		}},
		{"HeatKJPerM2", []float64{40, 20, 0.07, 160}, func(v []float64) error { _, err := HeatKJPerM2(v[0], v[1], v[2], v[3]); return err }},
		{"WaterGPerM2", []float64{40, 1.05, 0.4}, func(v []float64) error { _, err := WaterGPerM2(v[0], v[1], v[2]); return err }},
		{"BeltMPerMin", []float64{2000, 60}, func(v []float64) error { _, err := BeltMPerMin(v[0], v[1]); return err }},
		{"GarmentsPerHour", []float64{2000, 60, 500}, func(v []float64) error {
			_, err := GarmentsPerHour(1, v[0], v[1], v[2])
			return err
		}},
	} {
		if err := c.call(c.good); err != nil {
			t.Errorf("%s refuses %v: %v", c.name, c.good, err)
		}
		for i := range c.good {
			for _, bad := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), -1, 1e9} {
				v := append([]float64(nil), c.good...)
				v[i] = bad
				err := c.call(v)
				if err == nil || !strings.HasPrefix(err.Error(), "cure: ") || !strings.Contains(err.Error(), "accepted") {
					t.Errorf("%s, input %d = %g: %v; an error that tells what is accepted is wanted", c.name, i, bad, err)
				}
			}
		}
	}
	for _, lanes := range []int{0, -1, 21} {
		if _, err := GarmentsPerHour(lanes, 2000, 60, 500); err == nil {
			t.Errorf("%d lanes are taken", lanes)
		}
	}
}

// TestNeverGelsTells: the error names the limit, the flux and what would mend it; a timed flash
// that no flux gives says what is accepted.
func TestNeverGelsTells(t *testing.T) {
	_, err := FlashSeconds(Flash{FilmUM: 100, FluxKWM2: 6, GelC: 105, InkC: 25, PlatenC: 25})
	var never ErrNeverGels
	if !errors.As(err, &never) || never.Flash.FluxKWM2 != 6 {
		t.Fatalf("%v", err)
	}
	for _, word := range []string{"40 s", "6 kW/m2", "100 µm", "25 °C", "warmer platen"} {
		if !strings.Contains(err.Error(), word) {
			t.Errorf("%q lacks %q", err, word)
		}
	}
	if _, err := FluxFromTimed(Flash{FilmUM: 2000, GelC: 120, InkC: 25, PlatenC: 25}, 0.2); err == nil || !strings.Contains(err.Error(), "accepted") {
		t.Errorf("2 mm in 0.2 s: %v", err)
	}
}

// TestFibres: the figures of the table, in order, each with its kind and source.
func TestFibres(t *testing.T) {
	none := math.Inf(1)
	for _, c := range []struct {
		fibre      string
		warn, stop float64
		kind       string
	}{
		{"polyester", 129, 154, "published"}, // 265 F; 310 F
		{"blend", 149, none, "published"},    // 300 F
		{"tri-blend", 149, none, "published"},
		{"nylon", none, 150, "from memory"},
		{"cotton", none, 200, "published"}, // iron, three dots
	} {
		if f, err := FibreLimit(c.fibre); err != nil || f.WarnC != c.warn || f.StopC != c.stop || f.Kind != c.kind {
			t.Errorf("%s: %+v %v; warn %g, stop %g, %s is wanted", c.fibre, f, err, c.warn, c.stop, c.kind)
		}
	}
	for name, f := range fibres {
		if !(f.WarnC > 100 || math.IsInf(f.WarnC, 1)) || f.StopC < 100 || f.Kind == "" || f.Source == "" {
			t.Errorf("%s: %+v", name, f)
		}
		if !math.IsInf(f.WarnC, 1) && f.WarnC >= f.StopC {
			t.Errorf("%s warns at %g C and stops at %g C", name, f.WarnC, f.StopC)
		}
		if math.IsInf(f.WarnC, 1) && math.IsInf(f.StopC, 1) {
			t.Errorf("%s has no limit at all", name)
		}
	}
}

// TestMoisture: the regain of the table, in its order; cloth that is not known is an error.
func TestMoisture(t *testing.T) {
	last := 1.0
	for _, fibre := range []string{"cotton", "blend", "nylon", "polyester"} {
		m, err := Moisture(fibre)
		if err != nil || !(m > 0 && m <= last) {
			t.Errorf("%s: %g, %v; at most %g is wanted", fibre, m, err, last)
		}
		last = m
	}
	if _, err := Moisture("wool"); err == nil {
		t.Error("wool is taken")
	}
}
