package figure

import (
	"io"
	"math"

	"github.com/golang/freetype/truetype"
	"github.com/wcharczuk/go-chart/v2"
	"github.com/wcharczuk/go-chart/v2/drawing"
)

// palette is black on nothing: the paper is the background.
type palette struct{}

func (palette) BackgroundColor() drawing.Color       { return drawing.Color{} }
func (palette) BackgroundStrokeColor() drawing.Color { return drawing.Color{} }
func (palette) CanvasColor() drawing.Color           { return drawing.Color{} }
func (palette) CanvasStrokeColor() drawing.Color     { return drawing.Color{} }
func (palette) AxisStrokeColor() drawing.Color       { return drawing.ColorBlack }
func (palette) TextColor() drawing.Color             { return drawing.ColorBlack }
func (palette) GetSeriesColor(int) drawing.Color     { return drawing.ColorBlack }

// goChart is the chart as go-chart draws it. The y axis that go-chart calls primary stands on
// the right: it is hidden, and everything is on the secondary one, on the left. Both carry the
// same ticks, for the range of the secondary axis is read from the ticks of the primary.
func (l *layout) goChart() chart.Chart {
	px := func(mm float64) int { return unitsUp(mm, pxPerMM) }
	axis := func(font *truetype.Font) chart.Style {
		return chart.Style{StrokeColor: drawing.ColorBlack, StrokeWidth: axisMM * pxPerMM,
			Font: font, FontSize: l.ch.font().SizePT, FontColor: drawing.ColorBlack}
	}
	ticks := func(s scale) []chart.Tick {
		out := make([]chart.Tick, len(s.ticks))
		for i, t := range s.ticks {
			out[i] = chart.Tick{Value: t.At, Label: t.Label}
		}
		return out
	}
	last := l.x.ticks[len(l.x.ticks)-1].Label
	half := l.c.TextWidth(last, l.ch.font()) / 2
	hidden := chart.Hidden()
	layers := []series{
		{"band", l, l.drawBand},
		{"grid", l, l.drawGrid},
		{"edges", l, l.drawEdges},
		{"range", l, l.drawRange},
		{"lines", l, l.drawLines},
		{"mark", l, l.drawMark},
		{"labels", l, l.drawLabels},
		{"titles", l, l.drawTitles},
	}
	ch := chart.Chart{
		Width: unitsDown(l.r.W, pxPerMM), Height: unitsDown(l.r.H, pxPerMM), DPI: dpi,
		Font: tokenRegular, ColorPalette: palette{},
		Background: chart.Style{Padding: chart.Box{
			IsSet: true,
			// go-chart itself keeps room for half the highest label, all of the tick labels
			// down to their baseline, and half the last one to the right; none for the
			// thickness of the y axis, by which it shifts the labels.
			Top:    px(l.topH - capEM/2*l.em),
			Left:   px(axisMM),
			Right:  px(math.Max(0, l.columnW-half)) + 2, // its rounding
			Bottom: px(l.bottomH - axisGapMM - belowMM(l.em)),
		}},
		XAxis: chart.XAxis{Style: axis(tokenBelow), Ticks: ticks(l.x),
			GridMajorStyle: hidden, GridMinorStyle: hidden},
		YAxis: chart.YAxis{Style: hidden, Ticks: ticks(l.y)},
		YAxisSecondary: chart.YAxis{Style: axis(tokenRegular), Ticks: ticks(l.y),
			GridMajorStyle: hidden, GridMinorStyle: hidden, Zero: chart.GridLine{Style: hidden}},
	}
	for _, s := range layers {
		ch.Series = append(ch.Series, s)
	}
	return ch
}

// draw runs go-chart over the renderer of this package.
func (l *layout) draw() error {
	r := newRenderer(l.c, l.r.X, l.r.Y)
	return l.goChart().Render(func(int, int) (chart.Renderer, error) { return r, nil }, io.Discard)
}
