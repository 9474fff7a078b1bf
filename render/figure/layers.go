package figure

import (
	"fmt"
	"math"

	"github.com/wcharczuk/go-chart/v2"
	"github.com/wcharczuk/go-chart/v2/drawing"

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

// checkSize refuses a plot that the labels leave too small.
func (p *plot) checkSize(r *renderer, box chart.Box) {
	if w, h := r.mm(box.Right-box.Left), r.mm(box.Bottom-box.Top); w < leastPlotW || h < leastPlotH {
		r.fail(noRoom("chart", p.r, fmt.Sprintf("labels leave a plot of %.1f x %.1f mm, least is %d x %d", w, h, leastPlotW, leastPlotH)))
	}
}

// level and upright draw a line over the whole plot at a value of y or of x.
func (p *plot) level(r *renderer, box chart.Box, v float64, s chart.Style) {
	chart.GridLine{Value: v, Style: s}.Render(r, box, p.y, false, s)
}

func (p *plot) upright(r *renderer, box chart.Box, v float64, s chart.Style) {
	chart.GridLine{Value: v, Style: s}.Render(r, box, p.x, true, s)
}

// drawBand tints the band: go-chart has no series that tints between two heights.
func (p *plot) drawBand(r *renderer, box chart.Box) {
	if b := p.ch.Band; b != nil {
		box.Top, box.Bottom = box.Bottom-p.y.Translate(b.High), box.Bottom-p.y.Translate(b.Low)
		chart.Draw.Box(r, box, chart.Style{FillColor: solid(bandGray)})
	}
}

// drawGrid lays the grid over the band. The axes of go-chart could draw it, but they come before
// all series, so that the band would hide it.
func (p *plot) drawGrid(r *renderer, box chart.Box) {
	hair := stroke(gridGray, hairMM)
	for _, t := range p.y.ticks {
		if t.Value > p.y.Min { // the axis is there already
			p.level(r, box, t.Value, hair)
		}
	}
	for _, t := range p.x.ticks {
		if t.Value > p.x.Min {
			p.upright(r, box, t.Value, hair)
		}
	}
}

// drawEdges draws the ends of the band, for a printer may lose the tint.
func (p *plot) drawEdges(r *renderer, box chart.Box) {
	if b := p.ch.Band; b != nil {
		for _, v := range []float64{b.Low, b.High} {
			p.level(r, box, v, stroke(canvas.White, edgeMM))
			p.level(r, box, v, stroke(canvas.Black, edgeMM, 0.9, 0.6))
		}
	}
}

// drawRange sets a bar under the x axis, with dotted lines up from its ends.
func (p *plot) drawRange(r *renderer, box chart.Box) {
	b := p.ch.Range
	if b == nil {
		return
	}
	p.upright(r, box, b.Low, stroke(canvas.Black, edgeMM, 0.3, 0.7))
	p.upright(r, box, b.High, stroke(canvas.Black, edgeMM, 0.3, 0.7))
	const downMM, highMM = 0.2, 0.8
	bar := chart.Box{Top: box.Bottom + unitsUp(downMM), Bottom: box.Bottom + unitsUp(downMM+highMM),
		Left: box.Left + p.x.Translate(b.Low), Right: box.Left + p.x.Translate(b.High)}
	if half := unitsUp(highMM / 2); bar.Width() < 2*half { // a range of one value still shows
		bar.Left, bar.Right = bar.Left-half, bar.Right+half
	}
	chart.Draw.Box(r, bar, chart.Style{FillColor: drawing.ColorBlack})
}

// drawEnds writes the labels of the lines and of the band at their ends, none over another. The
// annotations of go-chart are boxes of one row that overlap.
func (p *plot) drawEnds(r *renderer, box chart.Box) {
	var want, size []float64
	var from []canvas.Point
	for _, e := range p.ends {
		x := box.Right
		if !e.band {
			x = box.Left + p.x.Translate(e.at.X)
		}
		at := r.point(x, box.Bottom-p.y.Translate(e.at.Y))
		from, want, size = append(from, at), append(want, at.Y), append(size, e.h)
	}
	top, bottom := r.point(box.Right, box.Top), r.point(box.Right, box.Bottom)
	at, ok := spread(want, size, top.Y-p.over, bottom.Y+p.under)
	if !ok {
		r.fail(noRoom("chart", p.r, "the label of the line needs more height than the plot has"))
		return
	}
	for i, e := range p.ends {
		p.drawEnd(r, e, from[i], canvas.Point{X: top.X, Y: from[i].Y}, at[i])
	}
}

// drawEnd writes a label with its middle at y, behind a piece of its line. A dotted hair leads
// there from where the line ends, by way of the side of the plot; a line that ends at that side
// and at that height goes on itself.
func (p *plot) drawEnd(r *renderer, e end, from, side canvas.Point, y float64) {
	start := p.r.Right() - p.columnW + connectorMM
	stub := []canvas.Point{{X: start, Y: y}, {X: start + stubMM, Y: y}}
	if !e.band && from.X > side.X-0.05 && math.Abs(y-from.Y) < 0.2 {
		stub[0] = from
	} else {
		r.line(stroke(canvas.Black, edgeMM, 0.3, 0.4), from, side, stub[0])
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

// drawTitles writes the titles level, that of y above its axis, and the second scale of x above
// the plot. go-chart turns the title of y, breaks none, and has no second axis of x.
func (p *plot) drawTitles(r chart.Renderer, box chart.Box, _ chart.Style) {
	own, is := r.(*renderer)
	if !is {
		return
	}
	a, b := own.point(box.Left, box.Top), own.point(box.Right, box.Top)
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
	f, end, right := p.ch.font(), math.Inf(-1), math.Min(p.r.Right(), p.r.Right()-p.columnW+connectorMM)
	for _, t := range p.x.ticks {
		at := own.point(box.Left+p.x.Translate(t.Value), box.Top)
		s := p.ch.Top.Label(t.Value)
		w := p.c.TextWidth(s, f)
		if x := clamp(at.X-w/2, p.r.X, right-w); x > end { // moved in, the last may reach the one before
			p.c.Text(x, at.Y-(clearEM+canvas.Descent)*p.em, s, f, canvas.Black, 0)
			end = x + w
		}
	}
}
