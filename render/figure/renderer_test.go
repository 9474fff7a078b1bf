package figure

import (
	"io"
	"math"
	"testing"

	"github.com/golang/freetype/truetype"
	"github.com/wcharczuk/go-chart/v2/drawing"

	"bladecard/render/canvas"
)

func near(a, b float64) bool { return math.Abs(a-b) < 1e-9 }

func TestRendererScalesToMM(t *testing.T) {
	rec := &recorder{}
	r := newRenderer(rec, Rect{10, 20, 99, 99})
	r.SetStrokeColor(drawing.ColorBlack)
	r.SetStrokeWidth(dpi)
	r.SetStrokeDashArray([]float64{dpi / 2, dpi / 4})
	r.MoveTo(0, 0)
	r.LineTo(dpi, 2*dpi)
	r.Stroke()
	if got, want := rec.paths[0].String(), "M10.0,20.0 L35.4,70.8 pen25.40[12.70 6.35]"; got != want {
		t.Errorf("got %s, want %s", got, want)
	}
}

func TestRendererBuffersThePath(t *testing.T) {
	ends := map[string]struct {
		do           func(*renderer)
		fill, stroke bool
	}{
		"Stroke":     {(*renderer).Stroke, false, true},
		"Fill":       {(*renderer).Fill, true, false},
		"FillStroke": {(*renderer).FillStroke, true, true},
	}
	for name, end := range ends {
		t.Run(name, func(t *testing.T) {
			rec := &recorder{}
			r := newRenderer(rec, Rect{0, 0, 99, 99})
			r.MoveTo(0, 0)
			r.LineTo(100, 0)
			r.SetStrokeColor(drawing.ColorBlack) // style may come after the path
			r.SetFillColor(drawing.ColorWhite)
			r.SetStrokeWidth(2)
			r.LineTo(100, 100)
			r.Close()
			if len(rec.paths) != 0 {
				t.Fatal("drawn before the end")
			}
			end.do(r)
			if len(rec.paths) != 1 {
				t.Fatalf("%d paths, want 1", len(rec.paths))
			}
			p := rec.paths[0]
			if len(p.path.Pieces) != 4 || (p.fill != nil) != end.fill || (p.pen.WidthMM > 0) != end.stroke {
				t.Errorf("got %s", p)
			}
			end.do(r)
			if len(rec.paths) != 1 {
				t.Error("the path was kept and drawn again")
			}
		})
	}
}

func TestRendererDrawsNothingTransparent(t *testing.T) {
	rec := &recorder{}
	r := newRenderer(rec, Rect{0, 0, 99, 99})
	r.SetStrokeColor(drawing.ColorTransparent)
	r.SetFillColor(drawing.ColorTransparent)
	r.SetStrokeWidth(3)
	r.MoveTo(0, 0)
	r.LineTo(9, 9)
	r.FillStroke()
	r.Circle(3, 9, 9)
	r.SetFontColor(drawing.ColorTransparent)
	r.SetFontSize(9)
	r.Text("x", 0, 0)
	if len(rec.paths)+len(rec.texts) != 0 {
		t.Errorf("drew %v %v", rec.paths, rec.texts)
	}
}

func TestRendererCircle(t *testing.T) {
	rec := &recorder{}
	r := newRenderer(rec, Rect{0, 0, 99, 99})
	r.SetFillColor(drawing.ColorBlack)
	r.Circle(dpi, 2*dpi, 2*dpi)
	b := rec.paths[0].box()
	if math.Abs(b.X-25.4) > 0.01 || math.Abs(b.W-50.8) > 0.02 || math.Abs(b.H-50.8) > 0.02 {
		t.Errorf("circle in %+v", b)
	}
}

func TestRendererText(t *testing.T) {
	rec := &recorder{}
	r := newRenderer(rec, Rect{5, 5, 99, 99})
	r.SetFont(tokenRegular)
	r.SetFontSize(72)
	r.SetFontColor(drawing.ColorBlack)
	wide := unitsUp(canvas.Width("ab", canvas.Font{SizePT: 72}))
	if b := r.MeasureText("ab"); b.Width() != wide || b.Height() != 1052 {
		t.Errorf("measured %v, want %d by 0.73 of an inch", b, wide)
	}
	r.Text("ab", dpi, dpi)
	if got := rec.texts[0]; !near(got.x, 30.4) || !near(got.y, 30.4) || got.font != (canvas.Font{SizePT: 72}) || got.angle != 0 {
		t.Errorf("wrote %+v", got)
	}
	r.Text("abcd", 3*dpi, 0)
	if got := rec.texts[1]; !near(got.x+got.w, 104) {
		t.Errorf("a text that would leave the chart ends at %v", got.x+got.w)
	}
	r.SetFont(tokenBeside)
	if w := r.MeasureText("ab").Width(); w != wide+29 {
		t.Errorf("beside an axis it measures %d wide, want half a millimeter more than %d", w, wide)
	}
	r.SetFont(tokenBelow)
	if h := r.MeasureText("1").Height(); h != 2294 {
		t.Errorf("below an axis it measures %d high, want 1.6 x 1440 less go-chart's own 10", h)
	}
}

func TestRendererRefuses(t *testing.T) {
	for name, do := range map[string]func(*renderer){
		"foreign font": func(r *renderer) { r.SetFont(new(truetype.Font)) },
		"arc":          func(r *renderer) { r.ArcTo(0, 0, 1, 1, 0, 1) },
		"curve":        func(r *renderer) { r.QuadCurveTo(0, 0, 1, 1) },
		"turned text":  func(r *renderer) { r.SetTextRotation(1) },
	} {
		r := newRenderer(&recorder{}, Rect{0, 0, 99, 99})
		do(r)
		r.ResetStyle()
		if r.Save(io.Discard) == nil {
			t.Errorf("%s: no error", name)
		}
	}
}
