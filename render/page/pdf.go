package page

import (
	"bladecard/render/canvas"

	"github.com/go-pdf/fpdf"
)

const family = "text"

// pdfCanvas draws on the current page of a document. What it is handed has been checked. It
// speaks to the library only when font, colour, width or dash change.
type pdfCanvas struct {
	pdf   *fpdf.Fpdf
	state penState
}

// penState is what the page was last told; the zero state knows nothing.
type penState struct {
	font             canvas.Font
	text, fill, draw canvas.Color
	hasText          bool
	hasFill, hasDraw bool
	width            float64
	dash             []float64
	hasDash          bool
}

func (c *pdfCanvas) Draw(p canvas.Path, fill *canvas.Color, pen canvas.Pen) {
	stroke := pen.WidthMM > 0
	if len(p.Pieces) == 0 || (fill == nil && !stroke) {
		return
	}
	style := ""
	if fill != nil {
		c.setFill(*fill)
		style = "F"
	}
	if stroke {
		c.setPen(pen)
		style += "D"
	}
	for _, q := range p.Pieces {
		switch q.Op {
		case 'M':
			c.pdf.MoveTo(q.P.X, q.P.Y)
		case 'L':
			c.pdf.LineTo(q.P.X, q.P.Y)
		case 'C':
			c.pdf.CurveBezierCubicTo(q.A.X, q.A.Y, q.B.X, q.B.Y, q.P.X, q.P.Y)
		case 'Z':
			c.pdf.ClosePath()
		}
	}
	c.pdf.DrawPath(style)
}

func (c *pdfCanvas) Text(x, y float64, s string, f canvas.Font, col canvas.Color, angleDeg float64) {
	s, err := Clean(s)
	if err != nil {
		c.pdf.SetError(err)
		return
	}
	if s == "" {
		return
	}
	// The font is set outside the turn: what is set inside is forgotten at its end.
	if c.state.font != f {
		style := ""
		if f.Face == canvas.Bold {
			style = "B"
		}
		c.pdf.SetFont(family, style, f.SizePT)
		c.state.font = f
	}
	if !c.state.hasText || c.state.text != col {
		c.pdf.SetTextColor(int(col.R), int(col.G), int(col.B))
		c.state.text, c.state.hasText = col, true
	}
	if angleDeg == 0 {
		c.pdf.Text(x, y, s)
		return
	}
	c.pdf.TransformBegin()
	c.pdf.TransformRotate(angleDeg, x, y)
	c.pdf.Text(x, y, s)
	c.pdf.TransformEnd()
}

func (c *pdfCanvas) TextWidth(s string, f canvas.Font) float64 { return Width(s, f) }

func (c *pdfCanvas) setFill(col canvas.Color) {
	if !c.state.hasFill || c.state.fill != col {
		c.pdf.SetFillColor(int(col.R), int(col.G), int(col.B))
		c.state.fill, c.state.hasFill = col, true
	}
}

func (c *pdfCanvas) setPen(p canvas.Pen) {
	if !c.state.hasDraw || c.state.draw != p.Color {
		c.pdf.SetDrawColor(int(p.Color.R), int(p.Color.G), int(p.Color.B))
		c.state.draw, c.state.hasDraw = p.Color, true
	}
	if c.state.width != p.WidthMM {
		c.pdf.SetLineWidth(p.WidthMM)
		c.state.width = p.WidthMM
	}
	if !c.state.hasDash || !sameDash(c.state.dash, p.DashMM) {
		c.pdf.SetDashPattern(p.DashMM, 0)
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
