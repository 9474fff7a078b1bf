package file

import (
	"math"
	"reflect"
	"slices"
	"strings"

	"bladecard/calc/internal/words"
	"bladecard/calc/job"
	"bladecard/calc/unit"
	"bladecard/templates"
)

// Kinds lists the kinds of file that Schema knows: job and shop.
func Kinds() []string { return []string{"job", "shop"} }

// kindOf returns the struct that a kind of file is read into.
func kindOf(kind string) (reflect.Type, error) {
	switch kind {
	case "job":
		return reflect.TypeFor[job.Job](), nil
	case "shop":
		return reflect.TypeFor[job.Shop](), nil
	}
	return nil, &unit.Error{Wrong: words.Quote(kind) + " is no kind of file", Accepted: words.List(Kinds()) + " is accepted"}
}

// Schema returns the JSON Schema (draft-07) of a kind of file, job or shop, for editors of
// TOML: the same bytes for the same program. It is generated from the tags that the decoder
// reads files by (see job.Job): keys, types, words, units, counts, and which keys stand together.
// What a key means is told in the language of that code. Validators in strict mode compile it: a
// value has one type, texts have no format, and a rule names no key that it does not define.
//
// What the decoder takes passes the schema, if words and colors are written without blanks
// round them, texts in at most 200 characters before lines are joined, and quantities with
// plain blanks. The other way round the schema passes more. A schema cannot tell, and the
// decoder does: the range of a quantity with a unit ("4 mm" where 5 mm is the least; the
// description says it), whether a range runs upward, figures against each other (a layer for
// each part of a layup, cure below cure-top, the count of a mesh against its thread), names
// that two entries share or that are in no rack, a date in quotes, 2.0 for a whole number, and
// control characters. The error is a *unit.Error, for another kind, or that of templates, for a
// language that does not ship.
func Schema(kind, language string) ([]byte, error) {
	t, err := kindOf(kind)
	if err != nil {
		return nil, err
	}
	w, err := templates.Language(language)
	if err != nil {
		return nil, err
	}
	s := schemer{words: w}
	root := append(object{{"$schema", "http://json-schema.org/draft-07/schema#"}, {"title", "bladecard " + kind + " file"}}, s.table(t, w["key.file."+kind])...)
	if len(s.definitions) > 0 {
		root = append(root, member{"definitions", s.definitions})
	}
	return root.text(), nil
}

// schemer writes the schema of a type by the tags of its fields.
type schemer struct {
	words       templates.Words
	definitions object // tables that stand in more than one place
}

// table makes the schema of a struct.
func (s *schemer) table(t reflect.Type, doc string) object {
	out := object{}
	if doc != "" {
		out = append(out, member{"description", doc})
	}
	var properties object
	var required []string
	var clashes object
	for _, f := range fieldsOf(t) {
		properties = append(properties, member{f.key, s.field(&f)})
		if f.need {
			required = append(required, f.key)
		}
		if f.excludes != "" {
			clashes = append(clashes, member{f.key, object{{"properties", object{{f.excludes, false}}}}})
		}
	}
	out = append(out, member{"type", "object"}, member{"properties", properties})
	if required != nil {
		out = append(out, member{"required", required})
	}
	out = append(out, member{"additionalProperties", false})
	if clashes != nil {
		out = append(out, member{"dependencies", clashes})
	}
	return out
}

// field makes the schema of a key, with its description and default.
func (s *schemer) field(f *field) object {
	if _, scalar := scalars[f.typ]; f.typ.Kind() == reflect.Struct && !scalar {
		return s.table(f.typ, s.words[f.text])
	}
	doc := s.words[f.text]
	if f.unit != "" && !math.IsInf(f.min, -1) && !math.IsInf(f.max, 1) {
		low, high, u := f.ends()
		doc = strings.NewReplacer("{what}", doc, "{low}", low, "{high}", high+u).Replace(s.words["key.range"])
	}
	out := append(object{{"description", doc}}, s.value(f)...)
	if f.preset != "" {
		out = append(out, member{"default", f.presetValue()})
	}
	return out
}

// value makes the schema of a value: a scalar, a list or a map.
func (s *schemer) value(f *field) object {
	if scalar, ok := scalars[f.typ]; ok {
		return scalar.schema(f)
	}
	if f.typ.Kind() == reflect.Map {
		return s.mapped(f)
	}
	var items object
	if scalar, ok := scalars[f.typ.Elem()]; ok {
		items = scalar.schema(f)
	} else {
		items = s.table(f.typ.Elem(), "")
	}
	out := object{{"type", "array"}, {"items", items}}
	if f.need {
		out = append(out, member{"minItems", 1})
	}
	if f.most > 0 {
		out = append(out, member{"maxItems", f.most})
	}
	return out
}

// mapped makes the schema of a table whose accepted keys all hold the same kind of table.
func (s *schemer) mapped(f *field) object {
	inner := f.typ.Elem().Elem()
	name := strings.ToLower(inner.Name())
	if !slices.ContainsFunc(s.definitions, func(d member) bool { return d.key == name }) {
		s.definitions = append(s.definitions, member{name, s.table(inner, s.words[f.text])})
	}
	var properties object
	for _, key := range f.keys {
		properties = append(properties, member{key, object{{"$ref", "#/definitions/" + name}}})
	}
	return object{{"type", "object"}, {"properties", properties}, {"additionalProperties", false}}
}

// builtInInkNames lists the ink classes that every shop has.
func builtInInkNames() []string {
	return words.Names(builtIn().Inks, func(x *job.Ink) string { return x.Name })
}
