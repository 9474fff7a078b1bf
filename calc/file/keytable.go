package file

import (
	"fmt"
	"math"
	"reflect"
	"strings"

	"bladecard/calc/job"
	"bladecard/calc/unit"
	"bladecard/templates"
)

// KeyTables returns every key of a kind of file, job or shop, as tables in Markdown, one for
// each table of the file: value, what is accepted, what a key means that is left out, and what
// it is. The units come last. All of it is generated from the tags that the decoder reads files
// by (see Job). The error is a *unit.Error, for another kind.
func KeyTables(kind string) (string, error) {
	t, err := kindOf(kind)
	if err != nil {
		return "", err
	}
	w, err := templates.Language("en")
	if err != nil {
		return "", err
	}
	k := keyTables{words: w}
	k.table("", t)
	k.units()
	return k.out.String(), nil
}

type keyTables struct {
	words templates.Words
	out   strings.Builder
	used  []string // units of fields, one of each kind
}

// table writes the table of a struct, then those of the tables in it.
func (k *keyTables) table(path string, t reflect.Type) {
	fmt.Fprint(&k.out, "| key | value | accepted | left out | what it is |\n| --- | --- | --- | --- | --- |\n")
	besides := map[string]string{} // what may not stand beside a key
	for _, f := range fieldsOf(t) {
		if f.excludes != "" {
			besides[f.key], besides[f.excludes] = f.excludes, f.key
		}
	}
	for _, f := range fieldsOf(t) {
		k.row(path, t.Field(f.index).Type, &f, besides[f.key])
	}
	for _, f := range fieldsOf(t) {
		inner, header, more := innerTable(join(path, f.key), t.Field(f.index).Type, &f)
		if inner == nil {
			continue
		}
		fmt.Fprintf(&k.out, "\n`%s`: %s%s\n\n", header, k.words[f.text], more)
		k.table(join(path, f.key), inner)
	}
}

func join(path, key string) string {
	if path == "" {
		return key
	}
	return path + "." + key
}

// innerTable is the struct that a key holds, with the header of its table in a file and what is
// to be said of the header; nil for a value.
func innerTable(path string, t reflect.Type, f *field) (inner reflect.Type, header, more string) {
	if t.Kind() == reflect.Pointer {
		t = t.Elem()
	}
	switch {
	case t.Kind() == reflect.Struct && !isScalar(t):
		return t, "[" + path + "]", ""
	case t.Kind() == reflect.Slice && t.Elem().Kind() == reflect.Struct:
		return t.Elem(), "[[" + path + "]]", ""
	case t.Kind() == reflect.Map:
		return t.Elem().Elem(), "[" + path + ".USE]", ", USE one of " + strings.Join(f.keys, ", ")
	}
	return nil, "", ""
}

func (k *keyTables) row(path string, t reflect.Type, f *field, beside string) {
	if t.Kind() == reflect.Pointer {
		t = t.Elem()
	}
	var accepted []string
	add := func(format string, args ...any) { accepted = append(accepted, fmt.Sprintf(format, args...)) }
	switch {
	case len(f.one) > 0:
		add("%s", strings.Join(f.one, ", "))
	case f.form == "language":
		add("%s", strings.Join(templates.Languages(), ", "))
	case t == reflect.TypeFor[job.EOM]():
		add("%s or %s", eomShares, eomLengths)
	case !math.IsInf(f.min, -1) || !math.IsInf(f.max, 1):
		add("%s", strings.TrimSuffix(bounds(f), " is accepted"))
	}
	switch {
	case f.most > 0 && f.need:
		add("1 to %d of them", f.most)
	case f.most > 0:
		add("at most %d of them", f.most)
	case f.longest < maxText:
		add("at most %d characters", f.longest)
	}
	if beside != "" {
		add("not beside `%s`", beside)
	}
	absent := ""
	if f.need {
		absent = "needed"
	} else if f.preset != "" {
		absent = "`" + f.preset + "`"
	}
	cells := []string{"`" + f.key + "`", k.value(path, t, f), strings.Join(accepted, "; "), absent, k.words[f.text]}
	for i := range cells {
		cells[i] = strings.ReplaceAll(cells[i], "|", `\|`)
	}
	fmt.Fprintf(&k.out, "| %s |\n", strings.Join(cells, " | "))
}

// value says what a key holds, with a likely text where there is one.
func (k *keyTables) value(path string, t reflect.Type, f *field) string {
	if inner, header, _ := innerTable(join(path, f.key), t, f); inner != nil {
		if t.Kind() == reflect.Slice {
			return "tables `" + header + "`"
		}
		return "table `" + header + "`"
	}
	if t.Kind() == reflect.Slice {
		return "list, each " + k.value(path, t.Elem(), f)
	}
	such := func(what, example string) string { return what + " `\"" + example + "\"`" }
	switch {
	case t == reflect.TypeFor[job.FlashWish]():
		return "true, false or `\"dry\"`"
	case t == reflect.TypeFor[job.Date]():
		return "day `" + exampleDay + "`"
	case t == reflect.TypeFor[job.EOM]():
		k.use("share")
		k.use("um")
		return such("share or length", exampleOf(t, f))
	case t == reflect.TypeFor[job.Range]():
		k.use(f.unit)
		return such(unit.Kind(f.unit)+" range", exampleOf(t, f))
	case t.Kind() == reflect.String && (len(f.one) > 0 || f.form == "language"):
		return "word"
	case t.Kind() == reflect.String && formPatterns[f.form].pattern != "":
		return such("text", strings.Join(formPatterns[f.form].examples, "\"`, `\""))
	case t.Kind() == reflect.String:
		return "text"
	case t.Kind() == reflect.Bool:
		return "true or false"
	case t.Kind() == reflect.Int:
		return "whole number"
	case f.unit == "":
		return "number"
	}
	k.use(f.unit)
	return such(unit.Kind(f.unit), exampleOf(t, f))
}

// use remembers that a unit is written in the file.
func (k *keyTables) use(u string) {
	for _, have := range k.used {
		if unit.Kind(have) == unit.Kind(u) {
			return
		}
	}
	k.used = append(k.used, u)
}

func (k *keyTables) units() {
	fmt.Fprintf(&k.out, "\nA quantity is a text with a number and a unit, a range two numbers, two points and a unit. A text has at most %d characters.\n\n", maxText)
	fmt.Fprint(&k.out, "| quantity | units |\n| --- | --- |\n")
	for _, u := range k.used {
		more := ""
		if unit.Bare(u) {
			more = ", or a number alone"
		}
		fmt.Fprintf(&k.out, "| %s | %s%s |\n", unit.Kind(u), strings.Join(unit.Units(u), ", "), more)
	}
}
