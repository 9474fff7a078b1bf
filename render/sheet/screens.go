package sheet

import (
	"slices"
	"strings"

	"bladecard/render/flow"

	"bladecard/calc/plan"
)

// screens is the table of what is on the screens: colour, ink, mesh, stencil.
func (m *maker) screens(l plan.Location) {
	v := m.say
	t := flow.Table{Name: "screens", Header: []string{"#", "", v.T("show.color"), v.T("show.ink"), v.T("show.use"), v.T("show.mesh"),
		v.T("sheet-doc.stencil"), v.T("sheet-doc.off-contact"), v.T("sheet-doc.print"), v.T("sheet-doc.run")}}
	for _, s := range l.Screens {
		a, b := "", ""
		if s.InkGPerPrint != nil {
			a = v.Mass(*s.InkGPerPrint)
		}
		if s.InkGRun != nil {
			b = v.Mass(*s.InkGRun)
		}
		use := v.T("use." + s.Use)
		if h := s.Halftone; h != nil {
			use += "\n" + m.dots(*h)
		}
		cells := append([]flow.Cell{number(s), patch(s)}, flow.Plain(s.Color, v.InkName(s.Ink), use, s.Mesh.Name+"\n"+v.Count(s.Mesh.CountPerInch, s.Mesh.CountPerCM),
			v.Fine(s.Stencil.EOMUM)+" ("+v.Percent(s.Stencil.ShareOfCloth)+")\n"+m.build(s.Stencil), v.Gap(s.OffContact.Low, s.OffContact.High), a, b)...)
		t.Row(cells...)
	}
	m.Part("screens", v.T("sheet-doc.screens"), "", t)
}

// dots is the line count and angle of a halftone, or what a bitmap has.
func (m *maker) dots(h plan.Halftone) string {
	v := m.say
	if h.BitmapDPI > 0 {
		return v.Number(h.BitmapDPI, 0) + "\u00a0dpi"
	}
	s := v.Number(h.LinesPerInch, 0) + "\u00a0" + v.T("unit.lines")
	if h.HasAngle {
		s += ", " + v.Angle(h.AngleDeg)
	}
	return s
}

// build is how the EOM is built.
func (m *maker) build(s plan.Stencil) string {
	v := m.say
	if s.Coats > 0 {
		return v.Coats(s.Coats)
	}
	films := ""
	for i, f := range s.FilmsUM {
		if i > 0 {
			films += " + "
		}
		films += v.FilmUM(f)
	}
	return v.T("show.film-stencil", "films", films)
}

// strokes is the table of how each screen is printed.
func (m *maker) strokes(l plan.Location) {
	v := m.say
	t := flow.Table{Name: "strokes", Header: []string{"#", "", v.T("show.blade"), v.T("sheet-doc.rubber"), v.T("sheet-doc.length"), v.T("show.angle"),
		v.T("sheet-doc.to-screen"), v.T("show.strokes"), v.T("sheet-doc.flood"), v.T("sheet-doc.load"), v.T("sheet-doc.pressure")}}
	for _, s := range l.Screens {
		length := v.T("sheet-doc.any-length")
		if s.Blade.LengthMM > 0 {
			length = v.Length(s.Blade.LengthMM)
		}
		flood := v.T("sheet-doc.flood-no")
		if s.Flood {
			flood = v.T("sheet-doc.flood-yes")
		}
		t.Row(append([]flow.Cell{number(s), patch(s)}, flow.Plain(m.blade(s.Blade.Name, s.Blade.Layup, s.Blade.Edge), m.rubber(s.Blade.ThicknessMM, s.Blade.FreeHeightMM), length,
			v.Angle(s.AngleDeg.Set)+" ("+v.AngleRange(s.AngleDeg.Low, s.AngleDeg.High)+")", v.Angle(s.AngleDeg.ToScreen), v.Pulls(s.Strokes, s.Hits), flood,
			v.Load(s.LoadNPerCM), m.pressure(s))...)...)
	}
	m.Part("strokes", v.T("sheet-doc.stroke"), "", t)
}

func (m *maker) pressure(s plan.Screen) string {
	v := m.say
	if p := s.Pressure; p != nil {
		return v.T("sheet-doc.pressure-cylinders", "air", v.Gauge(p.Bar, p.PSI))
	}
	return v.T("sheet-doc.pressure-hand", "class", v.T("load."+s.LoadClass))
}

// film is the table of what should come of it, and the heat.
func (m *maker) film(l plan.Location) {
	v := m.say
	t := flow.Table{Name: "film", Header: []string{"#", "", v.T("show.wet"), v.T("show.cured"), v.T("sheet-doc.target-from"), v.T("sheet-doc.flash"), v.T("sheet-doc.cure")}}
	for _, s := range l.Screens {
		cure := cureTemperature(m, s.Cure)
		if s.HeightMM != nil {
			cure += "\n" + v.T("sheet-doc.rises", "height", v.Small(*s.HeightMM))
		}
		t.Row(append([]flow.Cell{number(s), patch(s)}, flow.Plain(m.band(s.WetUM), m.band(s.CuredUM),
			v.FilmRange(s.TargetUM.Low, s.TargetUM.High)+"\n"+v.T("from."+s.TargetUM.From), m.say.FlashShort(s.Flash), cure)...)...)
	}
	m.Part("film", v.T("sheet-doc.film"), m.measured(l), t)
}

// measured tells which measured prints stand behind the films; empty where there are none.
func (m *maker) measured(l plan.Location) string {
	var all []string
	for _, s := range l.Screens {
		if text := m.say.Measured(m.plan.Calibration, s.Measured); text != "" && !slices.Contains(all, text) {
			all = append(all, text)
		}
	}
	return strings.Join(all, " ")
}

func (m *maker) band(b plan.Band) string {
	return m.say.Film(b.Value) + " (" + m.say.FilmRange(b.Low, b.High) + ")"
}

// cureTemperature is the heat that the whole film must reach, or what else cures it.
func cureTemperature(m *maker, c plan.Cure) string {
	if c.TemperatureC == nil {
		return m.say.T("sheet-doc.cure-" + c.By)
	}
	return m.say.TemperatureRange(c.TemperatureC.Low, c.TemperatureC.High)
}
