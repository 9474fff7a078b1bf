package figure

import (
	"fmt"
	"math"
	"strconv"

	"bladecard/render/canvas"
)

// Chart is a chart of lines over two axes. All of it is data; nothing is computed but places.
type Chart struct {
	X, Y   Axis
	Top    *TopAxis  // second scale of x, above the plot
	Lines  []Line    // at most MostLines, told apart by dash, width and the label at the end
	Band   *Band     // on y: what is allowed, tinted
	Range  *Interval // on x: what is allowed, a bar under the axis
	Mark   *Mark     // the chosen point
	SizePT float64   // of all texts; 0: SmallestPT

	// Format writes a number with so many decimals; nil writes a decimal point.
	Format func(v float64, digits int) string
}

// MostLines is how many lines a chart takes; Choose makes fewer of more.
const MostLines = 24

// Axis is a scale of the chart. The title stands level: that of y above the plot.
type Axis struct {
	Title     string
	Low, High float64 // the axis reaches at least so far, and over all data; both 0: a little over the data
	Whole     bool    // ticks stand at whole numbers only
}

// least is the least step of the ticks; 0: any.
func (a Axis) least() float64 {
	if a.Whole {
		return 1
	}
	return 0
}

// TopAxis is a second scale of x: Label writes its figure at each tick of the lower axis.
type TopAxis struct {
	Title string
	Label func(x float64) string
}

// Interval is a closed interval.
type Interval struct{ Low, High float64 }

// Band is an interval on y with its label, which stands among those of the lines.
type Band struct {
	Interval
	Label string
}

// Mark is the chosen point with its plus/minus bar; Low = High draws no bar.
type Mark struct{ X, Y, Low, High float64 }

// check refuses what cannot be drawn.
func (ch Chart) check() error {
	if n := len(ch.Lines); n > MostLines {
		return fmt.Errorf("chart: %d lines; accepted are up to %d", n, MostLines)
	}
	type part struct {
		what string
		Interval
	}
	parts := []part{{"x axis", Interval{ch.X.Low, ch.X.High}}, {"y axis", Interval{ch.Y.Low, ch.Y.High}}}
	if ch.Band != nil {
		parts = append(parts, part{"band", ch.Band.Interval})
	}
	if ch.Range != nil {
		parts = append(parts, part{"range", *ch.Range})
	}
	if m := ch.Mark; m != nil {
		parts = append(parts, part{"place of the mark", Interval{m.X, m.X}}, part{"bar below the mark", Interval{m.Low, m.Y}},
			part{"bar above the mark", Interval{m.Y, m.High}})
	}
	for _, p := range parts {
		if !finite(p.Low, p.High) || p.Low > p.High {
			return fmt.Errorf("chart: %s from %v to %v; accepted are finite numbers, the lower one first", p.what, p.Low, p.High)
		}
	}
	for _, l := range ch.Lines {
		if _, ok := l.last(); ok {
			return nil
		}
	}
	return fmt.Errorf("chart: %w: none of the %d lines has a finite point", ErrNoData, len(ch.Lines))
}

// span is the interval of each axis: all that is drawn lies within.
func (ch Chart) span() (x, y Interval) {
	x = Interval{math.Inf(1), math.Inf(-1)}
	y = x
	grow := func(v *Interval, at ...float64) {
		for _, a := range at {
			v.Low, v.High = math.Min(v.Low, a), math.Max(v.High, a)
		}
	}
	for _, l := range ch.Lines {
		for _, p := range l.Points {
			if finite(p.X, p.Y) {
				grow(&x, p.X)
				grow(&y, p.Y)
			}
		}
	}
	if b := ch.Band; b != nil {
		grow(&y, b.Low, b.High)
	}
	if b := ch.Range; b != nil {
		grow(&x, b.Low, b.High)
	}
	if m := ch.Mark; m != nil {
		grow(&x, m.X)
		grow(&y, m.Low, m.High)
	}
	if ch.X.Low != 0 || ch.X.High != 0 {
		grow(&x, ch.X.Low, ch.X.High)
	}
	if ch.Y.Low != 0 || ch.Y.High != 0 {
		grow(&y, ch.Y.Low, ch.Y.High)
		return x.widened(), y.widened()
	}
	y = y.widened()
	pad := 0.05 * (y.High - y.Low)
	low := y.Low - pad
	if y.Low >= 0 && low < 0.1*y.High { // what begins near zero begins there
		low = 0
	}
	return x.widened(), Interval{low, y.High + pad}
}

// widened gives an interval of a single value a length, as an axis needs one. Values that differ
// by less than a millionth of themselves, or 1e-9, are one.
func (v Interval) widened() Interval {
	size := math.Max(math.Abs(v.Low), math.Abs(v.High))
	if v.High-v.Low > math.Max(1e-6*size, 1e-9) {
		return v
	}
	by := 0.1 * size
	if by < 1e-9 {
		by = 1
	}
	return Interval{v.Low - by, v.High + by}
}

func (ch Chart) font() canvas.Font { return canvas.Font{SizePT: typeSize(ch.SizePT)} }

// number writes a number in the caller's format.
func (ch Chart) number(v float64, digits int) string {
	if ch.Format != nil {
		return ch.Format(v, digits)
	}
	return strconv.FormatFloat(v, 'f', digits, 64)
}

// Draw draws the chart inside r, with as many of its lines as have room for their labels: see
// Choose. A label of more than two rows is cut with an ellipsis, and where the plot would be too
// low, the scale above it is left out. The error is ErrNoRoom where texts and plot do not fit,
// ErrNoData where there is nothing to draw.
func (ch Chart) Draw(c canvas.Canvas, r Rect) error {
	if err := r.check("chart"); err != nil {
		return err
	}
	if err := ch.check(); err != nil {
		return err
	}
	p, err := ch.measure(c, r)
	if err != nil {
		return err
	}
	return p.render()
}
