package say

import (
	"fmt"
	"strings"

	"bladecard/calc/plan"
)

// Told is a warning as a person reads it: once, with every place that it holds for.
type Told struct {
	Text string
	At   []Place // none: the whole job
}

// Place is a location with those of its screens that a warning holds for; none: the whole location.
type Place struct {
	Location string
	Screens  []int
}

// Tell joins warnings of the same words, those of the job first, then location by location.
func Tell(job []plan.Warning, locations ...plan.Location) []Told {
	var out []Told
	at := map[string]int{}
	find := func(text string) *Told {
		i, ok := at[text]
		if !ok {
			i = len(out)
			at[text] = i
			out = append(out, Told{Text: text})
		}
		return &out[i]
	}
	for _, w := range job {
		find(w.Text)
	}
	for _, l := range locations {
		for _, w := range l.Warnings {
			t := find(w.Text)
			t.At = append(t.At, Place{Location: l.Name})
		}
		for _, s := range l.Screens {
			for _, w := range s.Warnings {
				t := find(w.Text)
				if n := len(t.At); n == 0 || t.At[n-1].Screens == nil || t.At[n-1].Location != l.Name {
					t.At = append(t.At, Place{Location: l.Name})
				}
				p := &t.At[len(t.At)-1]
				p.Screens = append(p.Screens, s.Number)
			}
		}
	}
	return out
}

// Screens names screens, "screen 2" or "screens 2, 4".
func (v *Voice) Screens(numbers []int) string {
	list := make([]string, len(numbers))
	for i, n := range numbers {
		list[i] = fmt.Sprint(n)
	}
	return v.Many("told.screens", len(numbers), "list", strings.Join(list, ", "))
}

// Tell says a warning with its places. A location is named by called, nil: as it stands.
func (v *Voice) Tell(t Told, called func(string) string) string {
	var places []string
	for _, p := range t.At {
		name := p.Location
		if called != nil {
			name = called(name)
		}
		if p.Screens != nil {
			name = v.T("told.place", "location", name, "screens", v.Screens(p.Screens))
		}
		places = append(places, name)
	}
	if places == nil {
		return t.Text
	}
	return v.T("told.at", "places", strings.Join(places, "; "), "text", t.Text)
}
