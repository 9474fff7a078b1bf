package report

import (
	"fmt"
	"io"
	"math"
	"strings"
	"text/tabwriter"

	"bladecard/calc/plan"
	"bladecard/render/say"
)

// Table writes the setups of a plan for a terminal.
func Table(w io.Writer, p *plan.Plan, v *say.Voice) error {
	t := &table{v: v, w: w, calibration: p.Calibration}
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
		mix = append(mix, v.T(key, "color", m.Color, "ink", m.Ink, "mass", v.Mass(m.G), "volume", v.Volume(m.ML)))
	}
	if mix != nil {
		t.line()
		t.line(v.T("show.mix", "list", strings.Join(mix, "; ")))
	}
	return t.err
}

type table struct {
	v   *say.Voice
	w   io.Writer
	err error

	calibration *plan.Calibrated
}

func (t *table) line(parts ...string) {
	if t.err == nil {
		_, t.err = fmt.Fprintln(t.w, strings.Join(parts, ""))
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
	t.line(strings.Join(first, " · "))
	t.line(v.T("show.on", "what", Substrate(p.Substrate, v)), " · ",
		v.T("show.press", "name", p.Press.Name, "load", v.Load(p.Press.LoadNPerCM), "speed", v.Speed(p.Press.StrokeMPS)))
}

// Substrate is what is printed on, in words.
func Substrate(s plan.Substrate, v *say.Voice) string {
	var parts []string
	if s.Name != "" {
		parts = append(parts, s.Name)
	} else {
		parts = append(parts, v.T("stock."+s.Kind))
	}
	if s.Fibre != "" {
		parts = append(parts, v.T("fibre."+s.Fibre))
	}
	if s.Shade != "" {
		parts = append(parts, v.T("shade."+s.Shade))
	}
	return strings.Join(parts, ", ")
}

func (t *table) location(l plan.Location) {
	v := t.v
	t.line()
	head := l.Name
	if l.WidthMM > 0 && l.HeightMM > 0 {
		head += " · " + v.Size(l.WidthMM, l.HeightMM)
	}
	t.line(head)
	tw := tabwriter.NewWriter(t.w, 0, 0, 2, ' ', 0)
	row := func(cells ...string) {
		if t.err == nil {
			_, t.err = fmt.Fprintln(tw, "  "+strings.Join(cells, "\t"))
		}
	}
	row("#", v.T("show.color"), v.T("show.ink"), v.T("show.use"), v.T("show.mesh"), v.T("show.eom"), v.T("show.blade"),
		v.T("show.angle"), v.T("show.strokes"), v.T("show.wet"), v.T("show.cured"), v.T("show.target"))
	for _, s := range l.Screens {
		row(fmt.Sprint(s.Number), s.Color, s.Ink, v.T("use."+s.Use), s.Mesh.Name, v.Fine(s.Stencil.EOMUM), s.Blade.Name,
			v.Angle(s.AngleDeg.Set)+" ("+v.AngleRange(s.AngleDeg.Low, s.AngleDeg.High)+")", v.Pulls(s.Strokes, s.Hits),
			v.FilmUM(s.WetUM.Value), v.Film(s.CuredUM.Value)+" ("+v.FilmRange(s.CuredUM.Low, s.CuredUM.High)+")",
			v.FilmRange(s.TargetUM.Low, s.TargetUM.High))
	}
	if t.err == nil {
		t.err = tw.Flush()
	}
	if len(l.Stations) > 1 {
		t.line("  ", v.Many("show.order", l.HeadsNeeded, "stations", strings.Join(stations(l, v), " → ")), "; ",
			v.T("show.presses", "presses", strings.Join(l.Presses, ", ")))
	}
	for _, w := range l.Warnings {
		t.line("  ", v.T("show.warning", "text", w.Text))
	}
	for _, s := range l.Screens {
		t.screen(s)
	}
}

// stations are the stations of a location in words; a print on wet ink is marked.
func stations(l plan.Location, v *say.Voice) []string {
	var out []string
	for _, s := range l.Stations {
		name := l.Screens[s.Screen-1].Color
		if name == "" {
			name = l.Screens[s.Screen-1].Ink
		}
		word := v.T("station."+s.Kind, "screen", fmt.Sprintf("%d %s", s.Screen, name))
		if s.Wet {
			word += v.T("station.wet")
		}
		out = append(out, word)
	}
	return out
}

func (t *table) screen(s plan.Screen) {
	v := t.v
	limit := ""
	if s.EdgeLimitDeg != nil {
		limit = v.T("show.limit", "limit", v.Number(*s.EdgeLimitDeg, 0)+"°")
	}
	t.line("  ", v.T("show.detail", "n", fmt.Sprint(s.Number), "edge", v.Number(s.EdgeAngleDeg, 0)+"°", "limit", limit, "load", v.Load(s.LoadNPerCM),
		"angle", Move(s.Moves.Angle, v), "hardness", Move(s.Moves.Hardness, v), "force", Move(s.Moves.Load, v)))
	if h := s.Halftone; h != nil {
		t.line("    ", Halftone(*h, v))
	}
	if text := v.Measured(t.calibration, s.Measured); text != "" {
		t.line("    ", text)
	}
	t.line("    ", v.Stencil(s.Stencil), "; ", strings.Join(v.Press(s), "; "))
	t.line("    ", strings.Join(v.Heat(s), "; "))
	if ink := v.Ink(s); ink != "" {
		t.line("    ", ink)
	}
	var path, lost, change []string
	for _, r := range s.Reasons {
		path = append(path, Reason(r, v))
	}
	lost = LostBlades(s.Lost, v)
	for _, c := range s.Corrections {
		change = append(change, c.Change+" "+v.Effect(c)+v.Disturbs(c))
	}
	if s.MeetsAll {
		path = append(path, v.T("short.none"))
	}
	t.line("    ", v.T("show.why", "path", strings.Join(path, "; ")))
	if lost != nil {
		t.line("    ", v.T("show.lost", "list", strings.Join(lost, "; ")))
	}
	if change != nil {
		t.line("    ", v.T("show.change", "list", strings.Join(change, "; ")))
	}
	for _, w := range s.Warnings {
		t.line("    ", v.T("show.warning", "text", w.Text))
	}
}

// Move is what an error of the press does to the film, both ways: "−3 % / +4 %".
func Move(m plan.Move, v *say.Voice) string {
	side := func(x *float64) string {
		if x == nil {
			return v.T("show.no-figure")
		}
		return v.SignedPercent(100 * *x)
	}
	return side(m.Less) + " / " + side(m.More)
}

// Reason is a step of the path in words.
func Reason(r plan.Reason, v *say.Voice) string {
	s := v.T("reason."+r.Step, "from", v.Decimal(r.From), "to", v.Decimal(r.To), "film", v.FilmUM(r.FilmUM), "delta", v.Signed(r.DeltaUM),
		"edge", v.Number(r.EdgeDeg, 0)+"°", "dedge", signedDeg(r.DeltaEdge, v))
	if r.Step != "start" {
		s = v.T("short."+r.Short) + ": " + s
	}
	return s
}

func signedDeg(x float64, v *say.Voice) string {
	s := v.Number(math.Abs(x), 0) + "°"
	if x < 0 {
		return "−" + s
	}
	return "+" + s
}

// LostBlades tells what the blades that were not taken lost on; blades that lost on the same
// thing, without a figure, share one entry.
func LostBlades(all []plan.Lost, v *say.Voice) []string {
	var out []string
	seen := map[string]bool{}
	for i, l := range all {
		by := lostBy(l, v)
		if by != "" {
			out = append(out, v.T("lost."+l.On, "blade", l.Blade, "by", by))
			continue
		}
		if seen[l.On] {
			continue
		}
		seen[l.On] = true
		var names []string
		for _, o := range all[i:] {
			if o.On == l.On {
				names = append(names, o.Blade)
			}
		}
		out = append(out, v.T("lost."+l.On, "blade", strings.Join(names, ", "), "by", ""))
	}
	return out
}

// lostBy is by how much a blade lost, empty where its reason has no figure.
func lostBy(l plan.Lost, v *say.Voice) string {
	switch l.On {
	case "film-thin", "film-heavy", "less-film":
		return v.FilmUM(l.By)
	case "cut":
		return v.Number(l.By, 0) + "°"
	case "moves":
		return v.Percent(l.By)
	case "length":
		return v.Length(l.By)
	}
	return ""
}

// Halftone is the verdict on a halftone or bitmap in words.
func Halftone(h plan.Halftone, v *say.Voice) string {
	if h.BitmapDPI > 0 {
		return v.T("show.bitmap", "dot", v.Fine(h.DotUM), "holds", v.Fine(h.DotHoldsUM))
	}
	ratio := v.T("show.too-coarse")
	if h.RatioHolds {
		ratio = v.T("show.holds")
	}
	moire := v.T("show.no-angle")
	switch {
	case h.Locked:
		moire = v.T("show.locked", "angle", v.Angle(h.AngleDeg))
	case h.HasAngle:
		moire = v.T("show.beat", "beat", v.Number(h.BeatMM, 2)+"\u00a0mm", "angle", v.Angle(h.AngleDeg))
	}
	return v.T("show.halftone", "ratio", v.Number(h.MeshRatio, 1), "ratiov", ratio, "cells", v.Number(h.OpeningsPerCell, 0),
		"dot", v.Fine(h.DotUM), "share", v.Percent(h.Smallest), "holds", v.Fine(h.DotHoldsUM), "from", v.Percent(h.HoldsFrom), "moire", moire)
}
