package handout

import (
	"fmt"
	"math"
	"slices"

	"bladecard/render/canvas"
	"bladecard/render/figure"
)

// angle: what the edge does when the blade is set at an angle, in three pictures, and how far each blade may lean.
func (m *maker) angle() {
	m.section(m.t("angle.head"))
	m.paras(m.t("angle.before", "blade", m.horseName()))
	m.bends()
	m.paras(m.t("angle.one"), m.t("angle.count"))
	l := m.lesson
	t := table{even: true, columns: []column{{m.t("choice.blade"), false}}, strong: l.Workhorse + 1}
	for _, a := range l.SetDeg {
		t.columns = append(t.columns, column{m.say.Angle(a), true})
	}
	for i, b := range l.Blades {
		r := []string{m.called[i]}
		for _, e := range b.Edges {
			r = append(r, m.edge(e))
		}
		t.rows = append(t.rows, r)
	}
	m.long(m.t("angle.table", "load", m.say.Load(l.Press.LoadNPerCM)), t)
	m.leanMap()
}

// usual is where the usual angle stands in Lesson.SetDeg.
func (m *maker) usual() int {
	return slices.Index(m.lesson.SetDeg, m.lesson.Bench.AngleDeg.Set)
}

// bends are the softest blade, the one that a job starts from and the stiffest, all set at the usual angle.
func (m *maker) bends() {
	const highMM, moreMM, steepest = 54.0, 20.0, 80.0
	l, at := m.lesson, m.usual()
	var some figure.Bends
	last := -1
	for _, i := range []int{0, l.Workhorse, len(l.Blades) - 1} {
		b := l.Blades[i]
		if i == last || b.Edges[at] == nil || *b.Edges[at] > steepest {
			continue
		}
		last = i
		some = append(some, figure.Bend{
			SetDeg: l.SetDeg[at], EdgeDeg: *b.Edges[at], Share: min(1, max(0, (b.Layers[0].Hardness-50)/45)), SizePT: 12,
			SetLabel: m.t("angle.set", "angle", m.say.Angle(l.SetDeg[at])), EdgeLabel: m.t("angle.leans", "angle", m.whole(*b.Edges[at])), Label: m.shore(i),
		})
	}
	if len(some) == 0 {
		return
	}
	picture := "angle.picture"
	if len(some) == 1 {
		picture = "angle.picture-one"
	}
	m.add(m.caption(m.left(), m.width(), m.t(picture, "load", m.say.Load(l.Press.LoadNPerCM))),
		m.growing("bent blades", m.left(), m.width(), highMM, moreMM, func(c canvas.Canvas, high float64) error {
			return some.Draw(c, figure.Rect{W: m.width(), H: high})
		}))
}

// shore names a blade by the hardness of its edge, behind its name where that says something else.
func (m *maker) shore(i int) string {
	hardness := m.say.Number(m.lesson.Blades[i].Layers[0].Hardness, 0)
	shore := m.t("angle.shore", "hardness", hardness)
	if m.called[i] == hardness {
		return shore
	}
	return m.called[i] + ": " + shore
}

// whole is an angle without its tenths, which no blade is true to.
func (m *maker) whole(deg float64) string { return m.say.Number(deg, 0) + "°" }

// edge is a bent edge angle, or that the blade folds over.
func (m *maker) edge(deg *float64) string {
	if deg == nil {
		return m.t("angle.folds")
	}
	return m.whole(*deg)
}

// leanMap shows how far each blade may be set for the finest feature that must hold.
func (m *maker) leanMap() {
	const rowMM, moreMM, restMM, mostDeg = 7.5, 3.0, 20.0, 45.0
	l := m.lesson
	lm := figure.LeanMap{
		Title: m.t("lean.scale"), HighDeg: mostDeg, MarkDeg: l.SetDeg[m.usual()], Mark: m.t("lean.start", "angle", m.say.Angle(l.SetDeg[m.usual()])), Angle: m.say.Angle, SizePT: TablePT,
	}
	for _, x := range l.Limits {
		lm.Features = append(lm.Features, m.t("lean.finest", "size", m.say.Small(x.FinestMM)))
	}
	read := m.t("lean.read", "load", m.say.Load(l.Press.LoadNPerCM))
	for i, b := range l.Blades {
		if i == 0 && slices.Contains(b.Largest, nil) { // the softest leans the most
			read += " " + m.t("lean.missing")
		}
		row := figure.LeanRow{Label: m.called[i]}
		for _, a := range b.Largest {
			at := math.NaN()
			if a != nil {
				at = *a
			}
			row.MaxDeg = append(row.MaxDeg, at)
		}
		lm.Rows = append(lm.Rows, row)
	}
	rows := float64(len(lm.Rows))
	drawn := m.growing("lean map", m.left(), m.width(), restMM+rowMM*rows, moreMM*rows, func(c canvas.Canvas, high float64) error {
		return lm.Draw(c, figure.Rect{W: m.width(), H: high})
	})
	drawn.keep = true
	m.add(m.caption(m.left(), m.width(), m.t("lean.head")), drawn, m.body(m.left(), m.width(), read))
	if shown, all := len(l.Blades), l.BladesAtHand; shown < all {
		m.paras(m.t("rack.some", "shown", fmt.Sprint(shown), "all", fmt.Sprint(all)))
	}
}

// horseName is what the paper calls the blade that a job starts from.
func (m *maker) horseName() string { return m.called[m.lesson.Workhorse] }
