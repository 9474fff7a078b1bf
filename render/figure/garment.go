package figure

import (
	"fmt"
	"math"
	"slices"

	"bladecard/render/canvas"
)

// Garment shows where a print stands on the outline of a garment: the print to scale and dashed,
// its distance from the collar seam or the top edge (on a sleeve from the hem), and from the middle where
// it stands aside, as dimension arrows. Lengths are mm on the garment; the outline is that of a
// middling size. A label that finds no free place is left out: the words beside the drawing say
// it again.
type Garment struct {
	Outline     string  // a key of outlines; any other, and one without sleeves for a print on a sleeve: tee
	Back        bool    // seen from behind
	Sleeve      bool    // on the sleeve of the side that Left tells; DownMM then counts from its hem up
	WidthMM     float64 // of the print
	HeightMM    float64
	DownMM      float64 // from the collar seam, or the top edge, to the top of the print
	AcrossMM    float64 // from the middle to the middle of the print; 0: in the middle
	Left        bool    // AcrossMM counts to the wearer's left
	DownLabel   string
	AcrossLabel string
	SizePT      float64 // of the labels; 0: SmallestPT
}

// The pens of the drawing, in mm.
const (
	outlineMM   = 0.3
	dimensionMM = 0.2
	headMM      = 1.5 // of an arrow
)

// garmentDrawing is a garment on its way to the canvas.
type garmentDrawing struct {
	Garment
	outline
	c      canvas.Canvas
	r      Rect
	at     func(x, y float64) canvas.Point // from the garment to the paper
	labels []Rect                          // that stand already
}

// Draw draws the garment inside r.
func (g Garment) Draw(c canvas.Canvas, r Rect) error {
	if !(g.WidthMM > 0 && g.HeightMM > 0 && g.DownMM >= 0 && g.AcrossMM >= 0) || !(g.WidthMM < 5000 && g.HeightMM < 5000 && g.DownMM < 5000 && g.AcrossMM < 5000) {
		return fmt.Errorf("garment: a print of %g x %g mm, %g mm down, %g mm across: %w", g.WidthMM, g.HeightMM, g.DownMM, g.AcrossMM, ErrNoData)
	}
	g.SizePT = typeSize(g.SizePT)
	w, h := r.W-2*outlineMM, r.H-2*outlineMM
	if !(w > 20 && h > 20) {
		return fmt.Errorf("garment: %w in %g x %g mm; 20 x 20 mm are needed", ErrNoRoom, r.W, r.H)
	}
	o := g.shape()
	scale := min(w/(2*o.halfW), h/o.high)
	left, top := r.X+(r.W-2*o.halfW*scale)/2, r.Y+(r.H-o.high*scale)/2
	d := &garmentDrawing{Garment: g, outline: o, c: c, r: r, at: func(x, y float64) canvas.Point {
		return canvas.Point{X: left + (o.halfW+x)*scale, Y: top + y*scale}
	}}
	d.drawOutline()
	if g.Sleeve {
		d.onSleeve()
	} else {
		d.onBody()
	}
	return nil
}

// onBody draws a print on the front or the back. What reaches over the garment is cut at its
// edges; the labels tell the rest.
func (d *garmentDrawing) onBody() {
	x := d.AcrossMM // seen from the front, the wearer's left is on the right
	if d.Left == d.Back {
		x = -x
	}
	x = clamp(x, 5-d.halfW, d.halfW-5)
	x1, x2 := max(-d.halfW, x-d.WidthMM/2), min(d.halfW, x+d.WidthMM/2)
	y1 := min(d.seamMM()+d.DownMM, d.high-5)
	y2 := min(y1+d.HeightMM, d.high)
	low, high := d.at(x1, y1), d.at(x2, y2)
	d.print(low, canvas.Point{X: high.X, Y: low.Y}, high, canvas.Point{X: low.X, Y: high.Y})

	seam, hem := d.at(0, d.seamMM()), d.at(0, d.high)
	d.c.Draw(polyline(seam, hem), nil, ink(0.15, 2, 0.6, 0.4, 0.6))
	px := max(d.r.X+1, min(d.r.Right()-1, (low.X+high.X)/2))
	if math.Abs(px-seam.X) > 0.01 { // the height of the seam, carried over to the arrow
		d.c.Draw(polyline(seam, canvas.Point{X: px, Y: seam.Y}), nil, hairline)
	}
	d.dimension(canvas.Point{X: px, Y: seam.Y}, canvas.Point{X: px, Y: low.Y})
	d.label(d.DownLabel, (seam.Y+low.Y)/2, px+1.2, px-1.2-d.width(d.DownLabel))
	if d.AcrossMM > 0 {
		em := d.SizePT * canvas.MMPerPT
		y := min(high.Y+2, d.r.Bottom()-1.6*em)
		d.c.Draw(segment(px, high.Y, px, y+0.7), nil, hairline)
		d.dimension(canvas.Point{X: seam.X, Y: y}, canvas.Point{X: px, Y: y})
		d.label(d.AcrossLabel, y+0.9*em, (seam.X+px-d.width(d.AcrossLabel))/2)
	}
}

// print draws the print itself.
func (d *garmentDrawing) print(corners ...canvas.Point) {
	gray := canvas.Gray(225)
	d.c.Draw(polygon(corners...), &gray, ink(0.4, 1.4, 0.7))
}

var hairline = ink(dimensionMM)

// dimension is a line with an arrow head at both ends, smaller where it is short.
func (d *garmentDrawing) dimension(a, b canvas.Point) {
	arrow(d.c, a, b, dimensionMM, min(headMM, math.Hypot(b.X-a.X, b.Y-a.Y)/2), true)
}

func (d *garmentDrawing) width(s string) float64 { return d.c.TextWidth(s, d.font()) }

func (d *garmentDrawing) font() canvas.Font { return bold(canvas.Font{SizePT: d.SizePT}) }

// label writes s on a white plate, its middle at the height y and its left end at the first of xs
// that is free; moved inside the drawing.
func (d *garmentDrawing) label(s string, y float64, xs ...float64) {
	const plateMM = 0.3 // of white round the text
	w, em := d.width(s), d.SizePT*canvas.MMPerPT
	if s == "" || w+2*plateMM > d.r.W {
		return
	}
	up, down := em*canvas.Ascent, em*canvas.Descent
	base := max(d.r.Y+up, min(d.r.Bottom()-down, y+0.36*em))
	for _, x := range xs {
		x = max(d.r.X+plateMM, min(d.r.Right()-plateMM-w, x))
		box := Rect{X: x - plateMM, Y: base - up, W: w + 2*plateMM, H: up + down}
		if d.taken(box) {
			continue
		}
		d.labels = append(d.labels, box)
		d.c.Draw(rectPath(box.X, base-0.8*em, box.W, em), &canvas.White, canvas.Pen{})
		d.c.Text(x, base, s, d.font(), canvas.Black, 0)
		return
	}
}

func (d *garmentDrawing) taken(b Rect) bool {
	return slices.ContainsFunc(d.labels, func(o Rect) bool {
		return b.X < o.Right() && o.X < b.Right() && b.Y < o.Bottom() && o.Y < b.Bottom()
	})
}
