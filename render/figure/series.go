package figure

import (
	"math"

	"github.com/wcharczuk/go-chart/v2"

	"bladecard/render/canvas"
)

// series is a layer of a chart that draws itself once go-chart has fixed the plot: band, grid,
// lines, mark, labels.
type series struct {
	name string
	l    *layout
	draw func() error
}

var _ chart.Series = series{}

func (s series) GetName() string { return s.name }

// GetYAxis is the secondary axis: go-chart draws that one on the left.
func (s series) GetYAxis() chart.YAxisType { return chart.YAxisSecondary }
func (s series) GetStyle() chart.Style     { return chart.Style{} }
func (s series) Validate() error           { return nil }

func (s series) Render(r chart.Renderer, box chart.Box, _, _ chart.Range, _ chart.Style) {
	own, is := r.(*renderer)
	if !is {
		return
	}
	a := own.point(float64(box.Left), float64(box.Top))
	b := own.point(float64(box.Right), float64(box.Bottom))
	s.l.plot = Rect{a.X, a.Y, b.X - a.X, b.Y - a.Y}
	if err := s.draw(); err != nil {
		own.fail(err)
	}
}

// drawBand tints what is allowed on y.
func (l *layout) drawBand() error {
	b := l.ch.Band
	if b == nil || b.High <= l.y.lo || b.Low >= l.y.hi {
		return nil
	}
	top := l.at(XY{l.x.lo, math.Min(b.High, l.y.hi)}).Y
	low := l.at(XY{l.x.lo, math.Max(b.Low, l.y.lo)}).Y
	tint := canvas.Gray(224)
	if low > top {
		l.c.Draw(rectPath(l.plot.X, top, l.plot.W, low-top), &tint, canvas.Pen{})
	}
	return nil
}

// drawEdges marks the ends of the band, over the grid: a printer may lose the tint.
func (l *layout) drawEdges() error {
	b, p := l.ch.Band, l.plot
	if b == nil {
		return nil
	}
	for _, v := range []float64{b.Low, b.High} {
		if y := l.at(XY{l.x.lo, v}).Y; v >= l.y.lo && v <= l.y.hi {
			ends := polyline(canvas.Point{X: p.X, Y: y}, canvas.Point{X: p.Right(), Y: y})
			l.c.Draw(ends, nil, canvas.Pen{Color: canvas.White, WidthMM: 0.15})
			l.c.Draw(ends, nil, ink(0.15, 0.9, 0.6))
		}
	}
	return nil
}

// drawGrid lays hairlines at the labelled ticks, over the band.
func (l *layout) drawGrid() error {
	p := l.plot
	pen := canvas.Pen{Color: canvas.Gray(150), WidthMM: hairMM}
	for _, t := range l.y.ticks {
		if y := l.at(XY{l.x.lo, t.At}).Y; t.Label != "" && t.At > l.y.lo {
			l.c.Draw(polyline(canvas.Point{X: p.X, Y: y}, canvas.Point{X: p.Right(), Y: y}), nil, pen)
		}
	}
	for _, t := range l.x.ticks {
		if x := l.at(XY{t.At, l.y.lo}).X; t.Label != "" && t.At > l.x.lo {
			l.c.Draw(polyline(canvas.Point{X: x, Y: p.Y}, canvas.Point{X: x, Y: p.Bottom()}), nil, pen)
		}
	}
	return nil
}

// drawRange sets a bar under the x axis, with fine lines up from its ends.
func (l *layout) drawRange() error {
	b := l.ch.Range
	if b == nil || b.High < l.x.lo || b.Low > l.x.hi {
		return nil
	}
	x0 := l.at(XY{math.Max(b.Low, l.x.lo), l.y.lo}).X
	x1 := l.at(XY{math.Min(b.High, l.x.hi), l.y.lo}).X
	const widthMM, belowMM = 0.8, 0.2
	if x1-x0 < widthMM { // a range of one value still shows
		m := (x0 + x1) / 2
		x0, x1 = m-widthMM/2, m+widthMM/2
	}
	l.c.Draw(rectPath(x0, l.plot.Bottom()+belowMM, x1-x0, widthMM), &canvas.Black, canvas.Pen{})
	for _, v := range []float64{b.Low, b.High} {
		if x := l.at(XY{v, l.y.lo}).X; v >= l.x.lo && v <= l.x.hi {
			l.c.Draw(polyline(canvas.Point{X: x, Y: l.plot.Y}, canvas.Point{X: x, Y: l.plot.Bottom()}), nil, ink(0.15, 0.3, 0.7))
		}
	}
	return nil
}

// drawLines draws the lines, the chosen ones last. A point that stands alone is a dot.
func (l *layout) drawLines() error {
	for _, strong := range []bool{false, true} {
		for _, line := range l.ch.Lines {
			if line.Strong != strong {
				continue
			}
			runs, _, _ := l.pieces(line)
			for _, run := range runs {
				if len(run) == 1 {
					dot(l.c, run[0], math.Min(2*line.pen().WidthMM, markMM), canvas.Black, canvas.Pen{})
					continue
				}
				l.c.Draw(polyline(run...), nil, line.pen())
			}
		}
	}
	return nil
}

// drawMark draws the chosen point and its bar, with a white rim so that it stands out.
func (l *layout) drawMark() error {
	m := l.ch.Mark
	if m == nil {
		return nil
	}
	at := l.at(XY{m.X, m.Y})
	if m.High > m.Low {
		top := math.Max(l.at(XY{m.X, m.High}).Y, l.plot.Y)
		low := math.Min(l.at(XY{m.X, m.Low}).Y, l.plot.Bottom())
		var bar canvas.Path
		bar.Move(at.X, top)
		bar.Line(at.X, low)
		const capMM = 0.9
		for _, y := range []float64{top, low} {
			bar.Move(at.X-capMM, y)
			bar.Line(at.X+capMM, y)
		}
		l.c.Draw(bar, nil, canvas.Pen{Color: canvas.White, WidthMM: 0.9})
		l.c.Draw(bar, nil, ink(0.3))
	}
	dot(l.c, at, markMM, canvas.Black, canvas.Pen{Color: canvas.White, WidthMM: 0.35})
	return nil
}

// drawLabels writes the label of each line at its end, moved apart where they would overlap,
// with a piece of line in its own dash and a hairline to where the line ends.
func (l *layout) drawLabels() error {
	p := l.plot
	lo, hi := p.Y-(clearEM-0.02)*l.em, p.Bottom()+(belowEM-canvas.Ascent-0.05)*l.em
	labels, ok := l.spreadLabels(lo, hi)
	if !ok {
		return noRoom("chart", l.r, "the labels of the lines need more height than the plot has; draw fewer lines")
	}
	for _, e := range labels {
		b, pen := l.labels[e.line], l.ch.Lines[e.line].pen()
		x0 := p.Right() + connectorMM
		start := x0
		if hair := ink(hairMM, 0.3, 0.4); e.from.X < p.Right()-0.05 {
			l.c.Draw(polyline(e.from, canvas.Point{X: p.Right(), Y: e.from.Y}, canvas.Point{X: x0, Y: e.middle}), nil, hair)
		} else if math.Abs(e.middle-e.from.Y) > 0.2 {
			l.c.Draw(polyline(canvas.Point{X: p.Right(), Y: e.from.Y}, canvas.Point{X: x0, Y: e.middle}), nil, ink(hairMM))
		} else {
			start = p.Right()
		}
		l.c.Draw(polyline(canvas.Point{X: start, Y: e.middle}, canvas.Point{X: x0 + stubMM, Y: e.middle}), nil, pen)
		b.draw(l.c, x0+stubMM+gapMM, e.middle-b.h/2, b.w, 0)
	}
	return nil
}

// drawTitles writes the axis titles level, and the second scale of x above the plot.
func (l *layout) drawTitles() error {
	r, p, f := l.r, l.plot, l.ch.font()
	l.yTitle.draw(l.c, r.X, r.Y, r.W, 0)
	center := func(b block) float64 { return clamp(p.X+(p.W-b.w)/2, r.X, r.Right()-b.w) }
	l.xTitle.draw(l.c, center(l.xTitle), r.Bottom()-l.xTitle.h, l.xTitle.w, 0.5)
	if l.ch.Top == nil {
		return nil
	}
	if l.oneRow {
		l.topTitle.draw(l.c, r.Right()-l.topTitle.w, r.Y, l.topTitle.w, 0)
	} else {
		l.topTitle.draw(l.c, center(l.topTitle), r.Y+l.yTitle.h, l.topTitle.w, 0.5)
	}
	l.c.Draw(polyline(canvas.Point{X: p.X, Y: p.Y}, canvas.Point{X: p.Right(), Y: p.Y}), nil, ink(axisMM))
	base := p.Y - (clearEM+canvas.Descent)*l.em
	end := math.Inf(-1)
	for _, t := range l.top {
		x := l.at(XY{t.At, l.y.hi}).X
		l.c.Draw(polyline(canvas.Point{X: x, Y: p.Y}, canvas.Point{X: x, Y: p.Y - axisGapMM/2}), nil, ink(axisMM))
		w := l.c.TextWidth(t.Label, f)
		if x = clamp(x-w/2, r.X, r.Right()-w); t.Label != "" && x > end {
			l.c.Text(x, base, t.Label, f, canvas.Black, 0)
			end = x + w + 0.3*l.em
		}
	}
	return nil
}

// dot is a filled circle.
func dot(c canvas.Canvas, m canvas.Point, radius float64, fill canvas.Color, pen canvas.Pen) {
	var p canvas.Path
	p.Move(m.X+radius, m.Y)
	arc(&p, m, radius, radius, 0, 2*math.Pi)
	p.Close()
	c.Draw(p, &fill, pen)
}
