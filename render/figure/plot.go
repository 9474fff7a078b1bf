package figure

import (
	"cmp"
	"fmt"
	"io"
	"math"
	"slices"

	"github.com/golang/freetype/truetype"
	"github.com/wcharczuk/go-chart/v2"
	"github.com/wcharczuk/go-chart/v2/drawing"

	"bladecard/render/canvas"
)

// Widths of lines and radii, mm.
const (
	axisMM = 0.2
	hairMM = 0.1
	edgeMM = 0.15 // ends of band and range
	markMM = 1.05 // radius of the mark
	haloMM = 0.25 // of white around the mark

	rangeMM = 0.8 // height of the bar of the range
)

// Places of the label column right of the plot, mm: a gap, which also takes what go-chart leaves for half
// the last label of x, a sample, a gap, the label.
const (
	beforeMM = 1.4
	stubMM   = 6.0
	gapMM    = 0.8
)

// labelOfW is the widest label, as a share of the chart's width.
const labelOfW = 0.36

// Least size of the plot itself, mm.
const (
	leastPlotW = 10
	leastPlotH = 6
)

// asideEM is how far the column reaches below the plot, clear of the titles beside the ticks, in em.
const asideEM = belowEM - canvas.Ascent - 0.1

// clearEM is the room that half a tick label takes above and below its tick, in em, the
// ascent for accents included, and a little.
const clearEM = canvas.Ascent - capEM/2 + 0.04

var (
	knownGray = canvas.Gray(240)
	bandGray  = canvas.Gray(222)
	gridGray  = canvas.Gray(165)
)

// plot is a chart with its measured texts.
type plot struct {
	ch            Chart
	c             canvas.Canvas
	r             Rect
	em            float64
	x, y          *scale
	title, yTitle block
	xTitles       []block // of x and of its second scale
	aside         bool    // these stand behind their figures, in the column of labels
	topH, bottomH float64 // of what is above the plot, and below the labels of its ticks
	lines, fixed  []row   // of the column: the lines in their order, and under them what stays in its place
	columnW       float64
	columnTop     float64 // where the column begins, below the top of r
	in            Rect    // the plot itself, once go-chart has found it
}

// row is a label in the column right of the plot. Without a sample it begins where that would stand.
type row struct {
	text   string
	sample func(from, to canvas.Point) // draws a piece of what the label names
	at     float64                     // the height that the label of a line would like
	block
}

// measure measures the texts and chooses the lines that have room, or tells what does not fit.
func (ch Chart) measure(c canvas.Canvas, r Rect) (*plot, error) {
	f := ch.font()
	p := &plot{ch: ch, c: c, r: r, em: em(f)}
	h, wide := p.titles()
	switch {
	case h < leastPlotH+slackMM && ch.Second != nil:
		ch.Second = nil
		return ch.measure(c, r)
	case h < leastPlotH:
		return nil, noRoom("chart", r, fmt.Sprintf("titles and ticks leave a plot %.1f mm high, least is %d", h, leastPlotH))
	}
	width := func(s string) float64 { return c.TextWidth(s, f) }
	x := scale{least: ch.X.least(), steps: 12, label: ch.number, gap: unitsUp(0.6 * p.em), over: 1, size: func(t chart.Tick) int {
		if ch.Second == nil {
			return unitsUp(width(t.Label))
		}
		return unitsUp(math.Max(width(t.Label), width(ch.Second.Label(t.Value))))
	}}
	// Only half a figure stands over the top of y.
	y := scale{least: ch.Y.least(), steps: 6, label: ch.number, gap: unitsUp(0.08 * p.em), over: capEM / 2 / lineEM,
		size: func(chart.Tick) int { return unitsUp(lineEM * p.em) }}
	spanX, spanY := ch.span(h)
	var err error
	if p.x, err = x.on(spanX); err == nil {
		p.y, err = y.on(spanY)
	}
	if err != nil {
		return nil, err
	}
	p.column(h)
	for _, e := range append(p.lines[:len(p.lines):len(p.lines)], p.fixed...) {
		p.columnW = math.Max(p.columnW, beforeMM+e.indent()+e.w)
		wide = wide || e.w > labelOfW*r.W+stubMM+gapMM-e.indent()
	}
	if wide {
		return nil, noRoom("chart", r, "a letter is wider than its place")
	}
	p.columnW = math.Max(p.columnW, markMM+haloMM)
	for _, t := range p.xTitles {
		if p.aside {
			p.columnW = math.Max(p.columnW, beforeMM+t.w)
		}
	}
	return p, nil
}

// indent is how far the text of a label stands from the left of the column.
func (e row) indent() float64 {
	if e.sample == nil {
		return 0
	}
	return stubMM + gapMM
}

// titles measures the titles. h is the height that they leave for the plot; wide tells that a
// letter of one is wider than the chart.
func (p *plot) titles() (h float64, wide bool) {
	f, w := p.ch.font(), p.r.W
	p.title, p.yTitle = newBlock(p.c, p.ch.Title, bold(f), w, 2), newBlock(p.c, p.ch.Y.Title, f, w, 0)
	if p.title.h > 0 {
		p.topH = p.title.h + 0.3*p.em
	}
	if p.columnTop = p.topH; p.yTitle.w+p.em > (1-labelOfW)*w-beforeMM-stubMM-gapMM {
		p.columnTop += p.yTitle.h
	}
	p.topH += p.yTitle.h + clearEM*p.em
	p.xTitles, p.aside = []block{newBlock(p.c, p.ch.X.Title, f, w, 0)}, true
	p.bottomH = canvas.Descent * p.em
	if p.ch.Second != nil {
		p.xTitles = append(p.xTitles, newBlock(p.c, p.ch.Second.Title, f, w, 0))
		p.bottomH += lineEM * p.em
	}
	below := 0.0
	for _, t := range p.xTitles {
		p.aside = p.aside && len(t.lines) < 2 && t.w <= labelOfW*w+stubMM+gapMM
		below += t.h
		wide = wide || t.w > w
	}
	if !p.aside {
		p.bottomH += below
	}
	return p.r.H - p.topH - belowEM*p.em - p.bottomH, wide || p.yTitle.w > w
}

// slackMM is what go-chart may take from the height of the plot.
const slackMM = 0.5

func bold(f canvas.Font) canvas.Font { return canvas.Font{Face: canvas.Bold, SizePT: f.SizePT} }

// column makes the labels beside a plot of height h: of as many lines, at least one, as have room, and what
// explains all else. They stand in the order of the lines at the mark.
func (p *plot) column(h float64) {
	f, most := p.ch.font(), labelOfW*p.r.W
	label := func(e row, f canvas.Font) row {
		e.block = newBlock(p.c, e.text, f, most+stubMM+gapMM-e.indent(), 2)
		return e
	}
	free := p.topH + h + asideEM*p.em - p.columnTop - slackMM
	all := p.ch.Lines
	labels := make([]row, len(all))
	for i, l := range all {
		labels[i] = label(row{text: l.Label, sample: p.piece(l, len(all))}, l.font(f))
	}
	first := 0.0 // the label that is kept in any case
	for _, i := range chosen(all, 1) {
		first = labels[i].h
	}
	var set row
	if p.ch.Mark != nil {
		set = label(row{text: p.ch.Set, sample: p.drawSet}, f)
	}
	for n := len(all); n > 0; n-- {
		p.lines, p.ch.Lines, p.fixed = nil, nil, nil
		for _, i := range chosen(all, n) {
			p.ch.Lines = append(p.ch.Lines, all[i])
		}
		h := 0.0
		for _, e := range p.explained() { // what comes first is worth most
			if e = label(e, f); len(e.lines) > 0 && h+e.h+first <= free {
				p.fixed, h = append(p.fixed, e), h+e.h
			}
		}
		for _, i := range chosen(all, n) {
			l := all[i]
			if last, ok := l.last(); ok && len(labels[i].lines) > 0 {
				labels[i].at = last.Y
				if p.ch.Mark != nil {
					labels[i].at = l.at(p.ch.Mark.X)
				}
				p.lines, h = append(p.lines, labels[i]), h+labels[i].h
			}
		}
		if p.ch.More != nil {
			if more := label(row{text: p.ch.More(len(all) - n), at: math.Inf(-1)}, f); len(more.lines) > 0 && (h+more.h <= free || n > 1) {
				p.lines, h = append(p.lines, more), h+more.h
			}
		}
		// The drawing rounds heights: here lines that stand as good as one upon another get their order.
		slices.SortStableFunc(p.lines, func(a, b row) int { return cmp.Compare(b.at, a.at) })
		if h <= free {
			if n == len(all) && len(set.lines) > 0 && h+set.h <= free { // who set the press knows it
				p.fixed = append([]row{set}, p.fixed...)
			}
			break
		}
	}
}

// explained are the labels of the bands and of the marks that occur on the lines that are drawn.
func (p *plot) explained() (out []row) {
	for _, b := range p.ch.bands(Interval{p.x.Min, p.x.Max}) {
		out = append([]row{p.explainBand(b)}, out...)
	}
	for m, text := range p.ch.Ends {
		used := false
		for _, l := range p.ch.Lines {
			used = used || slices.ContainsFunc(l.Ends, func(e End) bool { return e.Why == EndMark(m) })
		}
		if used {
			out = append(out, row{text: text, sample: func(from, to canvas.Point) {
				EndMark(m).draw(p.c, canvas.Point{X: (from.X + to.X) / 2, Y: from.Y})
			}})
		}
	}
	return out
}

// goChart is the chart as go-chart draws it. The y axis that go-chart calls primary stands on
// the right: it is hidden, and everything is on the secondary one, on the left.
func (p *plot) goChart() chart.Chart {
	axis := func(font *truetype.Font) chart.Style {
		s := stroke(canvas.Black, axisMM)
		s.Font, s.FontSize, s.FontColor = font, p.ch.font().SizePT, drawing.ColorBlack
		return s
	}
	hidden := chart.Hidden()
	ch := chart.Chart{
		Width: unitsDown(p.r.W), Height: unitsDown(p.r.H), DPI: dpi, Font: tokenRegular,
		// go-chart keeps room for the tick labels by itself, but for the letters under their
		// baseline, for what stands over the middle of the highest, and for the width of the y axis.
		Background: chart.Style{Padding: chart.NewBox(unitsUp(p.topH), unitsUp(axisMM), unitsUp(p.columnW), unitsUp(p.bottomH)),
			FillColor: drawing.ColorTransparent}, // the paper is the background
		Canvas: chart.Style{FillColor: drawing.ColorTransparent},
		XAxis:  chart.XAxis{Style: axis(tokenBelow), Range: p.x, GridMajorStyle: hidden, GridMinorStyle: hidden},
		YAxis:  chart.YAxis{Style: hidden, Range: p.y},
		YAxisSecondary: chart.YAxis{Style: axis(tokenBeside), Range: p.y,
			GridMajorStyle: hidden, GridMinorStyle: hidden, Zero: chart.GridLine{Style: hidden}},
		Series: []chart.Series{layer(p.find), own(p.drawBands, p.drawRange, p.drawBreaks)},
	}
	for _, strong := range []bool{false, true} {
		for _, l := range p.ch.Lines {
			if l.Strong == strong {
				ch.Series = append(ch.Series, l.series()...)
			}
		}
	}
	ch.Series = append(ch.Series, own(p.drawMarkers))
	if m := p.ch.Mark; m != nil {
		ch.Series = append(ch.Series, series(dots(markMM+haloMM, canvas.White), *m), own(p.drawEnds), series(dots(markMM, canvas.Black), *m))
	} else {
		ch.Series = append(ch.Series, own(p.drawEnds))
	}
	ch.Series = append(ch.Series, own(p.drawTitles), layer(p.drawColumn))
	return ch
}

// render runs go-chart over the renderer of this package.
func (p *plot) render() error {
	r := newRenderer(p.c, p.r)
	return p.goChart().Render(func(int, int) (chart.Renderer, error) { return r, nil }, io.Discard)
}

// own are drawings of the plot's own in a row.
func own(draw ...func()) layer {
	return func(*renderer, chart.Box) {
		for _, d := range draw {
			d()
		}
	}
}

// stroke is a solid line of go-chart, with its width and its dashes in mm.
func stroke(c canvas.Color, widthMM float64, dashMM ...float64) chart.Style {
	s := chart.Style{StrokeColor: solid(c), StrokeWidth: widthMM * pxPerMM}
	for _, d := range dashMM {
		s.StrokeDashArray = append(s.StrokeDashArray, d*pxPerMM)
	}
	return s
}

// dots is a series of dots without a line.
func dots(radiusMM float64, c canvas.Color) chart.Style {
	return chart.Style{StrokeWidth: chart.Disabled, DotColor: solid(c), DotWidth: radiusMM * pxPerMM}
}

func solid(c canvas.Color) drawing.Color { return drawing.Color{R: c.R, G: c.G, B: c.B, A: 255} }
