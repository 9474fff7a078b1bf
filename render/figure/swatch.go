package figure

import (
	"fmt"
	"strconv"

	"bladecard/render/canvas"
)

// Swatch is a patch of the ink's color, always outlined so that white shows. Without a
// color it is hatched.
type Swatch struct {
	Color *canvas.Color
}

// ParseColor reads #rrggbb.
func ParseColor(s string) (canvas.Color, error) {
	if len(s) == 7 && s[0] == '#' {
		if v, err := strconv.ParseUint(s[1:], 16, 32); err == nil {
			return canvas.Color{R: uint8(v >> 16), G: uint8(v >> 8), B: uint8(v)}, nil
		}
	}
	return canvas.Color{}, fmt.Errorf("color %q; accepted is # and six hexadecimal digits, #f7f7f2", s)
}

// Draw fills r with the patch; the outline lies inside r.
func (s Swatch) Draw(c canvas.Canvas, r Rect) error {
	if err := r.check("swatch"); err != nil {
		return err
	}
	const lineMM = 0.35
	if r.W < 2*lineMM || r.H < 2*lineMM {
		return noRoom("swatch", r, "the outline alone takes more")
	}
	in := corners(r.X+lineMM/2, r.Y+lineMM/2, r.W-lineMM, r.H-lineMM)
	if s.Color == nil {
		c.Draw(polygon(in...), &canvas.White, canvas.Pen{})
		hatch(c, in, 45, 1.1, ink(0.15))
	}
	c.Draw(polygon(in...), s.Color, ink(lineMM))
	return nil
}
