package canvas_test

import (
	"bytes"
	"encoding/xml"
	"errors"
	"image/color"
	decodepng "image/png"
	"io"
	"math"
	"strings"
	"testing"

	"bladecard/render/canvas"
	"bladecard/render/canvas/png"
	"bladecard/render/canvas/svg"
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

func TestPNG(t *testing.T) {
	var b bytes.Buffer
	if err := png.Write(&b, 50, 30, 254, sketch); err != nil { // ten pixels a mm
		t.Fatal(err)
	}
	img, err := decodepng.Decode(&b)
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
		if err := png.Write(io.Discard, 50, 30, dpi, sketch); err == nil {
			t.Errorf("%g dpi is taken", dpi)
		}
	}
	if err := png.Write(io.Discard, 1e6, 1e6, 300, sketch); err == nil {
		t.Error("a kilometre of pixels is taken")
	}
	broken := errors.New("broken")
	if err := png.Write(io.Discard, 50, 30, 100, func(canvas.Canvas) error { return broken }); !errors.Is(err, broken) {
		t.Errorf("error of the drawing: %v", err)
	}
	if err := png.Write(io.Discard, 50, 30, 100, func(c canvas.Canvas) error {
		c.Text(1, 1, "\U0001F600", canvas.Font{SizePT: 9}, canvas.Black, 0)
		return nil
	}); err == nil {
		t.Error("a glyph that the font lacks is taken")
	}
}

func TestSVG(t *testing.T) {
	var b bytes.Buffer
	if err := svg.Write(&b, 50, 30, sketch); err != nil {
		t.Fatal(err)
	}
	dec := xml.NewDecoder(bytes.NewReader(b.Bytes()))
	for {
		if _, err := dec.Token(); err == io.EOF {
			break
		} else if err != nil {
			t.Fatalf("not XML: %v\n%s", err, b.String())
		}
	}
	for _, want := range []string{`viewBox="0 0 50 30"`, `d="M5 5L15 5L15 15L5 15Z" fill="#c80000"`, `stroke-dasharray="4 4"`, "50 µm &lt;&amp;&gt;"} {
		if !strings.Contains(b.String(), want) {
			t.Errorf("no %s in\n%s", want, b.String())
		}
	}
}
