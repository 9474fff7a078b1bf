package figure

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"bladecard/render/canvas"
)

func fifteen() Dial {
	return Dial{LowDeg: 10, SetDeg: 15, HighDeg: 20, ScreenLabel: "75° to the screen", SizePT: 14}
}

// TestDialScaleBesidePointer: the end of the scale keeps clear of the pointer where the range reaches up to it.
func TestDialScaleBesidePointer(t *testing.T) {
	for _, deg := range []float64{15, 25, 32.5, 35, 40, 42} {
		for _, r := range []Rect{{W: 60, H: 13}, {W: 60, H: 19}, {W: 100, H: 30}} {
			d := Dial{LowDeg: deg - 5, SetDeg: deg, HighDeg: deg, SizePT: 14, ScreenLabel: "47.5° to screen", Scale: func(deg float64) string { return fmt.Sprint(deg, "°") }}
			rec := &recorder{}
			if err := d.Draw(rec, r); err != nil {
				t.Fatal(err)
			}
			var pointer Rect // the first black triangle without a line; the head of the stroke's arrow comes after it
			for _, p := range rec.paths {
				if pointer.W == 0 && p.fill != nil && *p.fill == canvas.Black && p.pen.WidthMM == 0 && len(p.path.Pieces) == 4 {
					pointer = p.box()
				}
			}
			if pointer.W == 0 {
				t.Fatal("no pointer")
			}
			for _, x := range rec.texts {
				if x.s == "45°" && x.x < pointer.Right() && x.y-capEM*em(x.font) < pointer.Bottom() && x.y > pointer.Y {
					t.Errorf("%v° in %v x %v mm: the scale's end lies on the pointer", deg, r.W, r.H)
				}
			}
		}
	}
}

func TestDialSizes(t *testing.T) {
	for _, tt := range []struct {
		r    Rect
		text float64
	}{
		{Rect{5, 5, 40, 60}, 14}, {Rect{5, 5, 60, 42}, 14}, {Rect{0, 0, 35, 35}, 7.5}, {Rect{0, 0, 120, 80}, 14},
	} {
		for _, set := range []float64{0, 5, 15, 45, 70} {
			d := fifteen()
			d.LowDeg, d.SetDeg, d.HighDeg, d.SizePT = max(0, set-5), set, set+5, tt.text
			rec := &recorder{}
			if err := d.Draw(rec, tt.r); err != nil {
				t.Errorf("%v° in %+v: %v", set, tt.r, err)
				continue
			}
			rec.clean(t, tt.r, tt.text)
			if n := len(rec.texts); n < 1 {
				t.Errorf("%d texts", n)
			}
		}
	}
}

// The blade leans into the stroke: its printing face rises to the right from the edge, at the
// set angle from vertical, and the ink lies ahead of it, between face and screen.
func TestDialLeansIntoTheStroke(t *testing.T) {
	for _, set := range []float64{0, 15, 45, 70} {
		rec := &recorder{}
		d := Dial{LowDeg: set, SetDeg: set, HighDeg: set}
		p := dialPlace{edge: canvas.Point{X: 100, Y: 100}, r: 30}
		d.drawBlade(rec, p)
		face := rec.paths[0].path.Pieces // rubber: back, back, face top, edge
		top, edge := face[2].P, face[3].P
		if edge != p.edge {
			t.Fatalf("the edge is at %v", edge)
		}
		if got := math.Atan2(top.X-edge.X, edge.Y-top.Y) * 180 / math.Pi; math.Abs(got-set) > 1e-9 {
			t.Errorf("the face leans %v to the right, want %v", got, set)
		}
		for _, q := range face[:3] { // nothing of the rubber below the screen
			if q.P.Y > p.edge.Y+1e-9 {
				t.Errorf("at %v° rubber at %v", set, q.P)
			}
		}
		rec.paths = nil
		d.drawScreen(rec, p)
		bead := rec.paths[0].box()
		if bead.X < p.edge.X-1e-9 || bead.Bottom() > p.edge.Y+1e-9 {
			t.Errorf("at %v° the ink lies in %+v", set, bead)
		}
	}
}

// The allowed range is black on the ring, from its low to its high end, over the wedge that
// joins it to the edge; a range of one angle leaves the ring white.
func TestDialRangeIsBlack(t *testing.T) {
	p := dialPlace{edge: canvas.Point{X: 50, Y: 50}, r: 30}
	angle := func(q canvas.Point) float64 { return math.Atan2(q.X-50, 50-q.Y) * 180 / math.Pi }
	for _, d := range []Dial{{LowDeg: 10, SetDeg: 15, HighDeg: 20}, {LowDeg: 0, SetDeg: 30, HighDeg: 45}, {LowDeg: 12.5, SetDeg: 15, HighDeg: 15}} {
		rec := &recorder{}
		d.drawRing(rec, p)
		found := 0
		for _, s := range rec.paths {
			if len(s.path.Pieces) < 5 || s.fill == nil || *s.fill == canvas.White {
				continue // pointer, lines and the ring itself
			}
			lo, hi, out := 90.0, 0.0, 0.0
			for _, q := range s.path.Pieces {
				if far := math.Hypot(q.P.X-50, q.P.Y-50); q.Op != 'Z' && far > 1 {
					lo, hi, out = math.Min(lo, angle(q.P)), math.Max(hi, angle(q.P)), math.Max(out, far)
				}
			}
			want := p.inner()
			if *s.fill == canvas.Black {
				want = p.r
			}
			if math.Abs(lo-d.LowDeg) > 1e-6 || math.Abs(hi-d.HighDeg) > 1e-6 || math.Abs(out-want) > 1e-6 {
				t.Errorf("%v to %v is marked from %v to %v, out to %v", d.LowDeg, d.HighDeg, lo, hi, out)
			}
			found++
		}
		if found != 2 {
			t.Errorf("%v to %v: %d pieces, want the wedge and the ring's", d.LowDeg, d.HighDeg, found)
		}
	}
	rec := &recorder{}
	Dial{LowDeg: 15, SetDeg: 15, HighDeg: 15}.drawRing(rec, p)
	for _, s := range rec.paths {
		if len(s.path.Pieces) > 5 && s.fill != nil && *s.fill != canvas.White {
			t.Errorf("a range of one angle is drawn: %s", s)
		}
	}
}

// Without texts, on the place that a card has, the ring takes the height but for the pointer.
func TestDialFillsItsHeight(t *testing.T) {
	r := Rect{0, 0, 45, 26}
	for _, set := range []float64{5, 15, 45} {
		d := Dial{LowDeg: set - 5, SetDeg: set, HighDeg: set + 5, SizePT: 14, Scale: func(deg float64) string { return Chart{}.number(deg, 0) + "°" }}
		rec := &recorder{}
		if err := d.Draw(rec, r); err != nil {
			t.Fatal(err)
		}
		rec.clean(t, r, 14)
		if got := d.radius(r); got < 22 {
			t.Errorf("at %v° the radius is %.1f mm", set, got)
		}
		rec.find(t, "0°")
		rec.find(t, Chart{}.number(d.most(), 0)+"°")
	}
}

func TestDialRefuses(t *testing.T) {
	for _, d := range []Dial{
		{LowDeg: -1}, {LowDeg: 20, SetDeg: 15, HighDeg: 25}, {LowDeg: 10, SetDeg: 15, HighDeg: 12}, {HighDeg: 81},
		{SetDeg: math.NaN()}, {HighDeg: math.NaN()}, {LowDeg: math.NaN()},
	} {
		if err := d.Draw(&recorder{}, Rect{0, 0, 60, 60}); err == nil || errors.Is(err, ErrNoRoom) {
			t.Errorf("%+v: error %v", d, err)
		}
	}
	if err := fifteen().Draw(&recorder{}, Rect{0, 0, 14, 14}); !errors.Is(err, ErrNoRoom) {
		t.Errorf("too small: error %v", err)
	}
}

func TestDialAlwaysCleanOrError(t *testing.T) {
	text := rapid.StringMatching(`[a-z0-9° –-]{0,22}`)
	rapid.Check(t, func(t *rapid.T) {
		set := rapid.Float64Range(0, 80).Draw(t, "set")
		d := Dial{
			LowDeg: rapid.Float64Range(0, set).Draw(t, "low"), SetDeg: set, HighDeg: rapid.Float64Range(set, 80).Draw(t, "high"),
			ScreenLabel: text.Draw(t, "screen"), SizePT: rapid.Float64Range(7.5, 14).Draw(t, "size"),
		}
		if rapid.Bool().Draw(t, "scale") {
			d.Scale = func(deg float64) string { return Chart{}.number(deg, 1) + "°" }
		}
		r := Rect{3, 4, rapid.Float64Range(20, 90).Draw(t, "w"), rapid.Float64Range(20, 90).Draw(t, "h")}
		rec := &recorder{}
		if d.Draw(rec, r) != nil {
			return
		}
		if f := rec.faults(r, SmallestPT); len(f) > 0 {
			t.Fatal(strings.Join(f, "\n"))
		}
	})
}
