package figure

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"bladecard/calc/seen"
	"bladecard/render/canvas"
)

// The face of a blade leans at the edge as told and at the holder as set, and its length is kept.
func TestBendLeansAsTold(t *testing.T) {
	lean := func(a, b canvas.Point) float64 { return math.Atan2(b.X-a.X, a.Y-b.Y) * 180 / math.Pi }
	for _, b := range []Bend{{SetDeg: 15, EdgeDeg: 35}, {SetDeg: 0, EdgeDeg: 0}, {SetDeg: 30, EdgeDeg: 75}} {
		ps, _ := b.face()
		length := 0.0
		for i := range ps[1:] {
			length += math.Hypot(ps[i+1].X-ps[i].X, ps[i+1].Y-ps[i].Y)
		}
		n := len(ps) - 1
		if got := lean(ps[0], ps[1]); math.Abs(got-b.EdgeDeg) > 0.1 {
			t.Errorf("%+v: the edge leans %v", b, got)
		}
		if got := lean(ps[n-1], ps[n]); math.Abs(got-b.SetDeg) > 0.1*(b.EdgeDeg-b.SetDeg)+0.01 || math.Abs(length-1) > 1e-9 {
			t.Errorf("%+v: at the holder it leans %v, and is %v long", b, got, length)
		}
		_, holder, _ := b.parts()
		if got := lean(holder[0], holder[1]); math.Abs(got-b.SetDeg) > 1e-9 {
			t.Errorf("%+v: the holder leans %v", b, got)
		}
	}
}

func TestBends(t *testing.T) {
	bs := Bends{}
	for i, deg := range []float64{15, 35, 70} {
		bs = append(bs, Bend{SetDeg: 15, EdgeDeg: deg, Share: float64(i) / 2, SetLabel: "set 15", EdgeLabel: fmt.Sprint("edge ", deg), Label: fmt.Sprint("blade ", i)})
	}
	for _, r := range []Rect{{3, 4, 170, 50}, {0, 0, 130, 40}, {0, 0, 150, 90}} {
		rec := &recorder{}
		if err := bs.Draw(rec, r); err != nil {
			t.Fatal(err)
		}
		rec.clean(t, r, SmallestPT)
		var heights []float64
		for _, p := range rec.paths { // the holders are alike: one scale
			if p.fill != nil && *p.fill == canvas.Gray(150) {
				heights = append(heights, p.box().H)
			}
		}
		if len(heights) != 3 || math.Abs(heights[0]-heights[2]) > 1e-6 {
			t.Errorf("holders of %v in %v", heights, r)
		}
		for i := range bs {
			edge := rec.find(t, fmt.Sprint("edge ", bs[i].EdgeDeg)).box()
			for _, p := range rec.paths {
				holder := p.box()
				if p.fill != nil && *p.fill == canvas.Gray(150) && edge.X < holder.Right() && edge.Right() > holder.X && edge.Y < holder.Bottom()-0.5 && edge.Bottom() > holder.Y {
					t.Errorf("the label of edge %d at %v lies on the holder at %v", i, edge, holder)
				}
			}
			if w := rec.find(t, fmt.Sprint("blade ", i)); w.x < r.X+float64(i)*r.W/3 || w.x > r.X+float64(i+1)*r.W/3 {
				t.Errorf("blade %d is named at %v", i, w.x)
			}
		}
	}
	for _, b := range []Bend{{SetDeg: 20, EdgeDeg: 10}, {EdgeDeg: 85}, {SetDeg: math.NaN()}, {Share: 2}} {
		if err := (Bends{b}).Draw(&recorder{}, Rect{W: 60, H: 60}); err == nil {
			t.Errorf("%+v is drawn", b)
		}
	}
	if err := bs.Draw(&recorder{}, Rect{W: 60, H: 14}); !errors.Is(err, ErrNoRoom) {
		t.Errorf("in 14 mm: %v", err)
	}
	if err := (Bends{}).Draw(&recorder{}, Rect{W: 60, H: 60}); !errors.Is(err, ErrNoData) {
		t.Errorf("no blades: %v", err)
	}
}

func leanMap() LeanMap {
	return LeanMap{Title: "set angle", Features: []string{"0.1 mm", "0.2 mm", "0.5 mm", "2 mm"}, HighDeg: 45, MarkDeg: 15, Mark: "start here",
		Angle: func(d float64) string { return fmt.Sprintf("%.0f°", d) },
		Rows:  []LeanRow{{"60", []float64{math.NaN(), 8, 14, 21}}, {"80", []float64{16, 19, 26, 35}}}}
}

// Each step of a bar ends at its angle on the scale, the finest is the darkest, and what no angle holds is left out.
func TestLeanMap(t *testing.T) {
	m := leanMap()
	r := Rect{5, 6, 150, 40}
	rec := &recorder{}
	if err := m.Draw(rec, r); err != nil {
		t.Fatal(err)
	}
	rec.clean(t, r, SmallestPT)
	place := map[string]float64{} // of the scale's figures
	for _, w := range rec.texts {
		if _, has := place[w.s]; !has {
			place[w.s] = w.x + w.w/2
		}
	}
	perDeg := (place["30°"] - place["0°"]) / 30
	steps, last := map[string]int{}, 0
	for _, p := range rec.paths {
		if p.fill == nil || p.box().H < 4 {
			continue
		}
		steps[fmt.Sprint(math.Round((p.box().Right()-0.1-place["0°"])/perDeg))]++
		if level := int(p.fill.R); p.box().X > place["0°"]+1 && level <= last {
			t.Errorf("%v follows %v, and is not lighter", level, last)
		}
		last = int(p.fill.R)
	}
	if got := fmt.Sprint(steps); got != "map[14:1 16:1 19:1 21:1 26:1 35:1 8:1]" {
		t.Errorf("the steps end at %s", got)
	}
	for _, s := range append([]string{"start here", "60", "80", "26°"}, m.Features...) {
		rec.find(t, s)
	}
	for _, wrong := range []func(m *LeanMap){
		func(m *LeanMap) { m.Rows = nil }, func(m *LeanMap) { m.Angle = nil }, func(m *LeanMap) { m.HighDeg = 91 },
		func(m *LeanMap) { m.Rows[0].MaxDeg = []float64{1, 2} }, func(m *LeanMap) { m.Rows[0].MaxDeg = []float64{9, 8, 14, 21} }, func(m *LeanMap) { m.MarkDeg = 60 },
	} {
		m := leanMap()
		wrong(&m)
		if err := m.Draw(&recorder{}, r); err == nil {
			t.Errorf("%+v is drawn", m)
		}
	}
	if err := m.Draw(&recorder{}, Rect{W: 150, H: 15}); !errors.Is(err, ErrNoRoom) {
		t.Errorf("in 15 mm: %v", err)
	}
}

// Each picture is named as what is seen, stays in its place, is gray, and is no other one.
func TestFaults(t *testing.T) {
	want := []string{Clear, seen.DotsLost, seen.DotsPlugged, seen.Ghost, seen.InkLeft, seen.OneSide, seen.Pinholes, seen.RaggedEdge, seen.WashesOff}
	if got := fmt.Sprint(Faults()); got != fmt.Sprint(want) {
		t.Errorf("pictures of %s; %v", got, want)
	}
	other := map[string]Fault{}
	for _, f := range Faults() {
		for _, r := range []Rect{{3, 4, 40, 28}, {0, 0, 14, 30}} {
			rec := &recorder{}
			if err := f.Draw(rec, r); err != nil {
				t.Fatal(err)
			}
			rec.clean(t, r, SmallestPT)
			var all strings.Builder
			dark := 0
			for _, p := range rec.paths {
				fmt.Fprintln(&all, p)
				if p.fill != nil && *p.fill == faultInk {
					dark++
				}
			}
			if o, has := other[all.String()]; has || (dark == 0) != (f == Clear) {
				t.Errorf("%s has %d dark places and looks like %q", f, dark, o)
			}
			other[all.String()] = f
		}
	}
	if err := Fault("scorched").Draw(&recorder{}, Rect{W: 40, H: 28}); !errors.Is(err, ErrNoData) {
		t.Errorf("an unknown fault: %v", err)
	}
	if err := Fault("ghost").Draw(&recorder{}, Rect{W: 10, H: 28}); !errors.Is(err, ErrNoRoom) {
		t.Errorf("10 mm: %v", err)
	}
}
