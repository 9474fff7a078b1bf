package say

import (
	"strconv"
	"strings"

	"bladecard/calc/plan"
)

// Last is what a screen ran with last, what is different now, what was measured and who signed it off, in
// sentences; empty where it has not run.
func (v *Voice) Last(s plan.Screen) string {
	if s.Last == nil {
		return ""
	}
	differs := capital(v.T("last.same"))
	if list := v.LastDiffers(*s.Last); list != nil {
		differs = v.T("last.differs", "list", strings.Join(list, "; "))
	}
	out := v.lastLine(*s.Last, v.LastSetup(*s.Last)) + " " + differs
	for _, text := range []string{v.LastFilm(s), v.LastSigned(*s.Last)} {
		if text != "" {
			out += " " + capital(text)
		}
	}
	return out
}

// LastShort is when a screen ran last, what is different now, and what was measured.
func (v *Voice) LastShort(s plan.Screen) string {
	out := v.T("last.same")
	if list := v.LastDiffers(*s.Last); list != nil {
		out = strings.Join(list, "; ")
	}
	out = v.lastLine(*s.Last, out)
	if film := v.LastFilm(s); film != "" {
		out += " " + capital(film)
	}
	return out
}

// lastLine is the day of a last run with what is said of it.
func (v *Voice) lastLine(r plan.LastRun, text string) string {
	if r.Date == "" {
		return v.T("last.line-undated", "setup", text)
	}
	return v.T("last.line", "day", v.Date(r.Date), "setup", text)
}

// LastSetup is the setup of a last run: of load and air what the press shows.
func (v *Voice) LastSetup(r plan.LastRun) string {
	pulls := v.Many("change.strokes", r.Strokes)
	if r.Hits > 1 {
		pulls = v.Pulls(r.Strokes, r.Hits)
	}
	parts := []string{r.Mesh, v.T("last.blade", "blade", r.Blade), v.Angle(r.AngleDeg), pulls}
	switch {
	case r.AirBar != nil:
		parts = append(parts, v.lastAir(*r.AirBar))
	case r.LoadNPerCM != nil:
		parts = append(parts, v.Load(*r.LoadNPerCM))
	}
	return strings.Join(parts, ", ")
}

// lastAir is the pressure of the cylinders in the unit of the shop's gauge.
func (v *Voice) lastAir(bar float64) string {
	const psiPerBar = 14.503773773
	if v.inch {
		return v.Number(bar*psiPerBar, 0) + nbsp + "psi"
	}
	return v.Number(bar, 1) + nbsp + "bar"
}

// LastFilm is what was measured, and what is expected now; empty where nothing was measured.
func (v *Voice) LastFilm(s plan.Screen) string {
	r := s.Last
	if r.CuredUM == nil {
		return ""
	}
	measured := v.T("last.measured-"+r.CuredFrom, "film", v.FilmUM(*r.CuredUM))
	for _, d := range r.Differences {
		if d.What == "film" {
			return v.T("last.outside", "measured", measured, "range", v.FilmRange(d.Range.Low, d.Range.High))
		}
	}
	return v.T("last.expected", "measured", measured, "now", v.FilmUM(s.CuredUM.Value))
}

// LastDiffers are the differences from the setup of the plan, "blade 70 then, 65/90/65 now".
func (v *Voice) LastDiffers(r plan.LastRun) []string {
	var out []string
	for _, d := range r.Differences {
		if d.What == "film" { // LastFilm tells
			continue
		}
		then, now := d.Then, d.Now
		if d.Was != nil {
			then, now = v.lastFigure(d.What, *d.Was), v.lastFigure(d.What, *d.Is)
		}
		out = append(out, v.T("last.then-now", "what", v.T("last.what-"+d.What), "then", then, "now", now))
	}
	return out
}

// lastFigure writes a figure of a difference in its unit.
func (v *Voice) lastFigure(what string, x float64) string {
	switch what {
	case "eom":
		return v.Fine(x)
	case "angle":
		return v.Angle(x)
	case "load":
		return v.Load(x)
	case "air":
		return v.lastAir(x)
	case "flash":
		return v.Seconds(x)
	}
	return strconv.Itoa(int(x))
}

// LastSigned is what the first print was signed off with; empty where nobody did.
func (v *Voice) LastSigned(r plan.LastRun) string {
	var parts []string
	if r.Name != "" {
		parts = append(parts, v.T("last.signed", "name", r.Name))
	}
	if r.Wiped != "" {
		parts = append(parts, v.T("last.wiped-"+r.Wiped))
	}
	if r.CureC != nil {
		parts = append(parts, v.T("last.cure", "temperature", v.Temperature(*r.CureC)))
	}
	if r.Wash != "" {
		parts = append(parts, v.T("last.wash-"+r.Wash))
	}
	return strings.Join(parts, ", ")
}
