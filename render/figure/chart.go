package figure

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"

	"bladecard/render/canvas"
)

// Chart is a chart of lines over two axes. All of it is data; nothing is computed but places.
type Chart struct {
	Title  string // over the chart, for a file that stands alone
	X, Y   Axis
	Second *Scale    // second scale of x, in a row below the first
	Lines  []Line    // at most MostLines, told apart by dash, marker, width and label
	Band   *Band     // on y: what is allowed, tinted
	Known  *Band     // what is known, as shares of the chosen line, a lighter tint behind all
	Range  *Interval // on x: what is allowed, a bar under the axis
	Mark   *XY       // the chosen point; the labels have the order of the lines there
	Set    string    // what mark and range mean
	Ends   [2]string // what the marks at the ends of lines mean: Detail, Ink
	SizePT float64   // of all texts; 0: SmallestPT

	// More tells how many lines have no room, of none nothing; nil tells nothing.
	More func(lines int) string

	// Format writes a number with so many decimals; nil writes a decimal point.
	Format func(v float64, digits int) string
}

// MostLines is how many lines a chart takes; Choose makes fewer of more.
const MostLines = 24

// Axis is a scale of the chart. The title stands level: that of y above the plot, that of x behind its figures,
// or below them where it is too long. An axis that does not begin at zero is broken with two slanted strokes.
type Axis struct {
	Title     string
	Low, High float64 // the axis reaches at least so far, and over all data; both 0: a little over the data
	Whole     bool    // ticks stand at whole numbers only

	// Apart, on y: two values so far apart stand leastApartMM to mostApartMM apart on paper, so that lines can be
	// told apart and noise is not blown up. Within that the axis reaches to the edges of the bands, the nearest
	// first. 0: it reaches over the bands.
	Apart float64
}

// least is the least step of the ticks; 0: any.
func (a Axis) least() float64 {
	if a.Whole {
		return 1
	}
	return 0
}

// Scale is a second scale of x: Label writes its figure at each tick of the first.
type Scale struct {
	Title string
	Label func(x float64) string
}

// Band is an interval on y. It is tinted where an edge of it lies in the plot, for a tint over all tells nothing.
type Band struct {
	Interval
	Label                string
	Inside, Above, Below string // in place of Label and tint: all of the plot is in it; it lies above, below
}

// check refuses what cannot be drawn.
func (ch Chart) check() (err error) {
	if n := len(ch.Lines); n > MostLines {
		return fmt.Errorf("chart: %d lines; accepted are up to %d", n, MostLines)
	}
	ask := func(what string, low, high float64) {
		if err == nil && (!finite(low, high) || low > high) {
			err = fmt.Errorf("chart: %s from %v to %v; accepted are finite numbers, the lower one first", what, low, high)
		}
	}
	ask("x axis", ch.X.Low, ch.X.High)
	ask("y axis", ch.Y.Low, ch.Y.High)
	if b := ch.Band; b != nil {
		ask("band", b.Low, b.High)
	}
	if b := ch.Range; b != nil {
		ask("range", b.Low, b.High)
	}
	if b := ch.Known; b != nil {
		ask("band of what is known", b.Low, b.High)
	}
	if m := ch.Mark; m != nil {
		ask("place of the mark", m.X, m.X)
		ask("height of the mark", m.Y, m.Y)
	}
	data := slices.ContainsFunc(ch.Lines, func(l Line) bool { _, ok := l.last(); return ok })
	if err == nil && !data {
		err = fmt.Errorf("chart: %w: none of the %d lines has a finite point", ErrNoData, len(ch.Lines))
	}
	return err
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
// Choose. A label of more than two rows is cut with an ellipsis. Where the plot would be too low, the second scale
// is left out, and where the labels have no room, what explains the marks. The error is ErrNoRoom where
// texts and plot do not fit, ErrNoData where there is nothing to draw.
func (ch Chart) Draw(c canvas.Canvas, r Rect) error {
	if err := cmp.Or(r.check("chart"), ch.check()); err != nil {
		return err
	}
	p, err := ch.measure(c, r)
	if err != nil {
		return err
	}
	return p.render()
}
