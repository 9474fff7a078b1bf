package figure

import (
	"cmp"
	"fmt"
	"math"

	"bladecard/render/canvas"
)

// Garment shows where a print stands on the outline of a garment: the print to scale and dashed,
// its distance from the collar seam or the top edge (on a sleeve from the hem), and from the middle where
// it stands aside, as dimension arrows. Their labels stand beside the garment, on the side of the print, so that
// they cover nothing of it. Lengths are mm on the garment; the outline is that of a middling size.
type Garment struct {
	Outline     string  // a key of outlines; any other: tee
	Back        bool    // seen from behind
	Sleeve      bool    // on the sleeve of the side that Left tells; DownMM then counts from its hem up
	WidthMM     float64 // of the print
	HeightMM    float64
	DownMM      float64 // from the collar seam, or the top edge, to the top of the print
	NoDown      bool    // DownMM is not known: the print stands in the middle of what is printed on
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
	leaderMM    = 1.2 // the end of a leader, level with its label
	airMM       = 0.5 // beside a label
)

// garmentDrawing is a garment on its way to the canvas.
type garmentDrawing struct {
	Garment
	outline
	c     canvas.Canvas
	r     Rect
	at    func(x, y float64) canvas.Point // from the garment to the paper
	room  Rect                            // of r, what the labels leave
	below float64                         // where the next label may begin
}

// Draw draws the garment inside r.
func (g Garment) Draw(c canvas.Canvas, r Rect) error {
	if !(g.WidthMM > 0 && g.HeightMM > 0 && g.DownMM >= 0 && g.AcrossMM >= 0) || !(g.WidthMM < 5000 && g.HeightMM < 5000 && g.DownMM < 5000 && g.AcrossMM < 5000) {
		return fmt.Errorf("garment: a print of %g x %g mm, %g mm down, %g mm across: %w", g.WidthMM, g.HeightMM, g.DownMM, g.AcrossMM, ErrNoData)
	}
	g.SizePT = typeSize(g.SizePT)
	o := g.shape()
	if g.Sleeve && o.sleeve == [3]canvas.Point{} {
		return fmt.Errorf("garment: the sleeve of a %s: %w", g.Outline, ErrNoData)
	}
	h := r.H - 2*outlineMM
	if !(r.W-2*outlineMM > 20 && h > 20) {
		return fmt.Errorf("garment: %w in %g x %g mm; 20 x 20 mm are needed", ErrNoRoom, r.W, r.H)
	}
	d := &garmentDrawing{Garment: g, outline: o, c: c, r: r}
	room := r
	if column := d.column(); column < room.W/2 {
		room.W -= column
		if d.aside() < 0 {
			room.X += column
		}
	}
	scale := min((room.W-2*outlineMM)/(2*o.halfW), h/o.high)
	middle, top := room.X+room.W/2, r.Y+(r.H-o.high*scale)/2
	d.room = room
	d.at = func(x, y float64) canvas.Point { return canvas.Point{X: middle + x*scale, Y: top + y*scale} }
	d.drawOutline(&canvas.White)
	if g.Sleeve {
		d.onSleeve()
	} else {
		d.onBody()
	}
	return nil
}

// aside is where a print stands in the drawing: less than 0 left of the middle. Seen from the front, the wearer's left
// is on the right.
func (d *garmentDrawing) aside() float64 {
	x := d.AcrossMM
	if d.Sleeve {
		x = 1
	}
	if d.Left != d.Back || x == 0 {
		return x
	}
	return -x
}

// column is the width that the labels take beside the garment, with the start of their leaders.
func (d *garmentDrawing) column() float64 {
	w := math.Max(d.width(d.DownLabel), d.width(d.AcrossLabel))
	if w == 0 {
		return 0
	}
	return w + leaderMM + 2*airMM
}

// onBody draws a print on the front or the back. What reaches over the garment is seen, up to the end of the drawing.
func (d *garmentDrawing) onBody() {
	x := clamp(d.aside(), 5-d.halfW, d.halfW-5)
	down := d.DownMM
	if d.NoDown {
		down = max(0, (cmp.Or(d.foot, d.high)-d.seamMM()-d.HeightMM)/2)
	}
	y := min(d.seamMM()+down, d.high-5)
	low, high := d.at(x-d.WidthMM/2, y), d.at(x+d.WidthMM/2, y+d.HeightMM)
	low.X, high.X = max(d.room.X+outlineMM, low.X), min(d.room.Right()-outlineMM, high.X)
	high.Y = min(d.room.Bottom()-outlineMM, high.Y)
	d.print(low, canvas.Point{X: high.X, Y: low.Y}, high, canvas.Point{X: low.X, Y: high.Y})

	seam, hem := d.at(0, d.seamMM()), d.at(0, d.high)
	d.c.Draw(polyline(seam, hem), nil, ink(0.15, 2, 0.6, 0.4, 0.6))
	px := d.at(x, y).X
	if math.Abs(px-seam.X) > 0.01 { // the height of the seam, carried over to the arrow
		d.c.Draw(segment(seam.X, seam.Y, px, seam.Y), nil, hairline)
	}
	d.dimension(canvas.Point{X: px, Y: seam.Y}, canvas.Point{X: px, Y: low.Y})
	d.label(d.DownLabel, canvas.Point{X: px, Y: (seam.Y + low.Y) / 2})
	if d.AcrossMM > 0 {
		y := min(high.Y+1.6, d.room.Bottom()-1)
		d.c.Draw(segment(px, high.Y, px, y+0.7), nil, hairline)
		d.dimension(canvas.Point{X: seam.X, Y: y}, canvas.Point{X: px, Y: y})
		d.label(d.AcrossLabel, canvas.Point{X: px, Y: y})
	}
}

// print draws the print itself; the seams and edges below it shine through.
func (d *garmentDrawing) print(corners ...canvas.Point) {
	gray := canvas.Gray(225)
	d.c.Draw(polygon(corners...), &gray, ink(0.4, 1.4, 0.7))
	d.drawOutline(nil)
}

var hairline = ink(dimensionMM)

// dimension is a line with an arrow head at both ends, smaller where it is short.
func (d *garmentDrawing) dimension(a, b canvas.Point) {
	arrow(d.c, a, b, dimensionMM, min(headMM, math.Hypot(b.X-a.X, b.Y-a.Y)/2), true)
}

func (d *garmentDrawing) width(s string) float64 { return d.c.TextWidth(s, d.font()) }

func (d *garmentDrawing) font() canvas.Font { return bold(canvas.Font{SizePT: d.SizePT}) }

// label writes s into the column beside the garment, as high as at or below the label that stands already, and leads
// from there to it.
func (d *garmentDrawing) label(s string, at canvas.Point) {
	w, em := d.width(s), d.SizePT*canvas.MMPerPT
	if s == "" || d.room.W == d.r.W {
		return
	}
	up, down := em*canvas.Ascent, em*canvas.Descent
	base := min(d.r.Bottom()-down, max(d.r.Y+up, at.Y+0.36*em, d.below+up))
	d.below = base + down
	x, end := d.room.Right()+leaderMM+airMM, canvas.Point{Y: base - 0.36*em}
	end.X = x - airMM
	if d.aside() < 0 {
		x = d.room.X - leaderMM - airMM - w
		end.X = x + w + airMM
	}
	d.c.Draw(polyline(at, canvas.Point{X: end.X + math.Copysign(leaderMM, at.X-end.X), Y: end.Y}, end), nil, hairline)
	d.c.Text(x, base, s, d.font(), canvas.Black, 0)
}
