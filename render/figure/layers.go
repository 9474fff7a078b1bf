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

// drawGrid lays the grid over the bands. The axes of go-chart could draw it, but they come before
// all series, so that the bands would hide it.
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

// drawBreaks breaks an axis that does not begin at zero: two slanted strokes near its beginning.
func (p *plot) drawBreaks(r *renderer, box chart.Box) {
	const awayMM, apartMM, halfMM, slantMM = 1.6, 0.7, 0.9, 0.35
	corner := r.point(box.Left, box.Bottom)
	for _, axis := range []struct {
		broken bool
		ux, uy float64 // along the axis
	}{{p.x.Min > 0, 1, 0}, {p.y.Min > 0, 0, -1}} {
		if !axis.broken {
			continue
		}
		at := func(along, across float64) canvas.Point {
			return canvas.Point{X: corner.X + axis.ux*along + axis.uy*across, Y: corner.Y + axis.uy*along + axis.ux*across}
		}
		p.c.Draw(polyline(at(awayMM, 0), at(awayMM+apartMM, 0)), nil, canvas.Pen{Color: canvas.White, WidthMM: 2 * axisMM})
		for _, along := range []float64{awayMM, awayMM + apartMM} {
			p.c.Draw(polyline(at(along-slantMM, -halfMM), at(along+slantMM, halfMM)), nil, ink(axisMM))
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

// drawMarkers sets each line's sign on it, up to three times, beside those of the others, and its end marks.
func (p *plot) drawMarkers(r *renderer, box chart.Box) {
	place := func(v XY) canvas.Point { return r.point(box.Left+p.x.Translate(v.X), box.Bottom-p.y.Translate(v.Y)) }
	const apartMM = 25 // of the signs of one line, about
	times := int(clamp(r.mm(box.Width())/apartMM, 1, 3))
	for i, l := range p.ch.Lines {
		for k := range times {
			x := p.x.Min + p.x.GetDelta()*(float64(k)+(float64(i)+0.5)/float64(len(p.ch.Lines)))/float64(times)
			if !l.Dots && len(p.ch.Lines) > 1 && l.covers(x) {
				drawMarker(p.c, place(XY{x, l.at(x)}), l.Style)
			}
		}
	}
	for _, l := range p.ch.Lines {
		for _, e := range l.Ends {
			e.Why.draw(p.c, place(e.At))
		}
	}
}

// drawColumn writes the labels of the lines and of the bands, none over another, each behind a sample of
// what it names. The annotations of go-chart are boxes of one row that overlap.
func (p *plot) drawColumn(r *renderer, box chart.Box) {
	var want, size []float64
	for _, e := range p.ends {
		want, size = append(want, r.point(0, box.Bottom-p.y.Translate(e.at)).Y), append(size, e.h)
	}
	at, ok := spread(want, size, r.point(0, box.Top).Y-p.over, r.point(0, box.Bottom).Y+p.under)
	if !ok {
		r.fail(noRoom("chart", p.r, "the label of the line needs more height than the plot has"))
		return
	}
	x := p.r.Right() - p.columnW + beforeMM
	for i, e := range p.ends {
		e.sample(r, canvas.Point{X: x, Y: at[i]}, canvas.Point{X: x + stubMM, Y: at[i]})
		e.draw(p.c, x+stubMM+gapMM, at[i]-e.h/2, e.w, 0)
	}
}

// piece draws a piece of the line for its label.
func (l Line) piece(r *renderer, from, to canvas.Point) {
	middle := canvas.Point{X: (from.X + to.X) / 2, Y: from.Y}
	if l.Dots {
		dot(r.c, middle, dotMM, canvas.Black)
		return
	}
	r.line(l.style(), from, to)
	drawMarker(r.c, middle, l.Style)
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
	p.title.draw(p.c, p.r.X, p.r.Y, p.title.w, 0)
	p.yTitle.draw(p.c, p.r.X, p.r.Y+p.yRow, p.yTitle.w, 0)
	p.drawBottom(center(p.xTitle))
	if p.ch.Top == nil {
		return
	}
	x := p.r.Right() - p.topTitle.w
	if p.topRow > p.yRow {
		x = center(p.topTitle)
	}
	p.topTitle.draw(p.c, x, p.r.Y+p.topRow, p.topTitle.w, 0.5)
	own.line(stroke(canvas.Black, axisMM), a, b)
	f, end, right := p.ch.font(), math.Inf(-1), math.Min(p.r.Right(), p.r.Right()-p.columnW+beforeMM)
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

// drawBottom writes the title of x in the middle of its axis, or further left or higher where the meaning
// of the marks stands beside or under it.
func (p *plot) drawBottom(x float64) {
	y := p.r.Bottom() - p.xTitle.h
	mark := p.r.Right() - p.marksW
	switch {
	case len(p.marks) == 0:
	case len(p.xTitle.lines) == 1 && p.xTitle.w+p.marksW < p.r.W:
		x = math.Min(x, mark-p.xTitle.w)
	default:
		y -= lineEM * p.em
	}
	p.xTitle.draw(p.c, x, y, p.xTitle.w, 0.5)
	for _, m := range p.marks {
		row := p.r.Bottom() - lineEM*p.em
		m.mark.draw(p.c, canvas.Point{X: mark + 0.62*markEM*p.em, Y: row + lineEM*p.em/2})
		m.draw(p.c, mark+markEM*p.em, row, m.w, 0)
		mark += markEM*p.em + m.w
	}
}
