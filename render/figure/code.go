package figure

import (
	"bytes"
	"fmt"
	"image"
	"image/color"
	"image/png"

	"github.com/boombuler/barcode/qr"

	"bladecard/render/canvas"
)

const (
	quietModules  = 4   // white margin that a reader needs round a code (ISO/IEC 18004)
	leastModuleMM = 0.3 // smallest module that phones read from office paper behind a laminate (common practice)
	modulePX      = 4   // so that a viewer that smooths pictures leaves the modules square
)

// Code is a text as a QR code (ISO/IEC 18004) with its margin, which a phone reads without a network, for a place of
// side mm. A text that would make modules too small to read there is an error.
func Code(text string, side float64) (*canvas.Picture, error) {
	code, err := qr.Encode(text, qr.M, qr.Auto)
	if err != nil {
		return nil, fmt.Errorf("figure: code: %w", err)
	}
	n := code.Bounds().Dx() + 2*quietModules
	if module := side / float64(n); module < leastModuleMM {
		return nil, fmt.Errorf("figure: a code of %d bytes has modules of %.2f mm on %.0f mm; %.1f mm are accepted, of a shorter text or a larger place", len(text), module, side, leastModuleMM)
	}
	img := image.NewGray(image.Rect(0, 0, n*modulePX, n*modulePX))
	for y := range n * modulePX {
		for x := range n * modulePX {
			img.SetGray(x, y, color.Gray{Y: 255})
			at := image.Pt(x/modulePX-quietModules, y/modulePX-quietModules)
			if !at.In(code.Bounds()) {
				continue
			}
			if v, _, _, _ := code.At(at.X, at.Y).RGBA(); v < 0x8000 {
				img.SetGray(x, y, color.Gray{})
			}
		}
	}
	var b bytes.Buffer
	if err := png.Encode(&b, img); err != nil {
		return nil, err
	}
	return &canvas.Picture{Data: b.Bytes(), Format: "png", Wide: n * modulePX, High: n * modulePX}, nil
}
