package figure

import (
	"fmt"

	"github.com/boombuler/barcode/qr"

	"bladecard/render/canvas"
)

const (
	quietModules  = 4   // white margin that a reader needs round a code (ISO/IEC 18004)
	leastModuleMM = 0.3 // smallest module that phones read from office paper behind a laminate (common practice)
)

// Code makes a drawing of a text as a QR code (ISO/IEC 18004) with its margin, which a phone reads without a network,
// for a place of side mm from 0, 0. A text that would make modules too small to read there is an error.
func Code(text string, side float64) (draw func(canvas.Canvas) error, err error) {
	code, err := qr.Encode(text, qr.M, qr.Auto)
	if err != nil {
		return nil, fmt.Errorf("figure: code: %w", err)
	}
	n := code.Bounds().Dx()
	module := side / float64(n+2*quietModules)
	if module < leastModuleMM {
		return nil, fmt.Errorf("figure: a code of %d bytes has modules of %.2f mm on %.0f mm; %.1f mm are accepted, of a shorter text or a larger place", len(text), module, side, leastModuleMM)
	}
	at := func(k int) float64 { return module * float64(quietModules+k) }
	var rows canvas.Path // a stroke for each row of modules that touch
	for y := range n {
		from := -1
		for x := range n + 1 {
			dark := false
			if x < n {
				v, _, _, _ := code.At(x, y).RGBA()
				dark = v < 0x8000
			}
			switch {
			case dark && from < 0:
				from = x
			case !dark && from >= 0:
				rows.Move(at(from), at(y)+module/2)
				rows.Line(at(x), at(y)+module/2)
				from = -1
			}
		}
	}
	return func(c canvas.Canvas) error {
		c.Draw(rows, nil, ink(module))
		return nil
	}, nil
}
