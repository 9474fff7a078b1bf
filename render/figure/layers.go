package figure

import (
	"fmt"
	"math"
	"slices"

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

// find keeps where the plot stands, and refuses one that the labels leave too small.
func (p *plot) find(r *renderer, box chart.Box) {
	a, b := r.point(box.Left, box.Top), r.point(box.Right, box.Bottom)
	p.in = Rect{a.X, a.Y, b.X - a.X, b.Y - a.Y}
	if p.in.W < leastPlotW || p.in.H < leastPlotH {
		r.fail(noRoom("chart", p.r, fmt.Sprintf("labels leave a plot of %.1f x %.1f mm, least is %d x %d", p.in.W, p.in.H, leastPlotW, leastPlotH)))
	}
}

// place is where a value stands, on the grid that go-chart draws on.
func (p *plot) place(v XY) canvas.Point {
	return canvas.Point{X: p.in.X + float64(p.x.Translate(v.X))/pxPerMM, Y: p.in.Bottom() - float64(p.y.Translate(v.Y))/pxPerMM}
}

// level and upright draw a line over the whole plot at a value of y or of x.
func (p *plot) level(y float64, pen canvas.Pen) {
	at := p.place(XY{p.x.Min, y}).Y
	p.c.Draw(segment(p.in.X, at, p.in.Right(), at), nil, pen)
}

func (p *plot) upright(x float64, pen canvas.Pen) {
	at := p.place(XY{x, p.y.Min}).X
	p.c.Draw(segment(at, p.in.Y, at, p.in.Bottom()), nil, pen)
}

// drawGrid lays the grid over the bands. The axes of go-chart could draw it, but they come before
// all series, so that the bands would hide it.
func (p *plot) drawGrid() {
	hair := canvas.Pen{Color: gridGray, WidthMM: hairMM}
	for _, t := range p.y.ticks {
		if t.Value > p.y.Min { // the axis is there already
			p.level(t.Value, hair)
		}
	}
	for _, t := range p.x.ticks {
		if t.Value > p.x.Min {
			p.upright(t.Value, hair)
		}
	}
}

// drawBreaks breaks an axis that does not begin at zero: two slanted strokes near its beginning.
func (p *plot) drawBreaks() {
	const awayMM, apartMM, halfMM, slantMM = 1.6, 0.7, 0.6, 0.25
	for _, axis := range []struct {
		broken bool
		ux, uy float64 // along the axis
	}{{p.x.Min > 0, 1, 0}, {p.y.Min > 0, 0, -1}} {
		if !axis.broken {
			continue
		}
		at := func(along, across float64) canvas.Point {
			return canvas.Point{X: p.in.X + axis.ux*along + axis.uy*across, Y: p.in.Bottom() + axis.uy*along + axis.ux*across}
		}
		p.c.Draw(polyline(at(awayMM, 0), at(awayMM+apartMM, 0)), nil, canvas.Pen{Color: canvas.White, WidthMM: 2 * axisMM})
		for _, along := range []float64{awayMM, awayMM + apartMM} {
			p.c.Draw(polyline(at(along-slantMM, -halfMM), at(along+slantMM, halfMM)), nil, ink(axisMM))
		}
	}
}

// drawRange sets a bar under the x axis, with dotted lines up from its ends.
func (p *plot) drawRange() {
	if p.ch.Range == nil {
		return
	}
	var ends [2]float64
	for i, x := range []float64{p.ch.Range.Low, p.ch.Range.High} {
		p.upright(x, ink(edgeMM, 0.3, 0.7))
		ends[i] = p.place(XY{X: x}).X
	}
	const downMM = 0.2
	wide := math.Max(ends[1]-ends[0], rangeMM) // a range of one value still shows
	p.c.Draw(rectPath((ends[0]+ends[1]-wide)/2, p.in.Bottom()+downMM, wide, rangeMM), &canvas.Black, canvas.Pen{})
}

// drawMarkers sets each line's sign on it, up to three times, beside those of the others. One that would stand at
// an end mark of its line, or under the chosen point, moves half a place aside, where that helps. A line too short
// for its own places has its sign at the last one between those of others.
func (p *plot) drawMarkers() {
	const apartMM, clearMM, signMM = 25, 2.4, 1.9 // of the signs of one line, about; of a sign from marks, and from signs
	n, times := len(p.ch.Lines), int(clamp(p.in.W/apartMM, 1, 3))
	if n < 2 {
		return
	}
	var taken []canvas.Point
	for i, l := range p.ch.Lines {
		set := func(place float64) bool { // of as many places as there may be signs
			x := p.x.Min + p.x.GetDelta()*place/float64(n*times)
			at := p.place(XY{x, l.at(x)})
			within := func(q canvas.Point, mm float64) bool { return math.Hypot(q.X-at.X, q.Y-at.Y) < mm }
			if l.Dots || !l.covers(x) || p.ch.Mark != nil && within(p.place(*p.ch.Mark), clearMM) ||
				slices.ContainsFunc(l.Ends, func(e End) bool { return math.Abs(p.place(e.At).X-at.X) < clearMM }) {
				return false
			}
			if whole := place == math.Trunc(place); whole && slices.ContainsFunc(taken, func(q canvas.Point) bool { return within(q, signMM) }) {
				return false
			}
			drawMarker(p.c, at, l.Style)
			taken = append(taken, at)
			return true
		}
		any := false
		for k := range times {
			own := float64(k*n + i)
			any = set(own+0.5) || set(own) || set(own+1) || any
		}
		for place := n * times; !any && place >= 0; place-- {
			any = set(float64(place))
		}
	}
}

// drawEnds marks the ends of the lines. They come over the white around the chosen point, so that one beside it shows.
func (p *plot) drawEnds() {
	for _, l := range p.ch.Lines {
		for _, e := range l.Ends {
			e.Why.draw(p.c, p.place(e.At))
		}
	}
}

// drawColumn writes the labels of the lines, none over another, each behind a sample of what it names, and under
// them those that have their place. The annotations of go-chart are boxes of one row that overlap.
func (p *plot) drawColumn(r *renderer, _ chart.Box) {
	x, top, y := p.r.Right()-p.columnW+beforeMM, p.r.Y+p.columnTop, p.in.Bottom()+asideEM*p.em
	write := func(e row, middle float64) {
		if e.sample != nil {
			e.sample(canvas.Point{X: x, Y: middle}, canvas.Point{X: x + stubMM, Y: middle})
		}
		e.draw(p.c, x+e.indent(), middle-e.h/2, e.w, 0)
	}
	for i := len(p.fixed) - 1; i >= 0; i-- {
		y -= p.fixed[i].h
		write(p.fixed[i], y+p.fixed[i].h/2)
	}
	var want, size []float64
	for _, e := range p.lines {
		at := math.Inf(1) // how many have no room: under the others
		if e.sample != nil {
			at = p.place(XY{p.x.Min, e.at}).Y
		}
		want, size = append(want, math.Min(at, y)), append(size, e.h)
	}
	at, ok := spread(want, size, top, y)
	if !ok {
		r.fail(noRoom("chart", p.r, "the label of the line needs more height than the plot has"))
		return
	}
	for i, e := range p.lines {
		write(e, at[i])
	}
}

// piece draws a piece of one of so many lines for its label.
func (p *plot) piece(l Line, lines int) func(from, to canvas.Point) {
	return func(from, to canvas.Point) {
		middle := canvas.Point{X: (from.X + to.X) / 2, Y: from.Y}
		if l.Dots {
			dot(p.c, middle, dotMM, canvas.Black)
			return
		}
		pen := l.pen()
		if lines > 1 && l.Style >= 0 { // whole periods of the dashes beside the sign, or one pattern looks like another
			const signMM, lineMM = 0.95, 1.75
			drawMarker(p.c, canvas.Point{X: from.X + signMM, Y: from.Y}, l.Style)
			from.X += lineMM
			if n := len(pen.DashMM); n > 0 {
				period, gap := 0.0, pen.DashMM[n-1]
				for _, mm := range pen.DashMM {
					period += mm
				}
				to.X = from.X + period*math.Max(1, math.Floor((to.X-from.X+gap)/period)) - gap
			}
		}
		p.c.Draw(polyline(from, to), nil, pen)
	}
}

// drawSet draws the mark for its label, on a piece of the bar of the range.
func (p *plot) drawSet(from, to canvas.Point) {
	if p.ch.Range != nil {
		p.c.Draw(rectPath(from.X, from.Y-rangeMM/2, to.X-from.X, rangeMM), &canvas.Black, canvas.Pen{})
	}
	middle := canvas.Point{X: (from.X + to.X) / 2, Y: from.Y}
	dot(p.c, middle, markMM+haloMM, canvas.White)
	dot(p.c, middle, markMM, canvas.Black)
}

// drawTitles writes the titles level, that of y above its axis, and the second scale of x below the
// first. go-chart turns the title of y, breaks none, and has no second axis of x.
func (p *plot) drawTitles() {
	p.title.draw(p.c, p.r.X, p.r.Y, p.title.w, 0)
	p.yTitle.draw(p.c, p.r.X, p.r.Y+p.topH-clearEM*p.em-p.yTitle.h, p.yTitle.w, 0)
	column := p.r.Right() - p.columnW + beforeMM
	base := p.in.Bottom() + belowEM*p.em // of the figures
	for i, t := range p.xTitles {
		if i > 0 {
			p.drawSecond(base, math.Min(p.r.Right(), column))
		}
		x, y := column, base-canvas.Ascent*p.em
		if !p.aside {
			x, y = clamp(p.in.X+(p.in.W-t.w)/2, p.r.X, p.r.Right()-t.w), base+canvas.Descent*p.em
			base += t.h
		}
		t.draw(p.c, x, y, t.w, 0.5)
		base += lineEM * p.em
	}
}

// drawSecond writes the figures of the second scale of x.
func (p *plot) drawSecond(base, right float64) {
	f, end := p.ch.font(), math.Inf(-1)
	for _, t := range p.x.ticks {
		s := p.ch.Second.Label(t.Value)
		w := p.c.TextWidth(s, f)
		at := p.place(XY{X: t.Value}).X
		if x := clamp(at-w/2, p.r.X, right-w); x > end { // moved in, the last may reach the one before
			p.c.Text(x, base, s, f, canvas.Black, 0)
			end = x + w
		}
	}
}
