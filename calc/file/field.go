package file

import (
	"cmp"
	"math"
	"reflect"
	"strconv"
	"strings"
	"sync"

	"bladecard/calc/internal/words"
)

// field is a key of a table: a struct field with its tags read. See Job for the tags.
type field struct {
	index    int
	typ      reflect.Type // of the value: without a pointer
	key      string
	unit     string
	min, max float64 // -Inf and +Inf where the tags give none
	one      []string
	keys     []string
	form     string
	most     int
	longest  int // characters of a text
	preset   string
	example  string
	excludes string
	need     bool
	text     string // key of the words that say what it means, in every language of templates
}

var fieldCache sync.Map // reflect.Type to []field

// fieldsOf reads the tags of a struct type, in the order of the struct.
func fieldsOf(t reflect.Type) []field {
	if got, ok := fieldCache.Load(t); ok {
		return got.([]field)
	}
	var list []field
	for i := range t.NumField() {
		tag, typ := t.Field(i).Tag, t.Field(i).Type
		key := tag.Get("toml")
		if key == "" || key == "-" {
			continue
		}
		if typ.Kind() == reflect.Pointer {
			typ = typ.Elem()
		}
		f := field{index: i, typ: typ, key: key, unit: tag.Get("unit"), min: math.Inf(-1), max: math.Inf(1),
			one: strings.Fields(tag.Get("one")), keys: strings.Fields(tag.Get("keys")), form: tag.Get("form"),
			preset: tag.Get("default"), example: cmp.Or(tag.Get("example"), tag.Get("default")), excludes: tag.Get("excludes"), need: tag.Get("need") == "true",
			text: "key." + strings.ToLower(t.Name()) + "." + key}
		f.min = tagNumber(tag, "min", f.min)
		f.max = tagNumber(tag, "max", f.max)
		f.most = int(tagNumber(tag, "most", 0))
		f.longest = int(tagNumber(tag, "longest", maxText))
		list = append(list, f)
	}
	fieldCache.Store(t, list)
	return list
}

// tagNumber reads a number of a tag; a tag that is no number is a bug of the types.
func tagNumber(tag reflect.StructTag, name string, absent float64) float64 {
	text, ok := tag.Lookup(name)
	if !ok {
		return absent
	}
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		panic("file: tag " + name + " of " + tag.Get("toml") + ": " + err.Error())
	}
	return v
}

func keysOf(fields []field) []string {
	keys := make([]string, len(fields))
	for i, f := range fields {
		keys[i] = f.key
	}
	return keys
}

// holds tells whether the field accepts everything from low to high.
func (f *field) holds(low, high float64) bool { return low >= f.min && high <= f.max }

// bounds says which range is accepted: "5 to 3000 mm is accepted".
func (f *field) bounds() string { return f.limits() + " is accepted" }

// limits writes the range alone: "5 to 3000 mm".
func (f *field) limits() string {
	low, high, u := f.ends()
	switch {
	case math.IsInf(f.max, 1):
		return low + u + " or more"
	case math.IsInf(f.min, -1):
		return high + u + " or less"
	}
	return low + " to " + high + u
}

// ends writes both ends of the range as a file does, and the unit behind a blank; it is empty where there is none.
func (f *field) ends() (low, high, unit string) {
	switch f.unit {
	case "share":
		return words.Number(f.min * 100), words.Number(f.max * 100), " %"
	case "":
		return words.Number(f.min), words.Number(f.max), ""
	}
	return words.Number(f.min), words.Number(f.max), " " + f.unit
}

// exampleOr returns the example of the field's own tags, or the given one where they have none.
func (f *field) exampleOr(other string) string { return cmp.Or(f.example, other) }
