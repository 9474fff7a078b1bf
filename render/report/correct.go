package report

import (
	"cmp"
	"fmt"
	"io"
	"math"

	"bladecard/calc/plan"
	"bladecard/calc/seen"
	"bladecard/render/say"
)

// Correct writes an answer to what was measured and seen of a screen for a terminal of so many letters.
func Correct(w io.Writer, s plan.Screen, a seen.Answer, v *say.Voice, wide int) error {
	t := &table{Options: Options{Wide: wide}, v: v, w: w}
	if a.Measurement != nil {
		t.measured(s, a)
	} else {
		t.text(0, v.T("seen-head.screen", "n", fmt.Sprint(s.Number), "color", cmp.Or(s.Color, v.InkName(s.Ink)), "ink", v.InkName(s.Ink), "mesh", s.Mesh.Name,
			"expected", v.FilmUM(s.CuredUM.Value), "band", v.FilmRange(s.CuredUM.Low, s.CuredUM.High), "edge", v.Number(s.EdgeAngleDeg, 0)+"°"))
	}
	for _, l := range a.Opposed {
		t.text(0, v.T("show.warning", "text", l.Text))
	}
	for _, f := range a.Findings {
		t.line("")
		t.text(0, v.T("seen-name."+f.Seen))
		t.seen("instead", f.Instead)
		t.seen("look", f.Look)
		t.seen("against", f.Against)
		for i, c := range f.Changes {
			t.text(2, v.T("seen-head.change", "n", fmt.Sprint(i+1), "text", c.Text))
		}
		t.seen("measure", f.Measure)
		t.seen("not", f.Not)
		t.seen("caution", f.Cautions)
	}
	return t.err
}

// seen prints the lines of one kind, each with its head.
func (t *table) seen(kind string, lines []seen.Line) {
	for _, l := range lines {
		t.text(2, t.v.T("seen-head."+kind, "text", l.Text))
	}
}

// measured prints a judged measurement: what a film outside its band means, and what would mend one that
// misses the target.
func (t *table) measured(s plan.Screen, a seen.Answer) {
	v, m := t.v, a.Measurement
	key := "correct.measured"
	if s.HeightMM != nil {
		key = "correct.measured-flat"
	}
	t.text(0, v.T(key, "n", fmt.Sprint(s.Number), "film", v.FilmBoth(m.MeasuredUM),
		"expected", v.FilmUM(m.ExpectedUM.Value), "band", v.FilmRange(m.ExpectedUM.Low, m.ExpectedUM.High), "target", v.FilmRange(s.TargetUM.Low, s.TargetUM.High)))
	if !m.InBand {
		t.text(0, v.T("correct.outside", "times", v.Number(m.MeasuredUM/m.ExpectedUM.Value, 1)))
		t.seen("means", a.Means)
	}
	switch {
	case m.InTarget && m.InBand:
		t.text(0, v.T("correct.good"))
	case m.InTarget:
		t.text(0, v.T("correct.in-target"))
	case len(m.Outcomes) == 0:
		t.text(0, v.T("correct.none"))
	}
	for _, o := range m.Outcomes {
		key := "correct.reaches"
		if !o.InRange && v.Prints(o.OffUM) {
			key = "correct.over"
			if o.OffUM < 0 {
				key = "correct.short"
			}
		}
		t.text(2, v.T(key, "change", v.Change(o.Correction), "film", v.FilmUM(o.FilmUM.Value), "band", v.FilmRange(o.FilmUM.Low, o.FilmUM.High), "off", v.FilmUM(math.Abs(o.OffUM)))+v.Disturbs(o.Correction))
	}
}
