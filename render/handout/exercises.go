package handout

import (
	"fmt"
	"math"
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
	m.end()
	m.section(m.t("sheet.head"))
	x1, w1, x2, w2 := m.halves(0.55)
	m.add(beside(m.fill(x1, w1, m.t("sheet.name")), m.fill(x2, w2, m.t("sheet.date"))))
	m.paras(m.t("sheet.text"))
	var list []task
	for i, e := range m.exercises() {
		x, w := m.left(), m.width()
		if e.Fault == nil {
			list = append(list, task{m.bullet(x, w, fmt.Sprintf("%d.", i+1), m.say.T("handout.ask."+e.Code, m.figures(e)...)), block{}, w})
			continue
		}
		const pictureMM = 36.0
		beside := w - pictureMM - gutterMM
		list = append(list, task{m.bullet(x, beside, fmt.Sprintf("%d.", i+1), m.say.T("handout.ask."+e.Code)), m.picture(x+w-pictureMM, pictureMM, e.Fault.Seen), beside})
	}
	room := leastAnswerMM
	for n := m.asks(list, room); room < mostAnswerMM && m.asks(list, room+0.25) == n; {
		room += 0.25
	}
	for _, t := range list {
		m.add(m.ask(t, room))
	}
}

const (
	askGapMM = 2.6 // after an exercise
	lineMM   = 7.5 // between lines to write on
)

// task is an exercise before it has its lines: what it asks, the picture beside it, and how wide text and lines are.
type task struct {
	text, picture block
	w             float64
}

// high is how high the exercise is with so much room to reckon in.
func (t task) high(room float64) float64 { return max(t.text.h+room, t.picture.h) }

// ask is an exercise with lines to write on.
func (m *maker) ask(t task, room float64) block {
	b := beside(t.text, t.picture)
	b.h, b.after = t.high(room), askGapMM
	free := b.h - t.text.h
	n := max(1, math.Floor(free/lineMM))
	for i, name := 0.0, "answer line"; i < n; i, name = i+1, "line" {
		b.boxes = append(b.boxes, page.Rule(m.name(name), m.left()+indentMM, b.h-i*free/n, t.w-indentMM, 0, canvas.Pen{Color: canvas.Gray(120), WidthMM: 0.15}))
	}
	return b
}

// asks is how many more pages the exercises take with so much room each.
func (m *maker) asks(list []task, room float64) int {
	pages, y := 0, m.y
	for _, t := range list {
		if y+t.high(room) > m.bottom() {
			pages, y = pages+1, m.topOf(1)
		}
		y += t.high(room) + askGapMM
	}
	return pages
}

// notes rules what is left of a page for notes, if that is worth it.
func (m *maker) notes() {
	const worthMM = 40.0
	m.sparse = len(m.pages) > 0 && m.y < m.paper.H/3+paraMM
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

// answers stand on the last page.
func (m *maker) answers() {
	m.end()
	m.section(m.t("answers.head"))
	m.paras(m.t("answers.text"))
	for i, e := range m.exercises() {
		s := m.say.T("handout.answer."+e.Code, m.figures(e)...)
		if v, ok := e.Names["verdict"]; ok {
			s += " " + m.say.T("handout.verdict."+v)
		}
		if e.Corrections != nil {
			s += " " + m.changes(e.Corrections) + "."
		}
		if e.TooLittle != nil {
			s += " " + m.t("answers.too-little", "changes", m.tooLittle(e.TooLittle))
		}
		m.add(m.bullet(m.left(), m.width(), fmt.Sprintf("%d.", i+1), s))
	}
}

// nbsp does not break.
const nbsp = "\u00a0"

// changes lists corrections with what they do.
func (m *maker) changes(all []plan.Correction) string {
	var list []string
	for _, c := range all {
		low, _, _ := strings.Cut(m.say.FilmLike(c.DeltaBandUM.Low, c.DeltaBandUM.High), nbsp) // the unit stands behind the high end
		list = append(list, m.t("answers.change", "change", m.change(c), "effect", m.say.Signed(c.DeltaUM), "low", low, "high", m.say.FilmUM(c.DeltaBandUM.High))+m.say.Disturbs(c))
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
	switch c.Kind {
	case "blade":
		c.To = m.nameOf(c.To)
	case "strokes", "hits": // the number stays with its word
		return strings.Replace(m.say.Change(c), " ", nbsp, 1)
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
		s := m.figure(k, e.Values[k])
		if k == "short_um" { // in the digits of the films that it is the difference of
			s = m.say.FilmLike(e.Values[k], e.Values["film_um"])
		}
		out = append(out, k, s)
	}
	for _, k := range []string{"blade", "hard", "soft"} {
		if s, ok := e.Names[k]; ok {
			out = append(out, k, m.nameOf(s))
		}
	}
	out = append(out, "mesh", e.Names["mesh"], "other", e.Names["other"])
	if f := e.Fault; f != nil {
		out = append(out, "fault", m.say.T("seen-name."+f.Seen), "means", m.say.T("handout.fault."+f.Seen), "first", m.first(*f))
	}
	if n, ok := e.Values["strokes_int"]; ok {
		out = append(out, "pulls", m.say.PullsWord(int(n), int(e.Values["hits_int"])))
	}
	return out
}

// figure writes a value by the unit at the end of its name.
func (m *maker) figure(name string, x float64) string {
	switch name[strings.LastIndexByte(name, '_')+1:] {
	case "int":
		return m.say.Number(x, 0)
	case "fine":
		return m.say.Fine(x)
	case "small":
		return m.say.Small(x)
	}
	if name == "edge_deg" {
		return m.whole(x)
	}
	return m.say.Figure(name, x)
}
