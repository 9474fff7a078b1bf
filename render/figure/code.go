package figure

import (
	"fmt"

	qr "github.com/piglig/go-qr"

	"bladecard/render/canvas"
)

const (
	quietModules  = 4   // white margin that a reader needs round a code (ISO/IEC 18004)
	leastModuleMM = 0.3 // smallest module that phones read from office paper behind a laminate (common practice)
)

// Code makes a drawing of a text as a QR code (ISO/IEC 18004) with its margin, which a phone reads without a network,
// for a place of side mm from 0, 0. A text that would make modules too small to read there is an error.
func Code(text string, side float64) (draw func(canvas.Canvas) error, err error) {
	code, err := qr.EncodeText(text, qr.Medium)
	if err != nil {
		return nil, fmt.Errorf("figure: code: %w", err)
	}
	n := code.Size()
	module := side / float64(n+2*quietModules)
	if module < leastModuleMM {
		return nil, fmt.Errorf("figure: a code of %d bytes has modules of %.2f mm on %.0f mm; %.1f mm are accepted, of a shorter text or a larger place", len(text), module, side, leastModuleMM)
	}
	at := func(k int) float64 { return module * float64(quietModules+k) }
	dark := code.Module
	return func(c canvas.Canvas) error {
		for y := range n { // a dashed stroke a row, from its first dark module on
			first := 0
			for first < n && !dark(first, y) {
				first++
			}
			if first == n {
				continue
			}
			dashes := []float64{module} // dark and light in turn
			for x := first + 1; x < n; x++ {
				if dark(x, y) == dark(x-1, y) {
					dashes[len(dashes)-1] += module
				} else {
					dashes = append(dashes, module)
				}
			}
			if len(dashes)%2 == 1 {
				dashes = append(dashes, module)
			}
			high := at(y) + module/2
			c.Draw(segment(at(first), high, at(n), high), nil, ink(module, dashes...))
		}
		return nil
	}, nil
}
