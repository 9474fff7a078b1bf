package file

import (
	"fmt"
	"reflect"
	"strings"
	"time"

	"bladecard/calc/internal/words"
)

// slot is a key whose value is being read: what its tags say, and where it stands.
type slot struct {
	*binder
	f  *field
	at *place
	sc scope
}

// fail adds an error at the value. It returns what a reader returns that accepts nothing.
func (s slot) fail(wrong, accepted string) (any, bool) {
	s.binder.fail(s.at.valuePos(), s.sc, s.f.key, wrong, accepted)
	return nil, false
}

func (s slot) wrongType(raw any) (any, bool) { return s.fail(describe(raw), s.f.accepted()) }

// fill sets a field from its value in the file. A value that is not accepted leaves the field as it was.
func (s slot) fill(dst reflect.Value, raw any) {
	if scalar, ok := scalars[dst.Type()]; ok {
		if v, ok := scalar.read(s, raw); ok {
			dst.Set(reflect.ValueOf(v))
		}
		return
	}
	switch dst.Kind() {
	case reflect.Pointer:
		v, before := reflect.New(dst.Type().Elem()), len(s.errs)
		s.fill(v.Elem(), raw)
		if len(s.errs) == before || v.Elem().Kind() == reflect.Struct && !v.Elem().IsZero() {
			dst.Set(v)
		}
	case reflect.Slice:
		if dst.Type().Elem().Kind() == reflect.Struct {
			s.tables(dst, raw)
		} else {
			s.list(dst, raw)
		}
	case reflect.Map:
		s.mapped(dst, raw)
	case reflect.Struct:
		if data, ok := raw.(map[string]any); ok {
			s.table(dst, data, s.at, scope{s.sc.where, s.sc.prefix + s.f.key + "."})
		} else {
			s.wrongType(raw)
		}
	default:
		panic("file: no way to read a " + dst.Type().String())
	}
}

// list fills a list of scalars with the entries that are accepted.
func (s slot) list(dst reflect.Value, raw any) {
	entries, ok := raw.([]any)
	if !ok {
		s.wrongType(raw)
		return
	}
	scalar := scalars[dst.Type().Elem()]
	list := reflect.Zero(dst.Type())
	for i, entry := range entries[:s.atMost(len(entries))] {
		if v, ok := scalar.read(slot{s.binder, s.f, s.at.item(i), s.sc}, entry); ok {
			list = reflect.Append(list, reflect.ValueOf(v))
		}
	}
	dst.Set(list)
}

// atMost returns how many entries of a list are read, and reports those beyond.
func (s slot) atMost(n int) int {
	if s.f.most == 0 || n <= s.f.most {
		return n
	}
	slot{s.binder, s.f, s.at.item(s.f.most), s.sc}.fail(fmt.Sprintf("has %d entries", n), fmt.Sprintf("at most %d are accepted", s.f.most))
	return s.f.most
}

// tables fills a slice of structs from a list of tables.
func (s slot) tables(dst reflect.Value, raw any) {
	list, ok := asTables(raw)
	if !ok {
		s.wrongType(raw)
		return
	}
	if len(list) == 0 && s.f.need {
		s.fail("is empty", s.f.accepted())
		return
	}
	list = list[:s.atMost(len(list))]
	out := reflect.MakeSlice(dst.Type(), len(list), len(list))
	for i, data := range list {
		s.table(out.Index(i), data, s.at.item(i), s.sc.in(elementName(s.f.key, data, i)))
	}
	dst.Set(out)
}

// nameless lists the tables that have no key `name`, so that errors count them.
var nameless = []string{"screen", "mesh"}

// elementName names an entry of a list of tables for errors: location "full front", screen 2.
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
func (s slot) mapped(dst reflect.Value, raw any) {
	data, ok := raw.(map[string]any)
	if !ok {
		s.wrongType(raw)
		return
	}
	s.unknown(data, s.f.keys, s.at, scope{s.sc.where, s.sc.prefix + s.f.key + "."})
	dst.Set(reflect.MakeMap(dst.Type()))
	for _, key := range s.f.keys {
		inner, given := data[key]
		if !given {
			continue
		}
		v := reflect.New(dst.Type().Elem()).Elem()
		slot{s.binder, &field{key: s.f.key + "." + key, typ: v.Type().Elem()}, s.at.kid(key), s.sc}.fill(v, inner)
		if !v.IsNil() {
			dst.SetMapIndex(reflect.ValueOf(key), v)
		}
	}
}

// preset fills a field that the file leaves out from its default tag.
func (b *binder) preset(dst reflect.Value, f *field) {
	before := len(b.errs)
	slot{binder: b, f: f}.fill(dst, f.presetValue())
	if len(b.errs) != before {
		panic("file: the default of " + f.key + " is not accepted: " + f.preset)
	}
}

// presetValue returns the default as the file would write it: a number, a truth value or a text.
func (f *field) presetValue() any {
	if f.typ.Kind() == reflect.String || f.unit != "" {
		return f.preset
	}
	data, _, wrong := parse([]byte("v = " + f.preset))
	if wrong != "" {
		panic("file: the default of " + f.key + ": " + wrong)
	}
	return data["v"]
}

// accepted says in words what a field takes.
func (f *field) accepted() string {
	if s, ok := scalars[f.typ]; ok {
		return s.accepted(f)
	}
	switch {
	case f.typ == reflect.TypeFor[[]float64]():
		_, example, _ := strings.Cut(acceptQuantity(f), " such as ")
		return "a list of texts with unit, each such as " + example
	case len(f.one) > 0:
		return "a list of these is accepted: " + strings.Join(words.Quoted(f.one), ", ")
	case f.typ == reflect.TypeFor[[]string]():
		return "a list of texts in quotes is accepted"
	case f.typ.Kind() == reflect.Slice:
		return "one or more tables are accepted, each under a header [[...]] that ends in " + f.key
	case f.typ.Kind() == reflect.Map:
		return "a table is accepted, with the keys " + words.List(f.keys)
	}
	return "a table is accepted, with the keys " + words.List(keysOf(fieldsOf(f.typ)))
}

// describe says what a value is that has not the accepted type.
func describe(raw any) string {
	switch v := raw.(type) {
	case string:
		return words.Quote(v) + " is a text"
	case bool:
		return fmt.Sprintf("%t is a truth value", v)
	case int64:
		return fmt.Sprintf("%d is a number", v)
	case float64:
		return words.Number(v) + " is a number"
	case time.Time:
		return "is a date or a time"
	case map[string]any:
		return "is a single table"
	case []map[string]any:
		return "is a list of tables"
	}
	return "is a list"
}
