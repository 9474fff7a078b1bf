package handout

import (
	"strings"

	"bladecard/calc/lesson"
)

// Level is how much of the paper is printed. Its zero value is Press.
type Level string

// The levels: Intro is for a new hand and leaves out why, the tables of the racks, and the exercises on them;
// Press is the whole paper; Wall is one page to hang up.
const (
	Intro Level = "intro"
	Press Level = "press"
	Wall  Level = "wall"
)

// Levels are the levels that are accepted, in words for an error.
func Levels() string { return strings.Join([]string{string(Intro), string(Press), string(Wall)}, ", ") }

// ParseLevel tells whether there is a level of that name; the empty name is Press.
func ParseLevel(s string) (Level, bool) {
	switch l := Level(s); l {
	case "":
		return Press, true
	case Intro, Press, Wall:
		return l, true
	}
	return "", false
}

// part is a section of the paper.
type part struct {
	key     string // of its texts
	lay     func()
	minutes int    // of the hour; 0: to be read at home
	how     string // the class does it: show, pairs, talk
}

// parts are the sections of the level in their order. The glossary parts the work sheet from the answers, so
// that these are never its back.
func (m *maker) parts() []part {
	all := []part{
		{"safety", m.safety, 5, "show"}, {"wipe", m.wipe, 5, "show"}, {"faults", m.faults, 10, "pairs"}, {"angle", m.angle, 10, "table"},
		{"choice", m.choice, 5, "talk"}, {"why", m.why, 5, "talk"}, {"card", m.card, 5, "pairs"}, {"practice", m.practice, 15, "pairs"},
		{"racks", m.racks, 0, ""}, {"care", m.care, 0, ""}, {"sheet", m.sheet, 0, ""}, {"glossary", m.glossary, 0, ""}, {"answers", m.answers, 0, ""},
	}
	var some []part
	press, over := 0, 0
	for _, p := range all {
		if (p.key == "why" || p.key == "racks") && m.intro() || p.key == "card" && m.lesson.Worked == nil || p.key == "faults" && len(m.lesson.Faults) == 0 {
			over += p.minutes
			continue
		}
		if p.key == "practice" {
			press = len(some)
		}
		some = append(some, p)
	}
	some[press].minutes += over // what is left out is time at the press
	return some
}

func (m *maker) intro() bool { return m.level == Intro }

// numberOf is the number of a section; 0: the level leaves it out.
func (m *maker) numberOf(key string) int {
	for i, p := range m.parts() {
		if p.key == key {
			return i + 1
		}
	}
	return 0
}

// fewest is how many exercises a work sheet has at least, where the racks give as many.
const fewest = 10

// exercises are those of the level. Where a shop's racks leave too few for a new hand, others
// fill up.
func (m *maker) exercises() []lesson.Exercise {
	all := m.lesson.Exercises
	if !m.intro() {
		return all
	}
	n := 0
	for _, e := range all {
		if e.Intro {
			n++
		}
	}
	var out []lesson.Exercise
	for _, e := range all {
		if !e.Intro && n >= fewest {
			continue
		}
		if !e.Intro {
			n++
		}
		out = append(out, e)
	}
	return out
}
