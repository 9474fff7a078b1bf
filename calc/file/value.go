package file

import (
	"fmt"
	"math"
	"reflect"
	"strconv"
	"strings"
	"time"
	"unicode"
	"unicode/utf8"

	"bladecard/calc/internal/words"
	"bladecard/calc/job"
	"bladecard/calc/unit"
)

// value fills one field from its value in the file. A value that is not accepted leaves the
// field as it was.
func (b *binder) value(dst reflect.Value, raw any, at *place, f *field, sc scope) {
	fail := func(wrong, accepted string) { b.fail(at.valuePos(), sc, f.key, wrong, accepted) }
	wrongType := func() { fail(describe(raw), b.accepted(dst.Type(), f)) }
	switch p := dst.Addr().Interface().(type) {
	case *string:
		if text, ok := b.text(raw, at, f, sc, b.accepted(dst.Type(), f)); ok {
			*p = text
		}
	case *bool:
		if v, ok := raw.(bool); ok {
			*p = v
		} else {
			wrongType()
		}
	case *int:
		v, ok := raw.(int64)
		if point, isFloat := raw.(float64); isFloat {
			fail(words.Number(point)+" is written with a point", b.accepted(dst.Type(), f))
		} else if !ok {
			wrongType()
		} else if !(float64(v) >= f.min && float64(v) <= f.max) {
			fail(fmt.Sprintf("%d is out of range", v), b.accepted(dst.Type(), f))
		} else {
			*p = int(v)
		}
	case *float64:
		if v, ok := b.quantity(raw, at, f, sc); ok {
			*p = v
		}
	case *job.Date:
		switch d, isDay, ok := day(raw); {
		case ok:
			*p = d
		case isDay:
			fail(fmt.Sprintf("%04d-%02d-%02d is out of range", d.Year, d.Month, d.Day), b.accepted(dst.Type(), f))
		default:
			wrongType()
		}
	case *job.FlashWish:
		switch {
		case raw == true:
			*p = job.FlashYes
		case raw == false:
			*p = job.FlashNo
		case raw == string(job.FlashDry):
			*p = job.FlashDry
		default:
			wrongType()
		}
	case *job.Range:
		b.span(p, raw, at, f, sc)
	case *job.EOM:
		b.eom(p, raw, at, f, sc)
	case *[]string:
		*p = bindList(b, raw, at, f, sc, dst.Type(), func(entry any, at *place) (string, bool) {
			return b.text(entry, at, f, sc, b.accepted(dst.Type(), f))
		})
	case *[]float64:
		*p = bindList(b, raw, at, f, sc, dst.Type(), func(entry any, at *place) (float64, bool) {
			return b.quantity(entry, at, f, sc)
		})
	default:
		switch dst.Kind() {
		case reflect.Pointer:
			v, before := reflect.New(dst.Type().Elem()), len(b.errs)
			b.value(v.Elem(), raw, at, f, sc)
			if len(b.errs) == before || v.Elem().Kind() == reflect.Struct && !v.Elem().IsZero() {
				dst.Set(v)
			}
		case reflect.Slice:
			b.tables(dst, raw, at, f, sc)
		case reflect.Map:
			b.mapped(dst, raw, at, f, sc)
		case reflect.Struct:
			data, ok := raw.(map[string]any)
			if !ok {
				wrongType()
				return
			}
			b.table(dst, data, at, scope{sc.where, sc.prefix + f.key + "."})
		default:
			panic("job: no way to read a " + dst.Type().String())
		}
	}
}

// bindList reads a list of texts or quantities.
func bindList[T any](b *binder, raw any, at *place, f *field, sc scope, t reflect.Type, read func(any, *place) (T, bool)) []T {
	entries, ok := raw.([]any)
	if !ok {
		b.fail(at.valuePos(), sc, f.key, describe(raw), b.accepted(t, f))
		return nil
	}
	if b.tooMany(len(entries), at, f, sc) {
		entries = entries[:f.most]
	}
	var out []T
	for i, entry := range entries {
		if v, ok := read(entry, at.item(i)); ok {
			out = append(out, v)
		}
	}
	return out
}

// text reads a text: folded to one line, of bounded length, of the accepted words and form.
func (b *binder) text(raw any, at *place, f *field, sc scope, accepted string) (string, bool) {
	fail := func(wrong, accepted string) (string, bool) {
		b.fail(at.valuePos(), sc, f.key, wrong, accepted)
		return "", false
	}
	text, ok := raw.(string)
	if !ok {
		return fail(describe(raw), accepted)
	}
	text = fold(text)
	for _, r := range text {
		if unicode.IsControl(r) {
			return fail(fmt.Sprintf("holds the control character %U", r), accepted)
		}
	}
	if f.form != "path" { // a path is not for paper
		var wrong string
		if text, wrong = printable(text); wrong != "" {
			return fail(wrong, acceptedText)
		}
	}
	if n := utf8.RuneCountInString(text); n > f.longest {
		return fail(fmt.Sprintf("has %d characters", n), fmt.Sprintf("at most %d are accepted", f.longest))
	}
	if f.need && text == "" {
		return fail("is empty", accepted)
	}
	if len(f.one) > 0 && !words.Has(f.one, text) {
		return fail(words.Quote(text)+" is not known", words.DidYouMean(text, f.one)+accepted)
	}
	if check := forms[f.form]; check != nil {
		if wrong, accepted := check(text); wrong != "" {
			return fail(wrong, accepted)
		}
	}
	return text, true
}

// fold joins the lines of a text and trims it.
func fold(text string) string {
	if strings.ContainsAny(text, "\n\r\t") {
		return strings.Join(strings.FieldsFunc(text, func(r rune) bool { return r == '\n' || r == '\r' || r == '\t' || r == ' ' }), " ")
	}
	return strings.Trim(text, " ")
}

// quantity reads a number, or a text with a unit, that must be finite and in range.
func (b *binder) quantity(raw any, at *place, f *field, sc scope) (float64, bool) {
	accepted := b.accepted(reflect.TypeFor[float64](), f)
	fail := func(wrong, accepted string) (float64, bool) {
		b.fail(at.valuePos(), sc, f.key, wrong, accepted)
		return 0, false
	}
	var v float64
	written := ""
	switch x := raw.(type) {
	case string:
		if f.unit == "" {
			return fail(describe(raw), accepted)
		}
		var err error
		if v, err = unit.Parse(x, f.unit); err != nil {
			return fail(words.WrongOf(err), accepted)
		}
		written = words.Quote(x)
	case int64:
		v, written = float64(x), strconv.FormatInt(x, 10)
	case float64:
		v, written = x, words.Number(x)
	default:
		return fail(describe(raw), accepted)
	}
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return fail(written+" is not a finite number", accepted)
	}
	if _, text := raw.(string); !text && f.unit != "" && !unit.Bare(f.unit) {
		return fail(written+" has no unit", accepted)
	}
	if !(v >= f.min && v <= f.max) {
		return fail(written+" is out of range", bounds(f))
	}
	return v, true
}

// span reads a range with a unit.
func (b *binder) span(dst *job.Range, raw any, at *place, f *field, sc scope) {
	fail := func(wrong, accepted string) { b.fail(at.valuePos(), sc, f.key, wrong, accepted) }
	text, ok := raw.(string)
	if !ok {
		fail(describe(raw), b.accepted(reflect.TypeFor[job.Range](), f))
		return
	}
	low, high, err := unit.ParseRange(text, f.unit)
	switch {
	case err != nil:
		fail(words.WrongOf(err), b.accepted(reflect.TypeFor[job.Range](), f))
	case !(low >= f.min && high <= f.max):
		fail(words.Quote(text)+" is out of range", bounds(f))
	default:
		*dst = job.Range{Low: low, High: high}
	}
}

// day reads a local date; whether it is of this century is ok.
func day(raw any) (d job.Date, isDay, ok bool) {
	t, isTime := raw.(time.Time)
	if !isTime || t.Location().String() != "date-local" { // the decoder's name for a date without time and zone
		return job.Date{}, false, false
	}
	y, m, n := t.Date()
	return job.Date{Year: y, Month: int(m), Day: n}, true, y >= 2000 && y <= 2099
}

// preset fills a field that the file leaves out from its default tag.
func (b *binder) preset(dst reflect.Value, f *field) {
	before := len(b.errs)
	b.value(dst, presetOf(dst.Type(), f), nil, f, scope{})
	if len(b.errs) != before {
		panic("file: the default of " + f.key + " is not accepted: " + f.preset)
	}
}

// presetOf is a default as the file writes it: a number, a truth value or a text.
func presetOf(t reflect.Type, f *field) any {
	if t.Kind() == reflect.Pointer {
		t = t.Elem()
	}
	var v any = f.preset
	var err error
	switch {
	case t.Kind() == reflect.Int:
		v, err = strconv.ParseInt(f.preset, 10, 64)
	case t.Kind() == reflect.Bool:
		v, err = strconv.ParseBool(f.preset)
	case t.Kind() == reflect.Float64 && f.unit == "":
		v, err = strconv.ParseFloat(f.preset, 64)
	}
	if err != nil {
		panic("file: the default of " + f.key + ": " + err.Error())
	}
	return v
}

// bounds is "5 to 3000 mm is accepted".
func bounds(f *field) string {
	low, high, u := limits(f)
	switch {
	case math.IsInf(f.max, 1):
		return low + u + " or more is accepted"
	case math.IsInf(f.min, -1):
		return high + u + " or less is accepted"
	}
	return low + " to " + high + u + " is accepted"
}

// limits are the figures of a range as a file writes them, and " mm" or nothing behind them.
func limits(f *field) (low, high, unit string) {
	switch f.unit {
	case "share":
		return words.Number(f.min * 100), words.Number(f.max * 100), " %"
	case "":
		return words.Number(f.min), words.Number(f.max), ""
	}
	return words.Number(f.min), words.Number(f.max), " " + f.unit
}

// accepted says in words what a field takes.
func (b *binder) accepted(t reflect.Type, f *field) string {
	if t.Kind() == reflect.Pointer {
		t = t.Elem()
	}
	switch {
	case t == reflect.TypeFor[job.Range]():
		return acceptedQuantity(unit.AcceptedRange(f.unit), f)
	case t == reflect.TypeFor[job.EOM]():
		return acceptedEOM
	case t == reflect.TypeFor[job.FlashWish]():
		return `true, false or "dry" is accepted`
	case t == reflect.TypeFor[job.Date]():
		return "a day of 2000 to 2099 without quotes, such as 2026-12-04, is accepted"
	case t == reflect.TypeFor[[]float64]():
		_, example, _ := strings.Cut(acceptedQuantity(unit.Accepted(f.unit), f), " such as ")
		return "a list of texts with unit, each such as " + example
	case len(f.one) > 0 && t.Kind() == reflect.Slice:
		return "a list of these is accepted: " + strings.Join(words.Quoted(f.one), ", ")
	case t == reflect.TypeFor[[]string]():
		return "a list of texts in quotes is accepted"
	case len(f.one) > 0:
		return words.List(words.Quoted(f.one)) + " is accepted"
	case t.Kind() == reflect.String:
		if check := forms[f.form]; check != nil {
			_, accepted := check("")
			return accepted
		}
		return "a text in quotes is accepted"
	case t.Kind() == reflect.Bool:
		return "true or false is accepted"
	case t.Kind() == reflect.Int:
		return "a whole number without quotes is accepted, " + strings.TrimSuffix(bounds(f), " is accepted")
	case t.Kind() == reflect.Float64 && f.unit != "":
		return acceptedQuantity(unit.Accepted(f.unit), f)
	case t.Kind() == reflect.Float64:
		return "a number without quotes is accepted, " + strings.TrimSuffix(bounds(f), " is accepted")
	case t.Kind() == reflect.Slice:
		return "one or more tables are accepted, each under a header [[...]] that ends in " + f.key
	case t.Kind() == reflect.Map:
		return "a table is accepted, with the keys " + words.List(f.keys)
	}
	return "a table is accepted, with the keys " + words.List(keysOf(fieldsOf(t)))
}

// acceptedQuantity puts the field's own example into what calc/unit accepts.
func acceptedQuantity(accepted string, f *field) string {
	if f.example == "" {
		return accepted
	}
	what, rest, _ := strings.Cut(accepted, " such as ")
	_, units, _ := strings.Cut(rest, " is accepted, ")
	return what + " such as " + strconv.Quote(f.example) + " is accepted, " + units
}

// describe says what a value is, when it is not of the accepted type.
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
