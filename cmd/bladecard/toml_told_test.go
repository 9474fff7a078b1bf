package main

import (
	"bytes"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// TestBrokenFilesAreToldInSpanish: a file that is no TOML is told with its place, what is wrong and what is accepted, and
// without a word of English.
func TestBrokenFilesAreToldInSpanish(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "roto.toml")
	told := regexp.MustCompile(`^(\d+:\d+: .*); (.*se acepta.*)\n$`)
	for _, c := range []struct{ src, want string }{
		{"width = 12 in", `1:11: "in" está donde debe acabar la línea`},
		{"[garment] name", `1:10: "name" está donde debe acabar la línea`},
		{"coverage = 0,5", `1:13: hay una coma detrás del valor`},
		{"title = \"x\";", `1:12: ";" está donde debe acabar la línea`},
		{"[[location]\n", `1:11: [[ no se cierra con ]]`},
		{"[]", `1:2: la tabla no tiene nombre entre sus corchetes`},
		{"[a..b]", `1:4: falta una parte del nombre de la tabla junto a su punto`},
		{"[full front]", `1:7: "front" está dentro del nombre de la tabla`},
		{"[garment\nname = \"x\"", `1:9: el corchete del nombre de la tabla no se cierra`},
		{"= \"x\"", `1:1: falta la clave`},
		{".a = 1", `1:1: la clave empieza con un punto`},
		{"title \"x\"", `1:7: '"' está donde va =`},
		{"title: \"x\"", `1:6: ":" está donde va =`},
		{"título = \"x\"", `1:2: "ítulo" está donde va =`},
		{"title", `1:5: a la clave le faltan = y el valor`},
		{"title =", `1:7: falta el valor`},
		{"title = navy tee", `1:9: "navy" está sin comillas`},
		{"title = , ", `1:9: "," está donde va un valor`},
		{"title = “x”", `1:9: "“" no es una comilla recta`},
		{"swatch = #ff0000", `1:10: falta el valor, pues # empieza un comentario`},
		{"lengths = [1,,2]", `1:14: sobra una coma`},
		{"lengths = [", `1:11: la lista no se cierra`},
		{"lengths = [\"12 in\" \"14 in\"]", `1:20: '"' está en la lista donde va una coma o ]`},
		{"halftone = {", `1:12: la llave { no se cierra`},
		{"halftone = { lines = \"45 lpi\" angle = 3 }", `1:31: "angle" está entre las llaves donde va una coma o }`},
		{"coverage = .5", `1:12: el número empieza con un punto`},
		{"coverage = 5.", `1:12: "5." no tiene cifra detrás del punto`},
		{"quantity = 09", `1:12: "09" empieza con un cero`},
		{"quantity = 1__0", `1:12: "1__0" tiene un guion bajo que no está entre cifras`},
		{"quantity = +x", `1:12: "x" está donde va una cifra`},
		{"quantity = 1e", `1:12: "1e" no es un número`},
		{"quantity = 99999999999999999999", `1:12: "99999999999999999999" es demasiado grande`},
		{"mesh = 156-64", `1:8: "156-64" no es un día`},
		{"title = \"x", `1:9: estas comillas no se cierran`},
		{"title = \"x\nquantity = 3", `1:9: estas comillas no se cierran en su línea`},
		{`logo = "C:\logo.png"`, `1:9: una barra invertida delante de "l" no significa nada en un texto`},
		{`logo = "C:\Users"`, `1:9: una barra invertida delante de "U" pide cifras detrás`},
		{`logo = "\ud800"`, `1:9: "d800" no es el número de un carácter`},
		{"logo = \"a\\\nb\"", `1:9: hay una barra invertida al final de la línea`},
		{"title = \"a\"\ntitle = \"b\"", `2:1: la clave "title" ya está`},
		{"a.b = 1\na = 2", `2:1: la clave ya está`},
		{"title = \"a\"\n[title.x]", `2:2: "title" ya es un valor y no puede ser también una tabla`},
		{"[location]\n[[location]]", `2:3: "location" ya está, y no bajo [[ ]]`},
		{"title = \"a\"\rquantity = 3", `1:11: una línea acaba solo en CR`},
		{"x = [" + strings.Repeat("1, ", 3000) + "tru]", `1:9006: hay un texto sin comillas`},
		{"x = [" + strings.Repeat("1, ", 3000) + "1 1]", `1:9008: falta una coma o ] en la lista`},
	} {
		write(t, path, c.src)
		var out, errs bytes.Buffer
		if code := run([]string{"check", "--lang", "es", path}, strings.NewReader(""), &out, &errs); code != exitJob {
			t.Errorf("%.40q: exit code %d", c.src, code)
		}
		found := told.FindStringSubmatch(strings.TrimPrefix(errs.String(), path+":"))
		if found == nil || found[1] != c.want {
			t.Errorf("%.40q: %s\nwant %s", c.src, errs.String(), c.want)
		} else if e := leftEnglish(strings.ReplaceAll(found[0], `'"'`, "")); e != "" {
			t.Errorf("%.40q: %q in %s", c.src, e, found[0])
		}
	}
}
