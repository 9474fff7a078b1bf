package figure

import (
	"cmp"
	"math"
	"slices"

	"github.com/wcharczuk/go-chart/v2"

	"bladecard/render/canvas"
)

// XY is a point of the data.
type XY struct{ X, Y float64 }

// Line is a curve of the chart, or a set of dots. A point that is not finite breaks it.
type Line struct {
	Label  string
	Points []XY    // in order of x; of more than MostPoints a fair part is drawn
	Ends   []End   // where the line stops, and why
	Strong bool    // the chosen one: wide, its label bold
	Dots   bool    // each point stands alone
	Style  int     // dash and marker, from 0: the same thing has the same style on every chart of a set; -1, -2 ...: dash alone
	Step   float64 // spacing of the samples: a wider hole breaks the line; 0: only points that are not finite do
}

// End is a mark where a line stops.
type End struct {
	At  XY
	Why EndMark
}

// EndMark tells why a line stops; the marks are explained below the chart, see Chart.Ends.
type EndMark int

// The marks: a cross where detail is lost, a bar where ink is left in the screen.
const (
	Detail EndMark = iota
	Ink
)

// MostPoints is how many points of a line are drawn. Of more, a curve keeps the lowest and the
// highest of each stretch, so that no peak is lost; of dots every second, third ... is drawn, of
// which the caller tells.
const MostPoints = 400

// Widths of lines and radii of dots, mm.
const (
	strongMM = 0.5
	plainMM  = 0.28
	dotMM    = 0.7
)

// dashes are the patterns of the lines, on, off ... in mm.
var dashes = [][]float64{
	nil,
	{1.6, 0.7},
	{0.35, 0.55},
	{2.2, 0.5, 0.4, 0.5},
	{0.8, 0.4},
	{2.2, 0.5, 0.4, 0.5, 0.4, 0.5},
}

// style is how the line is drawn.
func (l Line) style() chart.Style {
	if l.Dots {
		return dots(dotMM, canvas.Black)
	}
	pen := l.pen()
	return stroke(pen.Color, pen.WidthMM, pen.DashMM...)
}

// pen is the pen of the line.
func (l Line) pen() canvas.Pen {
	dash := dashes[nth(l.Style, len(dashes))]
	if l.Strong {
		return ink(strongMM, dash...)
	}
	return ink(plainMM, dash...)
}

// nth is the index of a style among n patterns, which come round again.
func nth(style, n int) int { return max(style, -1-style) % n }

// markers are the corners of the signs on the lines, x and y in mm from the middle; without corners it is a circle.
var markers = [][]float64{
	nil,
	{-0.65, -0.65, 0.65, -0.65, 0.65, 0.65, -0.65, 0.65},
	{0, -0.9, 0.85, 0.6, -0.85, 0.6},
	{0, -1, 0.8, 0, 0, 1, -0.8, 0},
	{0, 0.9, -0.85, -0.6, 0.85, -0.6},
	{-0.95, -0.35, 0.95, -0.35, 0.95, 0.35, -0.95, 0.35},
	{-0.35, -0.95, 0.35, -0.95, 0.35, 0.95, -0.35, 0.95},
}

// drawMarker sets the sign of a style on its line.
func drawMarker(c canvas.Canvas, at canvas.Point, style int) {
	if style < 0 {
		return
	}
	p := circle(at, 0.7)
	if corners := xy(markers[nth(style, len(markers))]...); len(corners) > 0 {
		for i := range corners {
			corners[i].X, corners[i].Y = corners[i].X+at.X, corners[i].Y+at.Y
		}
		p = polygon(corners...)
	}
	c.Draw(p, &canvas.White, ink(0.2))
}

// draw sets the mark of an end: a cross, or a bar across.
func (m EndMark) draw(c canvas.Canvas, at canvas.Point) {
	const armMM, barMM, penMM = 0.85, 1.2, 0.35
	if m == Ink {
		c.Draw(segment(at.X, at.Y-barMM, at.X, at.Y+barMM), nil, ink(2*penMM))
		return
	}
	for _, up := range []float64{-armMM, armMM} {
		c.Draw(segment(at.X-armMM, at.Y-up, at.X+armMM, at.Y+up), nil, ink(penMM))
	}
}

// at is the height of the line at x, between its points; beside them that of the nearest one.
func (l Line) at(x float64) float64 {
	before := XY{math.Inf(-1), math.NaN()}
	for _, p := range l.Points {
		if !finite(p.X, p.Y) {
			continue
		}
		if p.X >= x {
			if finite(before.X) && p.X > before.X {
				return before.Y + (x-before.X)/(p.X-before.X)*(p.Y-before.Y)
			}
			return p.Y
		}
		before = p
	}
	return before.Y
}

// covers tells whether the line is drawn at x.
func (l Line) covers(x float64) bool {
	return slices.ContainsFunc(l.runs(), func(run []XY) bool { return run[0].X <= x && x <= run[len(run)-1].X })
}

// font is the font of the line's label: bold for the chosen one.
func (l Line) font(f canvas.Font) canvas.Font {
	f.Face = canvas.Face(l.Strong)
	return f
}

// last is the last point that is finite; ok is false where there is none.
func (l Line) last() (p XY, ok bool) {
	for i := len(l.Points) - 1; i >= 0; i-- {
		if p = l.Points[i]; finite(p.X, p.Y) {
			return p, true
		}
	}
	return XY{}, false
}

// runs are the unbroken pieces of the line. Of more than MostPoints points, the lowest and the
// highest of each stretch stand for it, and a gap within the stretch stands before it.
func (l Line) runs() [][]XY {
	stretch := 1
	if n := len(l.Points); n > MostPoints {
		stretch = (n + MostPoints/2 - 1) / (MostPoints / 2)
	}
	var all [][]XY
	var run []XY
	before := math.NaN() // x of the point before, NaN after a gap
	for i := 0; i < len(l.Points); i += stretch {
		part := l.Points[i:min(i+stretch, len(l.Points))]
		low, high, gap := -1, -1, false
		for k, p := range part {
			if !finite(p.X, p.Y) {
				gap, before = true, math.NaN()
				continue
			}
			gap = gap || l.Step > 0 && math.Abs(p.X-before) > 1.5*l.Step
			before = p.X
			if low < 0 || p.Y < part[low].Y {
				low = k
			}
			if high < 0 || p.Y > part[high].Y {
				high = k
			}
		}
		if gap && len(run) > 0 {
			all, run = append(all, run), nil
		}
		for k := range part {
			if k == low || k == high {
				run = append(run, part[k])
			}
		}
	}
	if len(run) > 0 {
		all = append(all, run)
	}
	return all
}

// sample are the finite points of the line, or every second, third ... of them: see MostPoints.
func (l Line) sample() []XY {
	var all []XY
	for _, p := range l.Points {
		if finite(p.X, p.Y) {
			all = append(all, p)
		}
	}
	n := min(len(all), MostPoints)
	for k := range n {
		all[k] = all[k*len(all)/n]
	}
	return all[:n]
}

// series are the pieces of the line as go-chart draws them. A point that stands alone is a dot.
func (l Line) series() []chart.Series {
	if l.Dots {
		return []chart.Series{series(l.style(), l.sample()...)}
	}
	var all []chart.Series
	for _, run := range l.runs() {
		s := l.style()
		if len(run) == 1 {
			s = dots(dotMM, canvas.Black)
		}
		all = append(all, series(s, run...))
	}
	return all
}

// series is a line of go-chart. It is on the secondary axis, which stands on the left.
func series(s chart.Style, points ...XY) chart.ContinuousSeries {
	out := chart.ContinuousSeries{Style: s, YAxis: chart.YAxisSecondary}
	for _, p := range points {
		out.XValues, out.YValues = append(out.XValues, p.X), append(out.YValues, p.Y)
	}
	return out
}

// Choose keeps n lines: the chosen ones first, and of the others an even choice by their height
// at the end, the lowest and the highest among them. The order stays.
func Choose(lines []Line, n int) []Line {
	var out []Line
	for _, i := range chosen(lines, n) {
		out = append(out, lines[i])
	}
	return out
}

// chosen are the indexes of the lines that Choose keeps.
func chosen(lines []Line, n int) []int {
	var keep, rest []int
	height := make([]float64, len(lines))
	for i, l := range lines {
		end, ok := l.last()
		height[i] = end.Y
		if l.Strong && len(keep) < n {
			keep = append(keep, i)
		} else if ok {
			rest = append(rest, i)
		}
	}
	slices.SortStableFunc(rest, func(a, b int) int { return cmp.Compare(height[a], height[b]) })
	left := min(n-len(keep), len(rest))
	for k := range left {
		keep = append(keep, rest[k*(len(rest)-1)/max(left-1, 1)])
	}
	slices.Sort(keep)
	return keep
}
