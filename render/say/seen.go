package say

import (
	"strings"

	"bladecard/calc/seen"
)

// Seen writes the words of the voice into an answer.
func (v *Voice) Seen(a *seen.Answer) {
	for i := range a.Means {
		v.seen(&a.Means[i])
	}
	for i := range a.Opposed {
		o := &a.Opposed[i]
		o.Text = v.T("seen.opposed", "one", v.T("seen-name."+o.Names["one"]), "other", v.T("seen-name."+o.Names["other"]))
	}
	for i := range a.Findings {
		f := &a.Findings[i]
		for _, lines := range [][]seen.Line{f.Instead, f.Look, f.Against, f.Measure, f.Not, f.Cautions} {
			for k := range lines {
				v.seen(&lines[k])
			}
		}
		for k := range f.Changes {
			v.seenChange(&f.Changes[k])
		}
	}
	if a.Measurement != nil {
		for i := range a.Outcomes {
			a.Outcomes[i].Change = v.Change(a.Outcomes[i].Correction)
		}
	}
}

func (v *Voice) seen(l *seen.Line) { l.Text = v.T("seen."+l.Code, v.seenValues(*l)...) }

// seenChange is a change in words, with all that follows from one of the film: "2 strokes: 42 um (33-51 um),
// edge 27 deg, flash from 2.1 s".
func (v *Voice) seenChange(c *seen.Change) {
	if c.Correction == nil {
		v.seen(&c.Line)
		return
	}
	values := append(v.seenValues(c.Line), "change", v.Change(*c.Correction))
	c.Text = v.T("seen-then.film", values...)
	for _, then := range []struct{ needs, key string }{{"edge_deg", "edge"}, {"film_of_dot_percent", "dot"}, {"flash_s", "flash"}} {
		if _, has := c.Values[then.needs]; has {
			c.Text += v.T("seen-then."+then.key, values...)
		}
	}
	c.Text += v.Disturbs(*c.Correction, "flash")
}

// Do is a change in the fewest words, for a card.
func (v *Voice) Do(c seen.Change) string {
	if c.Correction != nil {
		return v.Short(*c.Correction)
	}
	key := "card-do." + c.Code
	if !v.Has(key) {
		key = "seen." + c.Code
	}
	return v.T(key, v.seenValues(c.Line)...)
}

// seenValues are the figures of a line, and ranges of those that are its two ends: wet_low_um and wet_high_um
// make wet_range.
func (v *Voice) seenValues(l seen.Line) []string {
	out := v.Values(l.Values, l.Names)
	if psi, both := l.Values["load_psi"]; both {
		for i := 0; i < len(out); i += 2 {
			if out[i] == "load_bar" {
				out[i+1] = v.Gauge(l.Values["load_bar"], psi)
			}
		}
	}
	for name, low := range l.Values {
		stem, unit, is := strings.Cut(name, "_low_")
		high, both := l.Values[stem+"_high_"+unit]
		if !is || !both {
			continue
		}
		out = append(out, stem+"_range", v.figureRange(unit, low, high))
	}
	return out
}

// figureRange is a range by its unit, as Figure has them.
func (v *Voice) figureRange(unit string, low, high float64) string {
	switch unit {
	case "um":
		return v.FilmRange(low, high)
	case "s":
		return v.SecondsRange(low, high)
	case "c":
		return v.TemperatureRange(low, high)
	case "mpm":
		return v.BeltSpeed(low, high)
	case "mm":
		return v.Gap(low, high)
	case "deg":
		return v.AngleRange(low, high)
	case "g":
		return v.GramRange(low, high)
	}
	return v.Figure("_"+unit, low) + "–" + v.Figure("_"+unit, high)
}
