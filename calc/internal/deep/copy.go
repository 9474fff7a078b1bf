package deep

import "reflect"

// Value copies a value with all that it points to.
func Value(v reflect.Value) reflect.Value {
	switch v.Kind() {
	case reflect.Pointer:
		if v.IsNil() {
			return v
		}
		c := reflect.New(v.Type().Elem())
		c.Elem().Set(Value(v.Elem()))
		return c
	case reflect.Struct:
		c := reflect.New(v.Type()).Elem()
		c.Set(v)
		for i := range v.NumField() {
			if c.Field(i).CanSet() {
				c.Field(i).Set(Value(v.Field(i)))
			}
		}
		return c
	case reflect.Slice:
		if v.IsNil() {
			return v
		}
		c := reflect.MakeSlice(v.Type(), v.Len(), v.Len())
		for i := range v.Len() {
			c.Index(i).Set(Value(v.Index(i)))
		}
		return c
	case reflect.Map:
		if v.IsNil() {
			return v
		}
		c := reflect.MakeMap(v.Type())
		for it := v.MapRange(); it.Next(); {
			c.SetMapIndex(it.Key(), Value(it.Value()))
		}
		return c
	}
	return v
}

// Of copies what p points to, with all that it points to in turn.
func Of[T any](p *T) *T {
	c := Value(reflect.ValueOf(p).Elem()).Interface().(T)
	return &c
}
