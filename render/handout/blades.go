package handout

import (
	"fmt"
	"math"
	"sort"
	"strconv"
	"strings"

	"bladecard/calc/lesson"
	"bladecard/render/canvas"
	"bladecard/render/charts"
	"bladecard/render/figure"
)

// hardness: what a Shore A reading means.
func (m *maker) hardness() {
	m.section(m.t("hardness.head"))
	x1, w1, x2, w2 := m.halves(0.57)
	l := m.lesson
	low, mid, high := l.Hardness[2], l.Hardness[4], l.Hardness[6]
	text := m.column(x1, w1,
		m.t("hardness.what"),
		m.t("hardness.modulus", "low", m.say.Number(low.ShoreA, 0), "mid", m.say.Number(mid.ShoreA, 0), "high", m.say.Number(high.ShoreA, 0),
			"lowmpa", m.mpa(low.MPa), "midmpa", m.mpa(mid.MPa), "highmpa", m.mpa(high.MPa), "times", m.say.Number(l.HardTimes, 1)),
		m.t("hardness.tolerance", "mid", m.say.Number(mid.ShoreA, 0), "less", m.mpa(mid.LessMPa), "more", m.mpa(mid.MoreMPa), "times", m.digits(l.OtherTimes)),
	)
	t := table{columns: []column{
		{m.t("hardness.shore"), true}, {m.t("hardness.mpa"), true}, {m.t("hardness.band"), true},
		{m.t("hardness.to70"), true}, {m.t("hardness.other"), true},
	}}
	for _, h := range l.Hardness {
		t.rows = append(t.rows, []string{
			m.say.Number(h.ShoreA, 0), m.digits(h.MPa), m.digits(h.LessMPa) + "–" + m.digits(h.MoreMPa), m.digits(h.To70), m.digits(h.OtherMPa),
		})
		if h.ShoreA == 70 {
			t.strong = len(t.rows)
		}
	}
	m.add(beside(text, m.table(t, x2, w2)))
}

// digits writes no more digits than a modulus is known to.
func (m *maker) digits(x float64) string {
	if math.Abs(x) >= 9.95 {
		return m.say.Number(x, 0)
	}
	return m.fixed(x, 1)
}

// fixed writes all of the decimals, noughts at the end too.
func (m *maker) fixed(x float64, decimals int) string {
	return m.say.Decimal(strconv.FormatFloat(x, 'f', decimals, 64))
}

func (m *maker) mpa(x float64) string { return m.digits(x) + "\u00a0MPa" }

// rack: the shop's own blades, layups in section.
func (m *maker) rack() {
	m.section(m.t("rack.head"))
	b := m.horse()
	m.paras(m.t("rack.bend"), m.t("rack.core", "share", m.say.Number(100*m.lesson.CoreShare, 1)+"\u00a0%"), m.t("rack.read", "blade", m.horseName(), "load", m.tip(b.TipNPerCMPerMM)))
	m.sections()
	t := table{columns: []column{
		{m.t("rack.blade"), false}, {m.t("rack.layup"), false}, {m.t("rack.edge"), false}, {m.t("rack.size"), true},
		{m.t("rack.mpa"), true}, {m.t("rack.rigidity"), true}, {m.t("rack.to70"), true}, {m.t("rack.tip"), true},
	}}
	if !m.layered() {
		t.columns = append(t.columns[:1], t.columns[2:]...)
	}
	if m.renamed() {
		t.columns = append(t.columns, column{m.t("rack.name"), false})
	}
	for i, b := range m.lesson.Blades {
		var mpa []string
		for _, e := range b.MPa {
			mpa = append(mpa, m.digits(e))
		}
		r := []string{
			m.called[i], b.Layup, strings.ReplaceAll(m.say.T("edge."+b.Edge), " ", "\u00a0"), m.say.Thickness(b.ThicknessMM) + ", " + m.say.Length(b.FreeHeightMM),
			words(" / ", mpa...), m.fixed(b.RigidityNM, 2), m.say.Number(100*b.To70, 0) + "\u00a0%", m.tip(b.TipNPerCMPerMM),
		}
		if !m.layered() {
			r = append(r[:1], r[2:]...)
		}
		if m.renamed() {
			r = append(r, b.Name)
		}
		t.rows = append(t.rows, r)
		if i == m.lesson.Workhorse {
			t.strong = i + 1
		}
	}
	m.long(m.t("rack.table"), t)
	if shown, all := len(m.lesson.Blades), m.lesson.BladesAtHand; shown < all {
		m.paras(m.t("rack.some", "shown", fmt.Sprint(shown), "all", fmt.Sprint(all)))
	}
}

// tip is the load that moves the tip of a blade by 1 mm, to a tenth always.
func (m *maker) tip(nPerCM float64) string {
	number, unit, _ := strings.Cut(m.say.Load(nPerCM), "\u00a0")
	if point := m.say.T("number.point"); !strings.Contains(number, point) {
		number += point + "0"
	}
	return number + "\u00a0" + unit
}

// sections draws each layup of the rack once, in section, the least rigid first.
func (m *maker) sections() {
	const most = 6
	high := m.sectionMM
	var list []lesson.Blade
	seen := map[string]bool{}
	for _, b := range m.lesson.Blades {
		if !seen[b.Layup] {
			seen[b.Layup] = true
			list = append(list, b)
		}
	}
	if len(list) > most { // the layered ones are what the drawings are for
		var layered, plain []lesson.Blade
		for _, b := range list {
			if len(b.Layers) > 1 {
				layered = append(layered, b)
			} else {
				plain = append(plain, b)
			}
		}
		list = append(layered, plain...)[:most]
	}
	sort.SliceStable(list, func(i, j int) bool { return list[i].To70 < list[j].To70 })
	w := (m.width() - gutterMM*float64(len(list)-1)) / float64(len(list))
	w = min(w, 34)
	gap := (m.width() - w*float64(len(list))) / float64(max(len(list)-1, 1))
	var row block
	for i, b := range list {
		x := m.left() + float64(i)*(w+gap)
		s := figure.Section{Aspect: b.FreeHeightMM / b.ThicknessMM, SizePT: TablePT}
		for _, l := range b.Layers {
			s.Layers = append(s.Layers, figure.Layer{
				Share: l.ThicknessMM / b.ThicknessMM, Hardness: m.say.Number(l.Hardness, 0), Hatch: math.Max(0, math.Min(1, (l.Hardness-50)/45)),
			})
		}
		art := m.draw("layup in section", x, w, high, func(c canvas.Canvas) error {
			return s.Draw(c, figure.Rect{W: w, H: high})
		})
		art.after = 1
		row = beside(row, stack(art,
			m.center(x, w, b.Layup, canvas.Bold),
			m.center(x, w, m.t("rack.as-70", "percent", m.say.Number(100*b.To70, 0)+"\u00a0%"), canvas.Regular)))
	}
	row.after = blockMM
	m.add(stack(m.caption(m.left(), m.width(), m.t("rack.sections")), row))
}

// angle: what the edge does when the blade is set at an angle.
func (m *maker) angle() {
	m.section(m.t("angle.head"))
	l := m.lesson
	b := m.horse()
	x1, w1, x2, w2 := m.halves(0.70)
	var texts []string
	texts = append(texts, m.t("angle.count"))
	if e := b.Edges[2]; e != nil {
		texts = append(texts, m.t("angle.bends", "blade", m.horseName(), "set", m.say.Angle(l.SetDeg[2]), "edge", m.whole(*e), "load", m.say.Load(l.Press.LoadNPerCM)))
	}
	texts = append(texts, m.t("angle.one"))
	dial := m.draw("angle dial", x2, w2, 42, func(c canvas.Canvas) error {
		set := l.SetDeg[2]
		return figure.Dial{
			LowDeg: set, SetDeg: set, HighDeg: set, SizePT: TablePT, LabelPT: HeadPT, Label: m.say.Angle(set),
			ScreenLabel: m.say.T("card.to-screen", "angle", m.say.Angle(90-set)), StrokeLabel: m.t("angle.stroke"),
		}.Draw(c, figure.Rect{W: w2, H: 42})
	})
	m.add(beside(m.column(x1, w1, texts...), dial))
	t := table{even: true, columns: []column{{m.t("rack.blade"), false}}, strong: l.Workhorse + 1}
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
	m.edgeChart()
	m.limits()
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

func (m *maker) edgeChart() {
	ch := figure.Chart{
		X: figure.Axis{Title: m.t("angle.x"), Low: 0, High: 45}, Y: figure.Axis{Title: m.t("angle.y")},
		SizePT: TablePT, Format: m.say.Number, Top: charts.ToScreen(m.say),
	}
	drawn := m.drawn()
	for i, b := range m.lesson.Blades {
		if !drawn[i] {
			continue
		}
		line := figure.Line{Label: m.called[i], Strong: i == m.lesson.Workhorse, Style: m.style(b.Name, i), Step: 2.5}
		for _, p := range b.Curve {
			line.Points = append(line.Points, figure.XY{X: p.SetDeg, Y: p.EdgeDeg})
		}
		if len(line.Points) > 0 {
			ch.Lines = append(ch.Lines, line)
		}
	}
	if e := m.horse().Edges[2]; e != nil {
		ch.Mark = &figure.XY{X: m.lesson.SetDeg[2], Y: *e}
	}
	m.chart("bent edge over set angle", m.t("angle.chart", "load", m.say.Load(m.lesson.Press.LoadNPerCM)), ch)
}

// style is the style of a blade on every chart: its place among the curves of the films.
func (m *maker) style(name string, at int) int {
	for i, c := range m.lesson.Film.Curves {
		if c.Name == name {
			return i
		}
	}
	return at
}

// lowChartMM is how low a chart may be.
const lowChartMM = 48.0

// chart places a chart over the full width under its caption. It is lower than others where that
// keeps it on the page.
func (m *maker) chart(what, caption string, ch figure.Chart) {
	if len(ch.Lines) == 0 {
		return
	}
	if len(m.drawn()) < len(m.lesson.Blades) {
		caption += " " + m.t("chart-some")
	}
	w, high := m.width(), m.chartMM
	if room := m.room() - m.caption(m.left(), w, caption).h - 1; room >= lowChartMM && room < high {
		high = room
	}
	art := m.draw(what, m.left(), w, high, func(c canvas.Canvas) error {
		at := figure.Rect{W: w, H: high}
		return ch.Draw(c, at)
	})
	m.add(stack(m.caption(m.left(), w, caption), art))
}

// limits: how far an edge may lean for a feature, and how far each blade may then be set.
func (m *maker) limits() {
	l := m.lesson
	m.lead(m.t("limits.text"))
	t := table{even: true, columns: []column{{m.t("limits.feature"), false}}}
	lean := []string{m.t("limits.lean")}
	for _, x := range l.Limits {
		t.columns = append(t.columns, column{m.say.Small(x.FinestMM), true})
		lean = append(lean, m.whole(x.EdgeDeg))
	}
	t.rows, t.strong = [][]string{lean}, 1
	for i, b := range l.Blades {
		r := []string{m.called[i]}
		for _, a := range b.Largest {
			s := m.t("limits.none")
			if a != nil {
				s = m.say.Angle(*a)
			}
			r = append(r, s)
		}
		t.rows = append(t.rows, r)
	}
	m.long(m.t("limits.table", "load", m.say.Load(l.Press.LoadNPerCM)), t)
}
