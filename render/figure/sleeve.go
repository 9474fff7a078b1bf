package figure

import (
	"math"

	"bladecard/render/canvas"
)

// Where the dimension of a sleeve lies, as shares of half the garment's width: beyond the under side of the sleeve,
// its arrows from outside, since the distance is too short to hold them.
const (
	sleeveAside = 0.085
	sleeveArrow = 0.18
)

// onSleeve draws a print across a sleeve, its lower edge DownMM above the hem, and the distance
// between them.
func (d *garmentDrawing) onSleeve() {
	upper, under := d.sleeve[0], d.sleeve[1]
	mid := canvas.Point{X: (upper.X + under.X) / 2, Y: (upper.Y + under.Y) / 2}
	dx, dy := d.sleeve[2].X-mid.X, d.sleeve[2].Y-mid.Y
	long := math.Hypot(dx, dy)
	hemX, hemY := under.X-upper.X, under.Y-upper.Y
	hem := math.Hypot(hemX, hemY)
	// place is up the sleeve from the middle of its hem, and aside toward its under side
	place := func(up, aside float64) canvas.Point {
		x, y := mid.X+dx/long*up+hemX/hem*aside, mid.Y+dy/long*up+hemY/hem*aside
		if !d.Left {
			x = -x
		}
		return d.at(x, y)
	}
	half := min(d.WidthMM, hem) / 2 // what reaches round the sleeve is cut at its edges
	foot := min(d.DownMM, long-5)
	head := min(foot+d.HeightMM, long)
	d.print(place(foot, -half), place(head, -half), place(head, half), place(foot, half))

	side, length := hem/2+sleeveAside*d.halfW, sleeveArrow*d.halfW
	d.c.Draw(polyline(place(0, hem/2), place(0, side+0.3*sleeveAside*d.halfW)), nil, hairline)
	d.c.Draw(polyline(place(foot, half), place(foot, side+0.3*sleeveAside*d.halfW)), nil, hairline)
	for _, a := range [][2]canvas.Point{{place(0, side), place(-length, side)}, {place(foot, side), place(foot+length, side)}} {
		arrow(d.c, a[1], a[0], dimensionMM, headMM, false)
	}
	if foot > 0 {
		d.c.Draw(polyline(place(0, side), place(foot, side)), nil, hairline)
	}
	d.label(d.DownLabel, place(foot/2, side))
}
