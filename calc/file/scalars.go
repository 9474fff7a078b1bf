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
	"bladecard/templates"
)

// scalar is a Go type that a file writes as a single value. The decoder reads it, errors say what is accepted,
// and the schema checks it, all from here.
type scalar struct {
	read     func(s slot, raw any) (v any, ok bool) // tells its slot what is wrong where ok is false
	accepted func(f *field) string
	schema   func(f *field) object
}

// scalars holds all of them. A pointer to one marks a key that may be left out; a list of them is written as a list.
var scalars map[reflect.Type]scalar

// The table is made here, since its readers refer to it where they say what is accepted.
func init() {
	scalars = map[reflect.Type]scalar{
		reflect.TypeFor[string]():        {readText, acceptText, textSchema},
		reflect.TypeFor[bool]():          {readBool, always("true or false is accepted"), typed("boolean")},
		reflect.TypeFor[int]():           {readInt, acceptNumber("a whole number"), typed("integer")},
		reflect.TypeFor[float64]():       {readQuantity, acceptQuantity, quantitySchema},
		reflect.TypeFor[job.Range]():     {readRange, acceptRange, rangeSchema},
		reflect.TypeFor[job.EOM]():       {readEOM, always(acceptedEOM), eomSchema},
		reflect.TypeFor[job.Date]():      {readDay, always("a day of 2000 to 2099 without quotes, such as " + exampleDay + ", is accepted"), daySchema},
		reflect.TypeFor[job.FlashWish](): {readFlash, always(`true, false or "dry" is accepted`), flashSchema},
	}
}

// always makes a function that says the same of each field.
func always(text string) func(*field) string { return func(*field) string { return text } }

// readText reads a text: folded to one line, of bounded length, of the accepted words and form.
func readText(s slot, raw any) (any, bool) {
	text, ok := raw.(string)
	if !ok {
		return s.wrongType(raw)
	}
	text = fold(text)
	for _, r := range text {
		if unicode.IsControl(r) {
			return s.fail(fmt.Sprintf("holds the control character %U", r), s.f.accepted())
		}
	}
	if s.f.form != "path" { // a path is not for paper
		var wrong string
		if text, wrong = printable(text); wrong != "" {
			return s.fail(wrong, acceptedText)
		}
	}
	if n := utf8.RuneCountInString(text); n > s.f.longest {
		return s.fail(fmt.Sprintf("has %d characters", n), fmt.Sprintf("at most %d are accepted", s.f.longest))
	}
	if s.f.need && text == "" {
		return s.fail("is empty", s.f.accepted())
	}
	if len(s.f.one) > 0 && !words.Has(s.f.one, text) {
		return s.fail(words.Quote(text)+" is not known", words.DidYouMean(text, s.f.one)+s.f.accepted())
	}
	if check := forms[s.f.form].check; check != nil {
		if wrong, accepted := check(text); wrong != "" {
			return s.fail(wrong, accepted)
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

func acceptText(f *field) string {
	if len(f.one) > 0 {
		return words.List(words.Quoted(f.one)) + " is accepted"
	}
	if check := forms[f.form].check; check != nil {
		_, accepted := check("")
		return accepted
	}
	return "a text in quotes is accepted"
}

func textSchema(f *field) object {
	out := object{{"type", "string"}}
	switch form := forms[f.form]; {
	case len(f.one) > 0:
		return append(out, member{"enum", f.one})
	case f.form == "language":
		return append(out, member{"enum", templates.Languages()})
	case f.form == "ink": // a shop may have classes of its own
		return object{{"anyOf", []object{{{"enum", builtInInkNames()}}, append(out, member{"maxLength", f.longest})}}}
	case form.pattern != "":
		return append(out, member{"pattern", form.pattern}, member{"maxLength", f.longest}, member{"examples", form.examples})
	case f.need:
		out = append(out, member{"pattern", `[^ \t\r\n]`})
	}
	return append(out, member{"maxLength", f.longest})
}

func readBool(s slot, raw any) (any, bool) {
	if v, ok := raw.(bool); ok {
		return v, true
	}
	return s.wrongType(raw)
}

func readInt(s slot, raw any) (any, bool) {
	switch v := raw.(type) {
	case float64:
		return s.fail(words.Number(v)+" is written with a point", s.f.accepted())
	case int64:
		if !s.f.holds(float64(v), float64(v)) {
			return s.fail(fmt.Sprintf("%d is out of range", v), s.f.accepted())
		}
		return int(v), true
	}
	return s.wrongType(raw)
}

func acceptNumber(what string) func(*field) string {
	return func(f *field) string { return what + " without quotes is accepted, " + f.limits() }
}

// typed makes the schema of a type of JSON, within the limits of the field.
func typed(name string) func(*field) object {
	return func(f *field) object {
		out := object{{"type", name}}
		if !math.IsInf(f.min, -1) {
			out = append(out, member{"minimum", f.min})
		}
		if !math.IsInf(f.max, 1) {
			out = append(out, member{"maximum", f.max})
		}
		return out
	}
}

// readQuantity reads a number, or a text with a unit, that must be finite and in range.
func readQuantity(s slot, raw any) (any, bool) {
	var v float64
	var written string
	text, isText := raw.(string)
	switch x := raw.(type) {
	case int64:
		v, written = float64(x), strconv.FormatInt(x, 10)
	case float64:
		v, written = x, words.Number(x)
	default:
		if !isText || s.f.unit == "" {
			return s.fail(describe(raw), acceptQuantity(s.f))
		}
		var err error
		if v, err = unit.Parse(text, s.f.unit); err != nil {
			return s.fail(unit.WrongOf(err), acceptQuantity(s.f))
		}
		written = words.Quote(text)
	}
	switch {
	case math.IsNaN(v) || math.IsInf(v, 0):
		return s.fail(written+" is not a finite number", acceptQuantity(s.f))
	case !isText && s.f.unit != "" && !unit.Bare(s.f.unit):
		return s.fail(written+" has no unit", acceptQuantity(s.f))
	case !s.f.holds(v, v):
		return s.fail(written+" is out of range", s.f.bounds())
	}
	return v, true
}

func acceptQuantity(f *field) string {
	if f.unit == "" {
		return acceptNumber("a number")(f)
	}
	return withExample(unit.Accepted(f.unit), f)
}

// withExample puts the field's own example into what calc/unit accepts.
func withExample(accepted string, f *field) string {
	if f.example == "" {
		return accepted
	}
	what, rest, _ := strings.Cut(accepted, " such as ")
	_, units, _ := strings.Cut(rest, " is accepted, ")
	return what + " such as " + strconv.Quote(f.example) + " is accepted, " + units
}

func quantitySchema(f *field) object {
	if f.unit == "" {
		return typed("number")(f)
	}
	text := unitSchema(unit.Pattern(!(f.min >= 0), f.unit), f.exampleOr(unit.Example(f.unit)))
	if unit.Bare(f.unit) {
		return object{{"anyOf", []object{typed("number")(f), text}}}
	}
	return text
}

// unitSchema makes the schema of a text with a unit, no longer than calc/unit reads.
func unitSchema(pattern, example string) object {
	return object{{"type", "string"}, {"pattern", pattern}, {"maxLength", unit.Longest}, {"examples", []string{example}}}
}

// readRange reads a range with a unit.
func readRange(s slot, raw any) (any, bool) {
	text, ok := raw.(string)
	if !ok {
		return s.wrongType(raw)
	}
	low, high, err := unit.ParseRange(text, s.f.unit)
	switch {
	case err != nil:
		return s.fail(unit.WrongOf(err), s.f.accepted())
	case !s.f.holds(low, high):
		return s.fail(words.Quote(text)+" is out of range", s.f.bounds())
	}
	return job.Range{Low: low, High: high}, true
}

func acceptRange(f *field) string { return withExample(unit.AcceptedRange(f.unit), f) }

func rangeSchema(f *field) object {
	return unitSchema(unit.RangePattern(!(f.min >= 0), f.unit), f.exampleOr(unit.RangeExample(f.unit)))
}

const (
	exampleEOM  = "20 %"
	eomShares   = "0.5 to 400 %"
	eomLengths  = "0.5 to 1000 um"
	acceptedEOM = `a share of the fabric thickness such as "` + exampleEOM + `", ` + eomShares + `, or a length such as "25 um", ` + eomLengths + `, is accepted`
)

// readEOM reads an emulsion over mesh: a share or a length. Single layers of 600 um are published
// for raised work; the upper ends are far enough above (common practice).
func readEOM(s slot, raw any) (any, bool) {
	switch raw.(type) {
	case int64, float64:
		return s.fail(fmt.Sprintf("%v has no unit", raw), acceptedEOM)
	}
	text, ok := raw.(string)
	if !ok {
		return s.wrongType(raw)
	}
	var eom job.EOM
	var err error
	if eom.Share, err = unit.Parse(text, "share"); err != nil {
		if eom.UM, err = unit.Parse(text, "um"); err != nil {
			return s.fail(unit.WrongOf(err), acceptedEOM)
		}
	}
	if !(eom.Share >= 0.005 && eom.Share <= 4) && !(eom.UM >= 0.5 && eom.UM <= 1000) {
		return s.fail(words.Quote(text)+" is out of range", acceptedEOM)
	}
	return eom, true
}

func eomSchema(f *field) object {
	return unitSchema(unit.Pattern(false, "share", "um"), f.exampleOr(exampleEOM))
}

const exampleDay = "2026-12-04"

// readDay reads a day without time and zone.
func readDay(s slot, raw any) (any, bool) {
	t, isTime := raw.(time.Time)
	if !isTime || t.Location().String() != "date-local" { // the decoder's name for a date alone
		return s.wrongType(raw)
	}
	y, m, n := t.Date()
	if y < 2000 || y > 2099 {
		return s.fail(fmt.Sprintf("%04d-%02d-%02d is out of range", y, m, n), s.f.accepted())
	}
	return job.Date{Year: y, Month: int(m), Day: n}, true
}

func daySchema(*field) object {
	return object{{"type", "string"}, {"pattern", `^20[0-9]{2}-[0-9]{2}-[0-9]{2}$`}, {"examples", []string{exampleDay}}}
}

func readFlash(s slot, raw any) (any, bool) {
	switch raw {
	case true:
		return job.FlashYes, true
	case false:
		return job.FlashNo, true
	case string(job.FlashDry):
		return job.FlashDry, true
	}
	return s.wrongType(raw)
}

func flashSchema(*field) object { return object{{"enum", []any{true, false, string(job.FlashDry)}}} }
