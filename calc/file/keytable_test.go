package file

import (
	"flag"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"bladecard/calc/job"
	"bladecard/calc/unit"
	"bladecard/templates"
)

var update = flag.Bool("update", false, "write templates/keys.md anew")

// TestKeyTables holds templates/keys.md to the tables of every key that the decoder's tags give: value, what is
// accepted, what a key means that is left out, and what it is.
func TestKeyTables(t *testing.T) {
	english, err := templates.Language("en")
	if err != nil {
		t.Fatal(err)
	}
	var want strings.Builder
	want.WriteString("# Every key of the files\n\nGenerated from the tags that the program reads files by.\n")
	for _, kind := range Kinds() {
		typ, _ := kindOf(kind)
		k := keyTables{words: english}
		k.table("", typ)
		k.units()
		want.WriteString("\n## Every key of a " + kind + " file\n\n" + k.out.String())
	}
	path := filepath.Join("..", "..", "templates", "keys.md")
	if *update {
		if err := os.WriteFile(path, []byte(want.String()), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	have, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	got, wanted := strings.Split(strings.ReplaceAll(string(have), "\r\n", "\n"), "\n"), strings.Split(want.String(), "\n")
	for i, line := range wanted {
		if i >= len(got) || got[i] != line {
			t.Fatalf("%s:%d: not %q; run `go test ./calc/file -run KeyTables -update`", path, i+1, line)
		}
	}
	if len(got) > len(wanted) {
		t.Errorf("%s has %d lines, not %d", path, len(got), len(wanted))
	}
}

// shown says how a scalar is written in the column of values.
var shown = map[reflect.Type]func(f *field) string{
	reflect.TypeFor[string](): func(f *field) string {
		switch {
		case len(f.one) > 0 || f.form == "language":
			return "word"
		case forms[f.form].pattern != "":
			return sample("text", forms[f.form].examples...)
		}
		return "text"
	},
	reflect.TypeFor[bool](): func(*field) string { return "true or false" },
	reflect.TypeFor[int]():  func(*field) string { return "whole number" },
	reflect.TypeFor[float64](): func(f *field) string {
		if f.unit == "" {
			return "number"
		}
		return sample(measured(f.unit), f.exampleOr(unit.Example(f.unit)))
	},
	reflect.TypeFor[job.Range](): func(f *field) string {
		return sample(measured(f.unit)+" range", f.exampleOr(unit.RangeExample(f.unit)))
	},
	reflect.TypeFor[job.EOM]():       func(f *field) string { return sample("share or length", f.exampleOr(exampleEOM)) },
	reflect.TypeFor[job.Date]():      func(*field) string { return "day `" + exampleDay + "`" },
	reflect.TypeFor[job.FlashWish](): func(*field) string { return "true, false or `\"dry\"`" },
}

func sample(what string, texts ...string) string {
	return what + " `\"" + strings.Join(texts, "\"`, `\"") + "\"`"
}

// unitsOf are the units that a field kept in one of them is written in.
func unitsOf(u string) string {
	_, list, _ := strings.Cut(unit.Accepted(u), " is accepted, in ")
	return strings.ReplaceAll(list, " or ", ", ")
}

// measured is what a unit measures, "length".
func measured(u string) string {
	noun, _, _ := strings.Cut(unit.Accepted(u), " such as ")
	_, noun, _ = strings.Cut(noun, " ")
	return noun
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
		k.row(path, &f, besides[f.key])
	}
	for _, f := range fieldsOf(t) {
		inner, header, more := innerTable(join(path, f.key), &f)
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
func innerTable(path string, f *field) (inner reflect.Type, header, more string) {
	_, scalar := scalars[f.typ]
	switch t := f.typ; {
	case scalar:
	case t.Kind() == reflect.Struct:
		return t, "[" + path + "]", ""
	case t.Kind() == reflect.Slice && t.Elem().Kind() == reflect.Struct:
		return t.Elem(), "[[" + path + "]]", ""
	case t.Kind() == reflect.Map:
		return t.Elem().Elem(), "[" + path + ".USE]", ", USE one of " + strings.Join(f.keys, ", ")
	}
	return nil, "", ""
}

func (k *keyTables) row(path string, f *field, beside string) {
	var accepted []string
	add := func(format string, args ...any) { accepted = append(accepted, fmt.Sprintf(format, args...)) }
	switch {
	case len(f.one) > 0:
		add("%s", strings.Join(f.one, ", "))
	case f.form == "language":
		add("%s", strings.Join(templates.Languages(), ", "))
	case f.typ == reflect.TypeFor[job.EOM]():
		add("%s or %s", eomShares, eomLengths)
	case !math.IsInf(f.min, -1) || !math.IsInf(f.max, 1):
		add("%s", f.limits())
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
	cells := []string{"`" + f.key + "`", k.value(path, f), strings.Join(accepted, "; "), absent, k.words[f.text]}
	for i := range cells {
		cells[i] = strings.ReplaceAll(cells[i], "|", `\|`)
	}
	fmt.Fprintf(&k.out, "| %s |\n", strings.Join(cells, " | "))
}

// value says what a key holds, with a likely text where there is one.
func (k *keyTables) value(path string, f *field) string {
	if inner, header, _ := innerTable(join(path, f.key), f); inner != nil {
		if f.typ.Kind() == reflect.Slice {
			return "tables `" + header + "`"
		}
		return "table `" + header + "`"
	}
	switch {
	case f.typ == reflect.TypeFor[job.EOM]():
		k.use("share")
		k.use("um")
	case f.unit != "":
		k.use(f.unit)
	}
	if f.typ.Kind() == reflect.Slice {
		return "list, each " + shown[f.typ.Elem()](f)
	}
	return shown[f.typ](f)
}

// use remembers that a unit is written in the file.
func (k *keyTables) use(u string) {
	for _, have := range k.used {
		if measured(have) == measured(u) {
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
		fmt.Fprintf(&k.out, "| %s | %s%s |\n", measured(u), unitsOf(u), more)
	}
}
