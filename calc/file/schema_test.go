package file

import (
	"bytes"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"reflect"
	"regexp"
	"strings"
	"testing"
	"time"

	"github.com/BurntSushi/toml"
	"github.com/santhosh-tekuri/jsonschema/v6"

	"bladecard/calc/internal/words"
	"bladecard/calc/job"
)

// compiled is the schema of a kind of file, as an editor has it.
func compiled(t *testing.T, kind string) *jsonschema.Schema {
	t.Helper()
	src, err := Schema(kind, "en")
	if err != nil {
		t.Fatal(err)
	}
	return compile(t, src)
}

func compile(t *testing.T, src []byte) *jsonschema.Schema {
	t.Helper()
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(src))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	if err := c.AddResource("schema.json", doc); err != nil {
		t.Fatal(err)
	}
	s, err := c.Compile("schema.json")
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// plain turns the values of a TOML file into those of JSON, as editors do: a date is a text.
func plain(v any) any {
	switch v := v.(type) {
	case map[string]any:
		out := map[string]any{}
		for key, e := range v {
			out[key] = plain(e)
		}
		return out
	case []map[string]any:
		out := make([]any, len(v))
		for i, e := range v {
			out[i] = plain(e)
		}
		return out
	case []any:
		out := make([]any, len(v))
		for i, e := range v {
			out[i] = plain(e)
		}
		return out
	case time.Time:
		if v.Location().String() == "date-local" {
			return v.Format(time.DateOnly)
		}
		return v.Format(time.RFC3339)
	}
	return v
}

// both are the verdicts of decoder and schema on a file.
func both(t *testing.T, schema *jsonschema.Schema, kind, name string, src []byte) (byDecoder job.Errors, bySchema error) {
	t.Helper()
	var data map[string]any
	if err := toml.Unmarshal(src, &data); err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	return decode(kind, name, src), schema.Validate(plain(data))
}

func decode(kind, name string, src []byte) job.Errors {
	if kind == "job" {
		_, errs := DecodeJob(name, src)
		return errs
	}
	if strings.HasSuffix(name, "inks.toml") {
		_, errs := decodeShop(name, src, &job.Shop{})
		return errs
	}
	_, errs := DecodeShop(name, src)
	return errs
}

// TestSchemaIsDraft7: the schemas stand up to the metaschema of the draft that they name.
func TestSchemaIsDraft7(t *testing.T) {
	meta, err := jsonschema.NewCompiler().Compile("http://json-schema.org/draft-07/schema")
	if err != nil {
		t.Fatal(err)
	}
	for _, kind := range Kinds() {
		src, err := Schema(kind, "en")
		if err != nil {
			t.Fatal(err)
		}
		doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(src))
		if err != nil {
			t.Fatal(err)
		}
		if err := meta.Validate(doc); err != nil {
			t.Error(kind, err)
		}
		if named := doc.(map[string]any)["$schema"]; named != "http://json-schema.org/draft-07/schema#" {
			t.Errorf("%s: names the draft %v", kind, named)
		}
		if again, _ := Schema(kind, "en"); !bytes.Equal(src, again) {
			t.Errorf("%s: other bytes the second time", kind)
		}
	}
	doc := map[string]any{"type": "tabel"}
	if meta.Validate(doc) == nil {
		t.Error("the metaschema takes anything")
	}
	if _, err := Schema("ink", "en"); err == nil || !strings.Contains(err.Error(), "job or shop is accepted") {
		t.Error(err)
	}
}

// TestSamplesPassBoth: what ships passes the schema and the decoder.
func TestSamplesPassBoth(t *testing.T) {
	for kind, globs := range map[string][]string{
		"job":  {"../../samples/jobs/*.toml"},
		"shop": {"../../samples/*.toml", "../../templates/shop.toml", "../../templates/inks.toml"},
	} {
		schema := compiled(t, kind)
		n := 0
		for _, path := range glob(t, globs...) {
			src, err := os.ReadFile(path)
			if err != nil {
				t.Fatal(err)
			}
			n++
			byDecoder, bySchema := both(t, schema, kind, path, src)
			if bySchema != nil {
				t.Errorf("%s: the schema says %v", path, bySchema)
			}
			if byDecoder != nil {
				t.Errorf("%s: the decoder says %v", path, byDecoder)
			}
		}
		if n < 3 {
			t.Errorf("%d files of kind %s", n, kind)
		}
	}
}

// TestBadSamplesFailBoth: a file a fault that people make, found by the schema, so that the
// editor shows it, and by the decoder, as one error.
func TestBadSamplesFailBoth(t *testing.T) {
	total := 0
	for _, kind := range Kinds() {
		schema := compiled(t, kind)
		for _, path := range glob(t, "testdata/bad/"+kind+"-*.toml") {
			src, err := os.ReadFile(path)
			if err != nil {
				t.Fatal(err)
			}
			total++
			byDecoder, bySchema := both(t, schema, kind, path, src)
			if bySchema == nil {
				t.Errorf("%s: the schema takes it", path)
			}
			if len(byDecoder) == 0 || len(byDecoder) > 2 {
				t.Errorf("%s: the decoder says %v", path, byDecoder)
			}
		}
	}
	if total < 80 {
		t.Errorf("only %d bad samples", total)
	}
}

func glob(t *testing.T, patterns ...string) []string {
	t.Helper()
	var all []string
	for _, p := range patterns {
		paths, err := filepath.Glob(p)
		if err != nil || len(paths) == 0 {
			t.Fatalf("no file is %s: %v", p, err)
		}
		all = append(all, paths...)
	}
	return all
}

// TestDecoderOnly is the border: faults that a schema cannot tell and the decoder finds.
func TestDecoderOnly(t *testing.T) {
	schemas := map[string]*jsonschema.Schema{"job": compiled(t, "job"), "shop": compiled(t, "shop")}
	screen := func(line string) string { return "title = \"t\"\n[[location]]\n[[location.screen]]\n" + line }
	for _, c := range []struct{ what, kind, src, want string }{
		{"range of a quantity", "job", screen(`finest = "3 m"`), "out of range"},
		{"range of an emulsion", "job", screen(`eom = "500 %"`), "out of range"},
		{"range of an angle in quotes", "job", screen(`angle = "75 deg"`), "out of range"},
		{"ends of a range", "job", screen(`film = "45..7000 um"`), "out of range"},
		{"order of a range", "job", screen(`film = "70..45 um"`), "runs downward"},
		{"no opening in a mesh", "job", screen(`mesh = "305-90"`), "no opening"},
		{"count of a mesh", "job", screen(`mesh = "2000"`), "threads per inch"},
		{"whole number with a point", "job", screen(`strokes = 2.0`), "is written with a point"},
		{"day in quotes", "job", "due = \"2026-12-04\"\n" + screen(""), "is a text"},
		{"control character", "job", screen(`color = "re\u0007d"`), "control character"},
		{"finest above feature", "job", screen("feature = \"1 mm\"\nfinest = \"2 mm\""), "wider than the typical feature"},
		{"feature above the location", "job", "title = \"t\"\n[[location]]\nwidth = \"10 cm\"\nheight = \"10 cm\"\n[[location.screen]]\nfeature = \"20 cm\"", "wider than the location"},
		{"two of one name", "shop", "[[press]]\nname = \"a\"\nkind = \"manual\"\n[[press]]\nname = \"a\"\nkind = \"manual\"", "is taken by another"},
		{"layers of a layup", "shop", "[[blade]]\nlayup = \"65/90/65\"\nlayers = [\"3 mm\"]", "has 3 layers"},
		{"sum of layers", "shop", "[[blade]]\nlayup = \"70\"\nthickness = \"9 mm\"\nlayers = [\"3 mm\"]", "add up to"},
		{"opening above the pitch", "shop", "[[mesh]]\nmesh = \"305-40\"\nopening = \"90 um\"", "not smaller than the pitch"},
		{"fabric below the thread", "shop", "[[mesh]]\nmesh = \"305-40\"\nfabric = \"30 um\"", "thinner than the thread"},
		{"class like no other", "shop", "[[ink]]\nname = \"gold\"\nlike = \"silver\"", "is not known"},
		{"class like itself", "shop", "[[ink]]\nname = \"a\"\nlike = \"b\"\n[[ink]]\nname = \"b\"\nlike = \"a\"", "leads back"},
		{"class of its own without figures", "shop", "[[ink]]\nname = \"gold\"", "is missing"},
		{"cure above its top", "shop", "[[ink]]\nname = \"gold\"\nlike = \"plastisol\"\ncure = \"150..170 C\"\ncure-top = \"160 C\"", "below the top of the cure range"},
	} {
		byDecoder, bySchema := both(t, schemas[c.kind], c.kind, c.what, []byte(c.src))
		if bySchema != nil {
			t.Errorf("%s: the schema finds it too: move it to testdata/bad\n%v", c.what, bySchema)
		}
		if byDecoder == nil || !strings.Contains(byDecoder.Error(), c.want) {
			t.Errorf("%s: the decoder says %v; %q is wanted", c.what, byDecoder, c.want)
		}
	}
}

// A syntax error and what no parser takes never reach a schema; a comment that names the
// schema is a comment.
func TestSchemaComment(t *testing.T) {
	if _, errs := DecodeJob("j.toml", []byte("#:schema ./job.schema.json\ntitle = \"t\"\n[[location]]\n[[location.screen]]\n")); errs != nil {
		t.Error(errs)
	}
}

// values are what people write, right and wrong: each is put into each key.
var values = []any{
	"", " ", "text", "70", "65/90/65", "156", "156-64", "61/cm-64", "#f7f7f2", "#F7f", "20", "-5", "20 %", "-20 %", "150 C", "300 F", "12 in", "12in", `12"`,
	"30 cm", "25 um", "25 µm", "45..70 um", "45..70", "45 um..0.07 mm", "100..110 C", "30..60 s", "0.5..4 m/min", "45 lpi", "18 l/cm", "300 dpi", "22.5 deg", "22.5",
	"5 N/cm", "5 n/cm", "60 s", "1 min", "0.3 m/s", "1.2 kg/L", "10 kW/m2", "3 Pa.s", "50 Pa.s^n", "80 /mm", "5.5 MPa", "150 g", "2,5 mm", "1e3 mm", "en",
	"cotton", "Cotton", "solid", "new", "full-front", "yes", strings.Repeat("x", 200), strings.Repeat("x", 201), strings.Repeat("µ", 200),
	true, false, int64(0), int64(1), int64(5), int64(-1), int64(70), int64(1e9), 0.5, 1.5, -0.5, 22.5, 1e9,
	day20261204, time.Date(2026, 12, 4, 8, 0, 0, 0, time.UTC),
	[]any{}, []any{"70"}, []any{"30 cm"}, []any{"30 cm", int64(5)}, []any{int64(5)}, []any{"fume"}, []any{"5 MPa"}, []any{map[string]any{}}, many(257),
	map[string]any{}, map[string]any{"lines": "45 lpi"}, map[string]any{"solid": map[string]any{"film": "30..50 um"}}, map[string]any{"solid": map[string]any{"film": "30"}},
	map[string]any{"colour": "red"}, map[string]any{"kind": "paper"}, []map[string]any{{}}, []map[string]any{{"layup": "70"}},
	[]map[string]any{{"name": "a", "kind": "manual"}}, []map[string]any{{"screen": []map[string]any{{}}}},
}

var day20261204 = func() time.Time {
	var f struct{ D time.Time }
	if _, err := toml.Decode("D = 2026-12-04", &f); err != nil {
		panic(err)
	}
	return f.D
}()

func many(n int) []any {
	list := make([]any, n)
	for i := range list {
		list[i] = "30 cm"
	}
	return list
}

// onlyDecoder are the errors of a single value that a schema cannot tell.
var onlyDecoder = []string{"out of range", "runs downward", "has no opening", "threads per inch", "a thread of", "is a date or a time", "too long"}

// TestSchemaAgreesKeyByKey puts every value into every key of every table and compares the
// schema with the binder: what the binder takes passes, and what it refuses fails, but for the
// ranges that a schema cannot tell.
func TestSchemaAgreesKeyByKey(t *testing.T) {
	taken, refused := 0, 0
	eachField(t, func(typ reflect.Type, f field) {
		ft := typ.Field(f.index).Type
		where := typ.Name() + "." + f.key
		s := schemer{}
		root := object{{"properties", object{{"v", s.field(&f)}}}, {"definitions", s.definitions}}
		if s.definitions == nil {
			root = root[:1]
		}
		schema := compile(t, root.text())
		for _, raw := range values {
			var b binder
			slot{binder: &b, f: &f}.fill(reflect.New(ft).Elem(), raw)
			bySchema := schema.Validate(plain(map[string]any{"v": raw}))
			if len(b.errs) == 0 {
				taken++
			} else {
				refused++
			}
			switch {
			case len(b.errs) == 0 && bySchema != nil:
				t.Errorf("%s = %s: the decoder takes it, and the schema says %v", where, short(raw), bySchema)
			case len(b.errs) > 0 && bySchema == nil && !containsAny(b.errs.Error(), onlyDecoder):
				t.Errorf("%s = %s: the schema takes it, and the decoder says %v", where, short(raw), b.errs)
			}
		}
	})
	if taken < 500 || refused < 5000 {
		t.Errorf("%d values taken, %d refused", taken, refused)
	}
}

func short(v any) string { return words.Shorten(fmt.Sprintf("%#v", v), 60) }

func containsAny(text string, words []string) bool {
	for _, w := range words {
		if strings.Contains(text, w) {
			return true
		}
	}
	return false
}

// Every form of a text has a pattern, and each of its examples has the form.
func TestFormPatterns(t *testing.T) {
	for name, p := range forms {
		if name == "language" { // a list of words in the schema
			continue
		}
		if p.pattern == "" {
			t.Errorf("the form %q has no pattern", name)
		}
		for _, e := range p.examples {
			if wrong, _ := p.check(e); wrong != "" {
				t.Error(name, wrong)
			}
		}
	}
}

// TestSchemaIsStrict holds the schemas to what a widely used validator, ajv, refuses in its strict
// mode: a keyword or a format that it does not know, a value of two types, and a key that is
// required and not defined beside.
func TestSchemaIsStrict(t *testing.T) {
	known := []string{"$schema", "$ref", "title", "description", "default", "examples", "definitions", "type", "properties", "required",
		"additionalProperties", "dependencies", "items", "minItems", "maxItems", "pattern", "maxLength", "minimum", "maximum", "enum", "anyOf"}
	seen := 0
	var walk func(t *testing.T, at string, v any)
	walk = func(t *testing.T, at string, v any) {
		s, is := v.(map[string]any)
		if !is {
			return // a truth value
		}
		seen++
		for key, v := range s {
			if !words.Has(known, key) {
				t.Errorf("%s: the keyword %s", at, key)
			}
			switch v := v.(type) {
			case map[string]any:
				if words.Has([]string{"definitions", "properties", "dependencies"}, key) {
					for name, inner := range v {
						walk(t, at+"/"+name, inner)
					}
				} else {
					walk(t, at+"/"+key, v)
				}
			case []any:
				for _, e := range v {
					switch key {
					case "anyOf":
						walk(t, at+"/anyOf", e)
					case "type":
						t.Errorf("%s: has two types", at)
					case "required":
						if _, defined := s["properties"].(map[string]any)[e.(string)]; !defined {
							t.Errorf("%s: requires %s", at, e)
						}
					}
				}
			}
		}
	}
	for _, kind := range Kinds() {
		src, err := Schema(kind, "en")
		if err != nil {
			t.Fatal(err)
		}
		var doc any
		if err := json.Unmarshal(src, &doc); err != nil {
			t.Fatal(err)
		}
		walk(t, kind, doc)
	}
	if seen < 150 {
		t.Errorf("only %d schemas were walked", seen)
	}
}

// TestSchemaSpeaks: each language tells what keys mean, and nothing else differs. The built-in ink
// classes are listed, and others are accepted.
func TestSchemaSpeaks(t *testing.T) {
	for _, c := range []struct{ language, kind, want string }{
		{"en", "job", `"description": "width of the printed image (5 to 3000 mm)"`},
		{"es", "job", `"description": "ancho de la imagen impresa (5 a 3000 mm)"`},
		{"en", "shop", `"description": "a shop: its racks, presses, heat and inks, and what it has measured"`},
		{"es", "shop", `"description": "un taller: sus existencias, prensas, calor y tintas, y lo que ha medido"`},
		{"es", "job", `"plastisol white",`},
		{"es", "shop", `"plastisol white",`},
	} {
		src, err := Schema(c.kind, c.language)
		if err != nil {
			t.Fatal(err)
		}
		if !bytes.Contains(src, []byte(c.want)) {
			t.Errorf("%s %s: no %s", c.language, c.kind, c.want)
		}
		english, _ := Schema(c.kind, "en")
		if description := regexp.MustCompile(`"description": ".*"`); c.language != "en" &&
			!bytes.Equal(description.ReplaceAll(src, nil), description.ReplaceAll(english, nil)) {
			t.Errorf("%s %s: more than descriptions differs from English", c.language, c.kind)
		}
	}
	if _, err := Schema("job", "xx"); err == nil {
		t.Error("there is a schema in a language that does not ship")
	}
}

// Every default stands in the schema as the decoder reads it.
func TestSchemaDefaults(t *testing.T) {
	src, _ := Schema("shop", "en")
	var schema struct {
		Properties struct {
			Press struct {
				Items struct {
					Properties map[string]struct {
						Default  any
						Examples []string
					}
				}
			}
			Units struct{ Default string }
			Waste struct{ Description string }
		}
	}
	if err := json.Unmarshal(src, &schema); err != nil {
		t.Fatal(err)
	}
	press := schema.Properties.Press.Items.Properties
	if press["flood"].Default != true || press["load"].Default != "5 N/cm" || press["heads"].Default != nil || press["bore"].Examples[0] != "25 mm" {
		t.Errorf("%+v", press)
	}
	if d := schema.Properties.Units.Default; d != "metric" {
		t.Errorf("units: %v", d)
	}
	if d := schema.Properties.Waste.Description; d != "ink lost to test prints and rags, of what is printed (0 to 100 %)" {
		t.Error(d)
	}
}
