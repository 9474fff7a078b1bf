package say

import (
	"fmt"
	"strconv"
	"strings"

	"bladecard/calc/plan"
)

// CapillaryFilms are the films that a stencil is built of.
func (v *Voice) CapillaryFilms(um []float64) string {
	var films []string
	for _, f := range um {
		films = append(films, v.FilmUM(f))
	}
	return v.T("show.film-stencil", "films", strings.Join(films, " + "))
}

// Stencil is how the EOM is built and how much of it counts.
func (v *Voice) Stencil(s plan.Stencil) string {
	build := v.Coats(s.Coats)
	if s.Coats == 0 {
		build = v.CapillaryFilms(s.FilmsUM)
	}
	key := "show.stencil"
	if s.CountedShare < almostNothing {
		key = "show.stencil-wide"
	}
	return v.T(key, "eom", v.Fine(s.EOMUM), "build", build, "share", v.Percent(s.CountedShare), "feature", v.Length(s.FeatureMM))
}

// almostNothing is the share of an EOM below which a printer need not think of it.
const almostNothing = 0.1

// Coats is a number of coats of emulsion as a printer counts them, print side + blade side: "2+2 coats".
func (v *Voice) Coats(n int) string {
	return v.Many("show.coats", n, "print", strconv.Itoa((n+1)/2), "blade", strconv.Itoa(n/2))
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
		return v.T("show.pressure", "air", v.Gauge(p.Bar, p.PSI))
	}
	return v.T("show.hand", "class", v.T("load."+s.LoadClass))
}

// Air is what to set the pressure to, by its unit, its value, and the same in the other unit; by hand it is how
// firm to press, and until when.
func (v *Voice) Air(s plan.Screen) (unit, value, also string) {
	p := s.Pressure
	if p == nil {
		return "", v.T("load." + s.LoadClass), v.T("card.until-clean")
	}
	bar, psi := v.gauge(p.Bar, p.PSI)
	if v.inch {
		return "psi", psi, bar + nbsp + "bar"
	}
	return "bar", bar, psi + nbsp + "psi"
}

// Heat is flash and cure in words.
func (v *Voice) Heat(s plan.Screen) []string {
	out := []string{v.Flash(s.Flash), v.Cure(s.Cure)}
	if s.HeightMM != nil {
		out = append(out, v.T("show.rises", "height", v.Small(*s.HeightMM)))
	}
	return out
}

// Flash is whether and how long to flash, and why.
func (v *Voice) Flash(f plan.Flash) string { return v.flash("show.", f) }

// FlashShort is Flash for a cell of a table, with the reason on a line of its own.
func (v *Voice) FlashShort(f plan.Flash) string {
	if f.Does == "lamp" { // the lamp is the reason
		return v.flash("sheet-doc.", f)
	}
	return v.flash("sheet-doc.", f) + "\n" + v.T("why."+f.Why)
}

// flash picks the text of a section for what the flash does.
func (v *Voice) flash(section string, f plan.Flash) string {
	pairs := []string{"why", v.T("why." + f.Why)}
	key := "flash-never"
	switch {
	case f.Does == "lamp":
		key = "flash-lamp"
	case !f.Needed:
		key = "no-flash"
	case f.Seconds == nil && (f.TemperatureC == nil || f.Unit == ""):
		key = "flash-untimed"
	case f.Seconds != nil:
		key = map[string]string{"dry": "flash-dry", "tack": "flash-tack"}[f.Does]
		if key == "" {
			key = "flash-times"
		}
		pairs = append(pairs, v.flashTimes(f)...)
	}
	return v.T(section+key, pairs...)
}

// flashTimes are the times of a flash by name; what does not go by them is left out.
func (v *Voice) flashTimes(f plan.Flash) []string {
	out := []string{"seconds", v.SecondsRange(f.Seconds.Low, f.Seconds.High)}
	if f.StartS != nil {
		out = append(out, "start", v.Seconds(*f.StartS))
	}
	cold := f.ColdSeconds
	if cold == nil {
		cold = f.Seconds
	}
	out = append(out, "cold", v.SecondsRange(cold.Low, cold.High))
	if t := f.TemperatureC; t != nil {
		out = append(out, "temperature", v.TemperatureRange(t.Low, t.High))
	}
	return out
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
		if c.Passes > 1 {
			text += v.T("show.cure-passes", "n", fmt.Sprint(c.Passes))
		}
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
	text := v.T("show.ink-print", "g", v.Grams(*s.InkGPerPrint))
	if s.InkGRun != nil && s.InkMLRun != nil {
		text += v.T("show.ink-run", "run", v.Mass(*s.InkGRun), "litres", v.Volume(*s.InkMLRun))
	}
	return text
}

// InkName is an ink class as the language calls it; a class of the shop's own keeps its name.
func (v *Voice) InkName(class string) string {
	if key := "ink-name." + class; v.Has(key) {
		return v.T(key)
	}
	return class
}

// FlashTile is what a tile says of a flash: the word, the seconds to start with, and what follows. The last two may
// be empty.
func (v *Voice) FlashTile(f plan.Flash) (word, time, sub string) {
	switch {
	case f.Does == "lamp":
		return v.T("card.lamp"), "", v.T("card.each")
	case !f.Needed:
		return v.T("card.no-flash"), "", ""
	}
	word = v.T("card.flash")
	if key := "card.flash-" + f.Does; v.Has(key) {
		word = v.T(key)
	}
	switch {
	case f.StartS != nil:
		time = v.Seconds(*f.StartS)
	case f.Seconds != nil:
		time = v.SecondsRange(f.Seconds.Low, f.Seconds.High)
	default:
		return word, "", v.T("card.by-sheet")
	}
	if f.Cool {
		sub = v.T("card.cool")
	}
	return word, time, sub
}
