package figure

import (
	"math"

	"bladecard/render/canvas"
)

// The wearer's left sleeve of the outline, which lies on the right as seen from the front: the
// ends of its hem and the middle of its seam at the shoulder, mm on the garment.
var (
	sleeveHem      = [2]canvas.Point{{X: garmentW, Y: 130}, {X: garmentW - 60, Y: 290}}
	sleeveShoulder = canvas.Point{X: 585, Y: 125}
)

// Where the dimension of a sleeve lies, mm on the garment: beyond the under side of the sleeve,
// its arrows from outside, since the distance is too short to hold them.
const (
	sleeveAsideMM = 35.0
	sleeveArrowMM = 75.0
)

// onSleeve draws a print across a sleeve, its lower edge DownMM above the hem, and the distance
// between them.
func (d *garmentDrawing) onSleeve() {
	mid := canvas.Point{X: (sleeveHem[0].X + sleeveHem[1].X) / 2, Y: (sleeveHem[0].Y + sleeveHem[1].Y) / 2}
	dx, dy := sleeveShoulder.X-mid.X, sleeveShoulder.Y-mid.Y
	long := math.Hypot(dx, dy)
	hemX, hemY := sleeveHem[1].X-sleeveHem[0].X, sleeveHem[1].Y-sleeveHem[0].Y
	hem := math.Hypot(hemX, hemY)
	// place is up the sleeve from the middle of its hem, and aside toward its under side
	place := func(up, aside float64) canvas.Point {
		x, y := mid.X+dx/long*up+hemX/hem*aside, mid.Y+dy/long*up+hemY/hem*aside
		if !d.Left {
			x = garmentW - x
		}
		return d.at(x, y)
	}
	half := min(d.WidthMM, hem) / 2 // what reaches round the sleeve is cut at its edges
	foot := min(d.DownMM, long-5)
	head := min(foot+d.HeightMM, long)
	d.print(place(foot, -half), place(head, -half), place(head, half), place(foot, half))

	side := hem/2 + sleeveAsideMM
	d.c.Draw(polyline(place(0, hem/2), place(0, side+10)), nil, hairline)
	d.c.Draw(polyline(place(foot, half), place(foot, side+10)), nil, hairline)
	for _, a := range [][2]canvas.Point{{place(0, side), place(-sleeveArrowMM, side)}, {place(foot, side), place(foot+sleeveArrowMM, side)}} {
		arrow(d.c, a[1], a[0], dimensionMM, headMM, false)
	}
	if foot > 0 {
		d.c.Draw(polyline(place(0, side), place(foot, side)), nil, hairline)
	}
	below := place(0, side+75)
	x := below.X - 0.5
	if !d.Left {
		x = below.X + 0.5 - d.width(d.DownLabel)
	}
	d.label(d.DownLabel, below.Y, x)
}
