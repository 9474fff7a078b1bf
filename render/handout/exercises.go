package handout

import (
	"fmt"
	"sort"
	"strings"

	"bladecard/calc/lesson"
	"bladecard/render/canvas"
	"bladecard/render/page"
)

// sheet is the work sheet, on pages of its own.
func (m *maker) sheet() {
	m.turn()
	m.section(m.t("sheet.head"))
	x1, w1, x2, w2 := m.halves(0.55)
	m.add(beside(m.fill(x1, w1, m.t("sheet.name")), m.fill(x2, w2, m.t("sheet.date"))))
	m.paras(m.t("sheet.text"))
	for i, e := range m.lesson.Exercises {
		b := m.bullet(m.left(), m.width(), fmt.Sprintf("%d.", i+1), m.say.T("handout.ask."+e.Code, m.figures(e)...))
		const answerMM = 16.0 // room to reckon
		b.boxes = append(b.boxes, page.Rule(m.name("answer line"), m.left()+indentMM, b.h+answerMM, m.width()-indentMM, 0, canvas.Pen{Color: canvas.Gray(120), WidthMM: 0.15}))
		b.h += answerMM
		b.after = 2.6
		m.add(b)
	}
}

// fill is a word with a line to write on.
func (m *maker) fill(x, w float64, s string) block {
	const word = 22.0
	b := m.body(x, word-2, s)
	b.boxes = append(b.boxes, page.Rule(m.name("line"), x+word, b.h, w-word, 0, canvas.Pen{Color: canvas.Gray(120), WidthMM: 0.15}))
	return b
}

// answers stand on the last page.
func (m *maker) answers() {
	m.turn()
	m.section(m.t("answers.head"))
	m.paras(m.t("answers.text"))
	for i, e := range m.lesson.Exercises {
		s := m.say.T("handout.answer."+e.Code, m.figures(e)...)
		if e.Code == "dot" {
			s += " " + m.say.T("handout.verdict."+e.Names["verdict"])
		}
		if e.Corrections != nil {
			s += " " + m.changes(e) + "."
		}
		b := m.bullet(m.left(), m.width(), fmt.Sprintf("%d.", i+1), s)
		b.after = 1.4
		m.add(b)
	}
}

// changes lists the corrections of an answer.
func (m *maker) changes(e lesson.Exercise) string {
	var list []string
	for _, c := range e.Corrections {
		s := m.say.T("handout.answers.change", "change", m.say.Change(c), "effect", m.say.Effect(c)) + m.say.Disturbs(c)
		list = append(list, s)
	}
	return strings.Join(list, "; ")
}

// figures are the name, value pairs of an exercise for T.
func (m *maker) figures(e lesson.Exercise) []string {
	var keys []string
	for k := range e.Values {
		keys = append(keys, k)
	}
	sort.Strings(keys)
	var out []string
	for _, k := range keys {
		out = append(out, k, m.figure(k, e.Values[k]))
	}
	for _, k := range []string{"blade", "hard", "ink", "mesh", "soft"} {
		if s, ok := e.Names[k]; ok {
			out = append(out, k, s)
		}
	}
	if n, ok := e.Values["strokes_int"]; ok {
		out = append(out, "strokes", m.say.Many("change.strokes", int(n)))
	}
	return out
}

// psiPerBar is the change of unit.
const psiPerBar = 14.503774

// figure writes a value by the unit at the end of its name.
func (m *maker) figure(name string, x float64) string {
	const nbsp = "\u00a0"
	switch name[strings.LastIndexByte(name, '_')+1:] {
	case "mpa":
		return m.mpa(x)
	case "nm":
		return m.say.Number(x, 2) + nbsp + "N·m"
	case "times":
		return m.say.Number(x, 1)
	case "thickness":
		return m.say.Thickness(x)
	case "bar":
		return m.say.Number(x, 1) + nbsp + "bar" + " (" + m.say.Number(x*psiPerBar, 0) + nbsp + "psi)"
	case "int":
		return m.say.Number(x, 0)
	case "fine":
		return m.say.Fine(x)
	case "small":
		return m.say.Small(x)
	case "density":
		return m.say.Number(x, 2) + nbsp + "kg/L"
	case "g":
		return m.say.Mass(x)
	}
	if name == "edge_deg" || name == "limit_deg" {
		return m.whole(x)
	}
	return m.say.Figure(name, x)
}
