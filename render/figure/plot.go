package figure

import (
	"fmt"
	"io"
	"math"

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
)

// Places of the label column right of the plot, mm: a gap, which also takes what go-chart leaves for half
// the last label of x, a piece of the line, a gap, the label.
const (
	beforeMM = 1.4
	stubMM   = 6.0
	gapMM    = 0.8
)

// labelOfW is the widest end label, as a share of the chart's width.
const labelOfW = 0.36

// Least size of the plot itself, mm.
const (
	leastPlotW = 10
	leastPlotH = 6
)

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
	ch                              Chart
	c                               canvas.Canvas
	r                               Rect
	em                              float64
	x, y                            *scale
	title, xTitle, yTitle, topTitle block
	yRow, topRow                    float64 // of these titles, below the top of r
	topH, bottomH                   float64 // of what is above and below the plot and its tick labels
	marks                           []markText
	marksW                          float64
	ends                            []end
	columnW                         float64 // of the labels right of the plot
	over, under                     float64 // how far these may stand above and below the plot
}

// end is a label in the column right of the plot, with the height that it would like.
type end struct {
	block
	at     float64
	sample func(r *renderer, from, to canvas.Point) // draws a piece of what the label names
}

// markText is what a mark at the end of a line means.
type markText struct {
	block
	mark EndMark
}

// measure measures the texts and chooses the lines that have room, or tells what does not fit.
func (ch Chart) measure(c canvas.Canvas, r Rect) (*plot, error) {
	f := ch.font()
	p := &plot{ch: ch, c: c, r: r, em: em(f)}
	h, wide := p.titles()
	switch tight := h < leastPlotH+slackMM; {
	case tight && ch.Top != nil:
		ch.Top = nil
		return ch.measure(c, r)
	case tight && len(p.marks) > 0:
		ch.Ends = [2]string{}
		return ch.measure(c, r)
	case h < leastPlotH:
		return nil, noRoom("chart", r, fmt.Sprintf("titles and ticks leave a plot %.1f mm high, least is %d", h, leastPlotH))
	}
	spanX, spanY := ch.span(h)
	p.column(h, spanY)
	for _, e := range p.ends {
		p.columnW = math.Max(p.columnW, beforeMM+stubMM+gapMM+e.w)
		wide = wide || e.w > labelOfW*r.W
	}
	if wide {
		return nil, noRoom("chart", r, "a letter is wider than its place")
	}
	p.columnW = math.Max(p.columnW, markMM+haloMM)

	width := func(s string) float64 { return c.TextWidth(s, f) }
	x := scale{least: ch.X.least(), steps: 12, label: ch.number, gap: unitsUp(0.6 * p.em), over: 1, size: func(t chart.Tick) int {
		if ch.Top == nil {
			return unitsUp(width(t.Label))
		}
		return unitsUp(math.Max(width(t.Label), width(ch.Top.Label(t.Value))))
	}}
	// Only half a figure stands over the top of y.
	y := scale{least: ch.Y.least(), steps: 6, label: ch.number, gap: unitsUp(0.08 * p.em), over: capEM / 2 / lineEM,
		size: func(chart.Tick) int { return unitsUp(lineEM * p.em) }}
	var err error
	if p.x, err = x.on(spanX); err == nil {
		p.y, err = y.on(spanY)
	}
	return p, err
}

// titles measures the titles. h is the height that they leave for the plot; wide tells that a
// letter of one is wider than the chart.
func (p *plot) titles() (h float64, wide bool) {
	f, w := p.ch.font(), p.r.W
	p.title = newBlock(p.c, p.ch.Title, bold(f), w, 2)
	if p.title.h > 0 {
		p.yRow = p.title.h + 0.3*p.em
	}
	p.xTitle, p.yTitle = newBlock(p.c, p.ch.X.Title, f, w, 0), newBlock(p.c, p.ch.Y.Title, f, w, 0)
	p.topH = p.yRow + p.yTitle.h
	if p.ch.Top != nil {
		p.topTitle, p.topRow = newBlock(p.c, p.ch.Top.Title, f, w, 0), p.yRow
		if len(p.yTitle.lines) > 1 || len(p.topTitle.lines) > 1 || p.yTitle.w+p.topTitle.w+2*p.em > w {
			p.topRow += p.yTitle.h
		}
		p.over = math.Max(p.topH, p.topRow+p.topTitle.h)
		p.topH = p.over + lineEM*p.em
	}
	p.topH += clearEM * p.em
	p.over = p.topH - math.Max(p.over, p.yRow+p.yTitle.h)
	p.under = (belowEM + canvas.Descent) * p.em
	p.bottomH = canvas.Descent*p.em + p.xTitle.h + p.explain(f)
	h = p.r.H - p.topH - belowEM*p.em - p.bottomH
	return h, math.Max(p.xTitle.w, math.Max(p.yTitle.w, p.topTitle.w)) > w
}

// explain measures what explains the marks at the ends of lines, and tells how high a row of its own is
// where it does not stand beside the title of x.
func (p *plot) explain(f canvas.Font) (h float64) {
	for m, text := range p.ch.Ends {
		used := false
		for _, l := range p.ch.Lines {
			for _, e := range l.Ends {
				used = used || e.Why == EndMark(m)
			}
		}
		if b := newBlock(p.c, text, f, p.r.W, 0); used && len(b.lines) == 1 {
			p.marks = append(p.marks, markText{b, EndMark(m)})
			p.marksW += b.w + markEM*p.em
		}
	}
	if p.marksW > p.r.W {
		p.marks, p.marksW = nil, 0
	}
	if p.marksW == 0 || len(p.xTitle.lines) == 1 && p.xTitle.w+p.marksW < p.r.W {
		return 0
	}
	return lineEM * p.em
}

// slackMM is what go-chart may take from the height of the plot.
const slackMM = 0.5

// markEM is the room of a mark before its text, in em.
const markEM = 1.8

func bold(f canvas.Font) canvas.Font { return canvas.Font{Face: canvas.Bold, SizePT: f.SizePT} }

// column makes the labels beside a plot of height h: those of the bands, and of as many lines, at least one,
// as have room. They stand in the order of the lines at the mark.
func (p *plot) column(h float64, y Interval) {
	f, most := p.ch.font(), labelOfW*p.r.W
	label := func(s string, f canvas.Font) block { return newBlock(p.c, s, f, most, 2) }
	used := 0.0
	for _, b := range p.bands() {
		if l := label(b.label, f); len(l.lines) > 0 {
			used += l.h
			p.ends = append(p.ends, end{l, clamp(b.at, y.Low, y.High), b.sample})
		}
	}
	all := p.ch.Lines
	labels := make([]block, len(all))
	for i, l := range all {
		labels[i] = label(l.Label, l.font(f))
	}
	first := 0.0 // the label that is kept in any case
	for _, i := range chosen(all, 1) {
		first = labels[i].h
	}
	free := h + p.over + p.under - used - slackMM
	for ; len(p.ends) > 0 && first > free; p.ends = p.ends[1:] { // the band behind gives way first
		free += p.ends[0].h
	}
	bands := len(p.ends)
	for n := len(all); n > 0; n-- {
		p.ch.Lines, p.ends, used = nil, p.ends[:bands], 0
		for _, i := range chosen(all, n) {
			l := all[i]
			p.ch.Lines = append(p.ch.Lines, l)
			if last, ok := l.last(); ok && len(labels[i].lines) > 0 {
				at := last.Y
				if p.ch.Mark != nil {
					at = l.at(p.ch.Mark.X)
				}
				p.ends = append(p.ends, end{labels[i], at, l.piece})
				used += labels[i].h
			}
		}
		if used <= free {
			break
		}
	}
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
		Series:   []chart.Series{layer(p.checkSize)},
		Elements: []chart.Renderable{p.drawTitles},
	}
	for _, b := range p.bands() {
		ch.Series = append(ch.Series, b.fill)
	}
	ch.Series = append(ch.Series, layer(p.drawGrid))
	for _, b := range p.bands() {
		ch.Series = append(ch.Series, b.edges...)
	}
	ch.Series = append(ch.Series, layer(p.drawRange), layer(p.drawBreaks))
	for _, strong := range []bool{false, true} {
		for _, l := range p.ch.Lines {
			if l.Strong == strong {
				ch.Series = append(ch.Series, l.series()...)
			}
		}
	}
	ch.Series = append(ch.Series, layer(p.drawMarkers))
	if m := p.ch.Mark; m != nil {
		ch.Series = append(ch.Series, series(dots(markMM+haloMM, canvas.White), *m), series(dots(markMM, canvas.Black), *m))
	}
	ch.Series = append(ch.Series, layer(p.drawColumn))
	return ch
}

// render runs go-chart over the renderer of this package.
func (p *plot) render() error {
	r := newRenderer(p.c, p.r)
	return p.goChart().Render(func(int, int) (chart.Renderer, error) { return r, nil }, io.Discard)
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
