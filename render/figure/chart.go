package figure

import (
	"cmp"
	"fmt"
	"math"
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

// Interval is a closed interval.
type Interval struct{ Low, High float64 }

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

// How far apart on paper two values may stand that are the Apart of an axis from each other, and how many times
// what the lines take an axis reaches in any case, if there are edges of bands there.
const (
	leastApartMM = 3.0
	mostApartMM  = 4.0
	mostOfLines  = 2
)

// span is the interval of each axis on a plot of a height in mm. All lines lie within, and of the bands the
// edges that Apart leaves room for.
func (ch Chart) span(highMM float64) (x, y Interval) {
	x, y = nowhere, nowhere
	for _, l := range ch.Lines {
		for _, p := range l.Points {
			if finite(p.X, p.Y) {
				x.grow(p.X)
				y.grow(p.Y)
			}
		}
	}
	if m := ch.Mark; m != nil {
		x.grow(m.X)
		y.grow(m.Y)
	}
	if b := ch.Range; b != nil {
		x.grow(b.Low, b.High)
	}
	if ch.X.Low != 0 || ch.X.High != 0 {
		x.grow(ch.X.Low, ch.X.High)
	}
	if ch.Y.Low != 0 || ch.Y.High != 0 {
		y.grow(ch.Y.Low, ch.Y.High)
	}
	x = x.widened()
	var edges []Interval
	known := nowhere
	for _, edge := range ch.knownEdges() {
		e := nowhere
		for _, p := range edge {
			e.grow(p.Y)
		}
		known.grow(e.Low, e.High)
		edges = append(edges, e)
	}
	if b := ch.Band; b != nil { // an edge beyond all that is to be expected decides nothing
		if !(b.Low < known.Low && known.Low < b.High) {
			edges = append(edges, Interval{b.Low, b.Low})
		}
		if !(b.Low < known.High && known.High < b.High) {
			edges = append(edges, Interval{b.High, b.High})
		}
	}
	if ch.Y.Low != 0 || ch.Y.High != 0 {
		for _, e := range edges {
			y.grow(e.Low, e.High)
		}
		return x, y.widened()
	}
	most := math.Inf(1)
	if ch.Y.Apart > 0 {
		most = math.Max(ch.Y.Apart/leastApartMM*highMM, mostOfLines*(y.High-y.Low))
	}
	with := func(e Interval) Interval { e.grow(y.Low, y.High); return e }
	slices.SortStableFunc(edges, func(a, b Interval) int { return cmp.Compare(with(a).length(), with(b).length()) })
	beyond := 0.0 // where there are edges that it does not reach, it goes some way
	for _, e := range edges {
		if wide := with(e); wide.padded().length() <= most {
			y = wide
		} else {
			beyond = ch.Y.Apart / mostApartMM * highMM
		}
	}
	y = y.padded()
	if spare := (beyond - y.length()) / 2; spare > 0 {
		low := y.Low - spare
		if y.Low >= 0 {
			low = math.Max(0, low)
		}
		y = Interval{low, low + beyond}
	}
	if low := y.Low; low >= 0 && low < 0.1*y.High { // what begins near zero begins there
		y.Low = 0
	}
	return x, y
}

// nowhere grows to what it is given.
var nowhere = Interval{math.Inf(1), math.Inf(-1)}

func (v *Interval) grow(at ...float64) {
	for _, a := range at {
		v.Low, v.High = math.Min(v.Low, a), math.Max(v.High, a)
	}
}

func (v Interval) length() float64 { return v.High - v.Low }

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
