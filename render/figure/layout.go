package figure

import (
	"fmt"
	"math"
	"sort"

	"github.com/wcharczuk/go-chart/v2"

	"bladecard/render/canvas"
)

// Places of the label column right of the plot, mm: a connector, a piece of line in its own
// dash, a gap, the label.
const (
	connectorMM = 2.2
	stubMM      = 3.6
	gapMM       = 0.8
)

// labelOfW is the widest end label, as a share of the chart's width.
const labelOfW = 0.36

// Least size of the plot itself, mm.
const (
	leastPlotW = 10
	leastPlotH = 6
)

// axisGapMM is go-chart's distance from an axis to its labels.
const axisGapMM = chart.DefaultXAxisMargin / pxPerMM

// clearEM is the room that half a tick label takes above and below its tick, in em, the
// ascent for accents included, and a little.
const clearEM = canvas.Ascent - capEM/2 + 0.04

// layout is a chart with its places. plot is an estimate until go-chart has drawn the axes.
type layout struct {
	ch                       Chart
	c                        canvas.Canvas
	r                        Rect
	em                       float64
	x, y                     scale
	top                      []Tick
	xTitle, yTitle, topTitle block
	oneRow                   bool    // both upper titles on one line
	topH                     float64 // from the top of r to the plot
	bottomH                  float64 // from the plot to the bottom of r
	labels                   []block // of the lines, by index
	columnW                  float64 // of the end labels
	plot                     Rect
}

// layout finds the places, or tells what does not fit.
func (ch Chart) layout(c canvas.Canvas, r Rect) (*layout, error) {
	f := ch.font()
	l := &layout{ch: ch, c: c, r: r, em: em(f)}
	x, y, fixedX, fixedY, err := ch.span()
	if err != nil {
		return nil, err
	}
	if err := l.texts(); err != nil {
		return nil, err
	}

	h := r.H - l.topH - l.bottomH
	if h < leastPlotH {
		return nil, noRoom("chart", r, fmt.Sprintf("titles and ticks leave a plot %.1f mm high, least is %d", h, leastPlotH))
	}
	l.y = l.yScale(y, fixedY, h)
	left := axisGapMM + 2*axisMM
	for _, t := range l.y.ticks {
		left = math.Max(left, c.TextWidth(t.Label, f)+axisGapMM+2*axisMM)
	}
	w := r.W - left - l.columnW
	l.plot = Rect{r.X + left, r.Y + l.topH, w, h}
	// Labels that stand over the ends of the axis narrow the plot, so the ticks are found twice.
	for range 2 {
		if l.plot.W < leastPlotW {
			break
		}
		if len(ch.X.Ticks) == 0 {
			l.x = fitRound(c, x.Low, x.High, fixedX, l.plot.W, f, ch.format())
		} else {
			l.x = scale{x.Low, x.High, sorted(ch.X.Ticks)}.spanned()
			l.x.ticks = thin(c, l.x.ticks, l.x, l.plot.W, f)
		}
		first, last := c.TextWidth(l.x.ticks[0].Label, f)/2, c.TextWidth(l.x.ticks[len(l.x.ticks)-1].Label, f)/2
		l.plot.X = r.X + math.Max(left, first)
		l.plot.W = r.Right() - math.Max(l.columnW, last) - l.plot.X
	}
	if w = l.plot.W; w < leastPlotW {
		return nil, noRoom("chart", r, fmt.Sprintf("labels leave a plot %.1f mm wide, least is %d", w, leastPlotW))
	}
	if ch.Top != nil {
		l.top = sorted(ch.Top.Ticks)
		if len(l.top) == 0 && ch.Top.Label != nil {
			for _, t := range l.x.ticks {
				if t.Label != "" {
					l.top = append(l.top, Tick{t.At, ch.Top.Label(t.At)})
				}
			}
		}
		s := scale{l.x.lo, l.x.hi, nil}
		for _, t := range l.top {
			if t.At >= l.x.lo && t.At <= l.x.hi {
				s.ticks = append(s.ticks, t)
			}
		}
		l.top = thin(c, s.ticks, s, w, f)
	}
	return l, nil
}

// texts measures titles and end labels and the rows that they take.
func (l *layout) texts() error {
	ch, c, r, f := l.ch, l.c, l.r, l.ch.font()
	fits := true // two of go-chart's units are kept for its rounding
	set := func(s string, font canvas.Font, max float64) block {
		b, ok := newBlock(c, s, font, max)
		fits = fits && ok
		return b
	}
	l.xTitle = set(ch.X.Title, f, r.W)
	l.yTitle = set(ch.Y.Title, f, r.W)
	l.topH, l.bottomH = l.yTitle.h+clearEM*l.em+2/pxPerMM, axisGapMM+belowMM(l.em)+canvas.Descent*l.em+l.xTitle.h
	if ch.Top != nil {
		l.topTitle = set(ch.Top.Title, f, r.W)
		l.oneRow = len(l.yTitle.lines) <= 1 && len(l.topTitle.lines) <= 1 && l.yTitle.w+l.topTitle.w+2*l.em <= r.W
		l.topH += lineEM * l.em
		if !l.oneRow {
			l.topH += l.topTitle.h
		} else {
			l.topH += math.Max(l.yTitle.h, l.topTitle.h) - l.yTitle.h
		}
	}
	for _, line := range ch.Lines {
		b := set(line.Label, line.font(f), labelOfW*r.W)
		if _, ok := line.last(); len(b.lines) > 0 && ok {
			l.columnW = math.Max(l.columnW, connectorMM+stubMM+gapMM+b.w)
		}
		l.labels = append(l.labels, b)
	}
	l.columnW = math.Max(l.columnW, markMM+0.3)
	if !fits {
		return noRoom("chart", r, "a letter is wider than its place")
	}
	return nil
}

// leastApartEM is the least distance of two tick labels of y, in em.
const leastApartEM = 1.25

// yScale makes the ticks of y for a plot of height h, as close as their labels allow.
func (l *layout) yScale(y Interval, fixed bool, h float64) scale {
	var s scale
	if ts := l.ch.Y.Ticks; len(ts) > 0 {
		s = scale{y.Low, y.High, sorted(ts)}.spanned()
		s.ticks = l.thinY(s, h)
		return s
	}
	most := 6
	if fixed { // ticks only within: closer ones may be needed for two of them
		most = 12
	}
	fits := false
	last := 0.0
	for n := most; n >= 1 && !fits; n-- {
		step := roundStep((y.High - y.Low) / float64(n))
		if step == last {
			continue // the same ticks again
		}
		last = step
		s = roundTicks(y.Low, y.High, n, fixed, l.ch.format())
		fits = h/float64(len(s.ticks)-1) >= 1.6*l.em
	}
	if !fixed && (!fits || y.High-y.Low < 0.75*(s.hi-s.lo)) {
		if t, ok := l.tight(y, h); ok {
			return t
		}
	}
	if !fits {
		s.ticks = l.thinY(s, h)
	}
	return s
}

// tight is a scale that ends a little beyond the data and not at ticks, for a plot so low that
// round ends would take half of it. ok is false where two labelled ticks do not fit.
func (l *layout) tight(y Interval, h float64) (s scale, ok bool) {
	pad := 0.05 * (y.High - y.Low)
	lo, hi := y.Low-pad, y.High+pad
	if y.Low >= 0 {
		lo = math.Max(0, lo)
	}
	last := 0.0
	for n := 12; n >= 1; n-- {
		step := roundStep((hi - lo) / float64(n))
		if step == last {
			continue // the same ticks again
		}
		last = step
		s = roundTicks(lo, hi, n, true, l.ch.format())
		var at []float64
		for _, t := range s.ticks {
			if t.Label != "" {
				at = append(at, s.share(t.At)*h)
			}
		}
		if len(at) >= 2 && at[1]-at[0] >= leastApartEM*l.em {
			return s, true
		}
	}
	return s, false
}

// thinY drops labels of y that would touch the one below.
func (l *layout) thinY(s scale, h float64) []Tick {
	out := append([]Tick(nil), s.ticks...)
	last := math.Inf(-1)
	for i, t := range out {
		if at := s.share(t.At) * h; t.Label != "" && at-last >= leastApartEM*l.em {
			last = at
		} else {
			out[i].Label = ""
		}
	}
	return out
}

func sorted(ts []Tick) []Tick {
	out := append([]Tick(nil), ts...)
	sort.SliceStable(out, func(a, b int) bool { return out[a].At < out[b].At })
	return out
}

// at is the place of a point of the data.
func (l *layout) at(p XY) canvas.Point {
	return canvas.Point{X: l.plot.X + l.x.share(p.X)*l.plot.W, Y: l.plot.Bottom() - l.y.share(p.Y)*l.plot.H}
}

// pieces are the line's straight pieces within the plot, run by run, and the end of the last.
func (l *layout) pieces(line Line) (runs [][]canvas.Point, end canvas.Point, ok bool) {
	for _, run := range line.runs() {
		if len(run) == 1 {
			if p := l.at(run[0]); inside(p, l.plot) {
				runs, end, ok = append(runs, []canvas.Point{p}), p, true
			}
			continue
		}
		var now []canvas.Point
		for i := 1; i < len(run); i++ {
			p, q, in := clipRect(l.at(run[i-1]), l.at(run[i]), l.plot)
			if !in {
				continue
			}
			if n := len(now); n > 0 && math.Hypot(now[n-1].X-p.X, now[n-1].Y-p.Y) > 1e-9 {
				runs, now = append(runs, now), nil
			}
			if len(now) == 0 {
				now = append(now, p)
			}
			now = append(now, q)
			end, ok = q, true
		}
		if len(now) > 0 {
			runs = append(runs, now)
		}
	}
	return runs, end, ok
}

func inside(p canvas.Point, r Rect) bool {
	const near = 1e-6
	return p.X >= r.X-near && p.X <= r.Right()+near && p.Y >= r.Y-near && p.Y <= r.Bottom()+near
}

// endLabel is the place of the label of a line.
type endLabel struct {
	line   int
	from   canvas.Point // end of the line
	middle float64      // of the label, y
}

// takes tells whether the end labels of some lines are together no higher than the plot.
func (l *layout) takes(lines []int) bool {
	total := 0.0
	for _, i := range lines {
		if _, _, drawn := l.pieces(l.ch.Lines[i]); drawn && len(l.labels[i].lines) > 0 {
			total += l.labels[i].h
		}
	}
	return total <= l.plot.H+1e-9
}

// spreadLabels places the end labels so that none overlaps; ok is false when they need more
// height than there is.
func (l *layout) spreadLabels(lo, hi float64) (out []endLabel, ok bool) {
	var want, size []float64
	for i, line := range l.ch.Lines {
		_, end, drawn := l.pieces(line)
		if !drawn || len(l.labels[i].lines) == 0 {
			continue
		}
		out = append(out, endLabel{line: i, from: end})
		want, size = append(want, end.Y), append(size, l.labels[i].h)
	}
	at, ok := spread(want, size, lo, hi)
	if !ok {
		return nil, false
	}
	for i := range out {
		out[i].middle = at[i]
	}
	return out, true
}
