package figure

import (
	"errors"
	"io"
	"math"

	"github.com/golang/freetype/truetype"
	"github.com/wcharczuk/go-chart/v2"
	"github.com/wcharczuk/go-chart/v2/drawing"

	"bladecard/render/canvas"
)

// dpi is the grid that go-chart draws on, for its coordinates are whole numbers: so fine that a
// line of many points shows no steps. The margins and the ticks of go-chart are fixed numbers of
// units and nearly vanish; the fonts below make up for the margins, the grid for the ticks.
const dpi = 1440

// pxPerMM turns millimeters into go-chart's units. Widths, dashes and radii are in them too.
const pxPerMM = dpi / 25.4

// axisGapMM is go-chart's distance from an axis to its labels.
const axisGapMM = chart.DefaultXAxisMargin / pxPerMM

// unitsUp and unitsDown are a length in go-chart's units, rounded up or down. A hair's breadth from
// a whole number is that number: processors differ in the last digit of a product and a sum, and
// one unit can be seen.
func unitsUp(mm float64) int   { return int(math.Ceil(mm*pxPerMM - hairUnits)) }
func unitsDown(mm float64) int { return int(math.Floor(mm*pxPerMM + hairUnits)) }

const hairUnits = 1e-6

// Fonts are only names to a renderer of our own; with them set go-chart never parses its own.
// All are the regular face. tokenBelow hangs below an axis: it measures taller, which keeps the
// first label of the x axis clear of the lowest label of the y axis. tokenBeside stands to the
// left of an axis: it measures wider.
var (
	tokenRegular = new(truetype.Font)
	tokenBelow   = new(truetype.Font)
	tokenBeside  = new(truetype.Font)
)

// besideMM is how much wider tokenBeside measures.
const besideMM = 0.5

// belowEM is where the baseline of tokenBelow hangs below the axis, in em, all of go-chart's
// own distance included.
const belowEM = 1.6

// renderer is a chart.Renderer that draws on a canvas. The path is buffered and written only
// at Stroke, Fill or FillStroke. All colors are solid or wholly transparent.
type renderer struct {
	c      canvas.Canvas
	place  Rect // of the chart; go-chart's origin is its corner
	path   canvas.Path
	stroke drawing.Color
	fill   drawing.Color
	width  float64 // px
	dash   []float64
	font   *truetype.Font
	color  drawing.Color
	size   float64 // pt
	err    error
}

var _ chart.Renderer = (*renderer)(nil)

func newRenderer(c canvas.Canvas, place Rect) *renderer { return &renderer{c: c, place: place} }

func (r *renderer) mm(units int) float64 { return float64(units) / pxPerMM }

func (r *renderer) point(x, y int) canvas.Point {
	return canvas.Point{X: r.place.X + r.mm(x), Y: r.place.Y + r.mm(y)}
}

// ResetStyle forgets the style; the path and what went wrong stay.
func (r *renderer) ResetStyle() { *r = renderer{c: r.c, place: r.place, path: r.path, err: r.err} }

func (r *renderer) GetDPI() float64                   { return dpi }
func (r *renderer) SetDPI(float64)                    { /* goChart asks for dpi, and for no other */ }
func (r *renderer) SetClassName(string)               { /* names are for style sheets */ }
func (r *renderer) SetStrokeColor(c drawing.Color)    { r.stroke = c }
func (r *renderer) SetFillColor(c drawing.Color)      { r.fill = c }
func (r *renderer) SetStrokeWidth(w float64)          { r.width = w }
func (r *renderer) SetStrokeDashArray(dash []float64) { r.dash = dash }
func (r *renderer) SetFontColor(c drawing.Color)      { r.color = c }
func (r *renderer) SetFontSize(pt float64)            { r.size = pt }

func (r *renderer) MoveTo(x, y int) {
	p := r.point(x, y)
	r.path.Move(p.X, p.Y)
}

func (r *renderer) LineTo(x, y int) {
	p := r.point(x, y)
	r.path.Line(p.X, p.Y)
}

func (r *renderer) Close()      { r.path.Close() }
func (r *renderer) Stroke()     { r.flush(false, true) }
func (r *renderer) Fill()       { r.flush(true, false) }
func (r *renderer) FillStroke() { r.flush(true, true) }

// flush writes the path and forgets it. What is wholly transparent is not drawn.
func (r *renderer) flush(fill, stroke bool) {
	p := r.path
	r.path = canvas.Path{}
	var f *canvas.Color
	var pen canvas.Pen
	if fill && r.fill.A > 0 {
		c := opaque(r.fill)
		f = &c
	}
	if stroke && r.stroke.A > 0 && r.width > 0 {
		pen = canvas.Pen{Color: opaque(r.stroke), WidthMM: r.width / pxPerMM}
		for _, d := range r.dash {
			pen.DashMM = append(pen.DashMM, d/pxPerMM)
		}
	}
	if len(p.Pieces) > 0 && (f != nil || pen.WidthMM > 0) {
		r.c.Draw(p, f, pen)
	}
}

// Circle draws a dot.
func (r *renderer) Circle(radius float64, x, y int) {
	if r.fill.A > 0 {
		dot(r.c, r.point(x, y), radius/pxPerMM, opaque(r.fill))
	}
}

// What no chart of lines asks for is refused rather than drawn wrong.
func (r *renderer) QuadCurveTo(_, _, _, _ int)         { r.fail(errNotDrawn) }
func (r *renderer) ArcTo(_, _ int, _, _, _, _ float64) { r.fail(errNotDrawn) }
func (r *renderer) SetTextRotation(float64)            { r.fail(errNotDrawn) }
func (r *renderer) ClearTextRotation()                 { /* every text stands level */ }

var errNotDrawn = errors.New("chart: a curve, an arc or a turned text; drawn are straight lines, dots and level texts in the document's font")

func (r *renderer) SetFont(f *truetype.Font) {
	if r.font = f; f != nil && f != tokenRegular && f != tokenBelow && f != tokenBeside {
		r.fail(errNotDrawn)
	}
}

// Text writes with the left end of the baseline at x, y, or beside it where the text would leave
// the chart: go-chart measures the first and the last label before it narrows the plot for them.
func (r *renderer) Text(s string, x, y int) {
	if s != "" && r.color.A > 0 {
		p, f := r.point(x, y), canvas.Font{SizePT: r.size}
		r.c.Text(clamp(p.X, r.place.X, r.place.Right()-r.c.TextWidth(s, f)), p.Y, s, f, opaque(r.color), 0)
	}
}

// MeasureText measures with the document's font, width rounded up; the height is that of
// figures, so that go-chart sets labels in the middle of their tick.
func (r *renderer) MeasureText(s string) chart.Box {
	f := canvas.Font{SizePT: r.size}
	w, h := r.c.TextWidth(s, f), capEM*em(f)
	switch r.font {
	case tokenBelow:
		h = belowEM*em(f) - axisGapMM
	case tokenBeside:
		w += besideMM
	}
	return chart.Box{IsSet: true, Right: unitsUp(w), Bottom: unitsUp(h)}
}

// Save tells what went wrong; the drawing is on the canvas already.
func (r *renderer) Save(io.Writer) error { return r.err }

func (r *renderer) fail(err error) {
	if r.err == nil {
		r.err = err
	}
}

func opaque(c drawing.Color) canvas.Color { return canvas.Color{R: c.R, G: c.G, B: c.B} }
