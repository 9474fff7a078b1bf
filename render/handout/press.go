package handout

import (
	"fmt"
	"slices"
	"strings"

	"bladecard/calc/lesson"
	"bladecard/calc/seen"
	"bladecard/render/canvas"
	"bladecard/render/figure"
	"bladecard/render/page"
	"bladecard/render/say"
)

// wipe: the test that tells at the press whether the stroke is right.
func (m *maker) wipe() {
	m.section(m.t("wipe.head"))
	var all block
	for _, pictureMM := range []float64{56, 50, 44} { // the largest with which the page takes it
		x1, w1, x2, w2 := m.halves(1 - pictureMM/(m.width()-gutterMM))
		list := []block{m.body(x1, w1, m.t("wipe.why"))}
		for i := 1; i <= 5; i++ {
			list = append(list, m.bullet(x1, w1, fmt.Sprintf("%d.", i), m.say.T("handout.wipe.step"+fmt.Sprint(i))))
		}
		list = append(list, m.body(x1, w1, m.t("wipe.then")))
		open := m.picture(x2, w2, figure.Clear)
		open.after = blockMM
		all = beside(stack(list...), stack(m.caption(x2, w2, m.t("wipe.clear")), open, m.caption(x2, w2, m.t("wipe.picture")), m.picture(x2, w2, seen.InkLeft)))
		if m.holds()+all.h <= m.room() {
			break
		}
	}
	m.add(all)
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
	const columns = 3
	w := (m.width() - gutterMM*(columns-1)) / columns
	var cells []func(x float64) block
	for _, f := range m.lesson.Faults {
		if !slices.Contains(figure.Faults(), figure.Fault(f.Seen)) {
			continue
		}
		cells = append(cells, func(x float64) block {
			name, means := m.text(x, w, m.say.T("seen-name."+f.Seen), BodyPT, canvas.Bold), m.text(x, w, m.say.T("handout.fault."+f.Seen), TablePT, canvas.Regular)
			name.after, means.after = 0.3, 0.5
			return stack(m.picture(x, w, f.Seen), name, means, m.text(x, w, "→ "+m.first(f), TablePT, canvas.Regular))
		})
	}
	if len(cells)%columns > 0 { // there is room for a print of the shop
		cells = append(cells, func(x float64) block {
			frame := page.Fill(m.name("own print"), x, 0, w, w*pictureShare, nil, canvas.Pen{Color: canvas.Gray(120), WidthMM: 0.3, DashMM: []float64{2, 1.5}})
			name := m.text(x, w, m.t("faults.own"), BodyPT, canvas.Bold)
			name.after = 0.3
			return stack(block{boxes: []page.Box{frame}, h: frame.H, after: 1.2}, name, m.text(x, w, m.t("faults.own-text"), TablePT, canvas.Regular))
		})
	}
	var rows []block
	high := 0.0
	for row := range slices.Chunk(cells, columns) {
		b := block{after: blockMM, lead: blockMM}
		for i, cell := range row {
			c := cell(m.left() + float64(i)*(w+gutterMM))
			b.boxes, b.h = append(b.boxes, c.boxes...), max(b.h, c.h)
		}
		rows = append(rows, b)
		high += b.h + b.after
	}
	for i, b := range rows { // all on one page, so that one look finds the picture
		b.keep = i < len(rows)-1 && high < 0.85*(m.bottom()-m.topOf(1))
		m.add(b)
	}
}

// first is what a fault has to be done first, in words, with the screen where it is not the one whose card is read.
func (m *maker) first(f lesson.Fault) string {
	text := m.firstOf(f.Changes[0])
	if f.Mesh == "" {
		return text
	}
	return m.t("faults.other", "color", m.t("card.next-color"), "mesh", f.Mesh, "first", text)
}

func (m *maker) firstOf(c seen.Change) string {
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
	m.lead(m.t("practice.text", "section", fmt.Sprint(m.numberOf("safety"))))
	t := table{tall: true}
	for _, c := range []string{"blade", "set", "edge", "load", "strokes", "clear", "sharp", "film", "change"} {
		t.columns = append(t.columns, column{m.t("practice." + c), false})
	}
	horse := m.horseName()
	for _, deg := range []float64{5, 15, 30} {
		t.rows = append(t.rows, []string{horse, m.say.Angle(deg), "", "", "", "", "", "", ""})
	}
	x1, w1, x2, w2 := m.halves(0.5)
	names := beside(m.fill(x1, w1, m.t("sheet.name")), m.fill(x2, w2, m.t("sheet.date")))
	signed := space(beside(m.fill(x1, w1, m.t("practice.trainer")), m.fill(x2, w2, m.t("practice.passed"))), 4)
	names.after, signed.after = blockMM, 0
	const least, most = 3, 8 // rows for changes of one's own: as the page has room
	var log block
	for own := 1; own <= most; own++ {
		t.rows = append(t.rows, make([]string, len(t.columns)))
		b := stack(names, m.table(t, m.left(), m.width()), signed)
		if own > least && m.holds()+b.h > m.room() {
			break
		}
		log = b
	}
	log.after = blockMM
	m.add(log)
}

// safety: what can hurt, and who is to be asked first.
func (m *maker) safety() {
	m.section(m.t("safety.head"))
	m.lead(m.say.T("caution.defer") + " " + m.t("safety.defer"))
	var texts []string
	for _, c := range m.lesson.Cautions {
		texts = append(texts, m.say.T("caution."+c))
	}
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

// care: how blades are marked, checked, kept and sharpened.
func (m *maker) care() {
	if m.fresh {
		m.turn()
	}
	m.section(m.t("care.head"))
	texts := []string{m.t("mark.layup"), m.t("mark.reading"), m.t("mark.colour")}
	for i := 1; i <= 6; i++ {
		texts = append(texts, m.say.T("handout.care.step"+fmt.Sprint(i)))
	}
	for _, s := range texts {
		m.add(m.bullet(m.left(), m.width(), "•", s))
	}
	for _, s := range []string{m.t("safety.blade"), m.t("safety.clean")} {
		m.add(m.bullet(m.left(), m.width(), "!", s))
	}
}

// glossary: the words of the trade in two columns, on a page of its own. Beside each in another language stands the
// English one, which machines, inks and videos use.
func (m *maker) glossary() {
	m.end()
	m.section(m.t("glossary.head"))
	x1, w1, x2, w2 := m.halves(0.5)
	english := map[string]string{}
	if v, err := say.New("en", ""); err == nil {
		for _, g := range v.Glossary() {
			english[g.Key] = g.Term
		}
	}
	list := m.say.Glossary()
	half := (len(list) + 1) / 2
	column := func(x, w float64, from, to int) block {
		var out []block
		for _, g := range list[from:to] {
			term := m.text(x, w, g.Term, TablePT, canvas.Bold)
			if e, wide := english[g.Key], canvas.Width(g.Term, boldFont)+1.5; !strings.EqualFold(e, g.Term) && wide+canvas.Width(e, plainFont) < w {
				term = beside(m.text(x, wide, g.Term, TablePT, canvas.Bold), m.text(x+wide, w-wide, e, TablePT, canvas.Regular))
			}
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
