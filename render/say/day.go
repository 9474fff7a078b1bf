package say

import (
	"cmp"
	"fmt"
	"strings"

	"bladecard/calc/day"
)

// Part is a heading and its lines, or the rows of a table.
type Part struct {
	Name, Title string
	Lines       []string
	Rows        [][]string
}

// Day is a day in parts that hold something: the presses, blades, clashes, screens, inks, dryers and sharpening.
func (v *Voice) Day(d day.Day) []Part {
	var out []Part
	add := func(p Part) {
		if len(p.Lines)+len(p.Rows) > 0 {
			out = append(out, p)
		}
	}
	for _, p := range d.Presses {
		part := Part{Name: "press " + p.Name, Title: v.T("day.press", "press", p.Name, "sum", v.DaySum(p))}
		for i, j := range p.Jobs {
			part.Lines = append(part.Lines, v.T("day.job", "n", fmt.Sprint(i+1), "job", strings.TrimSpace(j.Job+" "+j.Title), "facts", strings.Join(v.DayFacts(p, j), ", "), "changes", strings.Join(v.DayChanges(i, j), ", ")))
		}
		add(part)
	}
	if d.FileOrder > 0 {
		add(Part{Name: "order", Title: v.T("day.order"), Lines: []string{v.DaySaves(d)}})
	}
	blades := Part{Name: "blades", Title: v.T("day.blades")}
	for _, b := range d.Blades {
		blades.Lines = append(blades.Lines, v.T("day.blade", "blade", v.BladeLength(b), "wanted", fmt.Sprint(b.Wanted), "count", fmt.Sprint(b.Count)))
	}
	add(blades)
	clashes := Part{Name: "clashes", Title: v.T("day.clashes")}
	for _, c := range d.Clashes {
		clashes.Lines = append(clashes.Lines, v.DayClash(c)...)
	}
	add(clashes)
	screens := Part{Name: "screens", Title: v.T("day.screens")}
	for _, s := range d.Screens {
		screens.Rows = append(screens.Rows, v.DayScreen(s))
	}
	add(screens)
	inks := Part{Name: "inks", Title: v.T("day.inks")}
	for _, x := range d.Inks {
		inks.Lines = append(inks.Lines, v.T("day.ink", "ink", strings.Trim(v.InkName(x.Ink)+", "+x.Color, ", "), "mass", v.Mass(x.G), "volume", v.Volume(x.ML), "jobs", strings.Join(x.Jobs, ", ")))
	}
	add(inks)
	dryers := Part{Name: "dryers", Title: v.T("day.dryers")}
	for _, x := range d.Dryers {
		dryers.Lines = append(dryers.Lines, v.T("day.dryer", "dryer", x.Dryer, "film", v.TemperatureRange(x.Film.Low, x.Film.High), "belt", v.BeltSpeed(x.Belt.Low, x.Belt.High), "jobs", strings.Join(x.Jobs, ", ")))
	}
	add(dryers)
	sharpen := Part{Name: "sharpen", Title: v.T("day.sharpen")}
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

// DaySaves is how many changes a day has, and how many in the order given, where those are more.
func (v *Voice) DaySaves(d day.Day) string {
	key := "day.saves"
	if d.Changes == d.FileOrder {
		key = "day.saves-none"
	}
	return v.T(key, "now", fmt.Sprint(d.Changes), "given", fmt.Sprint(d.FileOrder))
}

// DaySum is how many jobs a press has and how long they take, as far as that is known.
func (v *Voice) DaySum(p day.Press) string {
	jobs := v.Many("day.jobs", len(p.Jobs))
	if p.Untimed < len(p.Jobs) {
		jobs = v.T("day.sum", "jobs", jobs, "setup", v.Minutes(p.SetupMin), "run", v.Minutes(p.RunMin))
	}
	if p.Untimed > 0 {
		jobs += v.Many("day.untimed", p.Untimed)
	}
	return jobs
}

// DayFacts are what is known of a job of a press: pieces, heads, due date and minutes. A press of one head has no choice of heads.
func (v *Voice) DayFacts(p day.Press, j day.Job) []string {
	out := []string{v.pieces(j.Pieces)}
	if p.Heads > 1 {
		out = append(out, v.T("day.heads", "n", fmt.Sprint(j.Heads), "of", fmt.Sprint(p.Heads)))
	}
	if j.Due != "" {
		out = append(out, v.T("show.due", "date", v.Date(j.Due)))
	}
	if t := j.Time; t != nil {
		out = append(out, v.T("day.facts-time", "setup", v.Minutes(t.SetupMin), "run", v.Minutes(t.RunMin)))
	}
	return out
}

// DayChanges is what is changed before a job; i is its place in the order.
func (v *Voice) DayChanges(i int, j day.Job) []string {
	if i == 0 {
		return []string{v.T("day.first")}
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
		return []string{v.T("day.change-none")}
	}
	return parts
}

// BladeLength is a blade of the layout with its length, or that it has to fit the image, where none is known.
func (v *Voice) BladeLength(b day.Blades) string {
	if b.LengthMM == 0 {
		return v.T("day.blade-any", "blade", b.Blade)
	}
	return b.Blade + ", " + v.Length(b.LengthMM)
}

// DayClash is a stock that is short, the screens that want it, and what settles it.
func (v *Voice) DayClash(c day.Clash) []string {
	var where []string
	for i := 0; i < len(c.Screens); {
		w, screens := c.Screens[i], []int{}
		for ; i < len(c.Screens) && c.Screens[i].Job == w.Job && c.Screens[i].Title == w.Title && c.Screens[i].Location == w.Location; i++ {
			screens = append(screens, c.Screens[i].Screen)
		}
		where = append(where, v.dayWhere(w, screens))
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
func (v *Voice) DayWhere(w day.Where) string { return v.dayWhere(w, []int{w.Screen}) }

// dayWhere names screens of the location of one.
func (v *Voice) dayWhere(w day.Where, numbers []int) string {
	name := w.Job
	if name == "" {
		name = w.Title
	}
	key := "day.where-one"
	if w.Named {
		key = "day.where"
	}
	return v.T(key, "job", name, "location", v.Location(w.Location), "screens", v.Screens(numbers))
}

// Location is the name of a location in the language, where its file does not name it.
func (v *Voice) Location(name string) string {
	if n, is := strings.CutPrefix(name, "location "); is && strings.Trim(n, "0123456789") == "" {
		return v.T("told.unnamed", "n", n)
	}
	return name
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
		mesh += " × " + fmt.Sprint(s.Pieces)
	}
	return []string{mesh, stencil, tension, dots, cmp.Or(s.Color, v.InkName(s.Ink)), v.DayWhere(s.Where)}
}

// pieces is a quantity, or that none is stated.
func (v *Voice) pieces(n int) string {
	if n == 0 {
		return v.T("day.pieces-none")
	}
	return v.Many("day.pieces", n)
}
