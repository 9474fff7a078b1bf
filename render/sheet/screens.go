package sheet

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"bladecard/calc/plan"
	"bladecard/render/canvas"
	"bladecard/render/figure"
	"bladecard/render/flow"
)

// fact is a setting that screens often share: said once where they do. Where they do not, the settings that a hand
// makes for each screen get a column, and the others are said with their exceptions.
type fact struct {
	head   string                             // of a column; empty: it gets none
	cell   func(plan.Screen) (string, string) // the two rows of its cell in that column
	text   func(plan.Screen) string           // the setting, as an exception says it
	phrase func(plan.Screen) string           // and with its name; nil: as text
}

// facts are the settings of a screen that may be shared.
func (m *maker) facts() []fact {
	v := m.say
	named := func(key string, text func(plan.Screen) string) fact {
		return fact{text: text, phrase: func(s plan.Screen) string { return v.T("sheet-doc.say-"+key, "value", text(s)) }}
	}
	angle := func(s plan.Screen) (string, string) {
		return v.Angle(s.AngleDeg.Set), v.T("sheet-doc.hold", "range", v.AngleRange(s.AngleDeg.Low, s.AngleDeg.High))
	}
	pulls := func(s plan.Screen) string { return m.pulls(s.Strokes, s.Hits) }
	cure := named("cure", func(s plan.Screen) string { return m.cure(s.Cure) + v.CureTop(s.Cure) })
	heat := cure.phrase
	cure.phrase = func(s plan.Screen) string {
		if s.Cure.TemperatureC == nil { // it says itself how it sets
			return cure.text(s)
		}
		return heat(s)
	}
	return []fact{
		{head: v.T("sheet-doc.angle"), cell: angle, text: func(s plan.Screen) string {
			set, hold := angle(s)
			return v.T("sheet-doc.say-angle", "angle", set, "screen", v.Angle(s.AngleDeg.ToScreen), "hold", hold)
		}},
		{head: v.T("sheet-doc.strokes"), text: pulls, cell: func(s plan.Screen) (string, string) {
			if s.Hits <= 1 {
				return fmt.Sprint(s.Strokes), ""
			}
			return pulls(s), ""
		}},
		{text: func(s plan.Screen) string {
			if s.Flood {
				return v.T("sheet-doc.flood-yes")
			}
			return v.T("sheet-doc.flood-no")
		}},
		named("rubber", func(s plan.Screen) string {
			return v.T("sheet-doc.thick-free", "thick", v.Thickness(s.Blade.ThicknessMM), "free", v.Thickness(s.Blade.FreeHeightMM))
		}),
		named("length", func(s plan.Screen) string {
			if s.Blade.LengthMM > 0 {
				return v.Length(s.Blade.LengthMM)
			}
			return v.T("sheet-doc.any-length")
		}),
		named("load", func(s plan.Screen) string {
			unit, value, also := v.Air(s)
			if unit != "" {
				value = v.T("sheet-doc.air", "air", value+"\u00a0"+unit, "also", also)
			}
			return v.Load(s.LoadNPerCM) + " (" + value + ")"
		}),
		named("off-contact", func(s plan.Screen) string { return v.Gap(s.OffContact.Low, s.OffContact.High) }),
		named("tension", func(s plan.Screen) string {
			if s.OffContact.Tension == 0 {
				return ""
			}
			return v.Tension(s.OffContact.Tension)
		}),
		cure,
	}
}

// pulls is how often a screen is printed.
func (m *maker) pulls(strokes, hits int) string {
	if hits > 1 {
		return m.say.Many("sheet-doc.hits-of", strokes, "hits", fmt.Sprint(hits))
	}
	return m.say.Many("change.strokes", strokes)
}

// shared tells whether all screens of a location say the same of a fact.
func (f fact) shared(l plan.Location) bool {
	return !slices.ContainsFunc(l.Screens, func(s plan.Screen) bool { return f.text(s) != f.text(l.Screens[0]) })
}

// once says a fact for all screens of a location: what most of them have, and the others with their numbers. What
// is not known of a screen is not said.
func (m *maker) once(f fact, l plan.Location) string {
	var texts []string
	who := map[string][]int{}
	has := map[string]plan.Screen{}
	for _, s := range l.Screens {
		text := f.text(s)
		if text == "" {
			continue
		}
		if who[text] == nil {
			texts, has[text] = append(texts, text), s
		}
		who[text] = append(who[text], s.Number)
	}
	if texts == nil {
		return ""
	}
	slices.SortStableFunc(texts, func(a, b string) int { return len(who[b]) - len(who[a]) })
	first := texts[0]
	if f.phrase != nil {
		first = f.phrase(has[first])
	}
	out := whole(first, phraseMM)
	for _, text := range texts[1:] {
		out += "; " + whole(m.say.Screens(who[text])+": "+text, phraseMM)
	}
	return out
}

// The measures of a film's bar in its cell, mm.
const (
	barW = 25.0
	barH = 6.2
)

// screens is the table of a location, a row a screen.
func (m *maker) screens(l plan.Location) {
	v := m.say
	head := []string{"#", "", v.T("show.color") + ", " + v.T("show.ink"), v.T("show.mesh"), v.T("sheet-doc.stencil"), v.T("show.blade")}
	var own []fact
	for _, f := range m.facts() {
		if f.head != "" && !f.shared(l) {
			own, head = append(own, f), append(head, f.head)
		}
	}
	t := flow.Table{Name: "screens", Header: append(head, v.T("sheet-doc.cut-limit"), v.T("sheet-doc.cured"), v.T("sheet-doc.bar"), v.T("sheet-doc.run"))}
	top := 0.0
	end := func(s plan.Screen) float64 { return 1.06 * math.Max(s.TargetUM.High, s.CuredUM.High) }
	for _, s := range l.Screens {
		top = math.Max(top, end(s))
	}
	for _, s := range l.Screens {
		n := number(s)
		if len(s.Warnings) > 0 {
			n.Text += "\u00a0!"
		}
		cells := []flow.Cell{n, patch(s), m.work(s), lead(s.Mesh.Name, m.count(s.Mesh)),
			lead(v.Fine(s.Stencil.EOMUM), m.build(s.Stencil)), lead(m.blade(s.Blade.Name, s.Blade.Layup), v.T("sheet-doc.edge-"+s.Blade.Edge))}
		for _, f := range own {
			cells = append(cells, lead(f.cell(s)))
		}
		cut := v.T("sheet-doc.cut-none")
		if s.EdgeLimitDeg != nil {
			cut = v.T("sheet-doc.cut-bends", "limit", v.Number(*s.EdgeLimitDeg, 0)+"°", "edge", v.Number(s.EdgeAngleDeg, 0)+"°")
		}
		grams := ""
		if s.InkGRun != nil {
			grams = v.Mass(*s.InkGRun)
		}
		if s.InkGPerPrint != nil {
			grams = joined("\n", grams, whole(v.T("sheet-doc.a-print", "grams", v.Grams(*s.InkGPerPrint)), cellMM))
		}
		bar := figure.FilmBar{Target: figure.Interval{Low: s.TargetUM.Low, High: s.TargetUM.High}, Band: figure.Interval{Low: s.CuredUM.Low, High: s.CuredUM.High},
			Set: s.CuredUM.Value, Top: top, SizePT: flow.SmallPT}
		if top > 3*end(s) { // on the scale of the others it would be a dot
			bar.Top = end(s)
		}
		bar.Ends[0], bar.Ends[1], _ = strings.Cut(v.FilmEnds(s.TargetUM.Low, s.TargetUM.High), "–")
		film := v.FilmBoth(s.CuredUM.Value)
		if s.HeightMM != nil {
			film = v.T("card.flat", "value", film)
		}
		t.Row(append(cells, flow.Cell{Text: cut, Lead: s.EdgeLimitDeg != nil}, lead(film, v.FilmRange(s.CuredUM.Low, s.CuredUM.High)),
			flow.Cell{Figure: bar, W: barW, H: barH}, flow.Cell{Text: grams, Lead: s.InkGRun != nil})...)
	}
	m.Y += 0.5
	m.Table(t)
}

// lead is a cell whose first row is strong.
func lead(first, second string) flow.Cell {
	return flow.Cell{Text: whole(first, cellMM) + "\n" + whole(second, cellMM), Lead: true}
}

// The longest text that stays on one line, in a cell, in a sentence, and of a mesh to take instead, in mm.
const (
	cellMM   = 22.0
	phraseMM = 50.0
)

// whole keeps a text that is short enough on one line.
func whole(s string, mostMM float64) string {
	if canvas.Width(s, flow.Regular(flow.SmallPT)) > mostMM {
		return s
	}
	return strings.ReplaceAll(s, " ", "\u00a0")
}

// work is the color of a screen with its ink, what it is for, and its dots.
func (m *maker) work(s plan.Screen) flow.Cell {
	v, dots := m.say, ""
	if h := s.Halftone; h != nil {
		if dots = v.Number(h.LinesPerInch, 0) + "\u00a0" + v.T("unit.lines"); h.BitmapDPI > 0 {
			dots = v.Number(h.BitmapDPI, 0) + "\u00a0dpi"
		} else if h.HasAngle {
			dots += "\u00a0" + v.Angle(h.AngleDeg)
		}
	}
	ink := v.InkName(s.Ink)
	use := v.T("use." + s.Use)
	if s.Color == "" || ink == use {
		ink = ""
	}
	return flow.Cell{Text: m.color(s) + "\n" + joined(", ", ink, use, dots), Lead: true}
}

// count is the mesh count that the name of the mesh does not say.
func (m *maker) count(x plan.Mesh) string {
	v := m.say
	if inch := v.Number(x.CountPerInch, 0); !strings.HasPrefix(x.Name, inch) {
		return v.T("sheet-doc.per-inch", "n", inch)
	}
	return v.T("sheet-doc.per-cm", "n", v.Number(x.CountPerCM, 0))
}

// build is how the EOM is built.
func (m *maker) build(s plan.Stencil) string {
	v := m.say
	if s.Coats > 0 {
		return v.Coats(s.Coats)
	}
	return v.CapillaryFilms(s.FilmsUM)
}

// blade is the name of a blade with its layup, where that is not the name.
func (m *maker) blade(name, layup string) string {
	if layup != "" && !strings.Contains(name, layup) {
		name += " (" + layup + ")"
	}
	return name
}

// cure is the heat that the whole film must reach, or what else cures it.
func (m *maker) cure(c plan.Cure) string {
	if c.TemperatureC == nil {
		return m.say.T("sheet-doc.cure-" + c.By)
	}
	return m.say.TemperatureRange(c.TemperatureC.Low, c.TemperatureC.High)
}
