package figure

import (
	"math"
	"reflect"
	"strings"
	"testing"

	"bladecard/calc/job"
	"bladecard/render/canvas"

	"pgregory.net/rapid"
)

func TestGarment(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := Rect{X: 3, Y: 4, W: rapid.Float64Range(30, 90).Draw(t, "w"), H: rapid.Float64Range(30, 90).Draw(t, "h")}
		g := Garment{
			Outline: rapid.SampledFrom([]string{"", "tee", "hood", "youth", "long-sleeve", "cap", "tote", "apron"}).Draw(t, "outline"), Back: rapid.Bool().Draw(t, "back"), Left: rapid.Bool().Draw(t, "left"), Sleeve: rapid.Bool().Draw(t, "sleeve"),
			WidthMM: rapid.Float64Range(5, 3000).Draw(t, "width"), HeightMM: rapid.Float64Range(5, 3000).Draw(t, "height"),
			DownMM: rapid.Float64Range(0, 900).Draw(t, "down"), AcrossMM: rapid.Float64Range(0, 400).Draw(t, "across"), DownLabel: "71–102 mm", AcrossLabel: "76–102 mm",
		}
		g.Sleeve = g.Sleeve && HasCollar(g.Outline)
		g.NoDown = rapid.Bool().Draw(t, "down not known")
		rec := &recorder{}
		if err := g.Draw(rec, r); err != nil {
			t.Fatal(err)
		}
		for _, f := range rec.faults(r, SmallestPT) {
			t.Errorf("%+v in %+v: %s", g, r, f)
		}
		around := rec.paths[0].box()
		for _, s := range rec.texts {
			if b := s.box(); b.X < around.Right() && around.X < b.Right() {
				t.Errorf("%+v in %+v: %q stands on the garment", g, r, s.s)
			}
		}
	})
	for _, g := range []Garment{{}, {WidthMM: math.NaN(), HeightMM: 10}, {WidthMM: 10, HeightMM: math.Inf(1)}, {WidthMM: 10, HeightMM: 10, Sleeve: true, DownMM: math.NaN()}, {WidthMM: 10, HeightMM: 10, Sleeve: true, Outline: "tote"}} {
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
	tee := outlines["tee"]
	label := (&garmentDrawing{Garment: Garment{DownLabel: "down", AcrossLabel: "across", SizePT: SmallestPT}, c: &recorder{}}).column()
	r := Rect{W: tee.halfW/5 + 2*outlineMM + label, H: tee.high/10 + 2*outlineMM} // one to ten
	const near = 1e-6
	side := func(a, b canvas.Point) float64 { return math.Hypot(b.X-a.X, b.Y-a.Y) }
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
		middle := (r.W - label) / 2
		if !c.right { // the labels stand on the side of the print
			middle += label
		}
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
			seam := (&garmentDrawing{Garment: c.g, outline: tee}).seamMM()/10 + outlineMM
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
		hem := canvas.Point{X: middle + (tee.sleeve[0].X+tee.sleeve[1].X)/20, Y: (tee.sleeve[0].Y+tee.sleeve[1].Y)/20 + outlineMM}
		if !c.right {
			hem.X = 2*middle - hem.X
		}
		if got := side(foot, hem); math.Abs(got-c.g.DownMM/10) > near {
			t.Errorf("%s: %g mm above the hem", c.name, got)
		}
	}
}

// Each outline that a job file may name is drawn, its print to its own scale and below its own edge.
func TestOutlines(t *testing.T) {
	field, _ := reflect.TypeOf(job.Garment{}).FieldByName("Outline")
	names := strings.Fields(field.Tag.Get("one"))
	if len(names) != len(outlines) {
		t.Errorf("a job names %v; %d outlines are drawn", names, len(outlines))
	}
	for _, name := range names {
		o := outlines[name]
		r := Rect{W: o.halfW/2 + 2*outlineMM, H: o.high/4 + 2*outlineMM} // one to four
		rec := &recorder{}
		if err := (Garment{Outline: name, WidthMM: 80, HeightMM: 40, DownMM: 60}).Draw(rec, r); err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		rec.clean(t, r, SmallestPT)
		p := printOf(t, rec)
		if math.Abs(p[1].X-p[0].X-20) > 1e-6 || math.Abs(p[2].Y-p[1].Y-10) > 1e-6 || math.Abs(p[0].Y-outlineMM-(o.front+60)/4) > 1e-6 {
			t.Errorf("%s: the print has the corners %v", name, p)
		}
		around := rec.paths[0].box()
		if math.Abs(around.W-o.halfW/2-outlineMM) > 1.2*o.halfW/10 || around.Bottom() < 0.95*r.H {
			t.Errorf("%s: the outline takes %v of %v", name, around, r)
		}
		if want := name != "cap" && name != "tote" && name != "apron"; HasCollar(name) != want {
			t.Errorf("%s: collar %v", name, !want)
		}
	}
}

// A print of which nobody said how far down it stands is drawn in the middle of the crown, the bib or the bag, its
// distance as its label says.
func TestDownNotKnown(t *testing.T) {
	for name, foot := range map[string]float64{"cap": 92, "tote": 660, "apron": 430} {
		rec, r := &recorder{}, Rect{W: 90, H: 72}
		if err := (Garment{Outline: name, WidthMM: 80, HeightMM: 40, NoDown: true, DownLabel: "?"}).Draw(rec, r); err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		rec.clean(t, r, SmallestPT)
		rec.find(t, "?")
		p, o := printOf(t, rec), outlines[name]
		scale := (p[2].Y - p[1].Y) / 40
		if got := ((p[0].Y+p[2].Y)/2 - (r.H-o.high*scale)/2) / scale; math.Abs(got-(o.front+foot)/2) > 1e-6 {
			t.Errorf("%s: the middle of the print lies at %g mm of %g..%g mm", name, got, o.front, foot)
		}
	}
}
