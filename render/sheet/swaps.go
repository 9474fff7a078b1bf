package sheet

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"bladecard/calc/plan"
	"bladecard/render/flow"
)

const (
	alikePercent = 10.0 // a film this near to the one as set is called the same
	mostBlades   = 8    // columns of blades in a table
)

// swapped are screens that take the same in place of their blade and their mesh.
type swapped struct {
	plan.Screen
	numbers []string
}

// swaps is what to take where a blade or a mesh is missing: a row for the screens that take the same, a column a
// blade, and two for the meshes, those of the same film apart from those that change it.
func (m *maker) swaps(l plan.Location) {
	v := m.say
	var groups []swapped
	at := map[string]int{}
	var blades, missing, without []string
	for _, s := range l.Screens {
		n := fmt.Sprint(s.Number)
		if len(s.Equivalents) == 0 {
			without = append(without, n)
			continue
		}
		if slices.ContainsFunc(s.Equivalents, func(e plan.Equivalent) bool { return e.SharesMiss }) {
			missing = append(missing, n)
		}
		key := m.blade(s.Blade.Name, s.Blade.Layup) + s.Mesh.Name + v.AngleRange(s.AngleDeg.Set, s.AngleDeg.Set) + v.Pulls(s.Strokes, s.Hits)
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
		groups[i].numbers = append(groups[i].numbers, n)
	}
	slices.Sort(blades)
	for i := 0; i < len(blades); i += mostBlades {
		some := blades[i:min(i+mostBlades, len(blades))]
		t := flow.Table{Name: fmt.Sprint("swaps ", i), Header: append([]string{v.T("sheet-doc.screens")}, some...)}
		last := i+mostBlades >= len(blades)
		if last {
			t.Header = append(t.Header, v.T("sheet-doc.mesh-same"), v.T("sheet-doc.mesh-other"))
		}
		for _, g := range groups {
			cells := []flow.Cell{{Text: strings.Join(g.numbers, ", "), Strong: true}}
			for _, name := range some {
				cells = append(cells, m.swap(g.Screen, name))
			}
			if last {
				cells = append(cells, m.meshes(g.Screen, true), m.meshes(g.Screen, false))
			}
			t.Row(cells...)
		}
		if i == 0 {
			m.Part("swaps", v.T("sheet-doc.swaps"), "", t)
		} else {
			m.Table(t)
		}
	}
	if blades == nil {
		m.Space(1)
		m.note("no swaps", v.T("sheet-doc.none"))
		return
	}
	if missing != nil {
		m.note("swaps that miss", v.T("sheet-doc.share-miss", "list", strings.Join(missing, ", ")))
	}
	if without != nil {
		m.note("without swaps", v.T("sheet-doc.none-for", "list", strings.Join(without, ", ")))
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

// swap is what a blade does on a screen: its angle, bold where that changes, and the change of the film.
func (m *maker) swap(s plan.Screen, blade string) flow.Cell {
	if blade == m.blade(s.Blade.Name, s.Blade.Layup) {
		return flow.Cell{Text: m.say.T("sheet-doc.as-set", "angle", m.say.Angle(s.AngleDeg.Set)), Strong: true, Dark: true}
	}
	for _, e := range s.Equivalents {
		if e.Kind == "blade" && m.blade(e.Blade, e.Layup) == blade {
			return flow.Cell{Text: m.instead(s, e), Strong: e.AngleDeg != s.AngleDeg.Set || e.Strokes != s.Strokes || e.Hits != s.Hits}
		}
	}
	return flow.Cell{Text: "–"}
}

// instead is the setup of an equivalent, as far as it may differ, and its film against the one as set.
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
	if e.Hits > 1 && e.Hits != s.Hits {
		parts = append(parts, v.Many("change.hits-short", e.Hits))
	}
	if e.Strokes != s.Strokes || e.Hits != s.Hits && e.Hits <= 1 {
		parts = append(parts, v.Many("change.strokes", e.Strokes))
	}
	return strings.Join(parts, ", ") + "\u00a0" + m.percent(e.DeltaPercent)
}

// meshes are the meshes with which a screen's film stays the same, or the others.
func (m *maker) meshes(s plan.Screen, same bool) flow.Cell {
	var out []string
	for _, e := range s.Equivalents {
		if e.Kind == "mesh" && same == (math.Abs(e.DeltaPercent) <= alikePercent) {
			out = append(out, m.instead(s, e))
		}
	}
	if out == nil {
		out = []string{"–"}
	}
	return flow.Cell{Text: strings.Join(out, "; "), Strong: same}
}

// percent is a change in whole percent, since a finer figure would say more than is known.
func (m *maker) percent(p float64) string {
	switch whole := m.say.Number(math.Abs(p), 0) + "\u00a0%"; {
	case p >= 0.5:
		return "+" + whole
	case p <= -0.5:
		return "−" + whole
	case p == 0:
		return whole
	}
	return "<1\u00a0%"
}
