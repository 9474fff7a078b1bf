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
	haloMM = 0.25 // of white around the mark and its bar
)

// Places of the label column right of the plot, mm: a connector, a piece of the line, a gap, the
// label. The connector also runs through what go-chart leaves for half the last label of x.
const (
	connectorMM = 1.4
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

// clearEM is the room that half a tick label takes above and below its tick, in em, the
// ascent for accents included, and a little.
const clearEM = canvas.Ascent - capEM/2 + 0.04

var (
	bandGray = canvas.Gray(224)
	gridGray = canvas.Gray(150)
)

// plot is a chart with its measured texts.
type plot struct {
	ch                       Chart
	c                        canvas.Canvas
	r                        Rect
	em                       float64
	x, y                     *scale
	xTitle, yTitle, topTitle block
	topRow                   float64 // of topTitle, below the top of r
	topH, bottomH            float64 // of what is above and below the plot and its tick labels
	ends                     []end
	columnW                  float64 // of the labels at the ends
	over, under              float64 // how far these may stand above and below the plot
}

// end is a label in the column right of the plot.
type end struct {
	block
	at   XY // where the line ends
	line Line
	band bool // the label of the band
}

// measure measures the texts and chooses the lines that have room, or tells what does not fit.
func (ch Chart) measure(c canvas.Canvas, r Rect) (*plot, error) {
	f := ch.font()
	p := &plot{ch: ch, c: c, r: r, em: em(f)}
	h, wide := p.titles()
	if h < leastPlotH && ch.Top != nil {
		ch.Top = nil
		return ch.measure(c, r)
	}
	if h < leastPlotH {
		return nil, noRoom("chart", r, fmt.Sprintf("titles and ticks leave a plot %.1f mm high, least is %d", h, leastPlotH))
	}
	p.chooseLines(h)
	for _, e := range p.ends {
		p.columnW = math.Max(p.columnW, connectorMM+stubMM+gapMM+e.w)
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
	spanX, spanY := ch.span()
	if p.x, err = x.on(spanX); err == nil {
		p.y, err = y.on(spanY)
	}
	return p, err
}

// titles measures the titles. h is the height that they leave for the plot; wide tells that a
// letter of one is wider than the chart.
func (p *plot) titles() (h float64, wide bool) {
	f, w := p.ch.font(), p.r.W
	p.xTitle, p.yTitle = newBlock(p.c, p.ch.X.Title, f, w), newBlock(p.c, p.ch.Y.Title, f, w)
	p.topH = p.yTitle.h
	if p.ch.Top != nil {
		p.topTitle = newBlock(p.c, p.ch.Top.Title, f, w)
		if len(p.yTitle.lines) > 1 || len(p.topTitle.lines) > 1 || p.yTitle.w+p.topTitle.w+2*p.em > w {
			p.topRow = p.yTitle.h
		}
		p.topH = math.Max(p.yTitle.h, p.topRow+p.topTitle.h) + lineEM*p.em
	}
	p.topH += clearEM * p.em
	p.over, p.under = p.topH-math.Max(p.yTitle.h, p.topRow+p.topTitle.h), (belowEM+canvas.Descent)*p.em
	p.bottomH = canvas.Descent*p.em + p.xTitle.h
	h = p.r.H - p.topH - belowEM*p.em - p.bottomH
	return h, math.Max(p.xTitle.w, math.Max(p.yTitle.w, p.topTitle.w)) > w
}

// chooseLines keeps as many lines, at least one, as have room for their labels beside a plot of
// height h. The label of the band needs no more than over and under.
func (p *plot) chooseLines(h float64) {
	f, all, most := p.ch.font(), p.ch.Lines, labelOfW*p.r.W
	label := func(s string, f canvas.Font) block { return newBlock(p.c, shortened(p.c, s, f, most, 2), f, most) }
	labels := make([]block, len(all))
	for i, l := range all {
		labels[i] = label(l.Label, l.font(f))
	}
	for n := len(all); n > 0; n-- {
		p.ch.Lines, p.ends = nil, nil
		used := 0.0
		for _, i := range chosen(all, n) {
			p.ch.Lines = append(p.ch.Lines, all[i])
			if at, ok := all[i].last(); ok && len(labels[i].lines) > 0 {
				p.ends = append(p.ends, end{block: labels[i], at: at, line: all[i]})
				used += labels[i].h
			}
		}
		if used <= h {
			break
		}
	}
	if b := p.ch.Band; b != nil {
		if l := label(b.Label, f); len(l.lines) > 0 {
			p.ends = append(p.ends, end{block: l, at: XY{Y: (b.Low + b.High) / 2}, band: true})
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
		Series:   []chart.Series{layer(p.checkSize), layer(p.drawBand), layer(p.drawGrid), layer(p.drawEdges), layer(p.drawRange)},
		Elements: []chart.Renderable{p.drawTitles},
	}
	for _, strong := range []bool{false, true} {
		for _, l := range p.ch.Lines {
			if l.Strong == strong {
				ch.Series = append(ch.Series, l.series()...)
			}
		}
	}
	if m := p.ch.Mark; m != nil {
		at, low, high := XY{m.X, m.Y}, XY{m.X, m.Low}, XY{m.X, m.High}
		if m.High > m.Low {
			const barMM = 0.35
			ch.Series = append(ch.Series, series(stroke(canvas.White, barMM+2*haloMM), low, high), series(stroke(canvas.Black, barMM), low, high))
		}
		ch.Series = append(ch.Series, series(dots(markMM+haloMM, canvas.White), at), series(dots(markMM, canvas.Black), at))
	}
	ch.Series = append(ch.Series, layer(p.drawEnds))
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
