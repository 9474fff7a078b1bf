package figure

import (
	"errors"
	"fmt"
	"math"

	"bladecard/render/canvas"
)

// Chart is a chart of lines over two axes. All of it is data; nothing is computed but places.
type Chart struct {
	X, Y   Axis
	Top    *TopAxis  // second scale of x, above the plot
	Lines  []Line    // told apart by dash, width and the label at the end
	Band   *Interval // on y: what is allowed, tinted
	Range  *Interval // on x: what is allowed, a bar under the axis
	Mark   *Mark     // the chosen point
	SizePT float64   // of all texts; 0: SmallestPT

	// Format writes a number with so many decimals; nil writes a decimal point.
	Format func(v float64, digits int) string
}

// Axis is a scale of the chart. The title stands level: that of y above the plot.
type Axis struct {
	Title     string
	Low, High float64 // both 0: from the data
	Ticks     []Tick  // none: at round numbers; too close ones lose their label
}

// TopAxis is a second scale of x. Ticks are placed in the units of the lower axis and carry
// the text of the upper one; with none, Label writes one at each tick of the lower axis.
type TopAxis struct {
	Title string
	Ticks []Tick
	Label func(x float64) string
}

// XY is a point of the data. A point that is not finite breaks the line.
type XY struct{ X, Y float64 }

// Line is a curve of the chart.
type Line struct {
	Label  string
	Points []XY    // in order of x
	Strong bool    // the chosen one: wide and whole
	Dash   int     // which dash the others have, from 0; see Dashes
	Step   float64 // spacing of the samples: a wider hole breaks the line; 0: only points that are not finite do
}

// Interval is a closed interval.
type Interval struct{ Low, High float64 }

// Mark is the chosen point with its plus/minus bar; Low = High draws no bar.
type Mark struct{ X, Y, Low, High float64 }

// Widths of lines, mm.
const (
	strongMM = 0.75
	plainMM  = 0.3
	axisMM   = 0.2
	hairMM   = 0.1
	markMM   = 1.05 // radius of the mark
)

// dashes are the patterns of the lines that are not the chosen one, on, off ... in mm.
var dashes = [][]float64{
	nil,
	{1.6, 0.7},
	{0.35, 0.55},
	{2.2, 0.5, 0.4, 0.5},
	{0.8, 0.4},
	{2.2, 0.5, 0.4, 0.5, 0.4, 0.5},
}

// Dashes is how many lines besides the chosen one can be told apart.
var Dashes = len(dashes)

// pen is how the line is drawn.
func (l Line) pen() canvas.Pen {
	if l.Strong {
		return ink(strongMM)
	}
	n := len(dashes)
	return ink(plainMM, dashes[((l.Dash%n)+n)%n]...)
}

// font is the font of the line's label: bold for the chosen one.
func (l Line) font(f canvas.Font) canvas.Font {
	if l.Strong {
		f.Face = canvas.Bold
	}
	return f
}

// last is the last point that is finite; ok is false where there is none.
func (l Line) last() (p XY, ok bool) {
	for i := len(l.Points) - 1; i >= 0; i-- {
		if p = l.Points[i]; finite(p.X, p.Y) {
			return p, true
		}
	}
	return XY{}, false
}

// runs are the unbroken pieces of the line, parts of its points.
func (l Line) runs() [][]XY {
	var all [][]XY
	start := -1 // of the run, -1: none
	end := func(at int) {
		if start >= 0 {
			all = append(all, l.Points[start:at:at])
		}
		start = -1
	}
	for i, p := range l.Points {
		if !finite(p.X, p.Y) {
			end(i)
			continue
		}
		if start >= 0 && l.Step > 0 && math.Abs(p.X-l.Points[i-1].X) > 1.5*l.Step {
			end(i)
		}
		if start < 0 {
			start = i
		}
	}
	end(len(l.Points))
	return all
}

func (ch Chart) format() func(float64, int) string {
	if ch.Format != nil {
		return ch.Format
	}
	return format
}

func (ch Chart) font() canvas.Font { return canvas.Font{SizePT: typeSize(ch.SizePT)} }

// check refuses what cannot be drawn.
func (ch Chart) check() error {
	bad := func(what string, lo, hi float64) error {
		return fmt.Errorf("chart: %s from %v to %v; accepted are finite numbers, the lower one first", what, lo, hi)
	}
	for _, a := range []struct {
		what string
		a    Axis
	}{{"x axis", ch.X}, {"y axis", ch.Y}} {
		if a.a.Low == 0 && a.a.High == 0 {
			continue
		}
		if !finite(a.a.Low, a.a.High) || !(a.a.Low < a.a.High) {
			return bad(a.what, a.a.Low, a.a.High)
		}
	}
	if b := ch.Band; b != nil && (!finite(b.Low, b.High) || !(b.Low <= b.High)) {
		return bad("band", b.Low, b.High)
	}
	if b := ch.Range; b != nil && (!finite(b.Low, b.High) || !(b.Low <= b.High)) {
		return bad("range", b.Low, b.High)
	}
	if m := ch.Mark; m != nil && (!finite(m.X, m.Y, m.Low, m.High) || !(m.Low <= m.Y && m.Y <= m.High)) {
		return fmt.Errorf("chart: mark at %v, %v with a bar from %v to %v; accepted are finite numbers, the point within its bar",
			m.X, m.Y, m.Low, m.High)
	}
	top := []Tick{}
	if ch.Top != nil {
		top = ch.Top.Ticks
	}
	for _, ts := range [][]Tick{ch.X.Ticks, ch.Y.Ticks, top} {
		for _, t := range ts {
			if !finite(t.At) {
				return fmt.Errorf("chart: tick %q at %v; accepted are finite numbers", t.Label, t.At)
			}
		}
	}
	for _, l := range ch.Lines {
		if _, ok := l.last(); ok {
			return nil
		}
	}
	return fmt.Errorf("chart: %w: none of the %d lines has a finite point", ErrNoData, len(ch.Lines))
}

// span is the interval of each axis; fixed tells that the caller set it.
func (ch Chart) span() (x, y Interval, fixedX, fixedY bool, err error) {
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
	for _, t := range ch.X.Ticks {
		grow(&x, t.At)
	}
	for _, t := range ch.Y.Ticks {
		grow(&y, t.At)
	}
	if fixedX = ch.X.Low != 0 || ch.X.High != 0; fixedX {
		x = Interval{ch.X.Low, ch.X.High}
	}
	if fixedY = ch.Y.Low != 0 || ch.Y.High != 0; fixedY {
		y = Interval{ch.Y.Low, ch.Y.High}
	}
	x.Low, x.High = widen(x.Low, x.High)
	y.Low, y.High = widen(y.Low, y.High)
	if m := ch.Mark; m != nil && !(m.X >= x.Low && m.X <= x.High && m.Y >= y.Low && m.Y <= y.High) {
		err = fmt.Errorf("chart: the mark at %v, %v lies outside the axes %v to %v and %v to %v",
			m.X, m.Y, x.Low, x.High, y.Low, y.High)
	}
	const most = 1e12
	if !(math.Max(math.Abs(x.Low), math.Abs(x.High)) <= most && math.Max(math.Abs(y.Low), math.Abs(y.High)) <= most) {
		err = fmt.Errorf("chart: axes %v to %v and %v to %v; accepted are numbers up to %g", x.Low, x.High, y.Low, y.High, most)
	}
	return x, y, fixedX, fixedY, err
}

// Draw draws the chart inside r. The error is ErrNoRoom when texts and plot do not fit,
// ErrNoData when there is nothing to draw.
func (ch Chart) Draw(c canvas.Canvas, r Rect) error {
	if err := r.check("chart"); err != nil {
		return err
	}
	if err := ch.check(); err != nil {
		return err
	}
	l, err := ch.layout(c, r)
	if err != nil {
		return err
	}
	return l.draw()
}

// Fit is the chart with as many of its lines as have room for their labels in r: the chosen
// one, and of the others an even choice by their height at the end. A label of more than two
// rows is cut with an ellipsis, and where not even one line has room, the scale above the plot
// is left out.
func (ch Chart) Fit(c canvas.Canvas, r Rect) Chart {
	ch, _ = ch.fit(c, r)
	return ch
}

// DrawFit draws what Fit makes of the chart.
func (ch Chart) DrawFit(c canvas.Canvas, r Rect) error {
	if err := r.check("chart"); err != nil {
		return err
	}
	ch, l := ch.fit(c, r)
	if l == nil {
		return ch.Draw(c, r)
	}
	return l.draw()
}

// fit is Fit with the places of its outcome; nil where Draw would tell of an error.
func (ch Chart) fit(c canvas.Canvas, r Rect) (Chart, *layout) {
	ch.Lines = append([]Line(nil), ch.Lines...)
	for i, l := range ch.Lines {
		ch.Lines[i].Label = shortened(c, l.Label, l.font(ch.font()), labelOfW*r.W, 2)
	}
	var all *layout // of all lines: their labels are as high with fewer, and the plot too
	for n := len(ch.Lines); n > 1; n-- {
		if all != nil && !all.takes(ch.kept(n)) {
			continue
		}
		t := ch.thinned(n)
		if t.check() != nil {
			return t, nil
		}
		if l, err := t.layout(c, r); err == nil {
			if _, ok := l.spreadLabels(l.plot.Y, l.plot.Bottom()); ok {
				return t, l
			}
			if n == len(ch.Lines) && len(t.Lines) == n {
				all = l
			}
		}
	}
	last := ch.thinned(1)
	if last.check() != nil {
		return last, nil
	}
	l, err := last.layout(c, r)
	if err == nil {
		return last, l
	}
	if errors.Is(err, ErrNoRoom) && ch.Top != nil {
		ch.Top = nil
		return ch.fit(c, r)
	}
	return last, nil
}
