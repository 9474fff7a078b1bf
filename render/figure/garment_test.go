package figure

import (
	"math"
	"testing"

	"bladecard/render/canvas"

	"pgregory.net/rapid"
)

func TestGarment(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := Rect{X: 3, Y: 4, W: rapid.Float64Range(30, 90).Draw(t, "w"), H: rapid.Float64Range(30, 90).Draw(t, "h")}
		g := Garment{
			Back: rapid.Bool().Draw(t, "back"), Left: rapid.Bool().Draw(t, "left"), Sleeve: rapid.Bool().Draw(t, "sleeve"),
			WidthMM: rapid.Float64Range(5, 3000).Draw(t, "width"), HeightMM: rapid.Float64Range(5, 3000).Draw(t, "height"),
			DownMM: rapid.Float64Range(0, 900).Draw(t, "down"), AcrossMM: rapid.Float64Range(0, 400).Draw(t, "across"), DownLabel: "71–102 mm", AcrossLabel: "76–102 mm",
		}
		rec := &recorder{}
		if err := g.Draw(rec, r); err != nil {
			t.Fatal(err)
		}
		for _, f := range rec.faults(r, SmallestPT) {
			t.Errorf("%+v in %+v: %s", g, r, f)
		}
	})
	for _, g := range []Garment{{}, {WidthMM: math.NaN(), HeightMM: 10}, {WidthMM: 10, HeightMM: math.Inf(1)}, {WidthMM: 10, HeightMM: 10, Sleeve: true, DownMM: math.NaN()}} {
		if err := g.Draw(&recorder{}, Rect{W: 60, H: 60}); err == nil {
			t.Errorf("%+v is drawn", g)
		}
	}
	if err := (Garment{WidthMM: 90, HeightMM: 70, DownMM: 80}).Draw(&recorder{}, Rect{W: 10, H: 60}); err == nil {
		t.Error("10 mm are enough")
	}
}

// printOf is the one dashed and filled path, the print.
func printOf(t *testing.T, rec *recorder) []canvas.Point {
	t.Helper()
	var out []canvas.Point
	for _, p := range rec.paths {
		if p.fill == nil || p.pen.DashMM == nil {
			continue
		}
		if out != nil {
			t.Fatal("two prints")
		}
		for _, q := range p.path.Pieces {
			if q.Op != 'Z' {
				out = append(out, q.P)
			}
		}
	}
	if len(out) != 4 {
		t.Fatalf("the print has the corners %v", out)
	}
	return out
}

// TestGarmentToScale: a print is drawn as large and as far from its seam or hem as it is, on the
// side that it is on, with its distances written beside it.
func TestGarmentToScale(t *testing.T) {
	r := Rect{W: garmentW/10 + 2*outlineMM, H: garmentH/10 + 2*outlineMM} // one to ten
	const near = 1e-6
	side := func(a, b canvas.Point) float64 { return math.Hypot(b.X-a.X, b.Y-a.Y) }
	middle := r.W / 2
	for _, c := range []struct {
		name  string
		g     Garment
		right bool
	}{
		{"left sleeve", Garment{Sleeve: true, Left: true, WidthMM: 80, HeightMM: 50, DownMM: 25}, true},
		{"right sleeve", Garment{Sleeve: true, WidthMM: 80, HeightMM: 50, DownMM: 40}, false},
		{"left chest", Garment{Left: true, WidthMM: 90, HeightMM: 70, DownMM: 80, AcrossMM: 100}, true},
		{"back, to the left", Garment{Back: true, Left: true, WidthMM: 90, HeightMM: 70, DownMM: 80, AcrossMM: 100}, false},
	} {
		c.g.DownLabel, c.g.AcrossLabel = "down", "across"
		rec := &recorder{}
		if err := c.g.Draw(rec, r); err != nil {
			t.Fatal(err)
		}
		rec.clean(t, r, SmallestPT)
		p := printOf(t, rec)
		center := canvas.Point{X: (p[0].X + p[2].X) / 2, Y: (p[0].Y + p[2].Y) / 2}
		if (center.X > middle) != c.right {
			t.Errorf("%s: the print stands at %v", c.name, center)
		}
		rec.find(t, "down")
		if !c.g.Sleeve {
			rec.find(t, "across")
			if w, h := side(p[0], p[1]), side(p[1], p[2]); math.Abs(w-c.g.WidthMM/10) > near || math.Abs(h-c.g.HeightMM/10) > near {
				t.Errorf("%s: drawn %g x %g mm", c.name, w, h)
			}
			seam := c.g.seamMM()/10 + outlineMM
			if got := p[0].Y - seam; math.Abs(got-c.g.DownMM/10) > near {
				t.Errorf("%s: %g mm below the seam", c.name, got)
			}
			if got := math.Abs(center.X - middle); math.Abs(got-c.g.AcrossMM/10) > near {
				t.Errorf("%s: %g mm from the middle", c.name, got)
			}
			continue
		}
		// across the sleeve: corners 0 and 3 are the foot
		if w, h := side(p[0], p[3]), side(p[0], p[1]); math.Abs(w-c.g.WidthMM/10) > near || math.Abs(h-c.g.HeightMM/10) > near {
			t.Errorf("%s: drawn %g x %g mm", c.name, w, h)
		}
		foot := canvas.Point{X: (p[0].X + p[3].X) / 2, Y: (p[0].Y + p[3].Y) / 2}
		hem := canvas.Point{X: (sleeveHem[0].X+sleeveHem[1].X)/20 + outlineMM, Y: (sleeveHem[0].Y+sleeveHem[1].Y)/20 + outlineMM}
		if !c.right {
			hem.X = r.W - hem.X
		}
		if got := side(foot, hem); math.Abs(got-c.g.DownMM/10) > near {
			t.Errorf("%s: %g mm above the hem", c.name, got)
		}
	}
}
