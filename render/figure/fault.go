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

// Clear is no fault: the screen as it should be after the stroke.
const Clear = "clear"

// faults draw each fault on a frame of 30 x 20 mm.
var faults = map[Fault]func(p picture){
	Clear:            clearScreen,
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
	p.line(0.25, canvas.Gray(110), 2, 7.6, 3.6, 7.6)
	p.line(0.25, canvas.Gray(110), 26.4, 7.6, 28, 7.6)
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
			p.c.Draw(circle(p.at(3.4+3.3*float64(column), 3.2+3.4*float64(row)), even*p.k), nil, canvas.Pen{Color: canvas.Gray(110), WidthMM: 0.2 * p.k, DashMM: []float64{0.5 * p.k, 0.4 * p.k}})
			return 0
		}
		return even
	})
}

// pinholes is a solid through which the knit of the cloth shows, and some holes.
func pinholes(p picture) {
	p.rect(3, 3, 24, 14, &faultInk, 0)
	cloth := canvas.Gray(225)
	for row := range 7 {
		for i := range 12 {
			x, y := 4+1.9*float64(i)+0.9*float64(row%2), 4.2+1.9*float64(row)
			if u := uneven(13*row + 5*i); u > 0.25 && x < 26 {
				p.line(0.25+0.25*u, cloth, x-0.45, y-0.35, x, y+0.35, x+0.45, y-0.35)
			}
		}
	}
	for i := range 9 {
		p.dot(5+20*uneven(3*i+1), 5+10*uneven(5*i+2), 0.45+0.35*uneven(i), canvas.White)
	}
}

// ghost is a letter with a paler second one beside it.
func ghost(p picture) {
	second := p
	second.x, second.y = p.x+1.6*p.k, p.y+0.9*p.k
	for _, v := range []struct {
		picture
		fill canvas.Color
	}{{second, canvas.Gray(185)}, {p, faultInk}} {
		v.solid(v.fill, 9, 3, 20, 3, 20, 6, 12.5, 6, 12.5, 8.5, 18, 8.5, 18, 11.5, 12.5, 11.5, 12.5, 16, 9, 16)
	}
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

// clearScreen is the image in a stencil, its openings open.
func clearScreen(p picture) { screen(p, func(_, _ int) bool { return false }) }

// inkLeft is the same, some openings still full.
func inkLeft(p picture) {
	screen(p, func(row, column int) bool {
		return uneven(11*row+3*column) > 0.72 || row > 1 && row < 5 && column > 2 && column < 6 && uneven(row+column) > 0.2
	})
}

// screen is an image in a stencil from above, with light behind it: the openings that are full stay dark.
func screen(p picture, full func(row, column int) bool) {
	const pitch, rows, columns, x, y = 2.6, 6, 9, 3.3, 2.2
	stencil, thread := canvas.Gray(200), canvas.Gray(120)
	p.rect(1.2, 1, faultW-2.4, faultH-2, &stencil, 0)
	p.rect(x, y, pitch*columns, pitch*rows, &canvas.White, 0)
	for row := range rows {
		for column := range columns {
			if full(row, column) {
				p.rect(x+pitch*float64(column), y+pitch*float64(row), pitch, pitch, &faultInk, 0)
			}
		}
	}
	for i := range columns + 1 {
		p.line(0.5, thread, x+pitch*float64(i), y, x+pitch*float64(i), y+pitch*rows)
	}
	for i := range rows + 1 {
		p.line(0.5, thread, x, y+pitch*float64(i), x+pitch*columns, y+pitch*float64(i))
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
