package file

import (
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
// from the built-in shop: each of the racks, presses, flash units and dryers as a whole. Ink classes of the file are added to the built-in ones, or give other
// figures for the built-in one of the same name. Errors are those of DecodeJob; a shop that
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

// builtInInks are the ink classes of templates/inks.toml.
func builtInInks() []job.Ink {
	s, errs := decodeShop("built-in inks", templates.Inks(), &job.Shop{})
	if len(errs) > 0 {
		panic("job: " + errs.Error())
	}
	return s.Inks
}

func decodeShop(name string, src []byte, base *job.Shop) (*job.Shop, job.Errors) {
	_, data, places, errs := open(name, src)
	if errs != nil {
		return nil, errs
	}
	var b binder
	s := &job.Shop{}
	b.table(reflect.ValueOf(s).Elem(), data, places, scope{})
	s.File = name
	for i := range s.Blades {
		b.finishBlade(&s.Blades[i], element("blade", data, places, i))
	}
	for i := range s.Meshes {
		b.finishMesh(&s.Meshes[i], element("mesh", data, places, i))
	}
	doubles(&b, "blade", s.Blades, func(x *job.Blade) string { return x.Name }, data, places)
	doubles(&b, "press", s.Presses, func(x *job.Press) string { return x.Name }, data, places)
	doubles(&b, "flash", s.Flashes, func(x *job.Flash) string { return x.Name }, data, places)
	doubles(&b, "dryer", s.Dryers, func(x *job.Dryer) string { return x.Name }, data, places)
	doubles(&b, "ink", s.Inks, func(x *job.Ink) string { return x.Name }, data, places)
	s.Inks = b.mergeInks(s.Inks, base.Inks, data, places)
	complete(s, base)
	return s, b.errs
}

// complete takes from the base what the shop leaves out.
func complete(s, base *job.Shop) {
	fillList(&s.Blades, base.Blades)
	fillList(&s.Meshes, base.Meshes)
	fillList(&s.Presses, base.Presses)
	fillList(&s.Flashes, base.Flashes)
	fillList(&s.Dryers, base.Dryers)
}

func fill(dst *string, base string) {
	if *dst == "" {
		*dst = base
	}
}

func fillList[T any](dst *[]T, base []T) {
	if len(*dst) == 0 {
		*dst = base
	}
}

// given is an entry of a list of tables as the file has it.
type given struct {
	data  map[string]any
	place *place
	scope scope
}

func element(key string, data map[string]any, places *place, i int) given {
	list, _ := asTables(data[key])
	g := given{place: places.kid(key).item(i)}
	if i < len(list) {
		g.data = list[i]
	}
	g.scope = scope{where: elementName(key, g.data, i)}
	return g
}

// doubles reports names that two entries share, since a job means one of them.
func doubles[T any](b *binder, key string, list []T, name func(*T) string, data map[string]any, places *place) {
	seen := map[string]bool{}
	for i := range list {
		n := name(&list[i])
		if n != "" && seen[n] {
			g := element(key, data, places, i)
			b.fail(g.place.Find("name"), g.scope, "name", fmt.Sprintf("the name %s is taken by another %s of this file", words.Quote(n), key), "a name of its own is accepted")
		}
		seen[n] = true
	}
}

// finishBlade works out what the keys of a blade mean together.
func (b *binder) finishBlade(x *job.Blade, g given) {
	if x.Layup == "" {
		return // reported already
	}
	x.Layup = job.Unspaced(x.Layup)
	fill(&x.Name, x.Layup)
	x.Hardness, _ = job.ParseLayup(x.Layup)
	n := len(x.Hardness)
	b.perLayer("modulus", x, g)
	b.perLayer("layers", x, g)
	switch {
	case len(x.LayersMM) == 0:
		x.LayersMM = make([]float64, n)
		for i := range x.LayersMM {
			x.LayersMM[i] = x.ThicknessMM / float64(n)
		}
	case len(x.LayersMM) == n:
		b.thickness(x, g)
	}
}

// perLayer checks that a list of a blade has an entry for each layer.
func (b *binder) perLayer(key string, x *job.Blade, g given) {
	list, ok := g.data[key].([]any)
	if n := len(x.Hardness); ok && len(list) != n {
		b.fail(g.place.Find(key), g.scope, key, fmt.Sprintf("has %d entries, and the layup %s has %d layers", len(list), words.Quote(x.Layup), n),
			"one entry for each layer is accepted")
	}
}

// thickness compares the sum of the layers with the whole thickness, or takes it for that.
func (b *binder) thickness(x *job.Blade, g given) {
	fail := func(wrong, accepted string) { b.fail(g.place.Find("layers"), g.scope, "layers", wrong, accepted) }
	sum := 0.0
	for _, t := range x.LayersMM {
		sum += t
	}
	if _, stated := g.data["thickness"]; stated {
		if !(math.Abs(sum-x.ThicknessMM) <= 0.05*x.ThicknessMM) {
			fail(fmt.Sprintf("add up to %s mm, and the thickness is %s mm", words.Number(sum), words.Number(x.ThicknessMM)),
				"layers that add up to the thickness within 5 % are accepted")
		}
		return
	}
	fields := fieldsOf(reflect.TypeFor[job.Blade]())
	whole := &fields[slices.IndexFunc(fields, func(f field) bool { return f.key == "thickness" })]
	if !(sum >= whole.min && sum <= whole.max) {
		fail(fmt.Sprintf("add up to a blade of %s mm", words.Number(sum)), bounds(whole))
		return
	}
	x.ThicknessMM = sum
}

// finishMesh works out count and thread of a mesh and checks what was measured against them.
func (b *binder) finishMesh(m *job.Mesh, g given) {
	if m.Name == "" {
		return // reported already
	}
	m.CountPerInch, m.ThreadUM, _ = job.ParseMesh(m.Name)
	m.OnRack = true
	before := len(b.errs)
	defer func() {
		if len(b.errs) > before {
			return
		}
		if _, err := m.Cloth(); err != nil {
			b.fail(g.place.Find("mesh"), g.scope, "mesh", words.Quote(m.Name)+" cannot be computed: "+strings.TrimPrefix(err.Error(), "mesh: "), "a mesh with its measured fabric thickness, or another one, is accepted")
		}
	}()
	if pitch := 25400 / m.CountPerInch; m.OpeningUM > 0 && !(m.OpeningUM < pitch) {
		b.fail(g.place.kid("opening").valuePos(), g.scope, "opening", fmt.Sprintf("%s um is not smaller than the pitch of %s, %s um", words.Number(m.OpeningUM), m.Name, words.Number(pitch)),
			"an opening below the pitch is accepted")
	}
	if m.FabricUM > 0 && m.FabricUM < m.ThreadUM {
		b.fail(g.place.kid("fabric").valuePos(), g.scope, "fabric", fmt.Sprintf("%s um is thinner than the thread, %s um", words.Number(m.FabricUM), words.Number(m.ThreadUM)),
			"a fabric at least as thick as its thread is accepted")
	}
}
