package file

import (
	"reflect"
	"regexp"
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

// scope says in words where a table stands, for errors: location "full front", screen 2, and the tables inside.
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

// table fills a struct from a table of the file, key by key.
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
			slot{b, f, at.kid(f.key), sc}.fill(dst.Field(f.index), raw)
		case f.need:
			b.fail(at.valuePos(), sc, f.key, "is missing", f.accepted())
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
		hint := ""
		if near := words.Nearest(key, keys); strings.EqualFold(near, key) && near != "" {
			hint = "keys are written in small letters: " + near + ". "
		} else if near != "" {
			hint = "did you mean " + near + "? "
		}
		b.fail(at.kid(key).keyPos(), sc, words.Shorten(keyText(key), 40), "is not a key of this table", hint+"accepted are "+words.List(keys))
	}
}

var bareKey = regexp.MustCompile(`^[A-Za-z0-9_-]+$`)

// keyText writes a key as the file does.
func keyText(key string) string {
	if bareKey.MatchString(key) {
		return key
	}
	return strconv.Quote(key)
}
