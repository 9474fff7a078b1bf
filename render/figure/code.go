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

// Code is a text as a QR code (ISO/IEC 18004), which a phone reads without a network.
type Code struct{ Text string }

// Draw draws the code with its margin into the largest square at the middle of r. A text that would make modules too
// small to read there is an error. The code is lines, a row of black modules each: a picture would be smaller, but the
// PDF library writes several pictures of one width in an order that changes from run to run.
func (q Code) Draw(c canvas.Canvas, r Rect) error {
	code, err := qr.Encode(q.Text, qr.M, qr.Auto)
	if err != nil {
		return fmt.Errorf("figure: code: %w", err)
	}
	n := code.Bounds().Dx()
	side := min(r.W, r.H)
	module := side / float64(n+2*quietModules)
	if module < leastModuleMM {
		return fmt.Errorf("figure: a code of %d bytes has modules of %.2f mm on %.0f mm; %.1f mm are accepted, of a shorter text or a larger place", len(q.Text), module, side, leastModuleMM)
	}
	left, top := r.X+(r.W-side)/2+quietModules*module, r.Y+(r.H-side)/2+quietModules*module
	black := func(x, y int) bool {
		v, _, _, _ := code.At(x, y).RGBA()
		return v < 0x8000
	}
	var rows canvas.Path
	for y := range n {
		for x := 0; x < n; x++ {
			from := x
			for x < n && black(x, y) {
				x++
			}
			if x > from {
				at := top + (float64(y)+0.5)*module
				rows.Move(left+float64(from)*module, at)
				rows.Line(left+float64(x)*module, at)
			}
		}
	}
	c.Draw(rows, nil, canvas.Pen{Color: canvas.Black, WidthMM: module})
	return nil
}
