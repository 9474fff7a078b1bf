package figure

import (
	"math"
	"slices"

	"bladecard/render/canvas"
)

// ribbon is a band of the chart on its way to paper.
type ribbon struct {
	Band
	tint  canvas.Color
	dash  []float64
	lines [][]XY // its edges in pairs, the lower one first
}

// bands are the bands of the chart, that of what is known behind that of what is allowed.
func (ch Chart) bands(x Interval) (out []ribbon) {
	if edges := ch.knownEdges(); len(edges) > 0 {
		out = append(out, ribbon{*ch.Known, knownGray, []float64{0.3, 0.5}, edges})
	}
	if b := ch.Band; b != nil {
		out = append(out, ribbon{*b, bandGray, []float64{0.9, 0.6}, [][]XY{{{x.Low, b.Low}, {x.High, b.Low}}, {{x.Low, b.High}, {x.High, b.High}}}})
	}
	return out
}

// inside are the pieces of the edges that lie in the plot.
func (b ribbon) inside(y *scale) (out [][]XY) {
	for _, l := range b.lines {
		in := Line{}
		for _, v := range l {
			if !(v.Y > y.Min && v.Y < y.Max) {
				v.Y = math.NaN()
			}
			in.Points = append(in.Points, v)
		}
		out = append(out, in.runs()...)
	}
	return out
}

// explainBand is the label of a band. Where no edge of it lies in the plot, words say where it is.
func (p *plot) explainBand(b ribbon) row {
	low, high := b.lines[0][0].Y, b.lines[1][0].Y
	switch {
	case len(b.inside(p.y)) > 0:
		return row{text: b.Label, sample: func(from, to canvas.Point) {
			half := capEM / 2 * p.em
			p.c.Draw(rectPath(from.X, from.Y-half, to.X-from.X, 2*half), &b.tint, ink(edgeMM, b.dash...))
		}}
	case low >= p.y.Max:
		return row{text: b.Above}
	case high <= p.y.Min:
		return row{text: b.Below}
	}
	return row{text: b.Inside}
}

// drawBands lays the tints of the bands under the grid, cut off at the ends of the plot, and their edges over it,
// for a printer may lose a tint.
func (p *plot) drawBands() {
	bands := p.ch.bands(Interval{p.x.Min, p.x.Max})
	for _, b := range bands {
		if len(b.inside(p.y)) == 0 {
			continue
		}
		for i := 0; i+1 < len(b.lines); i += 2 {
			around := append([]XY(nil), b.lines[i]...)
			slices.Reverse(around)
			p.c.Draw(polygon(p.places(append(around, b.lines[i+1]...))...), &b.tint, canvas.Pen{})
		}
	}
	p.drawGrid()
	for _, b := range bands {
		for _, run := range b.inside(p.y) {
			edge := polyline(p.places(run)...)
			p.c.Draw(edge, nil, canvas.Pen{Color: canvas.White, WidthMM: edgeMM})
			p.c.Draw(edge, nil, ink(edgeMM, b.dash...))
		}
	}
}

// places are where values stand, those beyond the ends of the plot at these, clear of the axis of x.
func (p *plot) places(vs []XY) (out []canvas.Point) {
	for _, v := range vs {
		at := p.place(XY{v.X, clamp(v.Y, p.y.Min, p.y.Max)})
		out = append(out, canvas.Point{X: at.X, Y: math.Min(at.Y, p.in.Bottom()-axisMM)})
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
