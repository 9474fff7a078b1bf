package page

import (
	"bladecard/render/canvas"

	"github.com/go-pdf/fpdf"
)

// document is a PDF being written. The library keeps pages and pictures; what is drawn is written as
// a page's content and handed to it, since its own calls format every number at length, and the
// faces are put in at the end (see embed).
type document struct {
	*fpdf.Fpdf
	used [2]runeSet // by face
	room []byte     // for the content of a page
}

// pdfCanvas draws on the current page of a document. What it is handed has been checked. It
// tells the page of font, colour, width and dash only when they change.
type pdfCanvas struct {
	doc *document
	content
	state penState
}

// penState is what the page was last told; the zero state knows nothing.
type penState struct {
	font             canvas.Font
	fill, draw       canvas.Color
	hasFill, hasDraw bool
	width            float64
	dash             []float64
	hasDash          bool
}

// flush hands the page what has been drawn. Every call of the library on the page needs it first.
func (c *pdfCanvas) flush() {
	if len(c.out) > 0 {
		c.doc.RawWriteStr(string(c.out[:len(c.out)-1])) // the library ends the line
		c.out = c.out[:0]
	}
}

func (c *pdfCanvas) Draw(p canvas.Path, fill *canvas.Color, pen canvas.Pen) {
	c.drawAt(p, fill, pen, 0, 0)
}

// drawAt draws a path moved by dx, dy.
func (c *pdfCanvas) drawAt(p canvas.Path, fill *canvas.Color, pen canvas.Pen, dx, dy float64) {
	stroke := pen.WidthMM > 0
	if len(p.Pieces) == 0 || (fill == nil && !stroke) {
		return
	}
	if fill != nil {
		c.setFill(*fill)
	}
	if stroke {
		c.setPen(pen)
	}
	c.path(p.Pieces, dx, dy)
	switch {
	case fill == nil:
		c.op("S")
	case stroke:
		c.op("B")
	default:
		c.op("f")
	}
}

func (c *pdfCanvas) Text(x, y float64, s string, f canvas.Font, col canvas.Color, angleDeg float64) {
	if s = nfc(s); s == "" {
		return
	}
	if c.state.font != f {
		c.out = append(append(append(c.out, '/'), resource(f.Face)...), ' ')
		c.number(f.SizePT)
		c.op("Tf")
		c.state.font = f
	}
	c.setFill(col)
	used := &c.doc.used[faceIndex(f.Face)]
	for _, r := range s {
		used[r] = true
	}
	c.text(x, y, s, angleDeg)
}

func (c *pdfCanvas) TextWidth(s string, f canvas.Font) float64 { return Width(s, f) }

func (c *pdfCanvas) setFill(col canvas.Color) {
	if !c.state.hasFill || c.state.fill != col {
		c.color(col, "g", "rg")
		c.state.fill, c.state.hasFill = col, true
	}
}

func (c *pdfCanvas) setPen(p canvas.Pen) {
	if !c.state.hasDraw || c.state.draw != p.Color {
		c.color(p.Color, "G", "RG")
		c.state.draw, c.state.hasDraw = p.Color, true
	}
	if c.state.width != p.WidthMM {
		c.length(p.WidthMM)
		c.op("w")
		c.state.width = p.WidthMM
	}
	if !c.state.hasDash || !sameDash(c.state.dash, p.DashMM) {
		c.out = append(c.out, '[')
		for _, mm := range p.DashMM {
			c.length(mm)
		}
		c.op("] 0 d")
		c.state.dash, c.state.hasDash = p.DashMM, true
	}
}

func sameDash(a, b []float64) bool {
	if len(a) != len(b) {
		return false
	}
	for i := range a {
		if a[i] != b[i] {
			return false
		}
	}
	return true
}
