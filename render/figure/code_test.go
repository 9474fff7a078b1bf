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

// decoded is what another library reads from a code that is drawn at so many mm and dpi.
func decoded(t *testing.T, text string, mm, dpi float64) string {
	t.Helper()
	var b bytes.Buffer
	if err := canvaspng.Write(&b, mm, mm, dpi, func(c canvas.Canvas) error { return Code{text}.Draw(c, Rect{W: mm, H: mm}) }); err != nil {
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
	if err != nil {
		t.Fatalf("%q at %g mm and %g dpi: %v", text, mm, dpi, err)
	}
	return got.GetText()
}

// TestCodeIsRead: what is drawn is read back by another library, at the size of the card and at that of a poor photograph.
func TestCodeIsRead(t *testing.T) {
	for _, text := range []string{
		"L-031 full back\nwhite base\n1/1-3\n150-48 EOM 13 µm\n70 360 mm 15° (10–25°)\n2 strokes, 1.1 bar\nFLASH 2.4 s\n40 µm (27–61 µm)",
		strings.Repeat("ñ 1.6–3.2 mm ", 9),
		"a",
	} {
		for _, dpi := range []float64{300, 200} {
			if got := decoded(t, text, 18, dpi); got != text {
				t.Errorf("%q was drawn, %q is read", text, got)
			}
		}
	}
}

// TestCodeTooDense: a text that a phone could not read from the place is refused.
func TestCodeTooDense(t *testing.T) {
	var b bytes.Buffer
	err := canvaspng.Write(&b, 18, 18, 200, func(c canvas.Canvas) error {
		return Code{strings.Repeat("long ", 100)}.Draw(c, Rect{W: 18, H: 18})
	})
	if err == nil || !strings.Contains(err.Error(), "0.3 mm are accepted") {
		t.Errorf("%v", err)
	}
	if err := canvaspng.Write(&b, 18, 18, 200, func(c canvas.Canvas) error { return Code{strings.Repeat("x", 5000)}.Draw(c, Rect{W: 18, H: 18}) }); err == nil {
		t.Error("5000 letters go into a code")
	}
}
