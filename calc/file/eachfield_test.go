package file

import (
	"reflect"
	"testing"

	"bladecard/calc/job"
)

// eachField hands every key of both kinds of file to visit, once for each table that has it.
func eachField(t *testing.T, visit func(table reflect.Type, f field)) {
	t.Helper()
	seen := map[reflect.Type]bool{}
	var walk func(typ reflect.Type)
	walk = func(typ reflect.Type) {
		switch typ.Kind() {
		case reflect.Pointer, reflect.Slice, reflect.Map:
			walk(typ.Elem())
			return
		case reflect.Struct:
		default:
			return
		}
		if seen[typ] || len(fieldsOf(typ)) == 0 {
			return
		}
		seen[typ] = true
		for _, f := range fieldsOf(typ) {
			visit(typ, f)
			walk(f.typ)
		}
	}
	walk(reflect.TypeFor[job.Job]())
	walk(reflect.TypeFor[job.Shop]())
	if len(seen) != 16 {
		t.Errorf("%d tables were walked", len(seen))
	}
}
