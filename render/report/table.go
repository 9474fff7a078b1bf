package report

import (
	"cmp"
	"fmt"
	"io"
	"strings"

	"bladecard/calc/plan"
	"bladecard/render/say"
)

// Options are what a table shows beside the plan.
type Options struct {
	Wide int    // letters in a line
	Shop string // which shop the plan is for, in words
	Why  bool   // also how each setup came about, and what would change it
}

// Table writes the setups of a plan for a terminal.
func Table(w io.Writer, p *plan.Plan, v *say.Voice, o Options) error {
	p = v.Named(p)
	t := &table{Options: o, v: v, w: w, calibration: p.Calibration, press: p.Press.Kind}
	t.head(p)
	for _, l := range p.Locations {
		t.location(l)
	}
	var mix []string
	for _, m := range p.Mix {
		key := "show.mix-one"
		if m.Color == "" {
			key = "show.mix-plain"
		}
		mix = append(mix, v.T(key, "color", m.Color, "ink", v.InkName(m.Ink), "mass", v.Mass(m.G), "volume", v.Volume(m.ML)))
	}
	if mix != nil {
		t.line("")
		t.text(0, v.T("show.mix", "list", strings.Join(mix, "; ")))
	}
	if text := v.JobTime(p); text != "" {
		t.text(0, text)
	}
	return t.err
}

// hangs is how far in the further lines of a text stand.
const hangs = 2

type table struct {
	Options
	v   *say.Voice
	w   io.Writer
	err error

	calibration *plan.Calibrated
	press       string // its kind
}

func (t *table) line(text string) {
	if t.err == nil {
		_, t.err = fmt.Fprintln(t.w, text)
	}
}

// text writes a text that starts so many letters in, over as many lines as it takes.
func (t *table) text(indent int, text string) {
	for _, l := range Wrap(text, indent, hangs, t.Wide) {
		t.line(l)
	}
}

func (t *table) head(p *plan.Plan) {
	v := t.v
	first := []string{}
	for _, s := range []string{p.Job, p.Title, p.Customer} {
		if s != "" {
			first = append(first, s)
		}
	}
	if p.Quantity > 0 {
		first = append(first, v.Many("show.pieces", p.Quantity))
	}
	if p.Due != "" {
		first = append(first, v.T("show.due", "date", v.Date(p.Due)))
	}
	t.text(0, strings.Join(first, " · "))
	t.text(0, v.T("show.on", "what", v.Substrate(p.Substrate))+" · "+
		v.T("show.press", "name", p.Press.Name, "load", v.Load(p.Press.LoadNPerCM), "speed", v.Speed(p.Press.StrokeMPS)))
	t.text(0, v.T("shop.note", "shop", t.Shop))
	if text := v.Measured(t.calibration, &plan.Measured{Mesh: true, Blade: true}); text != "" {
		t.text(0, text)
	}
	for _, w := range p.Warnings {
		t.text(0, v.T("show.warning", "text", w.Text))
	}
}

// column is a column of the table of a location.
type column struct {
	title string
	cell  func(plan.Screen) string
}

// columns are those of a location, what is set on the press before what comes of it. The first two
// tell the screen.
func (t *table) columns() []column {
	v := t.v
	return []column{
		{"#", func(s plan.Screen) string { return fmt.Sprint(s.Number) }},
		{v.T("show.color"), func(s plan.Screen) string { return cut(cmp.Or(s.Color, v.InkName(s.Ink)), t.Wide/3) }},
		{v.T("show.mesh"), func(s plan.Screen) string { return s.Mesh.Name }},
		{v.T("show.blade"), func(s plan.Screen) string { return s.Blade.Name }},
		{v.T("show.angle"), func(s plan.Screen) string {
			return v.Angle(s.AngleDeg.Set) + " (" + v.AngleRange(s.AngleDeg.Low, s.AngleDeg.High) + ")"
		}},
		{v.T("show.strokes"), func(s plan.Screen) string { return v.Pulls(s.Strokes, s.Hits) }},
		{v.T("show.flashed"), func(s plan.Screen) string {
			switch {
			case !s.Flash.Needed:
				return v.T("show.flashed-no")
			case s.Flash.Seconds == nil:
				return v.T("show.flashed-yes")
			case s.Flash.StartS != nil:
				return v.Seconds(*s.Flash.StartS)
			}
			return v.SecondsRange(s.Flash.Seconds.Low, s.Flash.Seconds.High)
		}},
		{v.T("show.target"), func(s plan.Screen) string { return v.FilmRange(s.TargetUM.Low, s.TargetUM.High) }},
		{v.T("show.cured"), func(s plan.Screen) string {
			return v.Film(s.CuredUM.Value) + " (" + v.FilmRange(s.CuredUM.Low, s.CuredUM.High) + ")"
		}},
		{v.T("show.wet"), func(s plan.Screen) string { return v.FilmUM(s.CombUM.Value) }},
		{v.T("show.gap"), func(s plan.Screen) string { return v.Gap(s.OffContact.Low, s.OffContact.High) }},
		{v.T("show.pressed"), func(s plan.Screen) string {
			if p := s.Pressure; p != nil {
				return v.Gauge(p.Bar, p.PSI)
			}
			return v.T("load." + s.LoadClass)
		}},
		{v.T("show.eom"), func(s plan.Screen) string { return v.Fine(s.Stencil.EOMUM) }},
		{v.T("show.ink"), func(s plan.Screen) string { return v.InkName(s.Ink) }},
		{v.T("show.use"), func(s plan.Screen) string { return v.T("use." + s.Use) }},
	}
}

func (t *table) location(l plan.Location) {
	v := t.v
	t.line("")
	head := v.Location(l.Name)
	if l.WidthMM > 0 && l.HeightMM > 0 {
		head += " · " + v.Size(l.WidthMM, l.HeightMM)
	}
	t.text(0, head)
	var cells [][]string
	for _, c := range t.columns() {
		col := []string{c.title}
		for _, s := range l.Screens {
			col = append(col, c.cell(s))
		}
		cells = append(cells, col)
	}
	for _, row := range tabled(cells, 2, 2, t.Wide) {
		t.line(row)
	}
	if len(l.Stations) > 1 {
		t.text(2, v.Many("show.order", l.HeadsNeeded, "stations", strings.Join(stations(l, v), " → "))+"; "+
			v.T("show.presses", "presses", strings.Join(l.Presses, ", ")))
	}
	for _, w := range l.Warnings {
		t.text(2, v.T("show.warning", "text", w.Text))
	}
	for _, text := range []string{v.Rounds(t.press, l), v.PressTime(l.Time), t.base(l)} {
		if text != "" {
			t.text(2, text)
		}
	}
	for _, s := range l.Screens {
		if text := v.Last(s); text != "" {
			t.text(2, v.T("show.of-screens", "screens", v.Screens([]int{s.Number}), "text", text))
		}
	}
	if t.Why {
		for _, s := range l.Screens {
			t.why(s)
		}
	}
	l.Warnings = nil
	for _, w := range say.Tell(nil, l) {
		t.text(2, v.T("show.of-screens", "screens", v.Screens(w.At[0].Screens), "text", v.T("show.warning", "text", w.Text)))
	}
}

// base is the base that is proposed, with the command that prints it for the job file.
func (t *table) base(l plan.Location) string {
	if l.Base == nil {
		return ""
	}
	return t.v.Base(l.Base) + t.v.T("base.fix")
}

// stations are the stations of a location in words; a print on wet ink is marked.
func stations(l plan.Location, v *say.Voice) []string {
	var out []string
	for _, s := range l.Stations {
		name := l.Screens[s.Screen-1].Color
		if name == "" {
			name = v.InkName(l.Screens[s.Screen-1].Ink)
		}
		word := v.T("station."+s.Kind, "screen", fmt.Sprintf("%d %s", s.Screen, name))
		if s.Wet {
			word += v.T("station.wet")
		}
		out = append(out, word)
	}
	return out
}
