package figure

import (
	"fmt"
	"math"

	"github.com/wcharczuk/go-chart/v2"

	"bladecard/render/canvas"
)

// layer is a chart.Series that draws itself: what go-chart lacks.
type layer func(r *renderer, box chart.Box)

var _ chart.Series = layer(nil)

func (layer) GetName() string           { return "" }
func (layer) GetYAxis() chart.YAxisType { return chart.YAxisSecondary }
func (layer) GetStyle() chart.Style     { return chart.Style{} }
func (layer) Validate() error           { return nil }

func (f layer) Render(r chart.Renderer, box chart.Box, _, _ chart.Range, _ chart.Style) {
	if own, is := r.(*renderer); is {
		f(own, box)
	}
}

// ground tints the band and lays the grid over it. The axes of go-chart could draw the grid, but
// go-chart draws series after the axes, so that a band would hide it; it has no series that
// tints between two heights either.
func (p *plot) ground(r *renderer, box chart.Box) {
	if w, h := r.mm(float64(box.Right-box.Left)), r.mm(float64(box.Bottom-box.Top)); w < leastPlotW || h < leastPlotH {
		r.fail(noRoom("chart", p.r, fmt.Sprintf("labels leave a plot of %.1f x %.1f mm, least is %d x %d", w, h, leastPlotW, leastPlotH)))
		return
	}
	level := func(v float64, s chart.Style) { chart.GridLine{Value: v, Style: s}.Render(r, box, p.y, false, s) }
	upright := func(v float64, s chart.Style) { chart.GridLine{Value: v, Style: s}.Render(r, box, p.x, true, s) }
	fill := func(b chart.Box, c canvas.Color) { chart.Draw.Box(r, b, chart.Style{FillColor: solid(c)}) }
	band := p.ch.Band
	if band != nil {
		fill(chart.Box{Top: box.Bottom - p.y.Translate(band.High), Bottom: box.Bottom - p.y.Translate(band.Low),
			Left: box.Left, Right: box.Right}, bandGray)
	}
	for _, t := range p.y.ticks {
		if t.Value > p.y.Min { // the axis is there already
			level(t.Value, stroke(gridGray, hairMM))
		}
	}
	for _, t := range p.x.ticks {
		if t.Value > p.x.Min {
			upright(t.Value, stroke(gridGray, hairMM))
		}
	}
	if band != nil { // a printer may lose the tint
		for _, v := range []float64{band.Low, band.High} {
			level(v, stroke(canvas.White, edgeMM))
			level(v, stroke(canvas.Black, edgeMM, 0.9, 0.6))
		}
	}
	if b := p.ch.Range; b != nil {
		upright(b.Low, stroke(canvas.Black, edgeMM, 0.3, 0.7))
		upright(b.High, stroke(canvas.Black, edgeMM, 0.3, 0.7))
		const downMM, highMM = 0.2, 0.8
		bar := chart.Box{Top: box.Bottom + unitsUp(downMM), Bottom: box.Bottom + unitsUp(downMM+highMM),
			Left: box.Left + p.x.Translate(b.Low), Right: box.Left + p.x.Translate(b.High)}
		if half := unitsUp(highMM / 2); bar.Width() < 2*half { // a range of one value still shows
			bar.Left, bar.Right = bar.Left-half, bar.Right+half
		}
		fill(bar, canvas.Black)
	}
}

// drawEnds writes the label of each line at its end, with a piece of the line and a dotted hair
// to where it ends. The annotations of go-chart are boxes of one row that overlap.
func (p *plot) drawEnds(r *renderer, box chart.Box) {
	if r.err != nil {
		return
	}
	var want, size []float64
	from := make([]canvas.Point, len(p.ends))
	right, bottom := box.Right, box.Bottom
	for i, e := range p.ends {
		x := right
		if !e.band {
			x = box.Left + p.x.Translate(e.at.X)
		}
		from[i] = r.point(float64(x), float64(bottom-p.y.Translate(e.at.Y)))
		want, size = append(want, from[i].Y), append(size, e.h)
	}
	top, low := r.point(float64(right), float64(box.Top)), r.point(float64(right), float64(bottom))
	at, ok := spread(want, size, top.Y-p.over, low.Y+p.under)
	if !ok {
		r.fail(noRoom("chart", p.r, "the label of the line needs more height than the plot has"))
		return
	}
	start := p.r.Right() - p.columnW + connectorMM
	for i, e := range p.ends {
		y := at[i]
		stub := []canvas.Point{{X: start, Y: y}, {X: start + stubMM, Y: y}}
		if plain := from[i].X > top.X-0.05 && math.Abs(y-from[i].Y) < 0.2; plain && !e.band {
			stub[0] = from[i]
		} else {
			r.line(stroke(canvas.Black, edgeMM, 0.3, 0.4), from[i], canvas.Point{X: top.X, Y: from[i].Y}, stub[0])
		}
		switch half := capEM / 2 * p.em; {
		case e.band:
			p.c.Draw(rectPath(start, y-half, stubMM, 2*half), &bandGray, ink(edgeMM, 0.9, 0.6))
		case e.line.Dots:
			dot(p.c, canvas.Point{X: start + stubMM/2, Y: y}, dotMM, canvas.Black)
		default:
			r.line(e.line.style(), stub...)
		}
		e.draw(p.c, start+stubMM+gapMM, y-e.h/2, e.w, 0)
	}
}

// drawTitles writes the titles level, that of y above its axis, and the second scale of x above
// the plot. go-chart turns the title of y, breaks none, and has no second axis of x.
func (p *plot) drawTitles(r chart.Renderer, box chart.Box, _ chart.Style) {
	own, is := r.(*renderer)
	if !is {
		return
	}
	a, b := own.point(float64(box.Left), float64(box.Top)), own.point(float64(box.Right), float64(box.Top))
	center := func(t block) float64 { return clamp((a.X+b.X-t.w)/2, p.r.X, p.r.Right()-t.w) }
	p.yTitle.draw(p.c, p.r.X, p.r.Y, p.yTitle.w, 0)
	p.xTitle.draw(p.c, center(p.xTitle), p.r.Bottom()-p.xTitle.h, p.xTitle.w, 0.5)
	if p.ch.Top == nil {
		return
	}
	x := p.r.Right() - p.topTitle.w
	if p.topRow > 0 {
		x = center(p.topTitle)
	}
	p.topTitle.draw(p.c, x, p.r.Y+p.topRow, p.topTitle.w, 0.5)
	own.line(stroke(canvas.Black, axisMM), a, b)
	f, end := p.ch.font(), math.Inf(-1)
	for _, t := range p.x.ticks {
		at := own.point(float64(box.Left+p.x.Translate(t.Value)), float64(box.Top))
		own.line(stroke(canvas.Black, axisMM), at, canvas.Point{X: at.X, Y: at.Y - axisGapMM/2})
		s := p.ch.Top.Label(t.Value)
		w := p.c.TextWidth(s, f)
		if x := clamp(at.X-w/2, p.r.X, p.r.Right()-p.columnW+connectorMM-w); x > end { // moved in, the last may reach the one before
			p.c.Text(x, at.Y-(clearEM+canvas.Descent)*p.em, s, f, canvas.Black, 0)
			end = x + w
		}
	}
}
