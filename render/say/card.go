package say

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"bladecard/calc/plan"
	"bladecard/calc/seen"
)

// The words of a card. Where a function returns several texts, each says the same in less room than the one before.

// BriefWarning is a warning in a few words, for a front.
func (v *Voice) BriefWarning(w plan.Warning) string {
	if key := "front-warning." + w.Code; v.Has(key) {
		return v.T(key)
	}
	return v.T("front-warning.other")
}

// BladeFact is the length of a blade with the state of its edge.
func (v *Voice) BladeFact(b plan.Blade) []string {
	if b.LengthMM == 0 {
		return []string{v.T("edge." + b.Edge)}
	}
	long := v.Length(b.LengthMM)
	return []string{long + ", " + v.T("card.edge-"+b.Edge), long}
}

// Strokes is how often a screen is printed, with the word for it: strokes, hits of one stroke, or the strokes of
// each hit, "2+2".
func (v *Voice) Strokes(s plan.Screen) (word, count string) {
	n := strconv.Itoa(s.Strokes)
	switch {
	case s.Hits <= 1:
		return v.Many("card.strokes", s.Strokes), n
	case s.Strokes == 1:
		return v.T("card.hits-one"), strconv.Itoa(s.Hits)
	}
	return v.T("card.strokes"), strokesOfHits(s.Strokes, s.Hits)
}

// strokesOfHits is the strokes of each hit, "2+2".
func strokesOfHits(strokes, hits int) string {
	n := strconv.Itoa(strokes)
	if hits > 3 {
		return strconv.Itoa(hits) + "×" + n
	}
	return n + strings.Repeat("+"+n, hits-1)
}

// Cloth is the mesh with its stencil and its dots.
func (v *Voice) Cloth(s plan.Screen) []string {
	short := s.Mesh.Name + " · " + v.T("card.eom", "eom", v.Fine(s.Stencil.EOMUM))
	cloth := v.T("card.mesh", "mesh", short)
	t := s.Halftone
	if t == nil {
		return []string{cloth + " (" + v.Percent(s.Stencil.ShareOfCloth) + ")", cloth}
	}
	dots := " · " + v.Dots(*t)
	if !t.HasAngle {
		return []string{cloth + dots, cloth}
	}
	return []string{cloth + dots, short + dots}
}

// Dots is a halftone as its film is made, "50 lpi at 22.5°", or a bitmap.
func (v *Voice) Dots(h plan.Halftone) string {
	if h.BitmapDPI > 0 {
		return v.Number(h.BitmapDPI, 0) + nbsp + "dpi"
	}
	lines := v.Number(h.LinesPerInch, 0) + nbsp + v.T("unit.lines")
	if !h.HasAngle {
		return lines
	}
	return v.T("card.lines", "lines", lines, "angle", v.Angle(h.AngleDeg))
}

// Next is where the garment goes after a screen: with the color, with it in few words, and without.
func (v *Voice) Next(p *plan.Plan, s plan.Screen) []string {
	n := s.Next
	if n == nil {
		if s.Cure.By == "heat" && p.Substrate.Kind == "garment" {
			return []string{v.T("card.last-heat"), v.T("card.last")}
		}
		return []string{v.T("card.last")}
	}
	to, at := "card.next", n.Head
	switch {
	case n.Screen == s.Number && n.Head == s.Head:
		return []string{v.T("card.again")}
	case n.Screen == s.Number:
		out := []string{v.T("card.again-head", "n", fmt.Sprint(at)), v.T(to, "n", fmt.Sprint(at))}
		if s.Number == s.Of && at == s.Heads[len(s.Heads)-1] && s.Cure.By == "heat" && p.Substrate.Kind == "garment" {
			out = slices.Insert(out, 0, v.T("card.again-last", "n", fmt.Sprint(at))) // one card hangs at both heads
		}
		return out
	case p.Press.Kind == "flatbed":
		to, at = "card.next-pass", n.Screen
	}
	there, color := v.T(to, "n", fmt.Sprint(at)), v.InkName(n.Color)
	return []string{there + ", " + color, v.T("card.next-short", "n", fmt.Sprint(at), "color", color), there}
}

// Line is a text behind a label.
type Line struct{ Label, Text string }

// Cured is the film to expect, large, with mil for an inch shop beside it, or empty. Ink that rises is told before it does.
func (v *Voice) Cured(s plan.Screen) (film, mil string) {
	key := "card.cured"
	if s.HeightMM != nil {
		key = "card.flat"
	}
	film = v.FilmUM(s.CuredUM.Value)
	_, mil, _ = strings.Cut(v.FilmBoth(s.CuredUM.Value), film+" ")
	return v.T(key, "value", film), strings.Trim(mil, "()")
}

// Comb is what a wet comb should read; behind sep it says that it reads one of several hits.
func (v *Voice) Comb(s plan.Screen, sep string) string {
	film := v.FilmUM(s.CombUM.Value) + " (" + v.FilmRange(s.CombUM.Low, s.CombUM.High) + ")"
	if s.Hits > 1 {
		film += sep + v.T("card.each-hit")
	}
	return film
}

// Expect is how to tell that the film is as expected, a line a way of measuring it.
func (v *Voice) Expect(p *plan.Plan, s plan.Screen) []Line {
	band := v.FilmRange(s.CuredUM.Low, s.CuredUM.High)
	gauge := v.T("card.gauge-line", "band", band)
	switch {
	case s.HeightMM != nil:
		gauge = v.T("card.gauge-rises", "band", band, "height", v.Small(*s.HeightMM))
	case p.Substrate.Kind != "garment":
		gauge = v.T("card.gauge-sheet", "band", band)
	case s.SinksUM == 0: // a base takes nothing in, and the gauge would read it too
		gauge = v.T("card.gauge-base", "band", band)
	}
	out := []Line{{v.T("card.gauge"), gauge}, {v.T("card.comb"), v.T("card.comb-line", "comb", v.Comb(s, " "))}}
	if g := s.WeighG; g != nil {
		out = append(out, Line{v.T("card.weigh"), v.T("card.weigh-line", "value", v.Grams(g.Value), "band", v.GramRange(g.Low, g.High))})
	}
	if text := v.Measured(p.Calibration, s.Measured); text != "" {
		out = append(out, Line{"", text})
	}
	return out
}

// CardTarget is the target with its reason, for a ruler.
func (v *Voice) CardTarget(s plan.Screen) string {
	return v.T("card.target", "range", v.FilmRange(s.TargetUM.Low, s.TargetUM.High), "from", v.T("from."+s.TargetUM.From))
}

// Fault is what a fault looks like, and what to do about it in order.
func (v *Voice) Fault(f seen.Finding) (looks string, do []string) {
	looks = "seen-name." + f.Seen
	if key := "card.fault-" + f.Seen; v.Has(key) {
		looks = key
	}
	for _, c := range f.Changes {
		do = append(do, v.Do(c))
	}
	steps := make([]string, len(do))
	for i := range do {
		steps[len(do)-1-i] = "→ " + strings.Join(do[:i+1], v.T("card.then"))
	}
	return v.T(looks), steps
}

// Lean is how far another blade may lean.
func (v *Voice) Lean(l plan.Lean) string {
	if l.ToDeg == nil {
		return v.T("card.lean-none")
	}
	return v.Angle(*l.ToDeg)
}

// CureTop is the limit of a cure that the cloth ends before the inks are cured: ", max 154 °C"; empty elsewhere.
func (v *Voice) CureTop(c plan.Cure) string {
	if c.TemperatureC == nil || c.TopC == 0 || c.TopC >= c.TemperatureC.High {
		return ""
	}
	return v.T("card.cure-top", "top", v.Temperature(c.TopC))
}

// CardSetup is wipe test, flash and cure in the fewest words.
func (v *Voice) CardSetup(s plan.Screen) []Line {
	out := []Line{{v.T("card.wipe"), v.T("card.wipe-line")}}
	if f := s.Flash; f.Needed && f.StartS != nil {
		out = append(out, Line{v.T("card.flash-label"), v.T("card.flash-line", v.flashTimes(f)...)})
	}
	c := s.Cure
	if c.TemperatureC == nil {
		return append(out, Line{v.T("card.cure"), v.T("card.cure-" + c.By)})
	}
	text := v.TemperatureRange(c.TemperatureC.Low, c.TemperatureC.High) + v.CureTop(c)
	if c.DwellS != nil {
		text += v.T("card.cure-dwell", "dwell", v.SecondsRange(c.DwellS.Low, c.DwellS.High))
	}
	if c.BeltMPerMin != nil {
		text += v.T("card.cure-belt", "belt", v.BeltSpeed(c.BeltMPerMin.Low, c.BeltMPerMin.High))
	}
	return append(out, Line{v.T("card.cure"), text})
}

// Cautions are what can hurt; empty where nothing is known to.
func (v *Voice) Cautions(codes []string) string {
	text := ""
	for _, c := range codes {
		text += v.T("caution."+c) + " "
	}
	if text == "" {
		return ""
	}
	return text + v.T("caution.defer")
}

// LogHeads are the columns of the log on a card.
func (v *Voice) LogHeads(s plan.Screen) []string {
	air := v.T("card.log-hand")
	if unit, _, _ := v.Air(s); unit != "" {
		air = v.T("card.log-air", "unit", unit)
	}
	film := v.T("card.log-cured")
	if s.HeightMM != nil {
		film = v.T("card.log-flat")
	}
	return []string{v.T("card.log-date"), v.T("card.log-wet"), film, v.T("card.log-angle"), v.T("card.log-strokes"), air, v.T("card.log-flash"), v.T("card.log-wiped"), v.T("card.log-name")}
}

// capital is s with a capital and a full stop.
func capital(s string) string {
	r, n := utf8.DecodeRuneInString(s)
	return string(unicode.ToUpper(r)) + strings.TrimSuffix(s[n:], ".") + "."
}
