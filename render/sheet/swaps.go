package sheet

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"bladecard/calc/plan"
	"bladecard/render/canvas"
	"bladecard/render/flow"
)

const (
	alikePercent = 10.0 // a film this near to the one as set is called the same
	mostBlades   = 8    // columns of blades in a table
)

// swapped are screens that take the same in place of their blade and their mesh.
type swapped struct {
	plan.Screen
	who []member
}

// swaps is what to take where a blade or a mesh is missing: a row for the screens that take the same, a column a
// blade, and two for the meshes, those of the same film apart from those that change it.
func (m *maker) swaps() {
	v := m.say
	var groups []swapped
	at := map[string]int{}
	var blades []string
	var missing, without []member
	for _, l := range m.plan.Locations {
		for _, s := range l.Screens {
			is := member{l.Name, s.Number}
			if len(s.Equivalents) == 0 {
				without = append(without, is)
				continue
			}
			if slices.ContainsFunc(s.Equivalents, func(e plan.Equivalent) bool { return e.SharesMiss }) {
				missing = append(missing, is)
			}
			key := m.blade(s.Blade.Name, s.Blade.Layup) + s.Mesh.Name + v.AngleRange(s.AngleDeg.Set, s.AngleDeg.Set) + m.pulls(s.Strokes, s.Hits)
			for _, name := range append([]string{m.blade(s.Blade.Name, s.Blade.Layup)}, m.bladesOf(s)...) {
				if !slices.Contains(blades, name) {
					blades = append(blades, name)
				}
			}
			for _, e := range s.Equivalents {
				key += "\n" + e.Kind + e.Blade + e.Mesh + m.instead(s, e)
			}
			i, has := at[key]
			if !has {
				i = len(groups)
				at[key], groups = i, append(groups, swapped{Screen: s})
			}
			groups[i].who = append(groups[i].who, is)
		}
	}
	var notes []string
	if missing != nil {
		notes = append(notes, v.T("sheet-doc.share-miss", "list", m.members(missing, "; ")))
	}
	if without != nil {
		notes = append(notes, v.T("sheet-doc.none-for", "list", m.members(without, "; ")))
	}
	slices.Sort(blades)
	for i := 0; i < len(blades); i += mostBlades {
		some := blades[i:min(i+mostBlades, len(blades))]
		t := flow.Table{Name: fmt.Sprint("swaps ", i), Header: []string{v.T("sheet-doc.screens")}}
		for _, name := range some {
			t.Header = append(t.Header, short(name))
		}
		last := i+mostBlades >= len(blades)
		if last {
			t.Header = append(t.Header, v.T("sheet-doc.mesh-same"), v.T("sheet-doc.mesh-other"))
			for _, text := range notes {
				font := flow.Regular(flow.SmallPT)
				t.Below += float64(len(canvas.Wrap(text, font, m.Width()))) * canvas.LineHeight(font)
			}
		}
		for _, g := range groups {
			cells := []flow.Cell{{Text: m.members(g.who, "\n"), Strong: true}}
			for _, name := range some {
				cells = append(cells, m.swap(g.Screen, name))
			}
			if last {
				cells = append(cells, m.meshes(g.Screen, true), m.meshes(g.Screen, false))
			}
			t.Row(cells...)
		}
		if i == 0 {
			m.Part("swaps", v.T("sheet-doc.swaps", "percent", v.Number(alikePercent, 0)), "", t)
		} else {
			m.Table(t)
		}
	}
	if blades == nil {
		m.Space(1)
		m.note("no swaps", v.T("sheet-doc.none"))
		return
	}
	for i, text := range notes {
		m.note(fmt.Sprint("swaps note ", i), text)
	}
}

// bladesOf are the other blades that do a screen's work.
func (m *maker) bladesOf(s plan.Screen) (out []string) {
	for _, e := range s.Equivalents {
		if e.Kind == "blade" {
			out = append(out, m.blade(e.Blade, e.Layup))
		}
	}
	return out
}

// swap is what a blade does on a screen: its angle, bold where that changes.
func (m *maker) swap(s plan.Screen, blade string) flow.Cell {
	if blade == m.blade(s.Blade.Name, s.Blade.Layup) {
		return flow.Cell{Text: whole(m.say.T("sheet-doc.as-set", "angle", m.say.Angle(s.AngleDeg.Set)), cellMM), Strong: true, Dark: true}
	}
	for _, e := range s.Equivalents {
		if e.Kind == "blade" && m.blade(e.Blade, e.Layup) == blade {
			return flow.Cell{Text: m.instead(s, e), Strong: e.AngleDeg != s.AngleDeg.Set || e.Strokes != s.Strokes || e.Hits != s.Hits}
		}
	}
	return flow.Cell{Text: "–"}
}

// alike tells whether the film of an equivalent is called the same as the one as set.
func alike(e plan.Equivalent) bool { return math.Abs(e.DeltaPercent) <= alikePercent }

// instead is the setup of an equivalent, as far as it may differ, and the change of the film, unless that is alike.
func (m *maker) instead(s plan.Screen, e plan.Equivalent) string {
	v, parts := m.say, []string{}
	if e.Kind == "mesh" {
		parts = append(parts, e.Mesh)
		if blade := m.blade(e.Blade, e.Layup); blade != m.blade(s.Blade.Name, s.Blade.Layup) {
			parts = append(parts, v.T("change.blade", "to", blade))
		}
	}
	if e.Kind == "blade" || e.AngleDeg != s.AngleDeg.Set {
		parts = append(parts, v.Angle(e.AngleDeg))
	}
	switch {
	case s.Hits > 1 && e.Hits <= 1: // "1 stroke" would read as that of each hit
		parts = append(parts, v.Many("sheet-doc.one-hit-of", e.Strokes))
	case e.Strokes != s.Strokes || e.Hits != s.Hits:
		parts = append(parts, m.pulls(e.Strokes, e.Hits))
	}
	if flash := v.FlashBetween(s, e.Hits); flash != "" {
		parts = append(parts, flash)
	}
	text := strings.Join(parts, ", ")
	if !alike(e) {
		text += " (" + m.percent(e.DeltaPercent) + ")"
	}
	return strings.ReplaceAll(text, " ", "\u00a0")
}

// meshes are the meshes with which a screen's film stays the same, or the others.
func (m *maker) meshes(s plan.Screen, same bool) flow.Cell {
	var out []string
	for _, e := range s.Equivalents {
		if e.Kind == "mesh" && same == alike(e) {
			out = append(out, m.instead(s, e))
		}
	}
	if out == nil {
		out = []string{"–"}
	}
	return flow.Cell{Text: strings.Join(out, "\u00a0· "), Strong: same}
}

// percent is a change of the film in whole percent, since a finer figure would say more than is known.
func (m *maker) percent(p float64) string {
	switch text := m.say.Number(math.Abs(p), 0) + "\u00a0%"; {
	case p >= 0.5:
		return "+" + text
	case p <= -0.5:
		return "−" + text
	}
	return m.say.T("sheet-doc.same")
}
