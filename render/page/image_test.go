package page

import (
	"bytes"
	"image"
	"image/color"
	"image/jpeg"
	"image/png"
	"io"
	"testing"

	"bladecard/render/canvas"
	"bladecard/render/canvas/pdf"
)

func picture(t *testing.T, w, h int, asJPEG bool) []byte {
	t.Helper()
	img := image.NewRGBA(image.Rect(0, 0, w, h))
	for x := range w {
		for y := range h {
			img.Set(x, y, color.RGBA{uint8(x), uint8(y), 90, 255})
		}
	}
	var b bytes.Buffer
	var err error
	if asJPEG {
		err = jpeg.Encode(&b, img, nil)
	} else {
		err = png.Encode(&b, img)
	}
	if err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func TestImage(t *testing.T) {
	for _, asJPEG := range []bool{false, true} {
		p, err := canvas.ReadPicture(picture(t, 80, 40, asJPEG))
		if err != nil {
			t.Fatal(err)
		}
		b := Image("logo", Rect{X: 10, Y: 5, W: 30, H: 30}, p)
		if b.W != 30 || b.H != 15 || b.Right() != 40 || b.Y != 5 {
			t.Errorf("80 by 40 pixels in 30 by 30 mm at 10, 5: %+v", b.Rect)
		}
		face := Face{Name: "a", W: 60, H: 60, Safe: Rect{X: 5, Y: 5, W: 50, H: 50}, Boxes: []Box{b}}
		var one, two bytes.Buffer
		for _, out := range []*bytes.Buffer{&one, &two} {
			if err := Write(out, pdf.Meta{Title: "x"}, Pages(face, face)); err != nil {
				t.Fatal(err)
			}
		}
		if !bytes.Equal(one.Bytes(), two.Bytes()) {
			t.Error("two documents with a picture differ")
		}
		if n := bytes.Count(one.Bytes(), []byte("/Subtype /Image")); n != 1 {
			t.Errorf("the picture stands %d times in the document; once is enough", n)
		}
	}
}

func TestImageBoxNeedsAPicture(t *testing.T) {
	if err := Write(&bytes.Buffer{}, pdf.Meta{}, Pages(Face{Name: "a", W: 10, H: 10, Boxes: []Box{{Name: "x", Kind: KindImage}}})); err == nil {
		t.Error("an image box without a picture is taken")
	}
}

// FuzzReadPicture: whatever the bytes, there is an error, or a picture that goes into a PDF.
func FuzzReadPicture(f *testing.F) {
	var t testing.T
	f.Add(picture(&t, 3, 2, false))
	f.Add(picture(&t, 9, 9, true))
	f.Add([]byte("\x89PNG\r\n\x1a\n\x00\x00\x00\rIHDR\xff\xff\xff\xff\xff\xff\xff\xff\x08\x06\x00\x00\x00"))
	f.Add([]byte("\xff\xd8\xff\xc0\x00\x11\x08\xff\xff\xff\xff\x03"))
	var deep, laced bytes.Buffer
	wide := image.NewRGBA64(image.Rect(0, 0, 2, 2))
	if err := png.Encode(&deep, wide); err != nil {
		f.Fatal(err)
	}
	f.Add(deep.Bytes())
	if err := png.Encode(&laced, image.NewPaletted(image.Rect(0, 0, 4, 4), color.Palette{color.Black, color.Transparent})); err != nil {
		f.Fatal(err)
	}
	f.Add(laced.Bytes())
	f.Fuzz(func(t *testing.T, data []byte) {
		p, err := canvas.ReadPicture(data)
		if err != nil {
			return
		}
		face := Face{Name: "f", W: 100, H: 60, Boxes: []Box{Image("logo", Rect{X: 10, Y: 5, W: 30, H: 30}, p)}}
		if err := Write(io.Discard, pdf.Meta{Title: "t"}, Pages(face)); err != nil {
			t.Fatal(err)
		}
	})
}
