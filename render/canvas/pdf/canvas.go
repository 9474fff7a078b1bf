package pdf

import (
	"bytes"
	"crypto/sha256"
	"errors"
	"fmt"
	"math"
	"slices"

	"bladecard/render/canvas"

	"github.com/go-pdf/fpdf"
)

// pdfCanvas draws on the current page of a document. It tells the library of font, colors, width
// and dash only when they change; the library tells each new page of them. A document starts in
// black, as the zero colors say.
type pdfCanvas struct {
	doc    *fpdf.Fpdf
	font   typeface
	loaded map[typeface]bool // of any size
	fill   canvas.Color
	pen    canvas.Pen
	err    error // of the first text that cannot be printed
}

// points turns mm into points.
func points(mm float64) float64 { return hundredths(mm / canvas.MMPerPT) }

// hundredths rounds to the two decimals that the library writes; a hundredth of a point is 3.5
// micrometers. What lies between two is rounded up, a hair below as well: processors differ in the
// last digit of a product and a sum, and the paper must not.
func hundredths(v float64) float64 { return math.Floor(v*100+0.5+1e-6) / 100 }

// page starts a page and draws it.
func (c *pdfCanvas) page(p Page) error {
	w, h := points(p.W), points(p.H)
	c.doc.AddPageFormat("P", fpdf.SizeType{Wd: w, Ht: h})
	if p.Turned {
		c.doc.TransformBegin()
		c.doc.TransformRotate(180, w/2, h/2)
	}
	p.Draw(c)
	if p.Turned {
		c.doc.TransformEnd()
	}
	return errors.Join(c.err, c.doc.Error())
}

func (c *pdfCanvas) Draw(p canvas.Path, fill *canvas.Color, pen canvas.Pen) {
	style := ""
	if fill != nil {
		c.setFill(*fill)
		style += "F"
	}
	if pen.WidthMM > 0 {
		c.setPen(pen)
		style += "D"
	}
	if len(p.Pieces) == 0 || style == "" {
		return
	}
	for _, q := range p.Pieces {
		x, y := points(q.P.X), points(q.P.Y)
		switch q.Op {
		case 'M':
			c.doc.MoveTo(x, y)
		case 'L':
			c.doc.LineTo(x, y)
		case 'C':
			c.doc.CurveBezierCubicTo(points(q.A.X), points(q.A.Y), points(q.B.X), points(q.B.Y), x, y)
		case 'Z':
			c.doc.ClosePath()
		}
	}
	c.doc.DrawPath(style)
}

func (c *pdfCanvas) Text(x, y float64, s string, f canvas.Font, col canvas.Color, angleDeg float64) {
	s, err := canvas.Clean(s)
	if err != nil && c.err == nil {
		c.err = err
	}
	if err != nil || s == "" {
		return
	}
	c.setFont(s, f)
	c.setFill(col)
	x, y = points(x), points(y)
	if angleDeg == 0 {
		c.doc.Text(x, y, s)
		return
	}
	c.doc.TransformBegin()
	c.doc.TransformRotate(angleDeg, x, y)
	c.doc.Text(x, y, s)
	c.doc.TransformEnd()
}

func (c *pdfCanvas) TextWidth(s string, f canvas.Font) float64 { return canvas.Width(s, f) }

// Picture draws a picture; one that comes again is held once. The library orders different pictures by their width
// alone and those of one width by chance: a document has one, the logo.
func (c *pdfCanvas) Picture(x, y, w, h float64, p *canvas.Picture) {
	opt := fpdf.ImageOptions{ImageType: p.Format}
	name := fmt.Sprintf("%x", sha256.Sum256(p.Data))
	if c.doc.GetImageInfo(name) == nil {
		c.doc.RegisterImageOptionsReader(name, opt, bytes.NewReader(p.Data))
	}
	c.doc.ImageOptions(name, points(x), points(y), points(w), points(h), false, opt, 0, "")
}

// setFill sets the color of fills and of texts. A page has one for both, and the library wraps
// every text whose color differs from that of fills.
func (c *pdfCanvas) setFill(col canvas.Color) {
	if c.fill == col {
		return
	}
	c.doc.SetFillColor(int(col.R), int(col.G), int(col.B))
	c.doc.SetTextColor(int(col.R), int(col.G), int(col.B))
	c.fill = col
}

func (c *pdfCanvas) setPen(p canvas.Pen) {
	if c.pen.Color != p.Color {
		c.doc.SetDrawColor(int(p.Color.R), int(p.Color.G), int(p.Color.B))
	}
	if c.pen.WidthMM != p.WidthMM {
		c.doc.SetLineWidth(points(p.WidthMM))
	}
	if !slices.Equal(c.pen.DashMM, p.DashMM) {
		dash := make([]float64, len(p.DashMM))
		for i, mm := range p.DashMM {
			dash[i] = points(mm)
		}
		c.doc.SetDashPattern(dash, 0)
	}
	c.pen = p
}
