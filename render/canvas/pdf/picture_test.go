package pdf

import (
	"bytes"
	"image"
	"image/color"
	"image/png"
	"testing"

	"bladecard/render/canvas"
)

// TestPicturesOfOneWidth: a document with several pictures of one width is the same in each run, and holds a picture that
// comes again once.
func TestPicturesOfOneWidth(t *testing.T) {
	var pictures []*canvas.Picture
	for i := range 8 {
		img := image.NewGray(image.Rect(0, 0, 4, 4))
		img.SetGray(i%4, i/4, color.Gray{Y: 255})
		var b bytes.Buffer
		if err := png.Encode(&b, img); err != nil {
			t.Fatal(err)
		}
		pictures = append(pictures, &canvas.Picture{Data: b.Bytes(), Format: "png", Wide: 4, High: 4})
	}
	var first []byte
	for range 6 {
		doc, err := newDocument(Meta{Title: "t"})
		if err != nil {
			t.Fatal(err)
		}
		doc.AddPage()
		c := &pdfCanvas{doc: doc}
		for i, p := range append(pictures, pictures[0]) {
			c.Picture(float64(10*i), 0, 8, 8, p)
		}
		var out bytes.Buffer
		if err := doc.Output(&out); err != nil {
			t.Fatal(err)
		}
		if n := bytes.Count(out.Bytes(), []byte("/Width 4\n")); n != len(pictures) {
			t.Errorf("%d pictures of 4 pixels; %d are wanted", n, len(pictures))
		}
		if first == nil {
			first = out.Bytes()
		} else if !bytes.Equal(first, out.Bytes()) {
			t.Fatal("two runs differ")
		}
	}
}
