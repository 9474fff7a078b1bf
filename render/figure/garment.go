package figure

import (
	"fmt"

	"bladecard/render/canvas"
)

// Garment shows where a print stands on the outline of a garment: the print to scale, its
// distance from the collar seam, and from the middle where it stands aside. Lengths are mm on
// the garment; the outline is that of a middling tee.
type Garment struct {
	Back      bool    // seen from behind
	WidthMM   float64 // of the print
	HeightMM  float64
	DownMM    float64 // from the collar seam to the top of the print
	AcrossMM  float64 // from the middle to the middle of the print; 0: in the middle
	Left      bool    // AcrossMM counts to the wearer's left
	DownLabel string
	SizePT    float64 // of the label; 0: SmallestPT
}

// The outline, mm on the garment, from its top left corner (from memory: a middling tee).
const (
	garmentW   = 820.0 // from sleeve to sleeve
	garmentH   = 720.0
	bodyLeft   = 150.0
	bodyRight  = garmentW - bodyLeft
	neckHalf   = 90.0
	frontDropM = 100.0 // of the collar seam below the shoulder, in front
	backDropM  = 25.0
)

// Draw draws the garment inside r.
func (g Garment) Draw(c canvas.Canvas, r Rect) error {
	if !(g.WidthMM > 0 && g.HeightMM > 0 && g.DownMM >= 0 && g.AcrossMM >= 0) || !(g.WidthMM < 5000 && g.HeightMM < 5000 && g.DownMM < 5000 && g.AcrossMM < 5000) {
		return fmt.Errorf("garment: a print of %g x %g mm, %g mm down, %g mm across: %w", g.WidthMM, g.HeightMM, g.DownMM, g.AcrossMM, ErrNoData)
	}
	size := g.SizePT
	if !(size >= SmallestPT) {
		size = SmallestPT
	}
	const pen = 0.3
	w, h := r.W-2*pen, r.H-2*pen
	if !(w > 20 && h > 20) {
		return fmt.Errorf("garment: %w in %g x %g mm; 20 x 20 mm are needed", ErrNoRoom, r.W, r.H)
	}
	scale := min(w/garmentW, h/garmentH)
	left, top := r.X+(r.W-garmentW*scale)/2, r.Y+(r.H-garmentH*scale)/2
	at := func(x, y float64) (float64, float64) { return left + x*scale, top + y*scale }
	drop := frontDropM
	if g.Back {
		drop = backDropM
	}
	const middle = garmentW / 2
	var p canvas.Path
	move := func(x, y float64) { px, py := at(x, y); p.Move(px, py) }
	line := func(x, y float64) { px, py := at(x, y); p.Line(px, py) }
	move(middle-neckHalf, 0)
	line(0, 130)
	line(60, 290)
	line(bodyLeft, 250)
	line(bodyLeft, garmentH)
	line(bodyRight, garmentH)
	line(bodyRight, 250)
	line(garmentW-60, 290)
	line(garmentW, 130)
	line(middle+neckHalf, 0)
	ax, ay := at(middle+neckHalf*0.6, drop*1.3)
	bx, by := at(middle-neckHalf*0.6, drop*1.3)
	ex, ey := at(middle-neckHalf, 0)
	p.Curve(ax, ay, bx, by, ex, ey)
	p.Close()
	white := canvas.White
	c.Draw(p, &white, canvas.Pen{Color: canvas.Black, WidthMM: pen})

	// the print; what reaches over the garment is cut at its edges, the label tells the rest
	x := middle
	if g.AcrossMM > 0 {
		// seen from the front, the wearer's left is on the right
		if g.Left != g.Back {
			x += g.AcrossMM
		} else {
			x -= g.AcrossMM
		}
	}
	seam := drop
	x1, x2 := max(0, x-g.WidthMM/2), min(garmentW, x+g.WidthMM/2)
	y1 := min(seam+g.DownMM, garmentH-5)
	y2 := min(y1+g.HeightMM, garmentH)
	var box canvas.Path
	bx1, by1 := at(x1, y1)
	bx2, by2 := at(x2, y2)
	box.Move(bx1, by1)
	box.Line(bx2, by1)
	box.Line(bx2, by2)
	box.Line(bx1, by2)
	box.Close()
	grey := canvas.Gray(215)
	c.Draw(box, &grey, canvas.Pen{Color: canvas.Black, WidthMM: 0.4})

	// the middle, dashed, and the distance from the seam
	var axis canvas.Path
	mx, my := at(middle, seam)
	_, foot := at(middle, garmentH)
	axis.Move(mx, my)
	axis.Line(mx, foot)
	c.Draw(axis, nil, canvas.Pen{Color: canvas.Black, WidthMM: 0.15, DashMM: []float64{1, 0.8}})
	var arrow canvas.Path
	px, _ := at((x1+x2)/2, 0)
	px = max(r.X+1, min(r.X+r.W-1, px))
	arrow.Move(px, my)
	arrow.Line(px, by1)
	if by1-my > 1.6 { // room for a head
		arrow.Move(px-0.7, by1-1.4)
		arrow.Line(px, by1)
		arrow.Line(px+0.7, by1-1.4)
	}
	c.Draw(arrow, nil, canvas.Pen{Color: canvas.Black, WidthMM: 0.3})
	if g.DownLabel != "" {
		f := canvas.Font{Face: canvas.Bold, SizePT: size}
		width := c.TextWidth(g.DownLabel, f)
		const plateMM = 0.3 // of white round the label
		if width+2*plateMM > r.W {
			return fmt.Errorf("garment: %w for the label %q", ErrNoRoom, g.DownLabel)
		}
		tx := px + 1.2
		if tx+width+plateMM > r.X+r.W {
			tx = px - 1.2 - width
		}
		tx = max(tx, r.X+plateMM)
		drawn := size * canvas.MMPerPT
		var plate canvas.Path
		base := max((my+by1)/2+drawn*0.35, r.Y+drawn)
		plate.Move(tx-plateMM, base-drawn*0.85)
		plate.Line(tx+width+plateMM, base-drawn*0.85)
		plate.Line(tx+width+plateMM, base+drawn*0.22)
		plate.Line(tx-plateMM, base+drawn*0.22)
		plate.Close()
		c.Draw(plate, &white, canvas.Pen{})
		c.Text(tx, base, g.DownLabel, f, canvas.Black, 0)
	}
	return nil
}
