package handout

import (
	"bladecard/calc/lesson"
	"bladecard/calc/plan"
	"bladecard/render/canvas"
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
