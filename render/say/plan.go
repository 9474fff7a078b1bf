package say

import (
	"slices"
	"strconv"
	"strings"

	"bladecard/calc/plan"
)

// Fill writes the words of the voice into a plan: the text of every warning and the change of
// every correction.
func (v *Voice) Fill(p *plan.Plan) {
	v.warnings(p.Warnings)
	for l := range p.Locations {
		v.warnings(p.Locations[l].Warnings)
		for s := range p.Locations[l].Screens {
			sc := &p.Locations[l].Screens[s]
			v.warnings(sc.Warnings)
			for i := range sc.Corrections {
				sc.Corrections[i].Change = v.Change(sc.Corrections[i])
			}
		}
	}
}

func (v *Voice) warnings(ws []plan.Warning) {
	for i, w := range ws {
		ws[i].Text = v.T("warning."+w.Code, v.Values(w.Values, w.Names)...)
	}
}

// Change is a correction in words, "blade 60".
func (v *Voice) Change(c plan.Correction) string {
	switch n, err := strconv.Atoi(c.To); {
	case err == nil && c.Kind == "strokes" && c.Hits > 1: // "3 strokes" would read as fewer than the 2+2 that are set
		return strokesOfHits(n, c.Hits) + " " + v.T("card.strokes")
	case err == nil && c.Kind == "strokes":
		return v.Many("change.strokes", n)
	case err == nil && c.Kind == "hits":
		return v.Many("change.hits", n)
	}
	if um, err := strconv.ParseFloat(c.To, 64); err == nil && c.Kind == "eom" {
		return v.T("change.eom", "to", v.Fine(um))
	}
	return v.T("change."+c.Kind, "to", v.Decimal(c.To))
}

// Short is a correction in the fewest words.
func (v *Voice) Short(c plan.Correction) string {
	if n, err := strconv.Atoi(c.To); err == nil && c.Kind == "hits" {
		return v.Many("change.hits-short", n)
	}
	return v.Change(c)
}

// Pulls is how often a screen is printed: strokes, or hits with their strokes.
func (v *Voice) Pulls(strokes, hits int) string {
	switch {
	case hits <= 1:
		return strconv.Itoa(strokes)
	case strokes == 1:
		return v.T("pulls.hits", "hits", strconv.Itoa(hits))
	}
	return v.T("pulls.both", "hits", strconv.Itoa(hits), "strokes", strconv.Itoa(strokes))
}

// FlashBetween says what several hits need on a screen that is set without a flash, since they would be strokes
// without one; empty elsewhere.
func (v *Voice) FlashBetween(s plan.Screen, hits int) string {
	if hits <= 1 || s.Flash.Needed {
		return ""
	}
	return v.T("card.flash-between")
}

// Effect is what a correction does to the film, "+9.7 µm (+22 ± 8 %)".
func (v *Voice) Effect(c plan.Correction) string {
	return v.Signed(c.DeltaUM) + " (" + strings.TrimSuffix(v.SignedPercent(c.DeltaPercent), nbsp+"%") + nbsp + "±" + nbsp + strings.TrimLeft(v.SignedPercent(c.SpreadPercent), "+") + ")"
}

// Disturbs is what else a correction touches, in words: ", loses fine detail"; empty if nothing.
// The codes in but are left out.
func (v *Voice) Disturbs(c plan.Correction, but ...string) string {
	out := ""
	for _, d := range c.Disturbs {
		if !slices.Contains(but, d) {
			out += ", " + v.T("disturbs."+d)
		}
	}
	return out
}

// Measured tells how many measured prints stand behind a film, from when, and what was not among
// them; empty where the shop has not measured.
func (v *Voice) Measured(c *plan.Calibrated, m *plan.Measured) string {
	if c == nil || m == nil {
		return ""
	}
	text := v.Many("measured.prints", c.Count)
	if c.Date != "" {
		text += v.T("measured.date", "date", v.Date(c.Date))
	}
	if c.Old {
		text += v.T("measured.old")
	}
	if !m.Mesh {
		text += v.T("measured.mesh")
	}
	if !m.Blade {
		text += v.T("measured.blade")
	}
	return text + "."
}

// Decimal writes a number that stands as text with the decimal sign of the language; a name
// stays as it is.
func (v *Voice) Decimal(s string) string {
	if strings.Trim(s, "0123456789.") != "" {
		return s
	}
	return strings.Replace(s, ".", v.point, 1)
}

// Shop is whose shop paper is for: the shop's name and its file, or that it is the built-in one.
func (v *Voice) Shop(from, name, file string) string {
	switch {
	case from == plan.ShopBuiltIn || name == "" && file == "":
		return v.T("shop.built-in")
	case name == "":
		return file
	case file == "":
		return name
	}
	return v.T("shop.paper", "name", name, "file", file)
}

// Substrate is what is printed on, in words: its name, else its kind, then fiber and shade.
func (v *Voice) Substrate(s plan.Substrate) string {
	parts := []string{s.Name}
	if s.Name == "" {
		parts[0] = v.T("stock." + s.Kind)
	}
	if s.Fibre != "" {
		parts = append(parts, v.T("fibre."+s.Fibre))
	}
	if s.Shade != "" {
		parts = append(parts, v.T("shade."+s.Shade))
	}
	return strings.Join(parts, ", ")
}
