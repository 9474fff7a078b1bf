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
	r := newRenderer(rec, 10, 20)
	r.SetStrokeColor(drawing.ColorBlack)
	r.SetStrokeWidth(288)
	r.SetStrokeDashArray([]float64{144, 72})
	r.MoveTo(0, 0)
	r.LineTo(288, 576)
	r.Stroke()
	if got, want := rec.paths[0].String(), "M10.0,20.0 L35.4,70.8 pen25.40[12.70 6.35]"; got != want {
		t.Errorf("got %s, want %s", got, want)
	}
	pen := rec.paths[0].pen
	if !near(pen.WidthMM, 25.4) || !near(pen.DashMM[0], 12.7) || !near(pen.DashMM[1], 6.35) {
		t.Errorf("288 units are %v mm wide, 144 and 72 are dashes of %v", pen.WidthMM, pen.DashMM)
	}
	r.SetDPI(144) // the same numbers are twice as long
	r.SetStrokeColor(drawing.ColorBlack)
	r.SetStrokeWidth(144)
	r.MoveTo(0, 0)
	r.LineTo(144, 0)
	r.Stroke()
	if p := rec.paths[1]; !near(p.pen.WidthMM, 25.4) || !near(p.path.Pieces[1].P.X, 35.4) {
		t.Errorf("at 144 dpi: %s", p)
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
			r := newRenderer(rec, 0, 0)
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

func TestRendererStartsAtLineTo(t *testing.T) {
	rec := &recorder{}
	r := newRenderer(rec, 0, 0)
	r.SetStrokeColor(drawing.ColorBlack)
	r.SetStrokeWidth(3)
	r.LineTo(288, 0)
	r.LineTo(288, 288)
	r.Stroke()
	if got := rec.paths[0].path.Pieces; got[0].Op != 'M' || got[1].Op != 'L' {
		t.Errorf("got %s", rec.paths[0])
	}
}

func TestRendererDrawsNothingTransparent(t *testing.T) {
	rec := &recorder{}
	r := newRenderer(rec, 0, 0)
	r.SetStrokeColor(drawing.ColorTransparent)
	r.SetFillColor(drawing.ColorTransparent)
	r.SetStrokeWidth(3)
	r.MoveTo(0, 0)
	r.LineTo(9, 9)
	r.FillStroke()
	r.SetFontColor(drawing.ColorTransparent)
	r.SetFontSize(9)
	r.Text("x", 0, 0)
	if len(rec.paths)+len(rec.texts) != 0 {
		t.Errorf("drew %v %v", rec.paths, rec.texts)
	}
}

func TestOpaque(t *testing.T) {
	for _, tt := range []struct {
		in   drawing.Color
		want canvas.Color
	}{
		{drawing.Color{R: 0, G: 0, B: 0, A: 255}, canvas.Black},
		{drawing.Color{R: 0, G: 0, B: 0, A: 0}, canvas.White},
		{drawing.Color{R: 0, G: 100, B: 200, A: 51}, canvas.Color{R: 204, G: 224, B: 244}},
	} {
		if got := opaque(tt.in); got != tt.want {
			t.Errorf("%v is %v on white, want %v", tt.in, got, tt.want)
		}
	}
}

func TestRendererCurves(t *testing.T) {
	rec := &recorder{}
	r := newRenderer(rec, 0, 0)
	black := func() {
		r.SetStrokeColor(drawing.ColorBlack)
		r.SetStrokeWidth(1e-9)
	}
	black()
	r.MoveTo(0, 0)
	r.QuadCurveTo(288, 0, 288, 288)
	r.Stroke()
	// The middle of a quadratic is (p0 + 2c + p1)/4.
	q := rec.paths[0].path.Pieces[1]
	midX, midY := (0+3*q.A.X+3*q.B.X+q.P.X)/8, (0+3*q.A.Y+3*q.B.Y+q.P.Y)/8
	if !near(midX, 25.4*3/4) || !near(midY, 25.4/4) {
		t.Errorf("middle of the curve at %v, %v", midX, midY)
	}

	r.Circle(288, 576, 576)
	b := rec.paths[1].box()
	if math.Abs(b.X-25.4) > 0.01 || math.Abs(b.W-50.8) > 0.02 || math.Abs(b.H-50.8) > 0.02 {
		t.Errorf("circle in %+v", b)
	}

	black()
	r.ArcTo(0, 0, 288, 144, 0, math.Pi/2) // from the right, clockwise, down
	r.Stroke()
	a := rec.paths[2].path.Pieces
	if a[0].Op != 'M' || !near(a[0].P.X, 25.4) || !near(a[1].P.X+1, 1) || !near(a[1].P.Y, 12.7) {
		t.Errorf("arc %s", rec.paths[2])
	}
}

func TestRendererText(t *testing.T) {
	rec := &recorder{}
	r := newRenderer(rec, 5, 5)
	r.SetFont(tokenBold)
	r.SetFontSize(72)
	r.SetFontColor(drawing.ColorBlack)
	b := r.MeasureText("ab") // two letters of 0.6 in, at 288 to the inch
	if b.Width() != 346 || b.Height() != 211 {
		t.Errorf("measured %v, want 345.6 by 0.73 x 288, rounded up", b)
	}
	r.SetTextRotation(math.Pi / 2)
	if q := r.MeasureText("ab"); q.Width() != b.Height() || q.Height() != b.Width() {
		t.Errorf("turned it measures %v", q)
	}
	r.Text("ab", 288, 288)
	r.ClearTextRotation()
	r.Text("c", 0, 0)
	got := rec.texts[0]
	if !near(got.x, 30.4) || !near(got.y, 30.4) || got.font != (canvas.Font{Face: canvas.Bold, SizePT: 72}) || got.angle != -90 {
		t.Errorf("wrote %+v", got)
	}
	if rec.texts[1].angle != 0 {
		t.Error("the rotation stayed")
	}
	r.SetFont(tokenBelow)
	r.SetFontSize(72)
	if h := r.MeasureText("1").Height(); h != 451 {
		t.Errorf("below an axis it measures %d high, want 1.6 x 288 less go-chart's own 10", h)
	}
}

func TestRendererRefuses(t *testing.T) {
	for name, do := range map[string]func(*renderer){
		"foreign font":      func(r *renderer) { r.SetFont(new(truetype.Font)) },
		"resolution of NaN": func(r *renderer) { r.SetDPI(math.NaN()) },
		"arc of NaN":        func(r *renderer) { r.ArcTo(0, 0, math.NaN(), 1, 0, 1) },
		"path to infinity": func(r *renderer) {
			r.SetStrokeColor(drawing.ColorBlack)
			r.SetStrokeWidth(1)
			r.moveTo(canvas.Point{X: math.Inf(1)})
			r.Stroke()
		},
	} {
		rec := &recorder{}
		r := newRenderer(rec, 0, 0)
		do(r)
		if r.Save(io.Discard) == nil {
			t.Errorf("%s: no error", name)
		}
		if len(rec.paths) != 0 {
			t.Errorf("%s: drawn", name)
		}
	}
}
