package figure

import (
	"github.com/wcharczuk/go-chart/v2"

	"bladecard/render/canvas"
)

// ribbon is a band of the chart on its way to go-chart.
type ribbon struct {
	label  string
	at     float64 // its middle, where the label would like to stand
	fill   chart.Series
	edges  []chart.Series // a printer may lose a tint
	sample func(r *renderer, from, to canvas.Point)
}

// bands are the bands of the chart, that of what is known behind that of what is allowed. Both are cut off
// at the ends of the plot.
func (p *plot) bands() (out []ribbon) {
	if edges := p.ch.knownEdges(); len(edges) > 0 {
		at := edges[0][len(edges[0])/2].Y
		if m := p.ch.Mark; m != nil {
			at = m.Y * p.ch.Known.Low
		}
		out = append(out, p.ribbon(p.ch.Known.Label, at, knownGray, []float64{0.3, 0.5}, edges...))
	}
	if b := p.ch.Band; b != nil {
		x, _ := p.ch.span(0)
		out = append(out, p.ribbon(b.Label, (b.Low+b.High)/2, bandGray, []float64{0.9, 0.6},
			[]XY{{x.Low, b.Low}, {x.High, b.Low}}, []XY{{x.Low, b.High}, {x.High, b.High}}))
	}
	return out
}

// ribbon is the band between pairs of lines, the lower one first.
func (p *plot) ribbon(label string, at float64, tint canvas.Color, dash []float64, lines ...[]XY) ribbon {
	edge := stroke(canvas.Black, edgeMM, dash...)
	out := ribbon{label: label, at: at, sample: func(r *renderer, from, to canvas.Point) {
		half := capEM / 2 * p.em
		r.c.Draw(rectPath(from.X, from.Y-half, to.X-from.X, 2*half), &tint, ink(edgeMM, dash...))
	}}
	out.fill = layer(func(r *renderer, box chart.Box) {
		for i := 0; i+1 < len(lines); i += 2 {
			values := between{low: lines[i], high: lines[i+1], y: p.y}
			chart.Draw.BoundedSeries(r, box, p.x, p.y, chart.Style{FillColor: solid(tint)}, values)
		}
	})
	for _, l := range lines {
		for _, v := range l {
			if p.y != nil && (v.Y <= p.y.Min || v.Y >= p.y.Max) {
				l = nil // it leaves the plot
				break
			}
		}
		if l != nil {
			out.edges = append(out.edges, series(stroke(canvas.White, edgeMM), l...), series(edge, l...))
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
