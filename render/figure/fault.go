package figure

import (
	"fmt"
	"maps"
	"math"
	"slices"

	"bladecard/render/canvas"
)

// Fault is a picture of a print that went wrong, as it looks through a loupe: the code of the fault in the
// words of calc/seen. Under each stands what it is; the picture has no text.
type Fault string

// faults draw each fault on a frame of 30 x 20 mm.
var faults = map[Fault]func(p picture){
	"ragged-edge":    ragged,
	"dots-plugged":   plugged,
	"dots-lost":      lost,
	"pinholes":       pinholes,
	"ghost":          ghost,
	"one-side-heavy": oneSide,
	"ink-left":       inkLeft,
	"washes-off":     cracked,
}

// Faults lists the faults that have a picture.
func Faults() []Fault { return slices.Sorted(maps.Keys(faults)) }

// picture draws on a frame of faultW x faultH, enlarged into its place.
type picture struct {
	c    canvas.Canvas
	x, y float64
	k    float64
}

// The frame of a picture, mm.
const faultW, faultH = 30.0, 20.0

var faultInk = canvas.Gray(60)

// Draw draws the fault in the middle of r.
func (f Fault) Draw(c canvas.Canvas, r Rect) error {
	if err := r.check("fault"); err != nil {
		return err
	}
	draw, known := faults[f]
	if !known {
		return fmt.Errorf("fault: %w: no picture of %q; there are %v", ErrNoData, string(f), Faults())
	}
	k := math.Min(r.W/faultW, r.H/faultH)
	if !(k >= 0.4) {
		return noRoom("fault", r, "12 x 8 mm are the least")
	}
	p := picture{c: c, k: k, x: r.X + (r.W-k*faultW)/2, y: r.Y + (r.H-k*faultH)/2}
	p.rect(0.2, 0.2, faultW-0.4, faultH-0.4, &canvas.White, 0)
	draw(p)
	p.rect(0.2, 0.2, faultW-0.4, faultH-0.4, nil, 0.3)
	return nil
}

func (p picture) at(x, y float64) canvas.Point { return canvas.Point{X: p.x + p.k*x, Y: p.y + p.k*y} }

func (p picture) points(v ...float64) (out []canvas.Point) {
	for _, q := range xy(v...) {
		out = append(out, p.at(q.X, q.Y))
	}
	return out
}

func (p picture) rect(x, y, w, h float64, fill *canvas.Color, pen float64) {
	p.c.Draw(polygon(p.points(x, y, x+w, y, x+w, y+h, x, y+h)...), fill, ink(pen*p.k))
}

// solid fills the outline through the points.
func (p picture) solid(fill canvas.Color, v ...float64) {
	p.c.Draw(polygon(p.points(v...)...), &fill, canvas.Pen{})
}

func (p picture) dot(x, y, radius float64, fill canvas.Color) { dot(p.c, p.at(x, y), radius*p.k, fill) }

func (p picture) line(pen float64, color canvas.Color, v ...float64) {
	p.c.Draw(polyline(p.points(v...)...), nil, canvas.Pen{Color: color, WidthMM: pen * p.k})
}

// uneven is a number from 0 to 1 that looks like chance and is always the same.
func uneven(i int) float64 {
	_, part := math.Modf(math.Abs(math.Sin(float64(i)*12.9898) * 43758.5453))
	return part
}

// ragged is a bar whose upper edge runs out into the cloth; the lower edge is as it should be.
func ragged(p picture) {
	edge := []float64{4, 15, 4, 7}
	for i := range 22 {
		edge = append(edge, 4+float64(i), 5+2.6*uneven(i))
	}
	p.solid(faultInk, append(edge, 26, 7, 26, 15)...)
	p.line(0.15, canvas.Gray(150), 3, 7.6, 27, 7.6)
}

// halftone draws rows of dots that grow to the right.
func halftone(p picture, radius func(row, column int, even float64) float64) {
	for row := range 5 {
		for column := range 8 {
			even := 0.5 + 0.15*float64(column)
			if radius := radius(row, column, even); radius > 0 {
				p.dot(3.4+3.3*float64(column), 3.2+3.4*float64(row), radius, faultInk)
			}
		}
	}
}

// plugged are dots of which the dark ones have run together.
func plugged(p picture) {
	halftone(p, func(_, column int, even float64) float64 {
		if column >= 5 {
			return 2.2
		}
		return even
	})
}

// lost are dots of which the light ones are missing; where they should be they are outlined.
func lost(p picture) {
	halftone(p, func(row, column int, even float64) float64 {
		if column < 3 && uneven(7*row+column) < 0.85-0.2*float64(column) {
			p.c.Draw(circle(p.at(3.4+3.3*float64(column), 3.2+3.4*float64(row)), even*p.k), nil, canvas.Pen{Color: canvas.Gray(150), WidthMM: 0.12 * p.k})
			return 0
		}
		return even
	})
}

// pinholes is a solid through which the cloth shows in many small places.
func pinholes(p picture) {
	p.rect(3, 3, 24, 14, &faultInk, 0)
	for i := range 34 {
		p.dot(4+22*uneven(3*i+1), 4+12*uneven(5*i+2), 0.22+0.3*uneven(i), canvas.White)
	}
}

// ghost is a letter with a paler second one beside it.
func ghost(p picture) {
	letter := func(dx, dy float64, fill canvas.Color) {
		p.x, p.y = p.x+p.k*dx, p.y+p.k*dy
		p.solid(fill, 9, 3, 20, 3, 20, 6, 12.5, 6, 12.5, 8.5, 18, 8.5, 18, 11.5, 12.5, 11.5, 12.5, 16, 9, 16)
	}
	letter(1.6, 0.9, canvas.Gray(185))
	letter(-1.6, -0.9, faultInk)
}

// oneSide is a solid that is thick on one side and thin on the other, above its section on the cloth.
func oneSide(p picture) {
	const steps = 12
	for i := range steps {
		gray := canvas.Gray(uint8(50 + 13*i))
		p.rect(3+2*float64(i), 2.5, 2.02, 9, &gray, 0)
	}
	p.solid(faultInk, 3, 13.4, 27, 16, 27, 16.8, 3, 16.8)
	p.line(0.3, canvas.Black, 2, 17, 28, 17)
}

// inkLeft is a mesh from above, some openings of which are still full.
func inkLeft(p picture) {
	const pitch = 2.6
	for row := range 6 {
		for column := range 9 {
			if uneven(11*row+3*column) > 0.72 || row > 1 && row < 5 && column > 2 && column < 6 && uneven(row+column) > 0.2 {
				p.rect(3.3+pitch*float64(column), 2.2+pitch*float64(row), pitch, pitch, &faultInk, 0)
			}
		}
	}
	thread := canvas.Gray(140)
	for i := range 10 {
		p.line(0.55, thread, 3.3+pitch*float64(i), 1.4, 3.3+pitch*float64(i), 18.6)
	}
	for i := range 7 {
		p.line(0.55, thread, 2.5, 2.2+pitch*float64(i), 27.5, 2.2+pitch*float64(i))
	}
}

// cracked is a solid that broke when the cloth was stretched.
func cracked(p picture) {
	p.rect(3, 3, 24, 14, &faultInk, 0)
	for i := range 6 {
		x := 5 + 4*float64(i)
		var way []float64
		for k := range 8 {
			way = append(way, x+1.8*(uneven(9*i+k)-0.5), 3+2*float64(k))
		}
		p.line(0.25+0.35*uneven(i), canvas.White, way...)
		if i < 5 {
			y := 5 + 10*uneven(17*i+4)
			p.line(0.25, canvas.White, x+0.4, y, x+2, y+1.2, x+3.6, y+0.2)
		}
	}
}
