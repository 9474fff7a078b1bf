package handout

import (
	"fmt"
	"slices"

	"bladecard/calc/seen"
	"bladecard/render/canvas"
	"bladecard/render/figure"
	"bladecard/render/page"
)

// wipe: the test that tells at the press whether the stroke is right.
func (m *maker) wipe() {
	m.section(m.t("wipe.head"))
	const pictureMM = 44.0
	x1, w1, x2, w2 := m.halves(1 - pictureMM/(m.width()-gutterMM))
	list := []block{m.body(x1, w1, m.t("wipe.why"))}
	for i := 1; i <= 5; i++ {
		list = append(list, m.bullet(x1, w1, fmt.Sprintf("%d.", i), m.say.T("handout.wipe.step"+fmt.Sprint(i))))
	}
	m.add(beside(stack(list...), stack(m.picture(x2, w2, seen.InkLeft), m.text(x2, w2, m.t("wipe.picture"), TablePT, canvas.Bold))))
	m.paras(m.t("wipe.then"))
}

// The proportion of a picture of a fault.
const pictureShare = 20.0 / 30.0

// picture is a fault as it looks, in a frame.
func (m *maker) picture(x, w float64, code string) block {
	h := w * pictureShare
	b := m.draw("fault", x, w, h, func(c canvas.Canvas) error {
		return figure.Fault(code).Draw(c, figure.Rect{W: w, H: h})
	})
	b.after = 1.2
	return b
}

// faults: pictures of what is seen, what it means, and what to do first on the worked job.
func (m *maker) faults() {
	m.section(m.t("faults.head"))
	m.lead(m.t("faults.text"))
	const columns = 4
	w := (m.width() - gutterMM*(columns-1)) / columns
	var row block
	n := 0
	flush := func() {
		m.add(row)
		row = block{}
	}
	for _, f := range m.lesson.Faults {
		if !slices.Contains(figure.Faults(), figure.Fault(f.Seen)) {
			continue
		}
		x := m.left() + float64(n%columns)*(w+gutterMM)
		name, means := m.text(x, w, m.say.T("seen-name."+f.Seen), BodyPT, canvas.Bold), m.text(x, w, m.say.T("handout.fault."+f.Seen), TablePT, canvas.Regular)
		name.after, means.after = 0.3, 0.5
		row = beside(row, stack(m.picture(x, w, f.Seen), name, means, m.text(x, w, "→ "+m.first(f), TablePT, canvas.Regular)))
		if n++; n%columns == 0 {
			flush()
		}
	}
	if n%columns > 0 {
		flush()
	}
}

// first is what a finding has to be done first, in words.
func (m *maker) first(f seen.Finding) string {
	c := f.Changes[0]
	if c.Correction != nil {
		return m.change(*c.Correction)
	}
	a := seen.Answer{Findings: []seen.Finding{{Changes: []seen.Change{c}}}}
	m.say.Seen(&a)
	return a.Findings[0].Changes[0].Text
}

// practice: a log to fill in at the press, with the trainer's name under it.
func (m *maker) practice() {
	m.section(m.t("practice.head"))
	m.lead(m.t("practice.text", "section", fmt.Sprint(m.numberOf("care"))))
	t := table{tall: true}
	for _, c := range []string{"blade", "set", "edge", "load", "strokes", "clear", "sharp", "film", "change"} {
		t.columns = append(t.columns, column{m.t("practice." + c), false})
	}
	horse := m.horseName()
	for _, deg := range []float64{5, 15, 30} {
		t.rows = append(t.rows, []string{horse, m.say.Angle(deg), "", "", "", "", "", "", ""})
	}
	for range 3 {
		t.rows = append(t.rows, make([]string, len(t.columns)))
	}
	x1, w1, x2, w2 := m.halves(0.5)
	names := beside(m.fill(x1, w1, m.t("sheet.name")), m.fill(x2, w2, m.t("sheet.date")))
	signed := beside(m.fill(x1, w1, m.t("practice.trainer")), m.fill(x2, w2, m.t("practice.passed")))
	names.after, signed.after = blockMM, 0
	log := stack(names, m.table(t, m.left(), m.width()), space(signed, 4))
	log.after = blockMM
	m.add(log)
}

// safety: what can hurt, and who is to be asked first.
func (m *maker) safety() {
	m.lead(m.say.T("caution.defer") + " " + m.t("safety.defer"))
	var texts []string
	for _, c := range m.lesson.Cautions {
		texts = append(texts, m.say.T("caution."+c))
	}
	texts = append(texts, m.t("safety.blade"), m.t("safety.clean"))
	x1, w1, x2, w2 := m.halves(0.5)
	half := (len(texts) + 1) / 2
	m.add(beside(m.bullets(x1, w1, "!", texts[:half]), m.bullets(x2, w2, "!", texts[half:])))
}

// bullets stacks marked texts.
func (m *maker) bullets(x, w float64, mark string, texts []string) block {
	var list []block
	for _, s := range texts {
		list = append(list, m.bullet(x, w, mark, s))
	}
	return stack(list...)
}

// care: what can hurt, and how blades are marked, checked, kept and sharpened.
func (m *maker) care() {
	if m.fresh {
		m.turn()
	}
	m.section(m.t("care.head"))
	m.safety()
	var texts []string
	for i := 1; i <= 6; i++ {
		texts = append(texts, m.say.T("handout.care.step"+fmt.Sprint(i)))
	}
	for _, s := range append([]string{m.t("mark.layup"), m.t("mark.reading"), m.t("mark.colour")}, texts...) {
		m.add(m.bullet(m.left(), m.width(), "•", s))
	}
}

// glossary: the words of the trade in two columns, on a page of its own.
func (m *maker) glossary() {
	m.turn()
	m.section(m.t("glossary.head"))
	x1, w1, x2, w2 := m.halves(0.5)
	list := m.say.Glossary()
	half := (len(list) + 1) / 2
	column := func(x, w float64, from, to int) block {
		var out []block
		for _, g := range list[from:to] {
			term := m.text(x, w, g.Term, TablePT, canvas.Bold)
			term.after = 0
			out = append(out, term, m.text(x, w, g.Means, TablePT, canvas.Regular))
		}
		return stack(out...)
	}
	m.add(beside(column(x1, w1, 0, half), column(x2, w2, half, len(list))))
}

// fill is a word with a line to write on.
func (m *maker) fill(x, w float64, s string) block {
	word := canvas.Width(s, canvas.Font{SizePT: BodyPT}) + 2
	b := m.body(x, word, s)
	b.boxes = append(b.boxes, page.Rule(m.name("line"), x+word, b.h+0.3, w-word, 0, canvas.Pen{Color: canvas.Gray(120), WidthMM: 0.15}))
	return b
}
