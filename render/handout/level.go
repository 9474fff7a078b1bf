package handout

import (
	"strings"

	"bladecard/calc/lesson"
)

// Level is how much of the paper is printed. Its zero value is Press.
type Level string

// The levels: Intro is for a new hand and leaves out film, load, mesh and stencil, and the
// exercises on them; Press is the whole paper.
const (
	Intro Level = "intro"
	Press Level = "press"
)

// Levels are the levels that are accepted, in words for an error.
func Levels() string { return strings.Join([]string{string(Intro), string(Press)}, ", ") }

// ParseLevel tells whether there is a level of that name; the empty name is Press.
func ParseLevel(s string) (Level, bool) {
	switch l := Level(s); l {
	case "", Press:
		return Press, true
	case Intro:
		return l, true
	}
	return "", false
}

// part is a section of the paper.
type part struct {
	key   string // of its texts
	lay   func()
	intro bool // on the paper for a new hand too
}

// parts are the sections of the level in their order. The work sheet and the answers, each on
// pages of its own, come after them.
func (m *maker) parts() []part {
	all := []part{
		{"hardness", m.hardness, true}, {"mark", m.mark, true}, {"rack", m.rack, true}, {"angle", m.angle, true},
		{"film", m.film, false}, {"load", m.load, false}, {"strokes", m.strokes, true}, {"mesh", m.mesh, false},
		{"choice", m.choice, true}, {"wipe", m.wipe, true}, {"wear", m.wear, true}, {"safety", m.safety, true},
		{"sheet", m.sheet, true}, {"answers", m.answers, true},
	}
	if !m.intro() {
		return all
	}
	var some []part
	for _, p := range all {
		if p.intro {
			some = append(some, p)
		}
	}
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
