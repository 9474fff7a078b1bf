package figure

import (
	"fmt"
	"io"
	"math"

	"github.com/golang/freetype/truetype"
	"github.com/wcharczuk/go-chart/v2"
	"github.com/wcharczuk/go-chart/v2/drawing"

	"bladecard/render/canvas"
)

// dpi is the grid that go-chart draws on: its coordinates are whole numbers, its margins and
// ticks fixed numbers of them. At 288 the margins are 0.88 mm and the ticks 0.44 mm long.
const dpi = 288

// pxPerMM turns millimetres into go-chart's units. Widths, dashes and radii are in them too.
const pxPerMM = dpi / 25.4

// unitsUp and unitsDown are a length in go-chart's units, rounded up or down. A hair's breadth from a
// whole number is that number: processors differ in the last digit of a product and a sum, and one
// unit can be seen.
func unitsUp(mm, perMM float64) int   { return int(math.Ceil(mm*perMM - hairUnits)) }
func unitsDown(mm, perMM float64) int { return int(math.Floor(mm*perMM + hairUnits)) }

const hairUnits = 1e-6

// Fonts are only names to a renderer of our own; with them set go-chart never parses its own.
// tokenBelow is the regular face hung below an axis: it measures taller, which keeps the first
// label of the x axis clear of the lowest label of the y axis.
var (
	tokenRegular = new(truetype.Font)
	tokenBold    = new(truetype.Font)
	tokenBelow   = new(truetype.Font)
)

// belowEM is where the baseline of tokenBelow hangs below the axis, in em, all of go-chart's
// own distance included.
const belowEM = 1.6

// belowMM is the height that tokenBelow measures at a type size of em millimetres.
func belowMM(em float64) float64 { return math.Max(capEM*em, belowEM*em-axisGapMM) }

// renderer is a chart.Renderer that draws on a canvas. The path is buffered and written only
// at Stroke, Fill or FillStroke.
type renderer struct {
	c        canvas.Canvas
	x, y     float64 // of go-chart's origin, mm
	dpi      float64
	path     canvas.Path
	at       canvas.Point // end of the path
	open     bool
	stroke   drawing.Color
	fill     drawing.Color
	width    float64 // px
	dash     []float64
	font     *truetype.Font
	color    drawing.Color
	size     float64 // pt
	rotation float64 // radians, clockwise
	err      error
}

var _ chart.Renderer = (*renderer)(nil)

func newRenderer(c canvas.Canvas, x, y float64) *renderer {
	r := &renderer{c: c, x: x, y: y, dpi: dpi}
	r.ResetStyle()
	return r
}

func (r *renderer) mm(px float64) float64 { return px * 25.4 / r.dpi }

func (r *renderer) point(x, y float64) canvas.Point {
	return canvas.Point{X: r.x + r.mm(x), Y: r.y + r.mm(y)}
}

// ResetStyle forgets the style; the path stays.
func (r *renderer) ResetStyle() {
	r.stroke, r.fill, r.color = drawing.Color{}, drawing.Color{}, drawing.Color{}
	r.width, r.dash, r.font, r.size, r.rotation = 0, nil, nil, 0, 0
}

func (r *renderer) GetDPI() float64 { return r.dpi }

func (r *renderer) SetDPI(v float64) {
	if !(v > 0 && v <= 1e6) {
		r.fail(fmt.Errorf("chart: a resolution of %v dpi; accepted is over 0 to 1000000", v))
		return
	}
	r.dpi = v
}

func (r *renderer) SetClassName(string)                { /* names are for style sheets */ }
func (r *renderer) SetStrokeColor(c drawing.Color)     { r.stroke = c }
func (r *renderer) SetFillColor(c drawing.Color)       { r.fill = c }
func (r *renderer) SetStrokeWidth(w float64)           { r.width = w }
func (r *renderer) SetStrokeDashArray(dashs []float64) { r.dash = dashs }

func (r *renderer) MoveTo(x, y int) { r.moveTo(r.point(float64(x), float64(y))) }
func (r *renderer) LineTo(x, y int) { r.lineTo(r.point(float64(x), float64(y))) }

func (r *renderer) moveTo(p canvas.Point) {
	r.path.Move(p.X, p.Y)
	r.at, r.open = p, true
}

// lineTo starts the path when there is none, as go-chart wants it.
func (r *renderer) lineTo(p canvas.Point) {
	if !r.open {
		r.moveTo(p)
		return
	}
	r.path.Line(p.X, p.Y)
	r.at = p
}

// QuadCurveTo is written as the cubic curve that is the same.
func (r *renderer) QuadCurveTo(cx, cy, x, y int) {
	q, p := r.point(float64(cx), float64(cy)), r.point(float64(x), float64(y))
	if !r.open {
		r.moveTo(q)
	}
	r.path.Curve(r.at.X+(q.X-r.at.X)*2/3, r.at.Y+(q.Y-r.at.Y)*2/3,
		p.X+(q.X-p.X)*2/3, p.Y+(q.Y-p.Y)*2/3, p.X, p.Y)
	r.at = p
}

// ArcTo goes from the angle start over delta, clockwise on paper, radians.
func (r *renderer) ArcTo(cx, cy int, rx, ry, start, delta float64) {
	if !finite(rx, ry, start, delta) || math.Abs(delta) > 4*math.Pi {
		r.fail(fmt.Errorf("chart: an arc of %v by %v over %v rad from %v is none", rx, ry, delta, start))
		return
	}
	m := r.point(float64(cx), float64(cy))
	a, b := r.mm(rx), r.mm(ry)
	r.lineTo(canvas.Point{X: m.X + a*math.Cos(start), Y: m.Y + b*math.Sin(start)})
	arc(&r.path, m, a, b, start, delta)
	r.at = canvas.Point{X: m.X + a*math.Cos(start+delta), Y: m.Y + b*math.Sin(start+delta)}
}

func (r *renderer) Close() {
	if r.open {
		r.path.Close()
	}
}

func (r *renderer) Stroke()     { r.flush(false, true) }
func (r *renderer) Fill()       { r.flush(true, false) }
func (r *renderer) FillStroke() { r.flush(true, true) }

// flush writes the path and forgets it. What is wholly transparent is not drawn.
func (r *renderer) flush(fill, stroke bool) {
	p := r.path
	r.path, r.open = canvas.Path{}, false
	var f *canvas.Color
	var pen canvas.Pen
	if fill && r.fill.A > 0 {
		c := opaque(r.fill)
		f = &c
	}
	if stroke && r.stroke.A > 0 && r.width > 0 {
		pen = canvas.Pen{Color: opaque(r.stroke), WidthMM: r.mm(r.width)}
		for _, d := range r.dash {
			pen.DashMM = append(pen.DashMM, r.mm(d))
		}
	}
	if len(p.Pieces) == 0 || f == nil && pen.WidthMM == 0 {
		return
	}
	for _, q := range p.Pieces {
		if !finite(q.P.X, q.P.Y, q.A.X, q.A.Y, q.B.X, q.B.Y) {
			r.fail(fmt.Errorf("chart: a path through %v, %v", q.P.X, q.P.Y))
			return
		}
	}
	r.c.Draw(p, f, pen)
}

// Circle draws a whole circle at once, with fill and stroke.
func (r *renderer) Circle(radius float64, x, y int) {
	m, a := r.point(float64(x), float64(y)), r.mm(radius)
	r.moveTo(canvas.Point{X: m.X + a, Y: m.Y})
	arc(&r.path, m, a, a, 0, 2*math.Pi)
	r.Close()
	r.FillStroke()
}

func (r *renderer) SetFont(f *truetype.Font) {
	switch f {
	case nil, tokenRegular, tokenBold, tokenBelow:
		r.font = f
	default:
		r.fail(fmt.Errorf("chart: a font that is not the document's"))
	}
}

func (r *renderer) SetFontColor(c drawing.Color) { r.color = c }
func (r *renderer) SetFontSize(pt float64)       { r.size = pt }

func (r *renderer) canvasFont() canvas.Font {
	return canvas.Font{Face: canvas.Face(r.font == tokenBold), SizePT: r.size}
}

// Text writes with the left end of the baseline at x, y.
func (r *renderer) Text(s string, x, y int) {
	if s == "" || r.color.A == 0 {
		return
	}
	p := r.point(float64(x), float64(y))
	r.c.Text(p.X, p.Y, s, r.canvasFont(), opaque(r.color), -r.rotation*180/math.Pi)
}

// MeasureText measures with the document's font, width rounded up; the height is that of
// figures, so that go-chart sets labels in the middle of their tick.
func (r *renderer) MeasureText(s string) chart.Box {
	f := r.canvasFont()
	h := capEM * em(f)
	if r.font == tokenBelow {
		h = belowMM(em(f))
	}
	perMM := r.dpi / 25.4
	b := chart.Box{IsSet: true, Bottom: unitsUp(h, perMM)}
	if s != "" {
		b.Right = unitsUp(r.c.TextWidth(s, f), perMM)
	}
	if r.rotation == 0 {
		return b
	}
	return b.Corners().Rotate(r.rotation * 180 / math.Pi).Box()
}

func (r *renderer) SetTextRotation(radians float64) { r.rotation = radians }
func (r *renderer) ClearTextRotation()              { r.rotation = 0 }

// Save tells what went wrong; the drawing is on the canvas already.
func (r *renderer) Save(io.Writer) error { return r.err }

func (r *renderer) fail(err error) {
	if r.err == nil {
		r.err = err
	}
}

// opaque lays the colour on white paper: lasers print no transparency.
func opaque(c drawing.Color) canvas.Color {
	mix := func(v uint8) uint8 {
		return uint8((int(v)*int(c.A) + 255*(255-int(c.A)) + 127) / 255)
	}
	return canvas.Color{R: mix(c.R), G: mix(c.G), B: mix(c.B)}
}

// arc adds an elliptic arc about m as cubic curves of at most a right angle; the path must
// already stand at its start. Angles in radians, clockwise on paper from the right.
func arc(p *canvas.Path, m canvas.Point, a, b, start, delta float64) {
	n := int(math.Ceil(math.Abs(delta)/(math.Pi/2) - 1e-9))
	if n < 1 {
		return
	}
	d := delta / float64(n)
	k := 4.0 / 3 * math.Tan(d/4)
	for i := range n {
		s0, c0 := math.Sincos(start + float64(i)*d)
		s1, c1 := math.Sincos(start + float64(i+1)*d)
		p.Curve(m.X+a*(c0-k*s0), m.Y+b*(s0+k*c0), m.X+a*(c1+k*s1), m.Y+b*(s1-k*c1), m.X+a*c1, m.Y+b*s1)
	}
}
