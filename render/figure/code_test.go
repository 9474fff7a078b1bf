package figure

import (
	"bytes"
	"image/png"
	"strings"
	"testing"

	"github.com/makiuchi-d/gozxing"
	"github.com/makiuchi-d/gozxing/qrcode"

	"bladecard/render/canvas"
	canvaspng "bladecard/render/canvas/png"
)

// TestCodeIsRead: what is drawn is read back by another library.
func TestCodeIsRead(t *testing.T) {
	for _, text := range []string{
		"L-031 full back\nwhite base\n1/1-3\n150-48 EOM 13 µm\n70 360 mm 15° (10–25°)\n2 strokes, 1.1 bar\nFLASH 2.4 s\n40 µm (27–61 µm)",
		strings.Repeat("ñ 1.6–3.2 mm ", 9),
		"a",
	} {
		var b bytes.Buffer
		if err := canvaspng.Write(&b, 18.5, 18.5, 250, func(c canvas.Canvas) error { return Code{text}.Draw(c, Rect{W: 18.5, H: 18.5}) }); err != nil {
			t.Fatal(err)
		}
		img, err := png.Decode(&b)
		if err != nil {
			t.Fatal(err)
		}
		bmp, err := gozxing.NewBinaryBitmapFromImage(img)
		if err != nil {
			t.Fatal(err)
		}
		got, err := qrcode.NewQRCodeReader().Decode(bmp, nil)
		if err != nil || got.GetText() != text {
			t.Errorf("%q was drawn, %v is read (%v)", text, got, err)
		}
	}
}

// TestCodeTooDense: a text that a phone could not read from the place is refused.
func TestCodeTooDense(t *testing.T) {
	for _, text := range []string{strings.Repeat("long ", 100), strings.Repeat("x", 5000)} {
		var b bytes.Buffer
		if err := canvaspng.Write(&b, 18, 18, 200, func(c canvas.Canvas) error { return Code{text}.Draw(c, Rect{W: 18, H: 18}) }); err == nil {
			t.Errorf("%d letters go into a code of 18 mm", len(text))
		}
	}
}
