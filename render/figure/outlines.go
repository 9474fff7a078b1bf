package figure

import (
	"slices"

	"bladecard/render/canvas"
)

// outline is a garment seen from the front, flat. Points are mm from its middle line and from its top; of
// both halves the one on the right is listed. All are drawn from memory of middling sizes.
type outline struct {
	size        string // adult, youth, or piece: of a thing that has no sizes
	halfW, high float64
	edge        []canvas.Point   // from the top to the hem
	round       bool             // the collar is round, as deep as its seam
	front, back float64          // where distances count from: the collar seam or the top edge
	foot        float64          // where a crown or a bib ends; 0: what is printed on reaches to the hem
	sleeve      [3]canvas.Point  // its hem, upper and under end, and the middle of its seam at the shoulder
	lines       [][]canvas.Point // seams, pockets, handles
	onFront     [][]canvas.Point // those that only the front has
}

var outlines = map[string]outline{
	"tee": {size: "adult", halfW: 410, high: 720, round: true, front: 100, back: 25,
		edge:   xy(90, 0, 410, 130, 350, 290, 260, 250, 260, 720),
		sleeve: [3]canvas.Point{{X: 410, Y: 130}, {X: 350, Y: 290}, {X: 175, Y: 125}}},
	"youth": {size: "youth", halfW: 300, high: 520, round: true, front: 73, back: 20,
		edge:   xy(70, 0, 300, 100, 258, 215, 190, 185, 190, 520),
		sleeve: [3]canvas.Point{{X: 300, Y: 100}, {X: 258, Y: 215}, {X: 130, Y: 92}}},
	"long-sleeve": {size: "adult", halfW: 430, high: 740, round: true, front: 100, back: 25,
		edge:   xy(90, 0, 205, 45, 430, 560, 345, 600, 260, 330, 260, 740),
		sleeve: [3]canvas.Point{{X: 430, Y: 560}, {X: 345, Y: 600}, {X: 235, Y: 150}},
		lines:  [][]canvas.Point{xy(422, 541, 337, 577)}},
	"hood": {size: "adult", halfW: 460, high: 900, front: 255, back: 225,
		edge:    xy(0, 0, 85, 25, 125, 110, 105, 205, 220, 250, 460, 760, 370, 805, 275, 560, 275, 900),
		sleeve:  [3]canvas.Point{{X: 460, Y: 760}, {X: 370, Y: 805}, {X: 250, Y: 370}},
		lines:   [][]canvas.Point{xy(0, 840, 275, 840), xy(444, 726, 357, 771)},
		onFront: [][]canvas.Point{xy(0, 45, 55, 70, 78, 130, 60, 195, 0, 255), xy(0, 600, 120, 600, 190, 740, 190, 840)}},
	"cap": {size: "piece", halfW: 94, high: 152, foot: 92,
		edge:    xy(0, 0, 28, 3, 54, 16, 73, 40, 82, 74, 84, 104, 94, 130, 91, 150, 78, 152, 52, 140, 26, 134, 0, 132),
		lines:   [][]canvas.Point{xy(0, 92, 30, 94, 60, 99, 84, 104)},
		onFront: [][]canvas.Point{xy(4, 1, 24, 20, 38, 55, 42, 95)}},
	"tote": {size: "piece", halfW: 195, high: 660, front: 240, back: 240,
		edge:  xy(195, 240, 195, 660),
		lines: [][]canvas.Point{xy(0, 10, 60, 30, 90, 80, 105, 240), xy(0, 35, 45, 50, 68, 90, 80, 240), xy(0, 275, 195, 275)}},
	"apron": {size: "piece", halfW: 420, high: 960, front: 110, back: 110, foot: 430,
		edge:  xy(130, 110, 145, 250, 220, 370, 340, 430, 340, 960),
		lines: [][]canvas.Point{xy(120, 110, 95, 35, 0, 5), xy(340, 440, 420, 520)}},
}

// shape is the outline that is drawn.
func (g Garment) shape() outline {
	if o, known := outlines[g.Outline]; known {
		return o
	}
	return outlines["tee"]
}

// SizeOf tells what size of a garment its outline is: adult, youth, or piece of a thing that has no sizes.
func SizeOf(name string) string { return Garment{Outline: name}.shape().size }

// HasCollar tells whether distances on an outline count from a collar seam; else they count from its top edge.
func HasCollar(name string) bool {
	o := Garment{Outline: name}.shape()
	return o.sleeve != [3]canvas.Point{}
}

// seamMM is how far the place from which distances count lies below the top, in the middle.
func (d *garmentDrawing) seamMM() float64 {
	if d.Back {
		return d.back
	}
	return d.front
}

// drawOutline draws both halves of the garment and its seams. A collar is drawn as deep as the side has it.
func (d *garmentDrawing) drawOutline(fill *canvas.Color) {
	var around []canvas.Point
	for i := len(d.edge) - 1; i >= 0; i-- { // up on the left, down on the right
		around = append(around, d.at(-d.edge[i].X, d.edge[i].Y))
	}
	if d.round {
		const steps = 12
		half, deep := d.edge[0].X, d.seamMM()
		for i := 1; i < steps; i++ {
			t := -1 + 2*float64(i)/steps
			around = append(around, d.at(t*half, deep*(1-t*t)))
		}
	}
	for _, q := range d.edge {
		around = append(around, d.at(q.X, q.Y))
	}
	d.c.Draw(polygon(around...), fill, ink(outlineMM))
	lines := d.lines
	if !d.Back {
		lines = slices.Concat(lines, d.onFront)
	}
	for _, side := range []float64{-1, 1} {
		for _, l := range lines {
			var ps []canvas.Point
			for _, q := range l {
				ps = append(ps, d.at(side*q.X, q.Y))
			}
			d.c.Draw(polyline(ps...), nil, ink(dimensionMM))
		}
	}
}
