// Package charts makes the two charts of a screen, the cured film over the angle and over the edge
// hardness, from its plan: the same for the card, the sheet and the files that stand alone.
package charts

import (
	"cmp"
	"fmt"
	"math"
	"strings"

	"bladecard/calc/plan"
	"bladecard/render/canvas"
	"bladecard/render/figure"
	"bladecard/render/say"
)

// Angle is the cured film over the angle, a line per blade of the rack, in type of sizePT.
func Angle(v *say.Voice, s plan.Screen, sizePT float64) figure.Chart {
	ch := both(v, s, s.Charts.Angle, sizePT)
	ch.X = figure.Axis{Title: v.T("card.x-angle"), High: stepsUp(s.AngleDeg.High, 5)}
	for _, l := range ch.Lines {
		for _, p := range l.Points {
			if !math.IsNaN(p.Y) { // past the last line there is nothing to see
				ch.X.High = math.Max(ch.X.High, math.Min(45, stepsUp(p.X+2, 5)))
			}
		}
	}
	ch.Second = &figure.Scale{Title: v.T("card.x-screen"), Label: func(x float64) string { return v.Number(90-x, 0) }}
	ch.Set = v.T("chart.set-angle", "angle", v.Angle(s.AngleDeg.Set), "range", v.AngleRange(s.AngleDeg.Low, s.AngleDeg.High))
	ch.Range = &figure.Interval{Low: s.AngleDeg.Low, High: s.AngleDeg.High}
	ch.Mark = &figure.XY{X: s.AngleDeg.Set, Y: s.CuredUM.Value}
	return whole(ch, s)
}

// Hardness is the cured film over the edge hardness, in type of sizePT.
func Hardness(v *say.Voice, s plan.Screen, sizePT float64) figure.Chart {
	ch := both(v, s, s.Charts.Hardness, sizePT)
	for i := range ch.Lines { // these are no blades of the rack, so none of their markers
		ch.Lines[i].Style = -1 - i
	}
	at := s.Blade.EdgeHardness
	ch.Set = v.T("chart.set-hardness", "n", v.Number(at, 0))
	ch.X = figure.Axis{Title: v.T("card.x-hardness"), Low: math.Min(50, -stepsUp(-at, 10)), High: math.Max(90, stepsUp(at, 10))}
	ch.Mark = &figure.XY{X: at, Y: s.CuredUM.Value}
	return whole(ch, s)
}

// Film is the axis of the cured film of a screen, on which 2 um can be told apart; of ink that rises, before it does.
func Film(v *say.Voice, s plan.Screen) figure.Axis {
	key := "card.y-film"
	if s.HeightMM != nil {
		key = "card.y-flat"
	}
	return figure.Axis{Title: v.T(key), Apart: 2}
}

// stepsUp is x rounded up to whole steps.
func stepsUp(x, step float64) float64 { return step * math.Ceil(x/step) }

// both is what both charts share: the curves, the target and what is known of the film.
func both(v *say.Voice, s plan.Screen, curves []plan.Curve, sizePT float64) figure.Chart {
	ch := figure.Chart{
		Y: Film(v, s), SizePT: sizePT, Format: v.Number, Ends: Ends(v),
		Band:  Target(v, s),
		Known: known(v, s.CuredUM),
	}
	all := lines(v, curves)
	ch.Lines = figure.Choose(all, figure.MostLines)
	ch.More = func(lines int) string {
		if lines += len(all) - len(ch.Lines); lines > 0 {
			return v.T("chart.more", "n", fmt.Sprint(lines))
		}
		return ""
	}
	return ch
}

// lines are the curves of the plan as lines: see Line.
func lines(v *say.Voice, curves []plan.Curve) (out []figure.Line) {
	for i, c := range curves {
		if len(c.Points) == 0 {
			continue
		}
		name := c.Name
		if v.Has("curve." + name) {
			name = v.T("curve." + name)
		}
		out = append(out, Line(c, name, i))
	}
	return out
}

// whole gives a chart whose setup stands alone, since every other one fails, its own point as a line.
func whole(ch figure.Chart, s plan.Screen) figure.Chart {
	for _, l := range ch.Lines {
		for _, p := range l.Points {
			if !math.IsNaN(p.Y) {
				return ch
			}
		}
	}
	ch.Lines = []figure.Line{{Label: s.Blade.Name, Strong: true, Points: []figure.XY{*ch.Mark}}}
	return ch
}

// Target is the target of a film as the band of a chart.
func Target(v *say.Voice, s plan.Screen) *figure.Band {
	return band(v, "target", s.TargetUM.Low, s.TargetUM.High)
}

// known is the band of a film as the band around the chosen line; nil where there is no film.
func known(v *say.Voice, um plan.Band) *figure.Band {
	if !(um.Value > 0) {
		return nil
	}
	b := band(v, "known", um.Low, um.High)
	b.Low, b.High = um.Low/um.Value, um.High/um.Value
	return b
}

// band is a band with what is said of it.
func band(v *say.Voice, name string, low, high float64) *figure.Band {
	t := func(where string) string { return v.T("chart."+name+where, "range", v.FilmEnds(low, high)) }
	return &figure.Band{Interval: figure.Interval{Low: low, High: high}, Label: t(""), Inside: t("-inside"), Above: t("-above"), Below: t("-below")}
}

// Ends is what the marks at the ends of the lines mean.
func Ends(v *say.Voice) [2]string {
	return [2]string{figure.Detail: v.T("chart.detail"), figure.Ink: v.T("chart.ink")}
}

// Line is a curve of the plan as a line that is drawn only where the setup clears the screen and holds the
// detail. Its style is its place in the rack, so that a blade looks the same on each chart.
func Line(c plan.Curve, label string, style int) figure.Line {
	l := figure.Line{Label: label, Strong: c.Chosen, Style: style, Step: 2.5}
	for i, p := range c.Points {
		y := p.UM
		if p.Fails != "" {
			y = math.NaN()
			for _, k := range []int{i - 1, i + 1} { // the point before or behind prints well
				if k >= 0 && k < len(c.Points) && c.Points[k].Fails == "" && !math.IsNaN(c.Points[k].UM) {
					l.Ends = append(l.Ends, figure.End{At: figure.XY{X: c.Points[k].X, Y: c.Points[k].UM}, Why: endMark(p.Fails)})
				}
			}
		}
		l.Points = append(l.Points, figure.XY{X: p.X, Y: y})
	}
	return l
}

// endMark is the mark of what fails where a line stops.
func endMark(fails string) figure.EndMark {
	if fails == "ink" {
		return figure.Ink
	}
	return figure.Detail
}

// File is a chart that can be drawn by itself, such as for a slide.
type File struct {
	Name string // location1-screen2-angle
	Draw func(c canvas.Canvas, w, h float64) error
}

// slidePT is the type of a chart that stands by itself.
const slidePT = 9.0

// Files are the charts of every screen of a plan, each with a title that says what it belongs to.
func Files(p *plan.Plan, v *say.Voice) []File {
	p = v.Named(p)
	var out []File
	for i, l := range p.Locations {
		for _, s := range l.Screens {
			for _, f := range []struct {
				name  string
				chart figure.Chart
			}{{"angle", Angle(v, s, slidePT)}, {"hardness", Hardness(v, s, slidePT)}} {
				ch := f.chart
				ch.Title = Title(v, p, l, s)
				out = append(out, File{
					Name: fmt.Sprintf("location%d-screen%d-%s", i+1, s.Number, f.name),
					Draw: func(c canvas.Canvas, w, h float64) error {
						return ch.Draw(c, figure.Rect{X: 2, Y: 2, W: w - 4, H: h - 4})
					},
				})
			}
		}
	}
	return out
}

// Title says which job, screen, mesh and blade a chart belongs to. A job without a number is named by its title.
func Title(v *say.Voice, p *plan.Plan, l plan.Location, s plan.Screen) string {
	var parts []string
	for _, part := range []string{cmp.Or(p.Job, p.Title), l.Name, v.T("chart.screen", "n", fmt.Sprint(s.Number), "color", s.Color), s.Mesh.Name, s.Blade.Name} {
		if part = strings.TrimSpace(part); part != "" {
			parts = append(parts, part)
		}
	}
	return strings.Join(parts, " · ")
}
