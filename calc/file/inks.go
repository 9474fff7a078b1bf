package file

import (
	"fmt"
	"reflect"
	"slices"

	"bladecard/calc/internal/deep"
	"bladecard/calc/internal/words"
	"bladecard/calc/job"
)

// inkMerge works out which class each class of a file takes its figures from.
type inkMerge struct {
	b     *binder
	own   []job.Ink
	base  []job.Ink
	given []given
	state []int // 0 to do, 1 under way, 2 done
}

// mergeInks completes the ink classes of a file from the classes that they are like and adds
// them to the base, in place of the one of the same name.
func (b *binder) mergeInks(own, base []job.Ink, data map[string]any, places *place) []job.Ink {
	m := inkMerge{b: b, own: own, base: base, given: make([]given, len(own)), state: make([]int, len(own))}
	for i := range own {
		m.given[i] = element("ink", data, places, i)
	}
	for i := range own {
		m.complete(i)
	}
	all := append([]job.Ink(nil), base...)
	for i := range own {
		if at := inkIndex(all, own[i].Name); at >= 0 {
			all[at] = own[i]
		} else if own[i].Name != "" {
			all = append(all, own[i])
		}
	}
	return all
}

func inkIndex(list []job.Ink, name string) int {
	for i := range list {
		if list[i].Name == name {
			return i
		}
	}
	return -1
}

// complete fills class i. It returns false when the class leads back to itself.
func (m *inkMerge) complete(i int) bool {
	if m.state[i] != 0 {
		return m.state[i] == 2
	}
	m.state[i] = 1
	defer func() { m.state[i] = 2 }()
	ink, g := &m.own[i], m.given[i]
	from := ink.Like
	if from == "" || from == ink.Name {
		from = ink.Name
		if at := inkIndex(m.base, from); at >= 0 {
			m.inherit(i, &m.base[at])
			return true
		}
		if ink.Like == "" {
			m.alone(i)
			return true
		}
	} else if at := inkIndex(m.own, from); at >= 0 {
		if !m.complete(at) {
			m.b.fail(g.place.kid("like").valuePos(), g.scope, "like", words.Quote(from)+" leads back to this class", "a class that does not is accepted")
			return true
		}
		m.inherit(i, &m.own[at])
		return true
	} else if at := inkIndex(m.base, from); at >= 0 {
		m.inherit(i, &m.base[at])
		return true
	}
	known := words.Names(append(append([]job.Ink(nil), m.base...), m.own...), func(x *job.Ink) string { return x.Name })
	known = slices.DeleteFunc(known, func(name string) bool { return name == ink.Name })
	m.b.fail(g.place.kid("like").valuePos(), g.scope, "like", "the ink class "+words.Quote(ink.Like)+" is not known", words.InList(ink.Like, known, "accepted are"))
	return true
}

// alone checks a class that takes figures from no other.
func (m *inkMerge) alone(i int) {
	g := m.given[i]
	for _, f := range fieldsOf(reflect.TypeFor[job.Ink]()) {
		switch f.key {
		case "solids", "density", "dries":
			if _, ok := g.data[f.key]; !ok && m.own[i].Name != "" {
				m.b.fail(g.place.keyPos(), g.scope, f.key, "is missing",
					f.accepted()+`, or like = "plastisol" to take the figures of that class`)
			}
		}
	}
	m.check(i)
}

func (m *inkMerge) inherit(i int, from *job.Ink) {
	inherit(reflect.ValueOf(&m.own[i]).Elem(), reflect.ValueOf(from).Elem(), m.given[i].data)
	m.check(i)
}

// check finds figures of a complete class that cannot stand together.
func (m *inkMerge) check(i int) {
	ink, g := &m.own[i], m.given[i]
	fail := func(key, wrong, accepted string) { m.b.fail(g.place.Find(key), g.scope, key, wrong, accepted) }
	if ink.CureC != nil && ink.CureTopC > 0 && ink.CureTopC < ink.CureC.High {
		fail("cure-top", fmt.Sprintf("%s C is below the top of the cure range, %s C", words.Number(ink.CureTopC), words.Number(ink.CureC.High)),
			"a temperature at or above the cure range is accepted: state cure too")
	}
	if ink.CureC != nil && ink.GelC != nil && ink.GelC.Low > ink.CureC.High {
		fail("gel", fmt.Sprintf("starts at %s C, above the cure range, which ends at %s C", words.Number(ink.GelC.Low), words.Number(ink.CureC.High)),
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
