package report

import (
	"fmt"
	"math"
	"strings"
	"unicode/utf8"

	"bladecard/calc/plan"
	"bladecard/render/say"
)

// why tells how a screen's setup came about: what it rests on, what every other blade lost on, and
// what would change the film. Effects that would be printed as nothing are left out.
func (t *table) why(s plan.Screen) {
	v := t.v
	limit := ""
	if s.EdgeLimitDeg != nil {
		limit = v.T("show.limit", "limit", v.Number(*s.EdgeLimitDeg, 0)+"°")
	}
	t.text(2, v.T("show.detail", "n", fmt.Sprint(s.Number), "edge", v.Number(s.EdgeAngleDeg, 0)+"°", "limit", limit, "load", v.Load(s.LoadNPerCM)))
	if moves := moves(s.Moves, v); moves != nil {
		t.text(4, v.T("show.moves", "list", strings.Join(moves, ", ")))
	}
	if h := s.Halftone; h != nil {
		t.text(4, Halftone(*h, v))
	}
	if text := v.Measured(t.calibration, s.Measured); text != "" {
		t.text(4, text)
	}
	t.text(4, v.Stencil(s.Stencil)+"; "+strings.Join(v.Press(s), "; "))
	t.text(4, strings.Join(v.Heat(s), "; "))
	if ink := v.Ink(s); ink != "" {
		t.text(4, ink)
	}
	var path []string
	for _, r := range s.Reasons {
		path = append(path, Reason(r, v))
	}
	if s.MeetsAll {
		path = append(path, v.T("short.none"))
	}
	t.text(4, v.T("show.why", "path", strings.Join(path, "; ")))
	if lost := LostBlades(s.Lost, v); lost != nil {
		t.text(4, v.T("show.lost", "list", strings.Join(lost, "; ")))
	}
	t.changes(s.Corrections)
}

// changes are what would change the film, a line each with its effect in a column.
func (t *table) changes(all []plan.Correction) {
	v := t.v
	var change, effect, but []string
	for _, c := range all {
		if v.Prints(c.DeltaUM) {
			change, effect, but = append(change, c.Change), append(effect, v.Effect(c)), append(but, v.Disturbs(c))
		}
	}
	if change == nil {
		return
	}
	t.text(4, v.T("show.change"))
	for i, line := range tabled([][]string{change, effect}, 0, 6, math.MaxInt) {
		if utf8.RuneCountInString(line+but[i]) <= t.Wide {
			t.line(line + but[i])
			continue
		}
		t.line(line)
		t.text(8, strings.TrimPrefix(but[i], ", "))
	}
}

// moves are what errors of the press do to the film, both ways: "−3 % / +4 % with the angle 5° off".
func moves(m plan.Moves, v *say.Voice) []string {
	var out []string
	for _, of := range []struct {
		key string
		plan.Move
	}{{"angle", m.Angle}, {"hardness", m.Hardness}} {
		if prints(of.Less, v) || prints(of.More, v) {
			out = append(out, v.T("show.move-"+of.key, "move", side(of.Less, v)+" / "+side(of.More, v)))
		}
	}
	return out
}

// prints tells whether a share is there and more than nothing once it is rounded.
func prints(share *float64, v *say.Voice) bool {
	return share != nil && v.Number(100*math.Abs(*share), 1) != "0"
}

func side(share *float64, v *say.Voice) string {
	if share == nil {
		return v.T("show.no-figure")
	}
	return v.SignedPercent(100 * *share)
}

// Reason is a step of the path in words.
func Reason(r plan.Reason, v *say.Voice) string {
	delta := v.T("reason.same")
	if v.Prints(r.DeltaUM) {
		delta = v.Signed(r.DeltaUM)
	}
	s := v.T("reason."+r.Step, "from", v.Decimal(r.From), "to", v.Decimal(r.To), "film", v.FilmUM(r.FilmUM), "delta", delta,
		"edge", v.Number(r.EdgeDeg, 0)+"°", "dedge", signedDeg(r.DeltaEdge, v))
	if r.Step != "start" {
		s = v.T("short."+r.Short) + ": " + s
	}
	return s
}

func signedDeg(x float64, v *say.Voice) string {
	s := v.Number(math.Abs(x), 0) + "°"
	if s == "0°" {
		return v.T("reason.same-edge")
	}
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
		if !v.Prints(l.By) {
			return v.T("lost.hair")
		}
		return v.FilmUM(l.By)
	case "cut":
		if v.Number(l.By, 0) == "0" {
			return v.T("lost.hair")
		}
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
	from := v.T("show.holds-from", "from", v.Percent(h.HoldsFrom))
	if h.HoldsFrom >= 1 {
		from = v.T("show.holds-none")
	}
	return v.T("show.halftone", "ratio", v.Number(h.MeshRatio, 1), "ratiov", ratio, "cells", v.Number(h.OpeningsPerCell, 0),
		"dot", v.Fine(h.DotUM), "share", v.Percent(h.Smallest), "holds", v.Fine(h.DotHoldsUM), "from", from, "moire", moire)
}
