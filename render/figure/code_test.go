package figure

import (
	"bytes"
	"image/png"
	"strings"
	"testing"

	"github.com/makiuchi-d/gozxing"
	"github.com/makiuchi-d/gozxing/qrcode"

	pixels "bladecard/render/canvas/png"
)

// TestCodeIsRead: what is drawn is read back by another library.
func TestCodeIsRead(t *testing.T) {
	for _, text := range []string{
		"L-031 full back\nwhite base\n1/1-3\n150-48 EOM 13 µm\n70 360 mm 15° (10–25°)\n2 strokes, 1.1 bar\nFLASH 2.4 s\n40 µm (27–61 µm)",
		strings.Repeat("ñ 1.6–3.2 mm ", 9),
		"a",
	} {
		draw, err := Code(text, 17.5)
		if err != nil {
			t.Fatal(err)
		}
		var drawn bytes.Buffer
		if err := pixels.Write(&drawn, 17.5, 17.5, 300, draw); err != nil {
			t.Fatal(err)
		}
		img, err := png.Decode(&drawn)
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
	if _, err := Code(strings.Repeat("long ", 100), 18); err == nil || !strings.Contains(err.Error(), "0.3 mm are accepted") {
		t.Errorf("%v", err)
	}
	if _, err := Code(strings.Repeat("x", 5000), 18); err == nil {
		t.Error("5000 letters go into a code")
	}
}
