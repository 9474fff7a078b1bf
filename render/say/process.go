package say

import "bladecard/calc/plan"

// Stencil is how the EOM is built and how much of it counts.
func (v *Voice) Stencil(s plan.Stencil) string {
	build := v.Many("show.coats", s.Coats)
	if s.Coats == 0 {
		build = ""
		for i, f := range s.FilmsUM {
			if i > 0 {
				build += " + "
			}
			build += v.FilmUM(f)
		}
		build = v.T("show.film-stencil", "films", build)
	}
	return v.T("show.stencil", "eom", v.Fine(s.EOMUM), "build", build, "share", v.Percent(s.CountedShare), "feature", v.Length(s.FeatureMM))
}

// Press is what to set on the press besides blade and angle: off-contact, and pressure.
func (v *Voice) Press(s plan.Screen) []string {
	o := s.OffContact
	text := v.T("show.off-contact", "range", v.Gap(o.Low, o.High))
	if o.StretchMM != nil && *o.StretchMM >= 0.005 { // less is not to be seen
		text += v.T("show.stretch", "mm", v.Small(*o.StretchMM))
	}
	if o.TouchNCM != nil {
		text += v.T("show.touch", "load", v.Load(*o.TouchNCM))
	}
	return []string{text, v.Pressure(s)}
}

// Pressure is what the gauge shows, or what the hand feels.
func (v *Voice) Pressure(s plan.Screen) string {
	if p := s.Pressure; p != nil {
		return v.T("show.pressure", "bar", v.Number(p.Bar, 1), "psi", v.Number(p.PSI, 0))
	}
	return v.T("show.hand", "class", v.T("load."+s.LoadClass))
}

// Heat is flash and cure in words.
func (v *Voice) Heat(s plan.Screen) []string {
	out := []string{v.Flash(s.Flash), v.Cure(s.Cure)}
	if s.HeightMM != nil {
		out = append(out, v.T("show.rises", "height", v.Small(*s.HeightMM)))
	}
	return out
}

// Flash is whether and how long to flash.
func (v *Voice) Flash(f plan.Flash) string {
	why := v.T("why." + f.Why)
	switch {
	case !f.Needed:
		return v.T("show.no-flash", "why", why)
	case f.Unit == "":
		return v.T("show.flash-untimed", "why", why)
	case f.Seconds == nil:
		return v.T("show.flash-never", "why", why)
	case f.ColdSeconds == nil || f.TemperatureC == nil:
		return v.T("show.flash-dry", "seconds", v.SecondsRange(f.Seconds.Low, f.Seconds.High), "why", why)
	}
	return v.T("show.flash", "seconds", v.SecondsRange(f.Seconds.Low, f.Seconds.High), "cold", v.SecondsRange(f.ColdSeconds.Low, f.ColdSeconds.High),
		"temperature", v.TemperatureRange(f.TemperatureC.Low, f.TemperatureC.High), "why", why)
}

// Cure is how the ink is set for good.
func (v *Voice) Cure(c plan.Cure) string {
	if c.TemperatureC == nil {
		return v.T("show.cure-" + c.By)
	}
	text := v.T("show.cure", "temperature", v.TemperatureRange(c.TemperatureC.Low, c.TemperatureC.High))
	if c.TopC > 0 {
		text += v.T("show.cure-top", "top", v.Temperature(c.TopC))
	}
	if c.DwellS != nil {
		text += v.T("show.cure-dwell", "dwell", v.SecondsRange(c.DwellS.Low, c.DwellS.High))
	}
	if c.BeltMPerMin != nil && c.GarmentsPerHour != nil {
		text += v.T("show.cure-belt", "belt", v.BeltSpeed(c.BeltMPerMin.Low, c.BeltMPerMin.High),
			"garments", v.Number(c.GarmentsPerHour.Low, 0)+"–"+v.Number(c.GarmentsPerHour.High, 0))
	}
	return text
}

// Ink is the ink of a print and of the run; empty where size or coverage are not stated.
func (v *Voice) Ink(s plan.Screen) string {
	if s.InkGPerPrint == nil {
		return ""
	}
	text := v.T("show.ink-print", "g", v.Mass(*s.InkGPerPrint))
	if s.InkGRun != nil && s.InkMLRun != nil {
		text += v.T("show.ink-run", "run", v.Mass(*s.InkGRun), "litres", v.Volume(*s.InkMLRun))
	}
	return text
}
