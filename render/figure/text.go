package figure

import (
	"math"

	"bladecard/render/canvas"
)

// SmallestPT is the smallest type on a drawing when none is stated, and the least accepted.
const SmallestPT = 7.5

// lineEM is the pitch of text lines, in em: accents on capitals clear the line above.
const lineEM = canvas.Ascent + canvas.Descent

// capEM is the height of capitals and figures, in em (from memory: 0.729 for the DejaVu faces).
const capEM = 0.73

// typeSize is the type size to use for a stated one.
func typeSize(pt float64) float64 {
	if !(pt >= SmallestPT && pt <= 200) {
		return SmallestPT
	}
	return pt
}

// em is the type size of f in mm.
func em(f canvas.Font) float64 { return f.SizePT * canvas.MMPerPT }

// block is some lines of one text, set as one.
type block struct {
	lines []string
	font  canvas.Font
	w, h  float64 // mm
}

// newBlock breaks s into lines no wider than max mm. Of more than rows of them (0: any number) the last that is
// kept ends with an ellipsis.
func newBlock(c canvas.Canvas, s string, f canvas.Font, max float64, rows int) block {
	b := block{lines: canvas.Wrap(s, f, max), font: f}
	if rows > 0 && len(b.lines) > rows {
		b.lines = canvas.CutRows(b.lines, rows, f, max)
	}
	for _, l := range b.lines {
		b.w = math.Max(b.w, c.TextWidth(l, f))
	}
	b.h = float64(len(b.lines)) * lineEM * em(f)
	return b
}

// draw sets the block with its top left corner at x, y. align is 0 left, 0.5 center, 1 right,
// within the width w.
func (b block) draw(c canvas.Canvas, x, y, w, align float64) {
	for i, l := range b.lines {
		lw := c.TextWidth(l, b.font)
		base := y + (float64(i)*lineEM+canvas.Ascent)*em(b.font)
		c.Text(x+(w-lw)*align, base, l, b.font, canvas.Black, 0)
	}
}
