package file

import (
	"cmp"
	"fmt"
	"math"
	"reflect"
	"slices"
	"strings"
	"sync"

	"bladecard/calc/internal/deep"
	"bladecard/calc/internal/words"
	"bladecard/calc/job"
	"bladecard/templates"
)

// DecodeShop reads a shop file; name is how errors call it. What the file leaves out comes
// from the built-in shop: each of the racks, presses, flash units and dryers as a whole. Ink classes of the file
// are added to the built-in ones, or give other figures for the built-in one of the same name. Errors are those of DecodeJob; a shop that
// comes back beside errors is good for Resolve only.
func DecodeShop(name string, src []byte) (*job.Shop, job.Errors) {
	s, errs := decodeShop(name, src, BuiltInShop())
	errs.Sort()
	return s, errs
}

// BuiltInShop returns the shop that a job without a shop file is printed in: invented racks of
// customary stock and all built-in ink classes. Its figures are common practice or from memory
// as templates/shop.toml and templates/inks.toml say beside each. Each call returns a shop of
// its own.
func BuiltInShop() *job.Shop { return deep.Of(builtIn()) }

// builtIn reads the built-in shop once; nobody may change what it returns.
var builtIn = sync.OnceValue(func() *job.Shop {
	s, errs := decodeShop("built-in shop", templates.Shop(), &job.Shop{Inks: builtInInks()})
	if len(errs) > 0 {
		panic("job: " + errs.Error())
	}
	return s
})

// builtInInks reads the ink classes of templates/inks.toml.
func builtInInks() []job.Ink {
	s, errs := decodeShop("built-in inks", templates.Inks(), &job.Shop{})
	if len(errs) > 0 {
		panic("job: " + errs.Error())
	}
	return s.Inks
}

func decodeShop(name string, src []byte, base *job.Shop) (*job.Shop, job.Errors) {
	data, places, errs := open(name, src)
	if errs != nil {
		return nil, errs
	}
	var b binder
	s := &job.Shop{}
	shop := reflect.ValueOf(s).Elem()
	b.table(shop, data, places, scope{})
	s.File = name
	for _, f := range fieldsOf(shop.Type()) {
		list := shop.Field(f.index)
		if list.Kind() != reflect.Slice {
			continue
		}
		own := b.elements(f.key, list.Len(), data, places)
		for i, e := range own {
			switch x := list.Index(i).Addr().Interface().(type) {
			case *job.Blade:
				e.finishBlade(x)
			case *job.Mesh:
				e.finishMesh(x)
			}
		}
		if !words.Has(nameless, f.key) {
			doubles(f.key, list, own)
		}
		switch from := reflect.ValueOf(base).Elem().Field(f.index); {
		case f.key == "ink": // classes, which every shop adds to
			s.Inks = mergeInks(s.Inks, base.Inks, own)
		case list.Len() == 0:
			s.BuiltIn = append(s.BuiltIn, f.key)
			list.Set(from)
		case from.Len() == 0: // there is no other shop under this one: it is the built-in one
			s.BuiltIn = append(s.BuiltIn, f.key)
		}
	}
	return s, b.errs
}

// element is an entry of a list of tables with what the file says of it.
type element struct {
	*binder
	data  map[string]any
	place *place
	scope scope
}

// elements returns the first n entries of a list.
func (b *binder) elements(key string, n int, data map[string]any, places *place) []element {
	list, _ := asTables(data[key])
	out := make([]element, n)
	for i := range out {
		out[i] = element{b, list[i], places.kid(key).item(i), scope{where: elementName(key, list[i], i)}}
	}
	return out
}

func (e element) fail(key, wrong, accepted string) {
	e.binder.fail(e.place.Find(key), e.scope, key, wrong, accepted)
}

// doubles reports names that two entries share, since a job means one of them.
func doubles(key string, list reflect.Value, elements []element) {
	seen := map[string]bool{}
	for i, e := range elements {
		name := list.Index(i).FieldByName("Name").String()
		if name != "" && seen[name] {
			e.fail("name", fmt.Sprintf("the name %s is taken by another %s of this file", words.Quote(name), key), "a name of its own is accepted")
		}
		seen[name] = true
	}
}

// finishBlade works out what the keys of a blade mean together.
func (e element) finishBlade(x *job.Blade) {
	if x.Layup == "" {
		return // reported already
	}
	x.Layup = job.Unspaced(x.Layup)
	x.Name = cmp.Or(x.Name, x.Layup)
	x.Hardness, _ = job.ParseLayup(x.Layup)
	n := len(x.Hardness)
	e.perLayer("modulus", x)
	e.perLayer("layers", x)
	switch {
	case len(x.LayersMM) == 0:
		x.LayersMM = make([]float64, n)
		for i := range x.LayersMM {
			x.LayersMM[i] = x.ThicknessMM / float64(n)
		}
	case len(x.LayersMM) == n:
		e.thickness(x)
	}
}

// perLayer checks that a list of a blade has an entry for each layer.
func (e element) perLayer(key string, x *job.Blade) {
	list, ok := e.data[key].([]any)
	if n := len(x.Hardness); ok && len(list) != n {
		e.fail(key, fmt.Sprintf("has %d entries, and the layup %s has %d layers", len(list), words.Quote(x.Layup), n),
			"one entry for each layer is accepted")
	}
}

// thickness compares the sum of the layers with the whole thickness, or takes it for that.
func (e element) thickness(x *job.Blade) {
	sum := 0.0
	for _, t := range x.LayersMM {
		sum += t
	}
	if _, stated := e.data["thickness"]; stated {
		if !(math.Abs(sum-x.ThicknessMM) <= 0.05*x.ThicknessMM) {
			e.fail("layers", fmt.Sprintf("add up to %s mm, and the thickness is %s mm", words.Number(sum), words.Number(x.ThicknessMM)),
				"layers that add up to the thickness within 5 % are accepted")
		}
		return
	}
	fields := fieldsOf(reflect.TypeFor[job.Blade]())
	whole := &fields[slices.IndexFunc(fields, func(f field) bool { return f.key == "thickness" })]
	if !whole.holds(sum, sum) {
		e.fail("layers", fmt.Sprintf("add up to a blade of %s mm", words.Number(sum)), whole.bounds())
		return
	}
	x.ThicknessMM = sum
}

// finishMesh works out count and thread of a mesh and checks what was measured against them.
func (e element) finishMesh(m *job.Mesh) {
	if m.Name == "" {
		return // reported already
	}
	m.CountPerInch, m.ThreadUM, _ = job.ParseMesh(m.Name)
	m.OnRack = true
	pitch := 25400 / m.CountPerInch
	thick, open := m.FabricUM == 0 || m.FabricUM >= m.ThreadUM, m.OpeningUM == 0 || m.OpeningUM < pitch
	if !open {
		e.fail("opening", fmt.Sprintf("%s um is not smaller than the pitch of %s, %s um", words.Number(m.OpeningUM), m.Name, words.Number(pitch)),
			"an opening below the pitch is accepted")
	}
	if !thick {
		e.fail("fabric", fmt.Sprintf("%s um is thinner than the thread, %s um", words.Number(m.FabricUM), words.Number(m.ThreadUM)),
			"a fabric at least as thick as its thread is accepted")
	}
	if _, err := m.Cloth(); err != nil && open && thick {
		e.fail("mesh", words.Quote(m.Name)+" cannot be computed: "+strings.TrimPrefix(err.Error(), "mesh: "), "a mesh with its measured fabric thickness, or another one, is accepted")
	}
}
