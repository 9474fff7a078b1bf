package file

import (
	"cmp"
	"fmt"
	"reflect"
	"slices"

	"bladecard/calc/internal/deep"
	"bladecard/calc/internal/words"
	"bladecard/calc/job"
)

// inkMerge works out which class each class of a file takes its figures from.
type inkMerge struct {
	own, base []job.Ink
	elements  []element // of own
	state     []int     // of own: 0 to do, 1 under way, 2 done
}

// mergeInks completes the ink classes of a file from the classes that they are like and adds
// them to the base, in place of the one of the same name.
func mergeInks(own, base []job.Ink, elements []element) []job.Ink {
	m := inkMerge{own: own, base: base, elements: elements, state: make([]int, len(own))}
	all := slices.Clone(base)
	for i := range own {
		m.complete(i)
		if at := inkIndex(base, own[i].Name); at >= 0 {
			all[at] = own[i]
		} else if own[i].Name != "" {
			all = append(all, own[i])
		}
	}
	return all
}

func inkIndex(list []job.Ink, name string) int {
	return slices.IndexFunc(list, func(x job.Ink) bool { return x.Name == name })
}

// complete fills class i. It returns false when the class leads back to itself.
func (m *inkMerge) complete(i int) bool {
	if m.state[i] != 0 {
		return m.state[i] == 2
	}
	m.state[i] = 1
	defer func() { m.state[i] = 2 }()
	ink, e := &m.own[i], m.elements[i]
	from := cmp.Or(ink.Like, ink.Name)
	own, base := inkIndex(m.own, from), inkIndex(m.base, from)
	switch {
	case from != ink.Name && own >= 0:
		if !m.complete(own) {
			e.fail("like", words.Quote(from)+" leads back to this class", "a class that does not is accepted")
			return true
		}
		inherit(reflect.ValueOf(ink).Elem(), reflect.ValueOf(&m.own[own]).Elem(), e.data)
	case base >= 0:
		inherit(reflect.ValueOf(ink).Elem(), reflect.ValueOf(&m.base[base]).Elem(), e.data)
	case ink.Like == "":
		e.alone(ink)
	default:
		known := words.Names(slices.Concat(m.base, m.own), func(x *job.Ink) string { return x.Name })
		known = slices.DeleteFunc(known, func(name string) bool { return name == ink.Name })
		e.fail("like", "the ink class "+words.Quote(ink.Like)+" is not known", words.InList(ink.Like, known, "accepted are"))
		return true
	}
	e.checkInk(ink)
	return true
}

// alone reports what is missing in a class that takes figures from no other.
func (e element) alone(ink *job.Ink) {
	for _, f := range fieldsOf(reflect.TypeFor[job.Ink]()) {
		switch f.key {
		case "solids", "density", "dries":
			if _, ok := e.data[f.key]; !ok && ink.Name != "" {
				e.fail(f.key, "is missing", f.accepted()+`, or like = "plastisol" to take the figures of that class`)
			}
		}
	}
}

// checkInk finds figures of a complete class that cannot stand together.
func (e element) checkInk(ink *job.Ink) {
	if ink.CureC != nil && ink.CureTopC > 0 && ink.CureTopC < ink.CureC.High {
		e.fail("cure-top", fmt.Sprintf("%s C is below the top of the cure range, %s C", words.Number(ink.CureTopC), words.Number(ink.CureC.High)),
			"a temperature at or above the cure range is accepted: state cure too")
	}
	if ink.CureC != nil && ink.GelC != nil && ink.GelC.Low > ink.CureC.High {
		e.fail("gel", fmt.Sprintf("starts at %s C, above the cure range, which ends at %s C", words.Number(ink.GelC.Low), words.Number(ink.CureC.High)),
			"a gel temperature below the cure range is accepted")
	}
}

// inherit fills the keys of a struct that the file does not give from another struct; tables
// inside are filled key by key.
func inherit(dst, from reflect.Value, data map[string]any) {
	for _, f := range fieldsOf(dst.Type()) {
		d, s := dst.Field(f.index), from.Field(f.index)
		raw, given := data[f.key]
		switch {
		case f.key == "name" || f.key == "like":
		case !given:
			d.Set(deep.Value(s))
		case d.Kind() == reflect.Map:
			inner, ok := raw.(map[string]any)
			for it := s.MapRange(); ok && it.Next(); {
				own := d.MapIndex(it.Key())
				if !own.IsValid() {
					d.SetMapIndex(it.Key(), deep.Value(it.Value()))
					continue
				}
				sub, _ := inner[it.Key().String()].(map[string]any)
				inherit(own.Elem(), it.Value().Elem(), sub)
			}
		}
	}
}
