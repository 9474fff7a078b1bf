package figure

import (
	"math"

	"bladecard/render/canvas"
)

// Bars are named bars under each other, each with its figure at its end.
type Bars struct {
	Rows    []Bar
	SizePT  float64
	PitchMM float64
}

// Bar is one of them. A share of 0 has no bar.
type Bar struct {
	Name, Figure string
	Share        float64 // of the longest that may be, 0 to 1
}

// Draw draws the bars from the top of r downward, names to the left of them.
func (s Bars) Draw(c canvas.Canvas, r Rect) error {
	if err := r.check("bars"); err != nil {
		return err
	}
	f := canvas.Font{SizePT: typeSize(s.SizePT)}
	bold := bold(f)
	gap, names, figures := 0.4*em(f), 0.0, 0.0
	for _, b := range s.Rows {
		names, figures = math.Max(names, c.TextWidth(b.Name, f)), math.Max(figures, c.TextWidth(b.Figure, bold))
	}
	names = math.Min(names, 0.6*(r.W-figures))
	x := r.X + names + gap
	most := r.Right() - figures - gap - x
	if most < 0 || float64(len(s.Rows))*s.PitchMM > r.H+0.01 {
		return noRoom("bars", r, "the figures leave no bars")
	}
	tint := canvas.Gray(190)
	for i, b := range s.Rows {
		y := r.Y + float64(i)*s.PitchMM
		base := y + (s.PitchMM+capEM*em(f))/2
		name, _ := canvas.Cut(b.Name, f, names)
		c.Text(x-gap-c.TextWidth(name, f), base, name, f, canvas.Black, 0)
		end := x + most*clamp(b.Share, 0, 1)
		if end > x {
			c.Draw(rectPath(x, y+0.5, end-x, s.PitchMM-1), &tint, canvas.Pen{})
		}
		c.Text(end+gap, base, b.Figure, bold, canvas.Black, 0)
	}
	return nil
}
