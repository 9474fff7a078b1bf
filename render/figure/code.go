package figure

import (
	"fmt"

	"github.com/boombuler/barcode/qr"

	"bladecard/render/canvas"
)

// Code is a text as a QR code (ISO/IEC 18004), which a phone reads without a network.
type Code struct{ Text string }

// quietModules is the white margin that a reader needs round a code, in modules (ISO/IEC 18004).
const quietModules = 4

// leastModuleMM is the smallest module that phones read from office paper behind a laminate (common practice).
const leastModuleMM = 0.3

// Draw draws the code with its margin into the largest square at the middle of r. A text that would make modules
// too small to read is an error.
func (q Code) Draw(c canvas.Canvas, r Rect) error {
	code, err := qr.Encode(q.Text, qr.M, qr.Auto)
	if err != nil {
		return fmt.Errorf("figure: code: %w", err)
	}
	n := code.Bounds().Dx()
	side := min(r.W, r.H)
	module := side / float64(n+2*quietModules)
	if module < leastModuleMM {
		return fmt.Errorf("figure: a code of %d characters has modules of %.2f mm on %.0f mm; %.1f mm are accepted, of a shorter text or a larger place", len(q.Text), module, side, leastModuleMM)
	}
	left, top := r.X+(r.W-side)/2+quietModules*module, r.Y+(r.H-side)/2+quietModules*module
	black := func(x, y int) bool {
		v, _, _, _ := code.At(x, y).RGBA()
		return v < 0x8000
	}
	var all canvas.Path
	for y := range n {
		for x := 0; x < n; x++ {
			from := x
			for x < n && black(x, y) {
				x++
			}
			if x > from { // a row of black modules is one piece
				all.Pieces = append(all.Pieces, rectPath(left+float64(from)*module, top+float64(y)*module, float64(x-from)*module, module).Pieces...)
			}
		}
	}
	c.Draw(all, &canvas.Black, canvas.Pen{})
	return nil
}
