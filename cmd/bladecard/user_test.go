package main

import (
	"bytes"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// namesInAnswers are names that the program has in any language: keys, columns, classes of ink, words that flags take.
var namesInAnswers = regexp.MustCompile(`las columnas son.*|se aceptan?: .*|(TRABAJO|RUTA|REGISTRO|TALLER|CARPETA|PEDIDOS).*`)

// TestWrongInputIsToldInSpanish: what somebody who types wrong words in a Spanish shop is told holds no English, whatever
// the command.
func TestWrongInputIsToldInSpanish(t *testing.T) {
	dir := t.TempDir()
	write(t, filepath.Join(dir, "shop.toml"), "language = \"es\"\n")
	write(t, filepath.Join(dir, "job.toml"), "title = \"x\"\n[[location]]\n[[location.screen]]\nmesh = \"156-64\"\n")
	write(t, filepath.Join(dir, "roto.toml"), "title = x\n")
	write(t, filepath.Join(dir, "otro.csv"), "a,b\n1,2\n")
	if err := os.MkdirAll(filepath.Join(dir, "nada"), 0o755); err != nil {
		t.Fatal(err)
	}
	t.Chdir(dir)
	for _, line := range []string{
		"chek", "-x", "help nada", "check", "check falta.toml", "check nada", "check roto.toml", "check otro.csv", "check --jason job.toml", "check --json --fix job.toml", "check --lang fr job.toml",
		"show", "show nada", "show job.toml --csv --json", "show job.toml --shop", "show job.toml --shop falta.toml", "show job.toml --shop job.toml", "show job.toml --why=tal", "show shop.toml", "show -",
		"cards job.toml", "cards job.toml -o", "cards job.toml -o x.csv", "cards job.toml roto.toml -o x.pdf", "cards job.toml -o o --size a9", "cards job.toml -o o --flip largo", "cards job.toml -o o --back-right 5cm", "cards job.toml -o o --charts -", "cards job.toml -o otro.csv/x",
		"sheet falta.toml -o o", "handout", "handout job.toml -o x.pdf", "handout -o x.pdf --level experto", "handout a b -o x.pdf",
		"build", "build nada -o o", "build falta -o o", "build job.toml -o -", "build job.toml -o o --quiet --json",
		"log", "log job.toml -o shop.toml", "log job.toml -o nada", "log job.toml -o otro.csv", "fit", "fit falta.csv", "fit otro.csv", "fit otro.csv --date tal", "fit otro.csv --chart x.jpg", "fit a.csv b c",
		"trial --days 0", "trial --press tal", "trial a b", "day", "day job.toml --due ayer", "day job.toml --due 2027-05-21..2027-05-17", "day job.toml --due 2050-01-01", "day nada",
		"correct job.toml", "correct job.toml --measured 38", "correct job.toml --measured 38g", "correct job.toml --seen tal", "correct job.toml --measured 38um --screen 9", "correct job.toml --measured 38um --location 9", "correct job.toml --measured 38m",
		"sweep job.toml", "sweep job.toml --vary", "sweep job.toml --vary color=1", "sweep job.toml --vary angle=x", "sweep job.toml --vary strokes=99", "sweep job.toml --vary angle=10 --chart x.svg",
		"schema", "schema tienda", "schema job -o nada", "completion", "completion tcsh", "version x", "new a b", "new --from falta.csv", "new --from otro.csv", "new .",
	} {
		var out, errs bytes.Buffer
		if code := run(strings.Fields(line), strings.NewReader(""), &out, &errs); code == exitDone {
			t.Errorf("%s: it ends well: %s", line, out.String())
		}
		for said := range strings.Lines(errs.String()) {
			if english := leftEnglish(namesInAnswers.ReplaceAllString(said, "")); english != "" || strings.HasPrefix(said, "error: --measured: ink") {
				t.Errorf("bladecard %s: %q in %s", line, english, said)
			}
		}
		if errs.Len() == 0 {
			t.Errorf("bladecard %s says nothing", line)
		}
	}
}

// TestUnnamedLocation: on paper it is called in the shop's language; JSON and the press log keep the name that rows are
// found by.
func TestUnnamedLocation(t *testing.T) {
	dir := t.TempDir()
	write(t, filepath.Join(dir, "shop.toml"), "language = \"es\"\n")
	job := filepath.Join(dir, "job.toml")
	write(t, job, "title = \"x\"\n[[location]]\nwidth = \"30 cm\"\nheight = \"9 cm\"\n[[location.screen]]\nmesh = \"156-64\"\nfilm = \"200..220 um\"\n")
	for args, want := range map[string]string{
		"show":        "posición 1 · 300 × 90",
		"show --json": `"name":"location 1"`,
		"check":       "posición 1, pantalla 1: ",
		"log":         "location 1",
	} {
		var out, errs bytes.Buffer
		if run(append(strings.Fields(args), job), strings.NewReader(""), &out, &errs); !strings.Contains(out.String(), want) {
			t.Errorf("%s: %q is not in %s%s", args, want, out.String(), errs.String())
		}
	}
}
