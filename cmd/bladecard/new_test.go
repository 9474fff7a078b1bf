package main

import (
	"bytes"
	"encoding/json"
	"path/filepath"
	"regexp"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/BurntSushi/toml"
	"github.com/santhosh-tekuri/jsonschema/v6"

	"bladecard/calc/file"
	"bladecard/templates"
)

var (
	keyAside   = regexp.MustCompile(`^#[a-z-]+ = `)
	tableAside = regexp.MustCompile(`^#\[`)
)

// uncommented are the variants of a starter file: each line of a key that is commented out is
// taken in by itself, a commented table with all its keys.
func uncommented(src string) []string {
	lines := strings.SplitAfter(src, "\n")
	var out []string
	for i := 0; i < len(lines); i++ {
		end := i
		switch {
		case keyAside.MatchString(lines[i]):
			end = i + 1
		case tableAside.MatchString(lines[i]):
			for end = i + 1; end < len(lines) && keyAside.MatchString(lines[end]); end++ {
			}
		default:
			continue
		}
		variant := append([]string(nil), lines...)
		for n := i; n < end; n++ {
			variant[n] = strings.TrimPrefix(lines[n], "#")
		}
		out = append(out, strings.Join(variant, ""))
		i = end - 1
	}
	return out
}

// TestStartersPass: the starter files of every language pass the schema and the whole
// computation, as they are, without a warning, and with each commented key taken in.
func TestStartersPass(t *testing.T) {
	t.Parallel()
	for _, lang := range templates.Languages() {
		text := map[string]string{}
		for _, kind := range file.Kinds() {
			src, err := templates.Starter(lang, kind)
			if err != nil {
				t.Fatal(err)
			}
			text[kind] = string(src)
		}
		checkStarter(t, lang, text["job"], text["shop"], true)
		n := 0
		for _, variant := range uncommented(text["job"]) {
			n++
			checkStarter(t, lang, variant, text["shop"], false)
		}
		for _, variant := range uncommented(text["shop"]) {
			n++
			checkStarter(t, lang, text["job"], variant, false)
		}
		if n < 27 {
			t.Errorf("%s: only %d keys are commented out", lang, n)
		}
	}
	if _, err := templates.Starter("xx", "job"); err == nil {
		t.Error("there is a starter in a language that does not ship")
	}
}

// checkStarter runs both files through their schemas and through check.
func checkStarter(t *testing.T, lang, jobText, shopText string, silent bool) {
	t.Helper()
	dir := t.TempDir()
	for kind, text := range map[string]string{"job": jobText, "shop": shopText} {
		if first, _, _ := strings.Cut(text, "\n"); first != "#:schema ./"+kind+".schema.json" {
			t.Errorf("%s %s: the first line is %q", lang, kind, first)
		}
		if err := bySchema(kind, text); err != nil {
			t.Errorf("%s %s: %v\n%s", lang, kind, err, text)
		}
		write(t, filepath.Join(dir, kind+".toml"), text)
	}
	write(t, filepath.Join(dir, "logo.png"), string(content(t, "../../samples/logo.png"))) // which a line of the shop names
	var out, errs bytes.Buffer
	code := run([]string{"check", "--lang", "en", filepath.Join(dir, "job.toml")}, nil, &out, &errs)
	if code != exitDone || silent && !strings.HasSuffix(out.String(), ": no errors, 0 warnings\n") {
		t.Errorf("%s: exit code %d\n%s%s", lang, code, out.String(), errs.String())
	}
}

// bySchema is what an editor finds in a file.
func bySchema(kind, text string) error {
	s, err := schemaOf(kind)
	if err != nil {
		return err
	}
	var data map[string]any
	if err := toml.Unmarshal([]byte(text), &data); err != nil {
		return err
	}
	if day, ok := data["due"].(time.Time); ok {
		data["due"] = day.Format(time.DateOnly)
	}
	asJSON, err := json.Marshal(data)
	if err != nil {
		return err
	}
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(asJSON))
	if err != nil {
		return err
	}
	return s.Validate(doc)
}

// compiled holds the schemas that were compiled, by kind.
var compiled sync.Map

// schemaOf is the schema of a kind of file, compiled once.
func schemaOf(kind string) (*jsonschema.Schema, error) {
	if s, has := compiled.Load(kind); has {
		return s.(*jsonschema.Schema), nil
	}
	src, err := file.Schema(kind, "en")
	if err != nil {
		return nil, err
	}
	schema, err := jsonschema.UnmarshalJSON(bytes.NewReader(src))
	if err != nil {
		return nil, err
	}
	c := jsonschema.NewCompiler()
	if err := c.AddResource("schema.json", schema); err != nil {
		return nil, err
	}
	s, err := c.Compile("schema.json")
	if err == nil {
		compiled.Store(kind, s)
	}
	return s, err
}

// The starters of all languages hold the same keys, in the same order, commented or not.
func TestStartersHoldTheSameKeys(t *testing.T) {
	t.Parallel()
	key := regexp.MustCompile(`(?m)^#?(\[[^\]]+\]+|[a-z-]+ = )`)
	keys := func(lang, kind string) string {
		src, err := templates.Starter(lang, kind)
		if err != nil {
			t.Fatal(err)
		}
		return strings.Join(key.FindAllString(string(src), -1), "\n")
	}
	for _, kind := range file.Kinds() {
		for _, lang := range templates.Languages() {
			got, want := keys(lang, kind), keys("en", kind)
			got = strings.Replace(got, "\nplace = ", "\n#place = ", 1) // a name that is not English does not say the place
			if got != want {
				t.Errorf("%s %s: %s", lang, kind, firstDifference(got, want))
			}
		}
	}
}
