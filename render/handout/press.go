package handout

import (
	"fmt"
)

// wipe: the test that tells at the press whether the stroke is right.
func (m *maker) wipe() {
	m.section(m.t("wipe.head"))
	m.paras(m.t("wipe.why"))
	m.steps("wipe.step", 5)
	m.paras(m.t("wipe.then"), m.t("wipe.measure"))
}

// steps sets a numbered list of texts KEY1 to KEYn.
func (m *maker) steps(key string, n int) {
	for i := 1; i <= n; i++ {
		m.add(m.bullet(m.left(), m.width(), fmt.Sprintf("%d.", i), m.say.T("handout."+key+fmt.Sprint(i))))
	}
}

// mark: what a hardness mark says, and what a colour does not.
func (m *maker) mark() {
	m.section(m.t("mark.head"))
	m.paras(m.t("mark.layup"), m.t("mark.reading"), m.t("mark.tolerance", "percent", m.most(m.lesson.Film.Moves.Hardness)), m.t("mark.colour"))
}

// wear: edges wear, and grinding shortens the blade.
func (m *maker) wear() {
	m.section(m.t("wear.head"))
	l := m.lesson
	m.lead(m.t("wear.edge"))
	x1, w1, x2, w2 := m.halves(0.5)
	t := table{columns: []column{{m.t("wear.state"), false}, {m.t("wear.film"), true}, {m.t("wear.change"), true}}}
	for _, x := range l.Wear {
		change := ""
		if x.Edge != l.Wear[0].Edge {
			change = m.percent(x.ToNew)
		}
		t.rows = append(t.rows, []string{m.say.T("edge." + x.Edge), m.say.FilmUM(x.CuredUM), change})
	}
	g := table{columns: []column{{m.t("wear.free"), true}, {m.t("wear.tip"), true}, {m.t("wear.bent"), true}}}
	for _, x := range l.Ground {
		g.rows = append(g.rows, []string{m.say.Length(x.FreeHeightMM), m.tip(x.TipNPerCMPerMM), m.edge(x.EdgeDeg)})
	}
	m.add(beside(
		stack(m.caption(x1, w1, m.t("wear.table", "blade", m.horseName())), m.table(t, x1, w1)),
		stack(m.caption(x2, w2, m.t("wear.ground", "blade", m.horseName())), m.table(g, x2, w2)),
	))
	m.steps("care.step", 6)
}

// safety: what can hurt, and who is to be asked first.
func (m *maker) safety() {
	m.section(m.t("safety.head"))
	m.lead(m.say.T("caution.defer") + " " + m.t("safety.defer"))
	var texts []string
	for _, c := range m.lesson.Cautions {
		texts = append(texts, m.say.T("caution."+c))
	}
	texts = append(texts, m.t("safety.blade"), m.t("safety.clean"))
	x1, w1, x2, w2 := m.halves(0.5)
	half := (len(texts) + 1) / 2
	m.add(beside(m.warnings(x1, w1, texts[:half]), m.warnings(x2, w2, texts[half:])))
}

// warnings stacks marked texts.
func (m *maker) warnings(x, w float64, texts []string) block {
	var list []block
	for _, s := range texts {
		list = append(list, m.bullet(x, w, "!", s))
	}
	return stack(list...)
}
