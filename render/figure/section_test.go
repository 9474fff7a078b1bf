package figure

import (
	"errors"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func sandwich() Section {
	return Section{Layers: []Layer{{0.25, "65", 0.3}, {0.5, "90", 1}, {0.25, "65", 0.3}}, Aspect: 25 / 9.5}
}

func TestSectionSizes(t *testing.T) {
	for _, tt := range []struct {
		r  Rect
		pt float64
	}{
		{Rect{5, 5, 45, 60}, 18}, {Rect{5, 5, 40, 40}, 14}, {Rect{0, 0, 30, 40}, 9}, {Rect{0, 0, 120, 80}, 0},
	} {
		for _, s := range []Section{sandwich(), {Layers: []Layer{{1, "70", 0.5}}, Aspect: 3, EdgeRadius: 0.5}} {
			s.SizePT = tt.pt
			rec := &recorder{}
			if err := s.Draw(rec, tt.r); err != nil {
				t.Errorf("in %+v: %v", tt.r, err)
				continue
			}
			rec.clean(t, tt.r, tt.pt)
			var want []string
			for _, l := range s.Layers {
				want = append(want, l.Hardness)
			}
			if got := strings.Join(rec.words(), "/"); got != strings.Join(want, "/") {
				t.Errorf("hardness reads %s", got)
			}
		}
	}
}

func TestLayersHaveTheirShares(t *testing.T) {
	s := sandwich()
	b, ok := s.place(Rect{0, 0, 60, 60}, 0, 0)
	if !ok {
		t.Fatal("no place")
	}
	rec := &recorder{}
	s.drawJoints(rec, b, 0, 0)
	if len(rec.paths) != 2 {
		t.Fatalf("%d lines between the layers", len(rec.paths))
	}
	for i, want := range []float64{0.25, 0.75} {
		if got := (rec.paths[i].path.Pieces[0].P.X - b.x) / b.w; math.Abs(got-want) > 1e-9 {
			t.Errorf("layers part at %v of the thickness, want %v", got, want)
		}
	}
}

func TestHarderIsHatchedCloser(t *testing.T) {
	count := func(h float64) int {
		rec := &recorder{}
		s := Section{Layers: []Layer{{1, "x", h}}, Aspect: 2}
		b := rubber{x: 0, lip: 10, edge: 40, w: 15}
		s.drawLayers(rec, b, roundedEnd(0, 10, 15, 30, 0))
		n := 0
		for _, p := range rec.paths {
			if p.pen.WidthMM == hatchMM {
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

// On the place that a card has the blade takes the height, the numbers of
// one and of three equal layers stand inside it, and a free height cut short is broken.
func TestSectionShowsTheLayup(t *testing.T) {
	r := Rect{4, 2, 33, 26}
	third := Layer{1.0 / 3, "70", 0.4}
	for _, tt := range []struct {
		name   string
		s      Section
		inside bool
		broken bool
		least  float64 // thickness drawn, mm
	}{
		{"one", Section{Layers: []Layer{{1, "70", 0.4}}, Aspect: 25 / 9.5}, true, true, 12},
		{"three", Section{Layers: []Layer{third, {1.0 / 3, "90", 0.9}, third}, Aspect: 25 / 9.5}, true, true, 20},
		{"thin faces", Section{Layers: []Layer{{0.1, "70", 0.4}, {0.8, "90", 0.9}, {0.1, "70", 0.4}}, Aspect: 25 / 9.5}, false, true, 10},
		{"low", Section{Layers: []Layer{{1, "70", 0.4}}, Aspect: 1}, true, false, 12},
		{"very low", Section{Layers: []Layer{{1, "70", 0.4}}, Aspect: 0.3}, false, false, 12},
	} {
		t.Run(tt.name, func(t *testing.T) {
			tt.s.SizePT = 14
			rec := &recorder{}
			if err := tt.s.Draw(rec, r); err != nil {
				t.Fatal(err)
			}
			rec.clean(t, r, 14)
			edge, thick := 0.0, 0.0
			for _, p := range rec.paths {
				if p.pen.WidthMM == 0.4 && p.fill == nil { // the outline of the rubber
					b := p.box()
					edge, thick = b.Bottom(), b.W
				}
			}
			if thick < tt.least {
				t.Errorf("drawn %.1f mm thick, want %v", thick, tt.least)
			}
			if tt.inside && edge < r.Bottom()-1 && tt.broken {
				t.Errorf("the edge is at %.1f of %.1f", edge, r.Bottom())
			}
			for _, w := range rec.texts {
				if in := w.box().Y < edge-1; in != tt.inside {
					t.Errorf("number %s at %.1f, the edge at %.1f", w.s, w.y, edge)
				}
			}
			curves := 0
			for _, p := range rec.paths {
				for _, q := range p.path.Pieces {
					if q.Op == 'C' {
						curves++
					}
				}
			}
			if (curves > 0) != tt.broken {
				t.Errorf("%d waves; broken: %v", curves, tt.broken)
			}
		})
	}
}

// Seven layers have no room for their numbers on a card: they are left out there.
func TestSectionLeavesOutNumbers(t *testing.T) {
	s := Section{SizePT: 14, Aspect: 25 / 9.5}
	for range 7 {
		s.Layers = append(s.Layers, Layer{1.0 / 7, "70", 0.4})
	}
	for r, want := range map[Rect]int{{4, 2, 33, 26}: 0, {0, 0, 120, 60}: 7} {
		rec := &recorder{}
		if err := s.Draw(rec, r); err != nil {
			t.Fatal(err)
		}
		rec.clean(t, r, 14)
		if len(rec.texts) != want {
			t.Errorf("in %v: numbers %v, want %d", r, rec.words(), want)
		}
	}
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
	if err := sandwich().Draw(&recorder{}, Rect{0, 0, 3, 12}); !errors.Is(err, ErrNoRoom) {
		t.Errorf("too small: error %v", err)
	}
}

func TestSectionAlwaysCleanOrError(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 5).Draw(t, "layers")
		cuts := rapid.SliceOfN(rapid.Float64Range(0.05, 1), n, n).Draw(t, "cuts")
		sum := 0.0
		for _, c := range cuts {
			sum += c
		}
		s := Section{
			Aspect: rapid.Float64Range(0.2, 8).Draw(t, "aspect"), EdgeRadius: rapid.Float64Range(0, 0.5).Draw(t, "radius"),
			SizePT: rapid.Float64Range(0, 20).Draw(t, "number"),
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
