package file

import (
	"math"
	"reflect"
	"strings"

	"bladecard/calc/internal/words"
	"bladecard/calc/job"
	"bladecard/calc/unit"
	"bladecard/templates"
)

// Kinds lists the kinds of file that Schema and KeyTables know: job and shop.
func Kinds() []string { return []string{"job", "shop"} }

// kindOf is the struct that a kind of file is read into.
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

// table is the schema of a struct.
func (s *schemer) table(t reflect.Type, doc string) object {
	out := object{}
	if doc != "" {
		out = append(out, member{"description", doc})
	}
	var properties object
	var required []string
	var clashes object
	for _, f := range fieldsOf(t) {
		properties = append(properties, member{f.key, s.field(t.Field(f.index).Type, &f)})
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

// field is the schema of a key with what its tags say beside the value.
func (s *schemer) field(t reflect.Type, f *field) object {
	if t.Kind() == reflect.Pointer {
		t = t.Elem()
	}
	if t.Kind() == reflect.Struct && !isScalar(t) {
		return s.table(t, s.words[f.text])
	}
	doc := s.words[f.text]
	if f.unit != "" && !math.IsInf(f.min, -1) && !math.IsInf(f.max, 1) {
		low, high, u := limits(f)
		doc = strings.NewReplacer("{what}", doc, "{low}", low, "{high}", high+u).Replace(s.words["key.range"])
	}
	out := append(object{{"description", doc}}, s.value(t, f)...)
	if f.preset != "" {
		out = append(out, member{"default", presetOf(t, f)})
	}
	return out
}

// value is the schema of a value.
func (s *schemer) value(t reflect.Type, f *field) object {
	switch t {
	case reflect.TypeFor[job.Date]():
		return object{{"type", "string"}, {"pattern", `^20[0-9]{2}-[0-9]{2}-[0-9]{2}$`}, {"examples", []string{exampleDay}}}
	case reflect.TypeFor[job.FlashWish]():
		return object{{"enum", []any{true, false, string(job.FlashDry)}}}
	case reflect.TypeFor[job.Range]():
		return quantityText(unit.RangePattern(!(f.min >= 0), f.unit), exampleOf(t, f))
	case reflect.TypeFor[job.EOM]():
		return quantityText(unit.Pattern(false, "share", "um"), exampleOf(t, f))
	}
	switch t.Kind() {
	case reflect.String:
		return textSchema(f)
	case reflect.Bool:
		return object{{"type", "boolean"}}
	case reflect.Int:
		return append(object{{"type", "integer"}}, numberLimits(f)...)
	case reflect.Float64:
		if f.unit == "" {
			return append(object{{"type", "number"}}, numberLimits(f)...)
		}
		text := quantityText(unit.Pattern(!(f.min >= 0), f.unit), exampleOf(t, f))
		if unit.Bare(f.unit) {
			return object{{"anyOf", []object{append(object{{"type", "number"}}, numberLimits(f)...), text}}}
		}
		return text
	case reflect.Slice:
		var items object
		if t.Elem().Kind() == reflect.Struct {
			items = s.table(t.Elem(), "")
		} else {
			items = s.value(t.Elem(), f)
		}
		out := object{{"type", "array"}, {"items", items}}
		if f.need {
			out = append(out, member{"minItems", 1})
		}
		if f.most > 0 {
			out = append(out, member{"maxItems", f.most})
		}
		return out
	case reflect.Map:
		return s.mapped(t, f)
	}
	panic("job: no schema for a " + t.String())
}

// mapped is the schema of a table with accepted keys and the same table under each.
func (s *schemer) mapped(t reflect.Type, f *field) object {
	inner := t.Elem().Elem()
	name := strings.ToLower(inner.Name())
	if !s.defined(name) {
		s.definitions = append(s.definitions, member{name, s.table(inner, s.words[f.text])})
	}
	var properties object
	for _, key := range f.keys {
		properties = append(properties, member{key, object{{"$ref", "#/definitions/" + name}}})
	}
	return object{{"type", "object"}, {"properties", properties}, {"additionalProperties", false}}
}

func (s *schemer) defined(name string) bool {
	for _, d := range s.definitions {
		if d.key == name {
			return true
		}
	}
	return false
}

// isScalar tells whether a struct is written as a single value.
func isScalar(t reflect.Type) bool {
	return t == reflect.TypeFor[job.Range]() || t == reflect.TypeFor[job.EOM]() || t == reflect.TypeFor[job.Date]()
}

// quantityText is a text with a unit. The longest text is that of calc/unit.
func quantityText(pattern, example string) object {
	return object{{"type", "string"}, {"pattern", pattern}, {"maxLength", unit.Longest}, {"examples", []string{example}}}
}

// textSchema is a text: one of some words, of a form, or free.
func textSchema(f *field) object {
	out := object{{"type", "string"}}
	switch {
	case len(f.one) > 0:
		return append(out, member{"enum", f.one})
	case f.form == "language":
		return append(out, member{"enum", templates.Languages()})
	case f.form == "ink": // a shop may have classes of its own
		return object{{"anyOf", []object{{{"enum", builtInInkNames()}}, append(out, member{"maxLength", f.longest})}}}
	case formPatterns[f.form].pattern != "":
		form := formPatterns[f.form]
		return append(out, member{"pattern", form.pattern}, member{"maxLength", f.longest}, member{"examples", form.examples})
	case f.need:
		out = append(out, member{"pattern", `[^ \t\r\n]`})
	}
	return append(out, member{"maxLength", f.longest})
}

func numberLimits(f *field) object {
	var out object
	if !math.IsInf(f.min, -1) {
		out = append(out, member{"minimum", f.min})
	}
	if !math.IsInf(f.max, 1) {
		out = append(out, member{"maximum", f.max})
	}
	return out
}

// builtInInkNames are the ink classes that every shop has.
func builtInInkNames() []string {
	return words.Names(builtIn().Inks, func(x *job.Ink) string { return x.Name })
}

const exampleDay = "2026-12-04"

// exampleOf is a likely text of a value with a unit.
func exampleOf(t reflect.Type, f *field) string {
	switch {
	case f.example != "":
		return f.example
	case t == reflect.TypeFor[job.Range]():
		return unit.RangeExample(f.unit)
	case t == reflect.TypeFor[job.EOM]():
		return "20 %"
	}
	return unit.Example(f.unit)
}
