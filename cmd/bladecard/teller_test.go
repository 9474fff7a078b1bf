package main

import (
	"bytes"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// TestErrorsInTheLanguage: errors and hints come in the language of --lang, else of the job's shop, else in English.
func TestErrorsInTheLanguage(t *testing.T) {
	dir := t.TempDir()
	for name, text := range map[string]string{
		"es/shop.toml":   "language = \"es\"\n",
		"mx/shop.toml":   "language = \"es-MX\"\n",
		"es/bad.toml":    "title = 2417\n[[location]]\nname = \"frente\"\nwidth = \"12\"\n[[location.screen]]\nmesch = \"156-64\"\n",
		"es/open.toml":   "title = \"x\n",
		"mx/blade.toml":  "title = \"x\"\n[[location]]\n[[location.screen]]\nblade = \"71\"\n",
		"none/bad.toml":  "title = \"\"\n",
		"es/folder/keep": "",
	} {
		write(t, filepath.Join(dir, filepath.FromSlash(name)), text)
	}
	for _, c := range []struct {
		args string
		want []string
	}{
		{"show es/bad.toml", []string{"title: 2417 es un número; se acepta un texto entre comillas", `posición "frente": width: "12" no lleva unidad; se acepta una longitud`, `posición "frente", pantalla 1: mesch: no es una clave de esta tabla; ¿quizá mesh?`}},
		{"show es/open.toml", []string{"estas comillas no se cierran en su línea; se acepta un texto entre comillas"}},
		{"show mx/blade.toml", []string{`blade: no hay rasero "71" en existencias`}},
		{"show none/bad.toml", []string{"title: is empty; a text in quotes is accepted"}},
		{"show none/bad.toml --lang es", []string{"title: está vacío; se acepta un texto entre comillas"}},
		{"show es/bad.toml --lang en", []string{"title: 2417 is a number; a text in quotes is accepted"}},
		{"show gone.toml --lang es", []string{"error: gone.toml: no hay tal archivo o carpeta"}},
		{"show --lang es", []string{"error: falta nombrar un archivo de trabajo", "sugerencia: se usa así: bladecard show"}},
		{"build es -o out", []string{"title: 2417 es un número"}},
	} {
		t.Run(c.args, func(t *testing.T) {
			t.Chdir(dir)
			var out, errs bytes.Buffer
			if code := run(strings.Fields(c.args), strings.NewReader(""), &out, &errs); code == exitDone {
				t.Errorf("it ends with %d", code)
			}
			for _, w := range c.want {
				if !strings.Contains(errs.String()+out.String(), w) {
					t.Errorf("%q is not in\n%s", w, errs.String())
				}
			}
		})
	}
}

// TestFileErrorsLeaveNoEnglish: of every bad file of calc/file, all that is not quoted is said in Spanish.
func TestFileErrorsLeaveNoEnglish(t *testing.T) {
	bad, err := filepath.Glob("../../calc/file/testdata/bad/*.toml")
	if err != nil || len(bad) < 50 {
		t.Fatalf("%d bad files, %v", len(bad), err)
	}
	quoted := regexp.MustCompile(`"[^"]*"`)
	english := regexp.MustCompile(`\b(the|is|are|has|have|of|accepted|with|without|and|or|to)\b`)
	for _, path := range bad {
		var out, errs bytes.Buffer
		run([]string{"check", "--lang", "es", path}, strings.NewReader(""), &out, &errs)
		if !strings.Contains(errs.String(), ".toml:") {
			t.Errorf("%s: no error: %s", path, errs.String())
		}
		if found := english.FindString(quoted.ReplaceAllString(strings.ReplaceAll(errs.String(), path, ""), "")); found != "" {
			t.Errorf("%s: %q in %s", filepath.Base(path), found, errs.String())
		}
	}
}
