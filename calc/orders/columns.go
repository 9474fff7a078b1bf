package orders

import (
	"reflect"
	"strings"

	"bladecard/calc/internal/words"
	"bladecard/calc/job"
)

// level is the table of a job file that a column belongs to.
type level int

const (
	ofJob level = iota
	ofGarment
	ofStock
	ofLocation
	ofScreen
	ofHalftone
	ofRow // template and like: no keys of a job file
)

// The prefixes of the headers, and the tables that they stand for.
var levels = map[level]struct {
	prefix, table string
	of            reflect.Type
}{
	ofJob:      {"", "", reflect.TypeFor[job.Job]()},
	ofGarment:  {"garment.", "[garment]", reflect.TypeFor[job.Garment]()},
	ofStock:    {"stock.", "[stock]", reflect.TypeFor[job.Stock]()},
	ofLocation: {"location.", "[[location]]", reflect.TypeFor[job.Location]()},
	ofScreen:   {"screen.", "[[location.screen]]", reflect.TypeFor[job.Screen]()},
	ofHalftone: {"screen.halftone.", "[location.screen.halftone]", reflect.TypeFor[job.Halftone]()},
}

// template is the column that names a row to take from, and like the one that names the template of a row.
const template, like = "template", "like"

// column is one header of the file: which key it fills, and the unit of numbers in it.
type column struct {
	level
	key, unit string
	text      bool // its cells are texts, whatever they look like
	name      string
}

// known lists the headers that are accepted, in the order of a job file.
func known() []column {
	out := []column{{level: ofRow, name: template}, {level: ofRow, name: like}}
	for l := ofJob; l < ofRow; l++ {
		t := levels[l].of
		for i := range t.NumField() {
			f := t.Field(i)
			key := f.Tag.Get("toml")
			kind := f.Type.Kind()
			if kind == reflect.Pointer {
				kind = f.Type.Elem().Kind()
			}
			table := kind == reflect.Slice || kind == reflect.Struct && f.Type != reflect.TypeFor[job.Date]() && f.Type != reflect.TypeFor[*job.EOM]() && f.Type != reflect.TypeFor[*job.Range]()
			if key == "" || key == "-" || table {
				continue
			}
			text := kind == reflect.String && f.Type != reflect.TypeFor[job.FlashWish]()
			out = append(out, column{level: l, key: key, text: text, name: levels[l].prefix + key})
		}
	}
	return out
}

// find reads a header: a key, and the unit of its numbers in brackets where it has one.
func find(head string, all []column) (column, string) {
	name, rest, hasUnit := strings.Cut(strings.TrimSpace(head), "(")
	name = strings.ToLower(strings.TrimSpace(name))
	var names []string
	for _, c := range all {
		if c.name == name {
			if hasUnit {
				c.unit = strings.TrimSpace(strings.TrimSuffix(strings.TrimSpace(rest), ")"))
			}
			return c, ""
		}
		names = append(names, c.name)
	}
	return column{}, words.InList(name, names, "the columns are")
}
