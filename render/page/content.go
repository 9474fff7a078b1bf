package page

import (
	"math"
	"strconv"

	"bladecard/render/canvas"
)

// content is the drawing part of a page: operators of PDF (ISO 32000-1, 8.2), written straight as
// bytes. Lengths are in mm from the top left corner; the page counts points from the bottom left.
type content struct {
	out    []byte
	highMM float64 // height of the page, mm
}

// perMM is points to the millimetre.
const perMM = 72 / 25.4

// number writes v with at most two decimals: a hundredth of a point is 3.5 micrometres. What lies
// between two is rounded up, a hair below as well: processors differ in the last digit of a product
// and a sum, and the paper must not.
func (c *content) number(v float64) {
	n := int64(math.Floor(v*100 + 0.5 + 1e-6))
	if n < 0 {
		c.out = append(c.out, '-')
		n = -n
	}
	c.out = strconv.AppendInt(c.out, n/100, 10)
	if n %= 100; n != 0 {
		c.out = append(c.out, '.', byte('0'+n/10))
		if n %= 10; n != 0 {
			c.out = append(c.out, byte('0'+n))
		}
	}
	c.out = append(c.out, ' ')
}

// fine writes v with at most five decimals, for the sines of a turn and the shares of a colour.
func (c *content) fine(v float64) {
	c.out = strconv.AppendFloat(c.out, math.Floor(v*1e5+0.5+1e-6)/1e5+0, 'f', -1, 64) // + 0: no -0
	c.out = append(c.out, ' ')
}

func (c *content) length(mm float64) { c.number(mm * perMM) }

func (c *content) point(x, y float64) {
	c.number(x * perMM)
	c.number((c.highMM - y) * perMM)
}

func (c *content) op(word string) { c.out = append(append(c.out, word...), '\n') }

// path writes the pieces of a path, moved by dx, dy.
func (c *content) path(pieces []canvas.Piece, dx, dy float64) {
	for _, q := range pieces {
		switch q.Op {
		case 'M':
			c.point(q.P.X+dx, q.P.Y+dy)
			c.op("m")
		case 'L':
			c.point(q.P.X+dx, q.P.Y+dy)
			c.op("l")
		case 'C':
			c.point(q.A.X+dx, q.A.Y+dy)
			c.point(q.B.X+dx, q.B.Y+dy)
			c.point(q.P.X+dx, q.P.Y+dy)
			c.op("c")
		case 'Z':
			c.op("h")
		}
	}
}

// color writes a colour with the operators for grey and for the three channels.
func (c *content) color(k canvas.Color, grey, channels string) {
	c.fine(float64(k.R) / 255)
	if k.R == k.G && k.G == k.B {
		c.op(grey)
		return
	}
	c.fine(float64(k.G) / 255)
	c.fine(float64(k.B) / 255)
	c.op(channels)
}

// text writes a text with its baseline's left end at x, y, turned counterclockwise. The font is the
// one set before; its codes are the runes themselves, two bytes each.
func (c *content) text(x, y float64, s string, angleDeg float64) {
	c.out = append(c.out, "BT "...)
	if angleDeg == 0 {
		c.point(x, y)
		c.out = append(c.out, "Td ("...)
	} else {
		sin, cos := math.Sincos(angleDeg * math.Pi / 180)
		c.fine(cos)
		c.fine(sin)
		c.fine(-sin)
		c.fine(cos)
		c.point(x, y)
		c.out = append(c.out, "Tm ("...)
	}
	for _, r := range s {
		c.byte(byte(r >> 8))
		c.byte(byte(r))
	}
	c.out = append(c.out, ") Tj ET\n"...)
}

// byte writes a byte of a text.
func (c *content) byte(b byte) {
	switch b {
	case '\\', '(', ')':
		c.out = append(c.out, '\\', b)
	case '\r':
		c.out = append(c.out, '\\', 'r')
	default:
		c.out = append(c.out, b)
	}
}
