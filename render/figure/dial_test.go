package figure

import (
	"errors"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"bladecard/render/canvas"
)

func fifteen() Dial {
	return Dial{LowDeg: 10, SetDeg: 15, HighDeg: 20, Label: "15°", RangeLabel: "10–20°",
		ScreenLabel: "75° to the screen", StrokeLabel: "stroke", LabelPT: 26, SizePT: 14}
}

func TestDialSizes(t *testing.T) {
	for _, tt := range []struct {
		r         Rect
		big, text float64
	}{
		{Rect{5, 5, 40, 60}, 26, 14}, {Rect{5, 5, 60, 42}, 26, 14}, {Rect{0, 0, 35, 35}, 9, 7.5}, {Rect{0, 0, 120, 80}, 30, 14},
	} {
		for _, set := range []float64{0, 5, 15, 45, 70} {
			d := fifteen()
			d.LowDeg, d.SetDeg, d.HighDeg, d.LabelPT, d.SizePT = max(0, set-5), set, set+5, tt.big, tt.text
			rec := &recorder{}
			if err := d.Draw(rec, tt.r); err != nil {
				t.Errorf("%v° in %+v: %v", set, tt.r, err)
				continue
			}
			rec.clean(t, tt.r, tt.text)
			if n := len(rec.texts); n < 4 {
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
	rec := &recorder{}
	if err := fifteen().Draw(rec, Rect{0, 0, 60, 60}); err != nil {
		t.Fatal(err)
	}
	if s := rec.find(t, "stroke"); s.x < 0 {
		t.Errorf("stroke at %v", s.x)
	}
}

func TestDialRangeIsHatched(t *testing.T) {
	p := dialPlace{edge: canvas.Point{X: 0, Y: 0}, r: 30}
	lines := func(d Dial) int {
		rec := &recorder{}
		d.drawRing(rec, p)
		n := 0
		for _, s := range rec.paths {
			if s.pen.WidthMM == 0.2 && s.pen.DashMM == nil {
				n += len(s.path.Pieces) / 2
			}
		}
		return n
	}
	ten, twenty := lines(Dial{LowDeg: 10, SetDeg: 15, HighDeg: 20}), lines(Dial{LowDeg: 10, SetDeg: 15, HighDeg: 30})
	if ten < 4 || twenty < 2*ten-1 {
		t.Errorf("%d lines over 10 degrees, %d over 20", ten, twenty)
	}
	if n := lines(Dial{LowDeg: 15, SetDeg: 15, HighDeg: 15}); n != 0 {
		t.Errorf("%d lines over none", n)
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
	if err := fifteen().Draw(&recorder{}, Rect{0, 0, 20, 20}); !errors.Is(err, ErrNoRoom) {
		t.Errorf("too small: error %v", err)
	}
}

func TestDialAlwaysCleanOrError(t *testing.T) {
	text := rapid.StringMatching(`[a-z0-9° –-]{0,22}`)
	rapid.Check(t, func(t *rapid.T) {
		set := rapid.Float64Range(0, 80).Draw(t, "set")
		d := Dial{
			LowDeg: rapid.Float64Range(0, set).Draw(t, "low"), SetDeg: set, HighDeg: rapid.Float64Range(set, 80).Draw(t, "high"),
			Label: text.Draw(t, "label"), RangeLabel: text.Draw(t, "range"),
			ScreenLabel: text.Draw(t, "screen"), StrokeLabel: text.Draw(t, "stroke"),
			LabelPT: rapid.Float64Range(0, 30).Draw(t, "big"), SizePT: rapid.Float64Range(7.5, 14).Draw(t, "size"),
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
