package handout

import (
	"fmt"
	"sort"
	"strings"

	"bladecard/calc/lesson"
	"bladecard/calc/plan"
	"bladecard/render/canvas"
	"bladecard/render/page"
)

// How much room an exercise has to reckon in, in mm: from the least on, as the pages allow.
const (
	leastAnswerMM = 11.0
	mostAnswerMM  = 26.0
)

// sheet is the work sheet, on pages of its own: as few as take all exercises, and filled.
func (m *maker) sheet() {
	m.notes()
	m.turn()
	m.section(m.t("sheet.head"))
	x1, w1, x2, w2 := m.halves(0.55)
	m.add(beside(m.fill(x1, w1, m.t("sheet.name")), m.fill(x2, w2, m.t("sheet.date"))))
	m.paras(m.t("sheet.text"))
	var list []block
	for i, e := range m.exercises() {
		list = append(list, m.bullet(m.left(), m.width(), fmt.Sprintf("%d.", i+1), m.say.T("handout.ask."+e.Code, m.figures(e)...)))
	}
	room := leastAnswerMM
	for n := m.asks(list, room); room < mostAnswerMM && m.asks(list, room+0.25) == n; {
		room += 0.25
	}
	for _, b := range list {
		m.add(m.ask(b, room))
	}
}

const askGapMM = 2.6 // after an exercise

// ask is the text of an exercise with so much room to reckon in.
func (m *maker) ask(b block, room float64) block {
	b.boxes = append(b.boxes, page.Rule(m.name("answer line"), m.left()+indentMM, b.h+room, m.width()-indentMM, 0, canvas.Pen{Color: canvas.Gray(120), WidthMM: 0.15}))
	b.h += room
	b.after = askGapMM
	return b
}

// asks is how many more pages the exercises take with so much room each.
func (m *maker) asks(list []block, room float64) int {
	pages, y := 0, m.y
	for _, b := range list {
		if y+b.h+room > m.bottom() {
			pages, y = pages+1, m.top()
		}
		y += b.h + room + askGapMM
	}
	return pages
}

// notes rules what is left of a page for notes, if that is worth it.
func (m *maker) notes() {
	const worthMM, lineMM = 40.0, 8.0
	if len(m.pages) == 0 || m.room() < worthMM {
		return
	}
	m.y += blockMM
	m.add(m.caption(m.left(), m.width(), m.t("notes")))
	b := block{}
	for m.room()-m.held[0].h-1 >= b.h+lineMM {
		b.h += lineMM
		b.boxes = append(b.boxes, page.Rule(m.name("line"), m.left(), b.h, m.width(), 0, canvas.Pen{Color: canvas.Gray(170), WidthMM: 0.12}))
	}
	m.add(b)
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
	for i, e := range m.exercises() {
		s := m.say.T("handout.answer."+e.Code, m.figures(e)...)
		if e.Code == "dot" {
			s += " " + m.say.T("handout.verdict."+e.Names["verdict"])
		}
		if e.Corrections != nil {
			s += " " + m.changes(e.Corrections) + "."
		}
		if e.TooLittle != nil {
			s += " " + m.t("answers.too-little", "changes", m.tooLittle(e.TooLittle))
		}
		b := m.bullet(m.left(), m.width(), fmt.Sprintf("%d.", i+1), s)
		b.after = 1.4
		m.add(b)
	}
}

// changes lists corrections with what they do.
func (m *maker) changes(all []plan.Correction) string {
	var list []string
	for _, c := range all {
		list = append(list, m.t("answers.change", "change", m.change(c), "effect", m.say.Effect(c))+m.say.Disturbs(c))
	}
	return strings.Join(list, "; ")
}

// tooLittle lists corrections without what little they do.
func (m *maker) tooLittle(all []plan.Correction) string {
	var list []string
	for _, c := range all {
		list = append(list, m.change(c))
	}
	return strings.Join(list, ", ")
}

// change is a correction in words; a blade is called as in the tables.
func (m *maker) change(c plan.Correction) string {
	if c.Kind == "blade" {
		c.To = m.nameOf(c.To)
	}
	return m.say.Change(c)
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
			switch k {
			case "ink":
				s = m.say.InkName(s)
			case "mesh":
			default:
				s = m.nameOf(s)
			}
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
		return m.say.Gauge(x, x*psiPerBar)
	case "int":
		return m.say.Number(x, 0)
	case "fine":
		return m.say.Fine(x)
	case "small":
		return m.say.Small(x)
	case "density":
		return m.say.Number(x, 2) + nbsp + "kg/L"
	case "long": // the length of a belt, in the unit of its speed
		return strings.TrimSuffix(m.say.BeltSpeed(x/1000, x/1000), "/min")
	case "g":
		return m.say.Mass(x)
	}
	if name == "edge_deg" || name == "limit_deg" {
		return m.whole(x)
	}
	return m.say.Figure(name, x)
}
