package figure

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func TestGarment(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := Rect{X: 3, Y: 4, W: rapid.Float64Range(30, 90).Draw(t, "w"), H: rapid.Float64Range(30, 90).Draw(t, "h")}
		g := Garment{
			Back: rapid.Bool().Draw(t, "back"), Left: rapid.Bool().Draw(t, "left"),
			WidthMM: rapid.Float64Range(5, 3000).Draw(t, "width"), HeightMM: rapid.Float64Range(5, 3000).Draw(t, "height"),
			DownMM: rapid.Float64Range(0, 900).Draw(t, "down"), AcrossMM: rapid.Float64Range(0, 400).Draw(t, "across"), DownLabel: "71–102 mm",
		}
		rec := &recorder{}
		if err := g.Draw(rec, r); err != nil {
			t.Fatal(err)
		}
		for _, f := range rec.faults(r, SmallestPT) {
			t.Errorf("%+v in %+v: %s", g, r, f)
		}
	})
	for _, g := range []Garment{{}, {WidthMM: math.NaN(), HeightMM: 10}, {WidthMM: 10, HeightMM: math.Inf(1)}} {
		if err := g.Draw(&recorder{}, Rect{W: 60, H: 60}); err == nil {
			t.Errorf("%+v is drawn", g)
		}
	}
	if err := (Garment{WidthMM: 90, HeightMM: 70, DownMM: 80}).Draw(&recorder{}, Rect{W: 10, H: 60}); err == nil {
		t.Error("10 mm are enough")
	}
}
