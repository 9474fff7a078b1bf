package png

import (
	"bytes"
	"errors"
	"image/color"
	"image/png"
	"io"
	"math"
	"testing"

	"bladecard/render/canvas"
)

// sketch draws a filled square, a dashed line and a text.
func sketch(c canvas.Canvas) error {
	var square, line canvas.Path
	square.Move(5, 5)
	square.Line(15, 5)
	square.Line(15, 15)
	square.Line(5, 15)
	square.Close()
	c.Draw(square, &canvas.Color{R: 200}, canvas.Pen{})
	line.Move(20, 10)
	line.Line(40, 10)
	c.Draw(line, nil, canvas.Pen{Color: canvas.Black, WidthMM: 1, DashMM: []float64{4, 4}})
	c.Text(5, 25, "50 µm <&>", canvas.Font{SizePT: 12}, canvas.Black, 0)
	return nil
}

func TestWrite(t *testing.T) {
	var b bytes.Buffer
	if err := Write(&b, 50, 30, 254, sketch); err != nil { // ten pixels a mm
		t.Fatal(err)
	}
	img, err := png.Decode(&b)
	if err != nil {
		t.Fatal(err)
	}
	if s := img.Bounds().Size(); s.X != 500 || s.Y != 300 {
		t.Fatalf("%v pixels; 500 by 300", s)
	}
	at := func(xMM, yMM float64) color.RGBA {
		return color.RGBAModel.Convert(img.At(int(xMM*10), int(yMM*10))).(color.RGBA)
	}
	white, red, black := color.RGBA{255, 255, 255, 255}, color.RGBA{200, 0, 0, 255}, color.RGBA{0, 0, 0, 255}
	for _, c := range []struct {
		what string
		x, y float64
		want color.RGBA
	}{
		{"ground", 1, 1, white}, {"square", 10, 10, red}, {"dash", 22, 10, black}, {"gap", 26, 10, white}, {"second dash", 30, 10, black}, {"past the line", 45, 10, white},
	} {
		if got := at(c.x, c.y); got != c.want {
			t.Errorf("%s: %v; %v is wanted", c.what, got, c.want)
		}
	}
	// the text inks what its width says, and nothing past it
	width := canvas.Width("50 µm <&>", canvas.Font{SizePT: 12})
	dark := func(from, to float64) int {
		n := 0
		for x := int(from * 10); x < int(to*10); x++ {
			for y := 200; y < 260; y++ {
				if r, _, _, _ := img.At(x, y).RGBA(); r < 0x8000 {
					n++
				}
			}
		}
		return n
	}
	if n := dark(5, 5+width); n < 300 {
		t.Errorf("%d dark pixels of text", n)
	}
	if n := dark(5+width+0.2, 50); n != 0 {
		t.Errorf("%d dark pixels past the text", n)
	}
	for _, dpi := range []float64{math.NaN(), 1, 5000} {
		if err := Write(io.Discard, 50, 30, dpi, sketch); err == nil {
			t.Errorf("%g dpi is taken", dpi)
		}
	}
	if err := Write(io.Discard, 1e6, 1e6, 300, sketch); err == nil {
		t.Error("a kilometre of pixels is taken")
	}
	broken := errors.New("broken")
	if err := Write(io.Discard, 50, 30, 100, func(canvas.Canvas) error { return broken }); !errors.Is(err, broken) {
		t.Errorf("error of the drawing: %v", err)
	}
	if err := Write(io.Discard, 50, 30, 100, func(c canvas.Canvas) error {
		c.Text(1, 1, "\U0001F600", canvas.Font{SizePT: 9}, canvas.Black, 0)
		return nil
	}); err == nil {
		t.Error("a glyph that the font lacks is taken")
	}
}

func TestDashes(t *testing.T) {
	points := []canvas.Point{{X: 0, Y: 0}, {X: 3, Y: 0}, {X: 3, Y: 4}, {X: 10, Y: 4}} // 14 long
	var drawn float64
	pieces := dashes(points, []float64{2, 1})
	for _, p := range pieces {
		for i := 1; i < len(p); i++ {
			drawn += math.Hypot(p[i].X-p[i-1].X, p[i].Y-p[i-1].Y)
		}
	}
	if len(pieces) != 5 || math.Abs(drawn-10) > 1e-9 { // 2 of every 3: 8 in four, and the last 2
		t.Errorf("%d pieces, %g mm drawn; 5 and 10", len(pieces), drawn)
	}
	if got := dashes(points, nil); len(got) != 1 || len(got[0]) != 4 {
		t.Errorf("without a pattern: %v", got)
	}
}
