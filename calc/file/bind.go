package file

import (
	"fmt"
	"reflect"
	"strconv"
	"strings"

	"bladecard/calc/internal/words"
	"bladecard/calc/job"
)

// binder fills structs from the tables of a file, by the tags of their fields, and collects
// all that is wrong.
type binder struct {
	errs job.Errors
}

// scope is the place in words of a table: where, and the keys inside where.
type scope struct{ where, prefix string }

func (s scope) in(where string) scope {
	if s.where != "" {
		where = s.where + ", " + where
	}
	return scope{where: where}
}

func (b *binder) fail(at job.Pos, sc scope, key, wrong, accepted string) {
	b.errs = append(b.errs, job.Error{Pos: at, Where: sc.where, Key: sc.prefix + key, Wrong: wrong, Accepted: accepted})
}

// table fills a struct.
func (b *binder) table(dst reflect.Value, data map[string]any, at *place, sc scope) {
	fields := fieldsOf(dst.Type())
	b.unknown(data, keysOf(fields), at, sc)
	for i := range fields {
		f := &fields[i]
		raw, given := data[f.key]
		switch {
		case given:
			if _, other := data[f.excludes]; other && f.excludes != "" {
				b.fail(at.kid(f.key).keyPos(), sc, f.key, "stands beside "+f.excludes, "one of the two is accepted")
			}
			b.value(dst.Field(f.index), raw, at.kid(f.key), f, sc)
		case f.need:
			b.fail(at.valuePos(), sc, f.key, "is missing", b.accepted(dst.Field(f.index).Type(), f))
		case f.preset != "":
			b.preset(dst.Field(f.index), f)
		}
	}
	switch x := dst.Addr().Interface().(type) { // these keep the places of their keys
	case *job.Job:
		x.Keys = at
	case *job.Location:
		x.Pos = at.keyPos()
	case *job.Screen:
		x.Keys, x.Pos = at, at.keyPos()
	}
}

// unknown reports the keys of a table that are not among the accepted ones.
func (b *binder) unknown(data map[string]any, keys []string, at *place, sc scope) {
	for key := range data {
		if words.Has(keys, key) {
			continue
		}
		near := words.Nearest(key, keys)
		hint := ""
		switch {
		case strings.EqualFold(near, key) && near != "":
			hint = "keys are written in small letters: " + near + ". "
		case near != "":
			hint = "did you mean " + near + "? "
		}
		b.fail(at.kid(key).keyPos(), sc, words.Shorten(keyText(key), 40), "is not a key of this table", hint+"accepted are "+words.List(keys))
	}
}

// keyText writes a key as the file does.
func keyText(key string) string {
	for _, r := range key {
		if !(r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r >= '0' && r <= '9' || r == '-' || r == '_') {
			return strconv.Quote(key)
		}
	}
	if key == "" {
		return `""`
	}
	return key
}

// tables fills a slice of structs from a list of tables.
func (b *binder) tables(dst reflect.Value, raw any, at *place, f *field, sc scope) {
	list, ok := asTables(raw)
	if !ok {
		b.fail(at.valuePos(), sc, f.key, describe(raw), b.accepted(dst.Type(), f))
		return
	}
	if len(list) == 0 && f.need {
		b.fail(at.valuePos(), sc, f.key, "is empty", b.accepted(dst.Type(), f))
		return
	}
	if b.tooMany(len(list), at, f, sc) {
		list = list[:f.most]
	}
	s := reflect.MakeSlice(dst.Type(), len(list), len(list))
	for i, data := range list {
		b.table(s.Index(i), data, at.item(i), sc.in(elementName(f.key, data, i)))
	}
	dst.Set(s)
}

func (b *binder) tooMany(n int, at *place, f *field, sc scope) bool {
	if f.most == 0 || n <= f.most {
		return false
	}
	b.fail(at.item(f.most).valuePos(), sc, f.key, fmt.Sprintf("has %d entries", n), fmt.Sprintf("at most %d are accepted", f.most))
	return true
}

// nameless are the lists of tables whose entries are counted: they have no key `name`.
var nameless = []string{"screen", "mesh"}

// elementName is how an entry of a list of tables is called: location "full front", screen 2.
func elementName(key string, data map[string]any, i int) string {
	if name, ok := data["name"].(string); ok && !words.Has(nameless, key) {
		if name = fold(name); name != "" {
			return key + " " + words.Quote(name)
		}
	}
	return fmt.Sprintf("%s %d", key, i+1)
}

// asTables reads a list of tables, written as [[headers]] or inline.
func asTables(raw any) ([]map[string]any, bool) {
	switch list := raw.(type) {
	case []map[string]any:
		return list, true
	case []any:
		tables := make([]map[string]any, len(list))
		for i, entry := range list {
			t, ok := entry.(map[string]any)
			if !ok {
				return nil, false
			}
			tables[i] = t
		}
		return tables, true
	}
	return nil, false
}

// mapped fills a map of structs from a table with the accepted keys.
func (b *binder) mapped(dst reflect.Value, raw any, at *place, f *field, sc scope) {
	data, ok := raw.(map[string]any)
	if !ok {
		b.fail(at.valuePos(), sc, f.key, describe(raw), b.accepted(dst.Type(), f))
		return
	}
	b.unknown(data, f.keys, at, scope{sc.where, sc.prefix + f.key + "."})
	dst.Set(reflect.MakeMap(dst.Type()))
	for _, key := range f.keys {
		inner, given := data[key]
		if !given {
			continue
		}
		sub := field{key: f.key + "." + key}
		v := reflect.New(dst.Type().Elem()).Elem()
		b.value(v, inner, at.kid(key), &sub, sc)
		if !v.IsNil() {
			dst.SetMapIndex(reflect.ValueOf(key), v)
		}
	}
}
