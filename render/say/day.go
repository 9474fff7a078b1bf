package say

import (
	"fmt"
	"strings"

	"bladecard/calc/day"
)

// Part is a heading and its lines.
type Part struct {
	Name, Title string
	Lines       []string
}

// Day is a day in parts that hold something: the presses, blades, clashes, screens, inks, dryers and sharpening.
func (v *Voice) Day(d day.Day) []Part {
	var out []Part
	add := func(p Part) {
		if len(p.Lines) > 0 {
			out = append(out, p)
		}
	}
	for _, p := range d.Presses {
		part := Part{"press " + p.Name, v.T("day.press", "press", p.Name, "jobs", v.Many("day.jobs", len(p.Jobs)), "setup", v.Minutes(p.SetupMin), "run", v.Minutes(p.RunMin)), nil}
		if p.Untimed > 0 {
			part.Title += v.Many("day.untimed", p.Untimed)
		}
		for i, j := range p.Jobs {
			part.Lines = append(part.Lines, v.T("day.job", "n", fmt.Sprint(i+1), "job", strings.TrimSpace(j.Job+" "+j.Title), "pieces", v.pieces(j.Pieces),
				"heads", v.T("day.heads", "n", fmt.Sprint(j.Heads), "of", fmt.Sprint(p.Heads)), "changes", v.DayChanges(i, j)))
		}
		add(part)
	}
	add(Part{"order", v.T("day.order"), []string{v.T("day.saves", "now", fmt.Sprint(d.Changes), "given", fmt.Sprint(d.FileOrder))}})
	blades := Part{"blades", v.T("day.blades"), nil}
	for _, b := range d.Blades {
		blades.Lines = append(blades.Lines, v.T("day.blade", "blade", v.BladeLength(b), "wanted", fmt.Sprint(b.Wanted), "count", fmt.Sprint(b.Count)))
	}
	add(blades)
	clashes := Part{"clashes", v.T("day.clashes"), nil}
	for _, c := range d.Clashes {
		clashes.Lines = append(clashes.Lines, v.DayClash(c)...)
	}
	add(clashes)
	screens := Part{"screens", v.T("day.screens"), nil}
	for _, s := range d.Screens {
		screens.Lines = append(screens.Lines, strings.Join(v.DayScreen(s), "  "))
	}
	add(screens)
	inks := Part{"inks", v.T("day.inks"), nil}
	for _, x := range d.Inks {
		inks.Lines = append(inks.Lines, v.T("day.ink", "ink", x.Ink, "color", x.Color, "mass", v.Mass(x.G), "volume", v.Volume(x.ML), "jobs", strings.Join(x.Jobs, ", ")))
	}
	add(inks)
	dryers := Part{"dryers", v.T("day.dryers"), nil}
	for _, x := range d.Dryers {
		dryers.Lines = append(dryers.Lines, v.T("day.dryer", "dryer", x.Dryer, "film", v.TemperatureRange(x.Film.Low, x.Film.High), "belt", v.BeltSpeed(x.Belt.Low, x.Belt.High), "jobs", strings.Join(x.Jobs, ", ")))
	}
	add(dryers)
	sharpen := Part{"sharpen", v.T("day.sharpen"), nil}
	for _, x := range d.Sharpen {
		key := "day.sharpen-after"
		if x.Now {
			key = "day.sharpen-now"
		}
		sharpen.Lines = append(sharpen.Lines, v.T(key, "blade", x.Blade, "prints", fmt.Sprint(x.Prints), "today", fmt.Sprint(x.Today), "after", fmt.Sprint(x.After)))
	}
	add(sharpen)
	return out
}

// DayChanges is what is changed before a job; i is its place in the order.
func (v *Voice) DayChanges(i int, j day.Job) string {
	if i == 0 {
		return v.T("day.first")
	}
	var parts []string
	for _, c := range []struct {
		key string
		n   int
	}{{"day.change-blades", j.Of.Blades}, {"day.change-inks", j.Of.Inks}, {"day.change-flash", j.Of.Flash}, {"day.change-dryer", j.Of.Dryer}} {
		if c.n > 0 {
			parts = append(parts, v.Many(c.key, c.n))
		}
	}
	if parts == nil {
		return v.T("day.change-none")
	}
	return strings.Join(parts, ", ")
}

// BladeLength is a blade of the layout with its length, where the rack states it.
func (v *Voice) BladeLength(b day.Blades) string {
	if b.LengthMM == 0 {
		return b.Blade
	}
	return b.Blade + ", " + v.Length(b.LengthMM)
}

// DayClash is a stock that is short, the screens that want it, and what settles it.
func (v *Voice) DayClash(c day.Clash) []string {
	var where []string
	for _, w := range c.Screens {
		where = append(where, v.DayWhere(w))
	}
	out := []string{v.T("day.clash", "blade", c.Blade, "wanted", fmt.Sprint(c.Wanted), "count", fmt.Sprint(c.Count), "screens", strings.Join(where, "; "))}
	for _, s := range c.Swaps {
		out = append(out, v.T("day.swap", "where", v.DayWhere(s.Where), "blade", s.Blade, "angle", v.Angle(s.AngleDeg), "pulls", v.PullsWord(s.Strokes, s.Hits),
			"film", v.FilmUM(s.CuredUM), "percent", v.SignedPercent(s.DeltaPercent)))
	}
	if c.Left > 0 {
		out = append(out, v.Many("day.left", c.Left))
	}
	return out
}

// PullsWord is how often a screen is printed, with the word for it.
func (v *Voice) PullsWord(strokes, hits int) string {
	if hits > 1 {
		return v.Pulls(strokes, hits)
	}
	return v.Many("change.strokes", strokes)
}

// DayWhere names a screen of a job.
func (v *Voice) DayWhere(w day.Where) string {
	name := w.Job
	if name == "" {
		name = w.Title
	}
	return v.T("day.where", "job", name, "location", w.Location, "n", fmt.Sprint(w.Screen))
}

// DayScreen is a screen to make: where it belongs, mesh, stencil, tension and dots.
func (v *Voice) DayScreen(s day.Screen) []string {
	stencil := v.Fine(s.EOMUM)
	if s.Coats > 0 {
		stencil = v.T("day.stencil", "coats", v.Coats(s.Coats), "eom", v.Fine(s.EOMUM))
	} else if len(s.FilmsUM) > 0 {
		stencil = v.CapillaryFilms(s.FilmsUM)
	}
	tension, dots := "", ""
	if s.Tension > 0 {
		tension = v.Tension(s.Tension)
	}
	if s.Lines > 0 {
		dots = v.T("day.lines", "lines", v.Number(s.Lines, 0))
		if s.AngleDeg != nil {
			dots += " " + v.Angle(*s.AngleDeg)
		}
	} else if s.BitmapDPI > 0 {
		dots = v.T("day.bitmap", "dpi", v.Number(s.BitmapDPI, 0))
	}
	mesh := s.Mesh
	if s.Pieces > 1 {
		mesh += " x " + fmt.Sprint(s.Pieces)
	}
	return []string{mesh, stencil, tension, dots, s.Color, v.DayWhere(s.Where)}
}

// pieces is a quantity, or that none is stated.
func (v *Voice) pieces(n int) string {
	if n == 0 {
		return v.T("day.pieces-none")
	}
	return v.Many("day.pieces", n)
}
