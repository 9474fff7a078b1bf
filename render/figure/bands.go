package figure

import (
	"math"

	"github.com/wcharczuk/go-chart/v2"

	"bladecard/render/canvas"
)

// ribbon is a band of the chart on its way to go-chart.
type ribbon struct {
	row   row
	layer []chart.Series // the tint
	edges []chart.Series // a printer may lose a tint
}

// bands are the bands of the chart, that of what is known behind that of what is allowed. Both are cut off
// at the ends of the plot.
func (p *plot) bands() (out []ribbon) {
	if edges := p.ch.knownEdges(); len(edges) > 0 {
		out = append(out, p.ribbon(*p.ch.Known, knownGray, []float64{0.3, 0.5}, edges...))
	}
	if p.ch.Band != nil {
		out = append(out, p.ribbon(*p.ch.Band, bandGray, []float64{0.9, 0.6}, p.ch.bandEdges(Interval{p.x.Min, p.x.Max})...))
	}
	return out
}

// ribbon is the band between pairs of lines, the lower one first. Where none of them lies in the plot, words
// say where the band is, and there is no tint.
func (p *plot) ribbon(b Band, tint canvas.Color, dash []float64, lines ...[]XY) ribbon {
	var out ribbon
	edge := stroke(canvas.Black, edgeMM, dash...)
	for _, l := range lines {
		in := Line{}
		for _, v := range l {
			if !(v.Y > p.y.Min && v.Y < p.y.Max) {
				v.Y = math.NaN()
			}
			in.Points = append(in.Points, v)
		}
		for _, run := range in.runs() {
			out.edges = append(out.edges, series(stroke(canvas.White, edgeMM), run...), series(edge, run...))
		}
	}
	if len(out.edges) == 0 {
		text := b.Inside
		if low, high := lines[0][0].Y, lines[1][0].Y; low >= p.y.Max {
			text = b.Above
		} else if high <= p.y.Min {
			text = b.Below
		}
		out.row.text = text
		return out
	}
	out.row = row{text: b.Label, sample: func(from, to canvas.Point) {
		half := capEM / 2 * p.em
		p.c.Draw(rectPath(from.X, from.Y-half, to.X-from.X, 2*half), &tint, ink(edgeMM, dash...))
	}}
	out.layer = []chart.Series{layer(func(r *renderer, box chart.Box) {
		for i := 0; i+1 < len(lines); i += 2 {
			values := between{low: lines[i], high: lines[i+1], y: p.y}
			chart.Draw.BoundedSeries(r, box, p.x, p.y, chart.Style{FillColor: solid(tint)}, values)
		}
	})}
	return out
}

// bandEdges are the edges of the band of what is allowed, the lower one first.
func (ch Chart) bandEdges(x Interval) (out [][]XY) {
	if b := ch.Band; b != nil {
		for _, y := range []float64{b.Low, b.High} {
			out = append(out, []XY{{x.Low, y}, {x.High, y}})
		}
	}
	return out
}

// knownEdges are the edges of the band of what is known, a lower and an upper one for each piece of the
// chosen lines.
func (ch Chart) knownEdges() (out [][]XY) {
	if ch.Known == nil {
		return nil
	}
	for _, l := range ch.Lines {
		if !l.Strong || l.Dots {
			continue
		}
		for _, run := range l.runs() {
			if len(run) < 2 {
				continue
			}
			for _, share := range []float64{ch.Known.Low, ch.Known.High} {
				var edge []XY
				for _, v := range run {
					edge = append(edge, XY{v.X, share * v.Y})
				}
				out = append(out, edge)
			}
		}
	}
	return out
}

// between gives go-chart the values of a band, as far as they lie on the axis.
type between struct {
	low, high []XY
	y         *scale
}

func (b between) Len() int { return len(b.low) }

func (b between) GetBoundedValues(i int) (x, low, high float64) {
	low = b.y.Min + b.y.GetDelta()*axisMM*pxPerMM/float64(max(1, b.y.Domain)) // clear of the axis of x
	cut := func(v float64) float64 { return clamp(v, low, b.y.Max) }
	return b.low[i].X, cut(b.low[i].Y), cut(b.high[i].Y)
}
