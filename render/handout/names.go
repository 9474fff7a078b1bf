package handout

import (
	"bladecard/calc/lesson"
	"bladecard/calc/plan"
	"bladecard/render/canvas"
	"bladecard/render/figure"
)

// wideMM is the widest name of a blade that leaves room for figures beside it.
const wideMM = 26.0

// call is what tables, charts and texts call each blade: its name, or its layup where the name is
// too wide; blades that would be called alike have a letter behind.
func call(blades []lesson.Blade) []string {
	out := make([]string, len(blades))
	count := map[string]int{}
	for i, b := range blades {
		out[i] = b.Name
		if canvas.Width(b.Name, plainFont) > wideMM {
			out[i] = b.Layup
		}
		count[out[i]]++
	}
	next := map[string]rune{}
	for i, s := range out {
		if count[s] > 1 {
			out[i] = s + "\u00a0" + string('a'+next[s])
			next[s]++
		}
	}
	return out
}

// renamed tells whether a blade is called by another name than its own.
func (m *maker) renamed() bool {
	for i, b := range m.lesson.Blades {
		if m.called[i] != b.Name {
			return true
		}
	}
	return false
}

// layered tells whether a blade is called by another name than its layup.
func (m *maker) layered() bool {
	for i, b := range m.lesson.Blades {
		if m.called[i] != b.Layup {
			return true
		}
	}
	return false
}

// nameOf is what the paper calls a blade of that name; the name itself where it has no such blade.
func (m *maker) nameOf(name string) string {
	for i, b := range m.lesson.Blades {
		if b.Name == name {
			return m.called[i]
		}
	}
	return name
}

// short is what the paper calls the blade of a setup.
func (m *maker) short(s plan.Blade) string {
	for i, b := range m.lesson.Blades {
		if b.Name == s.Name && b.Layup == s.Layup && b.ThicknessMM == s.ThicknessMM && b.FreeHeightMM == s.FreeHeightMM {
			return m.called[i]
		}
	}
	if canvas.Width(s.Name, plainFont) > wideMM {
		return s.Layup
	}
	return s.Name
}

// drawn are the blades of a chart: the one that a job starts from, and of the others as many
// layups, evenly chosen, as a dash is there for.
func (m *maker) drawn() map[int]bool {
	horse := m.lesson.Workhorse
	seen := map[string]bool{m.horse().Layup: true}
	var others []int
	for i, b := range m.lesson.Blades {
		if !seen[b.Layup] {
			seen[b.Layup] = true
			others = append(others, i)
		}
	}
	out := map[int]bool{horse: true}
	n := min(len(others), figure.Dashes)
	for k := range n {
		at := k
		if n < len(others) {
			at = k * (len(others) - 1) / (n - 1)
		}
		out[others[at]] = true
	}
	return out
}
