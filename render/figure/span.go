package figure

import (
	"cmp"
	"math"
	"slices"
)

// Interval is a closed interval.
type Interval struct{ Low, High float64 }

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
	x, y = ch.taken()
	edges := ch.edges()
	if ch.Y.stated() {
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

// stated tells whether the ends of an axis are.
func (a Axis) stated() bool { return a.Low != 0 || a.High != 0 }

// taken is what the lines, the mark, the range and the stated ends take of each axis.
func (ch Chart) taken() (x, y Interval) {
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
	if ch.X.stated() {
		x.grow(ch.X.Low, ch.X.High)
	}
	if ch.Y.stated() {
		y.grow(ch.Y.Low, ch.Y.High)
	}
	return x.widened(), y
}

// edges are those of the bands that tell something: one of the target beyond all that is to be expected decides nothing.
func (ch Chart) edges() (out []Interval) {
	known := nowhere
	for _, edge := range ch.knownEdges() {
		e := nowhere
		for _, p := range edge {
			e.grow(p.Y)
		}
		known.grow(e.Low, e.High)
		out = append(out, e)
	}
	if b := ch.Band; b != nil {
		if !(b.Low < known.Low && known.Low < b.High) {
			out = append(out, Interval{b.Low, b.Low})
		}
		if !(b.Low < known.High && known.High < b.High) {
			out = append(out, Interval{b.High, b.High})
		}
	}
	return out
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
