package figure

import "bladecard/render/canvas"

// Flash says at a glance whether a screen is flashed: a black block with the lamp over the
// garment and the word in white, or an outlined one with the word alone. Black against white
// carries it, so a laser printer and any eye will do.
type Flash struct {
	Needed bool
	Word   string
	SizePT float64 // 0: SmallestPT
}

// Draw fills r with the block.
func (s Flash) Draw(c canvas.Canvas, r Rect) error {
	if err := r.check("flash"); err != nil {
		return err
	}
	const padMM, lineMM, leastLampMM = 0.8, 0.5, 3.5
	f := canvas.Font{SizePT: typeSize(s.SizePT)}
	ground, text := canvas.White, canvas.Black
	if s.Needed {
		f.Face, ground, text = canvas.Bold, canvas.Black, canvas.White
	}
	word := newBlock(c, s.Word, f, r.W-2*padMM)
	if word.w > r.W-2*padMM || word.h > r.H-2*padMM {
		return noRoom("flash", r, "the word does not fit")
	}
	c.Draw(rectPath(r.X+lineMM/2, r.Y+lineMM/2, r.W-lineMM, r.H-lineMM), &ground, ink(lineMM))
	y := r.Y + (r.H-word.h)/2
	if lamp := (Rect{r.X + 0.18*r.W, r.Y + 1.2, 0.64 * r.W, r.H - word.h - 1.2 - padMM/2}); s.Needed && lamp.H >= leastLampMM {
		drawLamp(c, lamp, text)
		y = r.Bottom() - padMM/2 - word.h
	}
	word.drawIn(c, r.X, y, r.W, 0.5, text)
	return nil
}

// drawLamp draws a panel over a garment and the heat between them.
func drawLamp(c canvas.Canvas, r Rect, color canvas.Color) {
	panel := 0.28 * r.H
	c.Draw(rectPath(r.X, r.Y, r.W, panel), &color, canvas.Pen{})
	pen := canvas.Pen{Color: color, WidthMM: 0.45}
	c.Draw(polyline(canvas.Point{X: r.X - 1, Y: r.Bottom() - 0.3}, canvas.Point{X: r.Right() + 1, Y: r.Bottom() - 0.3}), nil, pen)
	const rays = 4
	top, end := r.Y+panel+0.5, r.Bottom()-1.1
	swing, third := 0.06*r.W, (end-top)/3
	for i := range rays {
		x := r.X + r.W*(float64(i)+0.5)/rays
		var ray canvas.Path
		ray.Move(x, top)
		ray.Curve(x+swing, top+third, x-swing, top+2*third, x, end)
		c.Draw(ray, nil, pen)
	}
}
