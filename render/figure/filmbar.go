package figure

import (
	"math"

	"bladecard/render/canvas"
)

// FilmBar is one film on a scale that rows share: the target as a ground with its ends below, the expected value as a
// dot on the line of its band.
type FilmBar struct {
	Target, Band Interval // Band is that of the set point
	Set          float64
	Top          float64   // end of the scale, which begins at 0
	Ends         [2]string // of the target
	SizePT       float64
}

// Draw draws the bar over the whole width of r; the ends of the target stand below it.
func (b FilmBar) Draw(c canvas.Canvas, r Rect) error {
	if err := r.check("bar"); err != nil {
		return err
	}
	f := canvas.Font{SizePT: typeSize(b.SizePT)}
	tall := r.H - canvas.LineHeight(f)
	if !finite(b.Top, b.Set) || b.Top <= 0 || tall < 1.5 {
		return noRoom("bar", r, "the numbers leave no room")
	}
	at := func(um float64) float64 { return r.X + 1 + (r.W-2)*clamp(um/b.Top, 0, 1) }
	middle := r.Y + tall/2
	ground := canvas.Gray(205)
	low, high := at(b.Target.Low), at(b.Target.High)
	c.Draw(rectPath(low, r.Y, math.Max(high-low, 0.6), tall), &ground, canvas.Pen{})
	whisker(c, at(b.Band.Low), at(b.Band.High), middle, 0.7, 0.5, 0.4)
	dot(c, canvas.Point{X: at(b.Set), Y: middle}, 0.9, canvas.Black)
	labels := b.Ends[:]
	wide := []float64{c.TextWidth(labels[0], f) + 0.8, c.TextWidth(labels[1], f) + 0.8}
	if labels[0] == labels[1] {
		labels, wide = labels[:1], wide[:1]
	}
	places, ok := spread([]float64{low, high}[:len(labels)], wide, r.X, r.Right())
	if !ok {
		return noRoom("bar", r, "the ends of the target do not fit")
	}
	for i, s := range labels {
		c.Text(places[i]-wide[i]/2+0.4, r.Bottom()-canvas.Descent*f.SizePT*canvas.MMPerPT, s, f, canvas.Black, 0)
	}
	return nil
}
