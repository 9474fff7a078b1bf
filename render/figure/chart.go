package figure

import (
	"fmt"
	"math"
	"strconv"

	"bladecard/render/canvas"
)

// Chart is a chart of lines over two axes. All of it is data; nothing is computed but places.
type Chart struct {
	Title  string // over the chart, for a file that stands alone
	X, Y   Axis
	Top    *TopAxis  // second scale of x, above the plot
	Lines  []Line    // at most MostLines, told apart by dash, marker, width and label
	Band   *Band     // on y: what is allowed, tinted
	Known  *Known    // what is known of the chosen line, a lighter tint behind all
	Range  *Interval // on x: what is allowed, a bar under the axis
	Mark   *XY       // the chosen point; the labels have the order of the lines there
	Ends   [2]string // what the marks at the ends of lines mean: Detail, Ink
	SizePT float64   // of all texts; 0: SmallestPT

	// Format writes a number with so many decimals; nil writes a decimal point.
	Format func(v float64, digits int) string
}

// MostLines is how many lines a chart takes; Choose makes fewer of more.
const MostLines = 24

// Axis is a scale of the chart. The title stands level: that of y above the plot. An axis that does not
// begin at zero is broken with two slanted strokes.
type Axis struct {
	Title     string
	Low, High float64 // the axis reaches at least so far, and over all data; both 0: a little over the data
	Whole     bool    // ticks stand at whole numbers only

	// Apart, on y: two values so far apart stand apartMM apart on paper where the lines allow it. What
	// the bands have beyond that is cut off. 0: the axis reaches over the bands.
	Apart float64
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

// Known is the band around the chosen lines: its ends as shares of the line, with its label.
type Known struct {
	Interval
	Label string
}

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
	if ch.Known != nil {
		parts = append(parts, part{"band of what is known", ch.Known.Interval})
	}
	if m := ch.Mark; m != nil {
		parts = append(parts, part{"place of the mark", Interval{m.X, m.X}}, part{"height of the mark", Interval{m.Y, m.Y}})
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

// apartMM is how far apart on paper two values stand that are the Apart of an axis from each other.
const apartMM = 4.0

// span is the interval of each axis on a plot of a height in mm. All lines lie within, and of the bands as
// much as Apart leaves room for.
func (ch Chart) span(highMM float64) (x, y Interval) {
	x = nowhere
	lines := nowhere
	for _, l := range ch.Lines {
		for _, p := range l.Points {
			if finite(p.X, p.Y) {
				x.grow(p.X)
				lines.grow(p.Y)
			}
		}
	}
	if m := ch.Mark; m != nil {
		x.grow(m.X)
		lines.grow(m.Y)
	}
	if b := ch.Range; b != nil {
		x.grow(b.Low, b.High)
	}
	if ch.X.Low != 0 || ch.X.High != 0 {
		x.grow(ch.X.Low, ch.X.High)
	}
	y = lines
	if b := ch.Band; b != nil {
		y.grow(b.Low, b.High)
	}
	for _, e := range ch.knownEdges() {
		for _, p := range e {
			if finite(p.Y) {
				y.grow(p.Y)
			}
		}
	}
	if ch.Y.Low != 0 || ch.Y.High != 0 {
		y.grow(ch.Y.Low, ch.Y.High)
		return x.widened(), y.widened()
	}
	y, lines = y.padded(), lines.padded()
	if most := ch.Y.Apart / apartMM * highMM; most > 0 && y != lines && y.High-y.Low > most {
		spare := math.Max(0, most-(lines.High-lines.Low)) / (lines.Low - y.Low + y.High - lines.High)
		y = Interval{lines.Low - spare*(lines.Low-y.Low), lines.High + spare*(y.High-lines.High)}
	}
	if low := y.Low; low >= 0 && low < 0.1*y.High { // what begins near zero begins there
		y.Low = 0
	}
	return x.widened(), y
}

// nowhere grows to what it is given.
var nowhere = Interval{math.Inf(1), math.Inf(-1)}

func (v *Interval) grow(at ...float64) {
	for _, a := range at {
		v.Low, v.High = math.Min(v.Low, a), math.Max(v.High, a)
	}
}

// padded is the interval with a little on both sides, but not below zero where it does not reach there.
func (v Interval) padded() Interval {
	w := v.widened()
	pad := 0.05 * (w.High - w.Low)
	out := Interval{w.Low - pad, w.High + pad}
	if v.Low >= 0 {
		out.Low = math.Max(0, out.Low)
	}
	return out
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
// low, the scale above it is left out, and then what the marks mean. The error is ErrNoRoom where texts and plot do not fit,
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
