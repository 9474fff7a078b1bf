package figure

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"bladecard/render/canvas"
)

// LeanMap shows how far each blade may be set for the finest detail that must hold: a bar per blade, in
// steps from the finest detail, dark, to the coarsest, light, each with its largest angle.
type LeanMap struct {
	Title    string   // of the scale, at its left
	Features []string // finest first, as the legend names them
	Rows     []LeanRow
	HighDeg  float64                  // end of the scale, over 0 to 90
	MarkDeg  float64                  // a dashed line over all; 0: none
	Mark     string                   // its label
	Angle    func(deg float64) string // writes an angle
	SizePT   float64                  // 0: SmallestPT
}

// LeanRow is a blade: the largest set angle for each feature, not falling. NaN: none holds it.
type LeanRow struct {
	Label  string
	MaxDeg []float64
}

func (m LeanMap) check() error {
	if len(m.Rows) == 0 || len(m.Features) == 0 || m.Angle == nil {
		return fmt.Errorf("lean map: %w: blades, features and a way to write angles are needed", ErrNoData)
	}
	if !(m.HighDeg > 0 && m.HighDeg <= 90 && m.MarkDeg >= 0 && m.MarkDeg <= m.HighDeg) {
		return fmt.Errorf("lean map: a scale up to %v with a mark at %v; accepted are 0 to 90 degrees", m.HighDeg, m.MarkDeg)
	}
	for _, row := range m.Rows {
		if len(row.MaxDeg) != len(m.Features) {
			return fmt.Errorf("lean map: %d angles of %q; %d features need as many", len(row.MaxDeg), row.Label, len(m.Features))
		}
		last := 0.0
		for _, a := range row.MaxDeg {
			if a < last || math.IsInf(a, 0) {
				return fmt.Errorf("lean map: %q has %v deg after %v; accepted are angles that do not fall", row.Label, a, last)
			}
			if !math.IsNaN(a) {
				last = a
			}
		}
	}
	return nil
}

// tint is the gray of a feature: the finest is the darkest. On dark ones numbers are white.
func (m LeanMap) tint(i int) (fill, text canvas.Color) {
	const dark, light = 70.0, 238.0
	level := light
	if n := len(m.Features); n > 1 {
		level = dark + (light-dark)*float64(i)/float64(n-1)
	}
	if level < 130 {
		return canvas.Gray(uint8(level)), canvas.White
	}
	return canvas.Gray(uint8(level)), canvas.Black
}

// Draw draws the map inside r.
func (m LeanMap) Draw(c canvas.Canvas, r Rect) error {
	if err := cmp.Or(r.check("lean map"), m.check()); err != nil {
		return err
	}
	f := canvas.Font{SizePT: typeSize(m.SizePT)}
	line := lineEM * em(f)
	const gap = 1.2
	left := 0.0
	labels := make([]block, len(m.Rows))
	for i, row := range m.Rows {
		labels[i] = newBlock(c, row.Label, bold(f), 0.3*r.W, 2)
		left = math.Max(left, labels[i].w)
	}
	title := newBlock(c, m.Title, f, r.W, 0)
	left, right := r.X+left+gap, r.Right()-c.TextWidth(m.Angle(m.HighDeg), f)/2-0.5
	keyX, keyRow := m.legend(c, f, r.W)
	foot := r.Bottom() - line*float64(slices.Max(keyRow)+1) // the legend begins there
	top, bottom := r.Y+title.h+line+0.5, foot-line-gap
	pitch := (bottom - top) / float64(len(m.Rows))
	if !(pitch >= line+0.6 && right-left >= 25) || title.w > r.W {
		return noRoom("lean map", r, fmt.Sprintf("a row is %.1f mm high, least is %.1f", pitch, line+0.6))
	}
	x := func(deg float64) float64 { return left + (right-left)*math.Min(1, deg/m.HighDeg) }
	title.draw(c, r.X, r.Y, title.w, 0)
	for a := 0.0; a <= m.HighDeg; a += 5 {
		if w := c.TextWidth(m.Angle(a), f); math.Mod(a, 15) == 0 || x(5)-x(0) > w+1 {
			c.Text(x(a)-w/2, top-0.5-canvas.Descent*em(f), m.Angle(a), f, canvas.Black, 0)
		}
		c.Draw(segment(x(a), top, x(a), bottom), nil, canvas.Pen{Color: gridGray, WidthMM: hairMM})
	}
	bar := math.Min(0.72*pitch, 2*line)
	if m.MarkDeg > 0 {
		c.Draw(segment(x(m.MarkDeg), top, x(m.MarkDeg), bottom+0.5), nil, ink(0.5, 1.4, 0.8))
		w := c.TextWidth(m.Mark, bold(f))
		c.Text(clamp(x(m.MarkDeg)-w/2, r.X, math.Max(r.X, r.Right()-w)), bottom+0.7+canvas.Ascent*em(f), m.Mark, bold(f), canvas.Black, 0)
	}
	for i, row := range m.Rows {
		middle := top + pitch*(float64(i)+0.5)
		labels[i].draw(c, r.X, middle-labels[i].h/2, left-gap-r.X, 1)
		m.drawRow(c, f, row, x, middle, bar)
	}
	for i, s := range m.Features {
		fill, _ := m.tint(i)
		x, y := r.X+keyX[i], foot+line*float64(keyRow[i])
		c.Draw(rectPath(x+0.2, y+0.15*line, swatchEM*em(f)-0.4, 0.7*line), &fill, ink(0.2))
		c.Text(x+(swatchEM+0.4)*em(f), y+canvas.Ascent*em(f), s, f, canvas.Black, 0)
	}
	return nil
}

// drawRow draws the bar of a blade, the widest step first, and writes each angle inside the end of its step
// where there is room.
func (m LeanMap) drawRow(c canvas.Canvas, f canvas.Font, row LeanRow, x func(float64) float64, middle, high float64) {
	from := x(0)
	for i, a := range row.MaxDeg {
		if math.IsNaN(a) || !(x(a) > from) {
			continue
		}
		fill, text := m.tint(i)
		c.Draw(rectPath(from, middle-high/2, x(a)-from, high), &fill, ink(0.2))
		s := m.Angle(a)
		if w := c.TextWidth(s, bold(f)); w+1 <= x(a)-from {
			c.Text(x(a)-w-0.6, middle+capEM*em(f)/2, s, bold(f), text, 0)
		}
		from = x(a)
	}
}

// swatchEM is the width of a patch of the legend, in em.
const swatchEM = 1.8

// legend places the entries in rows no wider than w: the left end of each, and its row.
func (m LeanMap) legend(c canvas.Canvas, f canvas.Font, w float64) (x []float64, row []int) {
	end, last := 0.0, 0
	for _, s := range m.Features {
		wide := (swatchEM+1.4)*em(f) + c.TextWidth(s, f)
		if end > 0 && end+wide > w {
			end, last = 0, last+1
		}
		x, row = append(x, end), append(row, last)
		end += wide
	}
	return x, row
}
