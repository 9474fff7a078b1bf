package figure

import (
	"errors"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"bladecard/render/canvas"
)

func sandwich() Section {
	return Section{
		Layers: []Layer{{0.25, "65", 0.3}, {0.5, "90", 1}, {0.25, "65", 0.3}},
		Aspect: 25 / 9.5, FreeHeightLabel: "25 mm", ThicknessLabel: "9.5 mm",
	}
}

func TestSectionSizes(t *testing.T) {
	for _, tt := range []struct {
		r         Rect
		text, num float64
	}{
		{Rect{5, 5, 45, 60}, 14, 18}, {Rect{5, 5, 40, 40}, 14, 14}, {Rect{0, 0, 30, 40}, 7.5, 9}, {Rect{0, 0, 120, 80}, 14, 0},
	} {
		for _, s := range []Section{sandwich(), {Layers: []Layer{{1, "70", 0.5}}, Aspect: 3, FreeHeightLabel: "1 in", ThicknessLabel: "3/8 in", EdgeRadius: 0.5}} {
			s.SizePT, s.HardnessPT = tt.text, tt.num
			rec := &recorder{}
			if err := s.Draw(rec, tt.r); err != nil {
				t.Errorf("in %+v: %v", tt.r, err)
				continue
			}
			rec.clean(t, tt.r, tt.text)
			rec.find(t, s.FreeHeightLabel)
			rec.find(t, s.ThicknessLabel)
			var numbers, want []string
			for _, w := range rec.texts {
				if w.font.Face == canvas.Bold {
					numbers = append(numbers, w.s)
				}
			}
			for _, l := range s.Layers {
				want = append(want, l.Hardness)
			}
			if got := strings.Join(numbers, "/"); got != strings.Join(want, "/") {
				t.Errorf("hardness reads %s", got)
			}
		}
	}
}

func TestSectionIsToScale(t *testing.T) {
	s := sandwich()
	b, ok := s.place(Rect{0, 0, 60, 60}, 0, 0, 0)
	if !ok || math.Abs((b.edge-b.lip)/b.w-s.Aspect) > 1e-9 {
		t.Errorf("blade %+v, want %v times as high as thick", b, s.Aspect)
	}
	rec := &recorder{}
	s.drawRubber(rec, b, 0.3)
	var lines []float64 // between the layers
	for _, p := range rec.paths {
		if p.pen.WidthMM == 0.3 {
			lines = append(lines, (p.path.Pieces[0].P.X-b.x)/b.w)
		}
	}
	if len(lines) != 2 || math.Abs(lines[0]-0.25) > 1e-9 || math.Abs(lines[1]-0.75) > 1e-9 {
		t.Errorf("layers part at %v of the thickness", lines)
	}
}

func TestHarderIsHatchedCloser(t *testing.T) {
	count := func(h float64) int {
		rec := &recorder{}
		s := Section{Layers: []Layer{{1, "x", h}}, Aspect: 2}
		s.drawRubber(rec, rubber{x: 0, lip: 10, edge: 40, w: 15, grip: 10}, 0.3)
		n := 0
		for _, p := range rec.paths {
			if p.pen.WidthMM == 0.13 {
				n += len(p.path.Pieces) / 2
			}
		}
		return n
	}
	last := 0
	for _, h := range []float64{0, 0.25, 0.5, 0.75, 1} {
		if n := count(h); n <= last {
			t.Errorf("hatch %v: %d lines, the softer one has %d", h, n, last)
		} else {
			last = n
		}
	}
}

func TestEdgeRadius(t *testing.T) {
	for _, tt := range []struct{ radius, corner float64 }{{0, 0}, {1, 1 - math.Sqrt2/2}, {3, 3 - 3*math.Sqrt2/2}} {
		ps := roundedEnd(0, 0, 10, 20, tt.radius)
		least := math.Inf(1) // of the outline from the sharp corner, along both axes
		low := 0.0
		for _, p := range ps {
			least = math.Min(least, math.Hypot(10-p.X, 20-p.Y)/math.Sqrt2)
			low = math.Max(low, p.Y)
		}
		if math.Abs(least-tt.corner) > 1e-9 || low != 20 {
			t.Errorf("radius %v: corner %v from the sharp one, want %v; lowest %v", tt.radius, least, tt.corner, low)
		}
	}
}

func TestStripeAndHatchStayInside(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, h := rapid.Float64Range(2, 40).Draw(t, "w"), rapid.Float64Range(25, 60).Draw(t, "h")
		poly := roundedEnd(0, 0, w, h, w*rapid.Float64Range(0, 0.5).Draw(t, "radius"))
		x0 := rapid.Float64Range(0, w).Draw(t, "x0")
		x1 := rapid.Float64Range(x0, w).Draw(t, "x1")
		rec := &recorder{}
		hatch(rec, stripe(poly, x0, x1), rapid.Float64Range(-90, 90).Draw(t, "angle"), rapid.Float64Range(0.3, 3).Draw(t, "pitch"), ink(0.1))
		for _, p := range rec.paths {
			for _, q := range p.path.Pieces {
				if q.P.X < x0-1e-6 || q.P.X > x1+1e-6 {
					t.Fatalf("hatch at %v, stripe from %v to %v", q.P, x0, x1)
				}
				for i, u := range poly { // left of no edge of the clockwise outline
					v := poly[(i+1)%len(poly)]
					if (v.X-u.X)*(q.P.Y-u.Y)-(v.Y-u.Y)*(q.P.X-u.X) < -1e-6 {
						t.Fatalf("hatch at %v outside the outline", q.P)
					}
				}
			}
		}
	})
}

func TestSectionRefuses(t *testing.T) {
	nan := math.NaN()
	for name, s := range map[string]Section{
		"no layers":    {Aspect: 2},
		"shares":       {Aspect: 2, Layers: []Layer{{0.5, "70", 0.5}}},
		"share of NaN": {Aspect: 2, Layers: []Layer{{nan, "70", 0.5}}},
		"hatch":        {Aspect: 2, Layers: []Layer{{1, "70", 1.5}}},
		"aspect":       {Layers: []Layer{{1, "70", 0.5}}},
		"radius":       {Aspect: 2, EdgeRadius: 0.6, Layers: []Layer{{1, "70", 0.5}}},
		"radius NaN":   {Aspect: 2, EdgeRadius: nan, Layers: []Layer{{1, "70", 0.5}}},
	} {
		if err := s.Draw(&recorder{}, Rect{0, 0, 60, 60}); err == nil || errors.Is(err, ErrNoRoom) {
			t.Errorf("%s: error %v", name, err)
		}
	}
	if err := sandwich().Draw(&recorder{}, Rect{0, 0, 10, 12}); !errors.Is(err, ErrNoRoom) {
		t.Errorf("too small: error %v", err)
	}
}

func TestSectionAlwaysCleanOrError(t *testing.T) {
	text := rapid.StringMatching(`[a-z0-9. ]{0,14}`)
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 5).Draw(t, "layers")
		cuts := rapid.SliceOfN(rapid.Float64Range(0.05, 1), n, n).Draw(t, "cuts")
		sum := 0.0
		for _, c := range cuts {
			sum += c
		}
		s := Section{
			Aspect: rapid.Float64Range(0.2, 8).Draw(t, "aspect"), EdgeRadius: rapid.Float64Range(0, 0.5).Draw(t, "radius"),
			FreeHeightLabel: text.Draw(t, "height"), ThicknessLabel: text.Draw(t, "thickness"),
			SizePT: rapid.Float64Range(7.5, 14).Draw(t, "size"), HardnessPT: rapid.Float64Range(0, 20).Draw(t, "number"),
		}
		for _, c := range cuts {
			s.Layers = append(s.Layers, Layer{c / sum, rapid.SampledFrom([]string{"60", "70", "90", "105 A"}).Draw(t, "hardness"), rapid.Float64Range(0, 1).Draw(t, "hatch")})
		}
		r := Rect{3, 4, rapid.Float64Range(15, 90).Draw(t, "w"), rapid.Float64Range(15, 90).Draw(t, "h")}
		rec := &recorder{}
		if s.Draw(rec, r) != nil {
			return
		}
		if f := rec.faults(r, SmallestPT); len(f) > 0 {
			t.Fatal(strings.Join(f, "\n"))
		}
	})
}
