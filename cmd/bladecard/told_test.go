package main

import (
	"cmp"
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"bladecard/render/say"
)

// english are words that no Spanish sentence has.
var english = regexp.MustCompile(`\b(the|is|are|has|have|of|accepted|with|without|and|or|to|not|no such|there|which|wanted|named|than|such)\b`)

// asWritten are the parts of a message that stand as somebody wrote them.
var asWritten = regexp.MustCompile("\"[^\"]*\"|\\b(screen|location)\\.[a-z]+")

// TestTextsAreKnownInSpanish: each text that the code makes an error or a hint of is a sentence that Spanish has.
func TestTextsAreKnownInSpanish(t *testing.T) {
	v, err := say.New("es", "")
	if err != nil {
		t.Fatal(err)
	}
	n := 0
	for _, dir := range []string{".", "../../calc/orders", "../../calc/presslog", "../../calc/choose", "../../calc/job", "../../calc/file", "../../calc/internal", "../../calc/mesh", "../../calc/tension", "../../calc/seen"} {
		for _, text := range errorTexts(t, dir) {
			if strings.Contains(text, "number of a word") || strings.Contains(text, "number of the word") || strings.Contains(text, "not in the plan") || strings.HasSuffix(text, "7 are accepted") {
				continue // what shells are told, which ask for completions, and what the terminal asks for before
			}
			n++
			if leftEnglish(v.Word(text)) != "" && leftEnglish(v.Word("file "+text)) != "" { // some stand behind a name
				t.Errorf("%s: %q in %q", dir, leftEnglish(v.Word(text)), v.Word(text))
			}
		}
	}
	if n < 330 {
		t.Errorf("%d texts were found", n)
	}
}

// leftEnglish is an English word of a text that is not quoted; empty where there is none.
func leftEnglish(text string) string {
	return english.FindString(asWritten.ReplaceAllString(text, ""))
}

// verbs are what fmt puts a value in the place of, and a value.
var verbs = strings.NewReplacer("$word", `"x"`, "$1", `"x"`, "%q", `"x"`, `"x" by this very command`, "read by this very command", `"x"accepted`, "accepted", "more than %d %s", "more than 7 parts", "not %s", "not a level", "%saccepted", "accepted", "%s", "x", "%w", "x", "%v", "7", "%d", "7", "%g", "7", "%.6g", "7", "%.3g", "7", "%.0f", "7", "%02x", "7f", "%U", "U+7F", "%[1]s", "x", "%[2]g", "7", "%[3]g", "7")

// errorTexts are the texts of a folder's code that stand where an error or a hint is made, with values in their places.
func errorTexts(t *testing.T, dir string) []string {
	var out []string
	add := func(e ast.Expr) {
		if text := textOf(e); strings.Contains(text, " ") {
			out = append(out, verbs.Replace(text))
		}
	}
	err := filepath.WalkDir(dir, func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") || strings.Contains(path, "testdata") {
			return err
		}
		f, err := parser.ParseFile(token.NewFileSet(), path, nil, 0)
		if err != nil {
			return err
		}
		ast.Inspect(f, func(n ast.Node) bool {
			switch n := n.(type) {
			case *ast.CallExpr:
				switch name := nameOf(n.Fun); {
				case name == "New" || name == "Errorf" || name == "wrong" || name == "refuse" || name == "fail" || name == "failCell":
					for _, arg := range n.Args {
						add(arg)
					}
				}
			case *ast.CompositeLit: // the rows of what parsers and systems say: what it is known by, and what is told
				if base := filepath.Base(path); (base == "syntax.go" || strings.HasPrefix(base, "system")) && n.Type == nil {
					for _, told := range n.Elts[1:] {
						add(told)
					}
				}
			case *ast.ValueSpec:
				if filepath.Base(path) == "syntax.go" && strings.HasPrefix(n.Names[0].Name, "accepted") {
					add(n.Values[0])
				}
			case *ast.KeyValueExpr:
				switch key, _ := n.Key.(*ast.Ident); {
				case key != nil && (key.Name == "Wrong" || key.Name == "Accepted" || key.Name == "Why" || key.Name == "Hint"):
					add(n.Value)
				}
			}
			return true
		})
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// textOf is the text of an expression, a value for what is not written out in it; empty where nothing is.
func textOf(e ast.Expr) string {
	switch e := e.(type) {
	case *ast.BasicLit:
		if text, err := strconv.Unquote(e.Value); err == nil && e.Kind == token.STRING {
			return text
		}
	case *ast.CallExpr:
		if len(e.Args) > 0 && nameOf(e.Fun) == "Sprintf" {
			return textOf(e.Args[0])
		}
	case *ast.BinaryExpr:
		x, y := textOf(e.X), textOf(e.Y)
		if x != "" || y != "" {
			return cmp.Or(x, `"x"`) + cmp.Or(y, `"x"`)
		}
	}
	return ""
}

func nameOf(fun ast.Expr) string {
	switch fun := fun.(type) {
	case *ast.Ident:
		return fun.Name
	case *ast.SelectorExpr:
		return fun.Sel.Name
	}
	return ""
}

// TestFormulasNameTheirFiguresInSpanish: whatever a formula calls a figure that is out of its range.
func TestFormulasNameTheirFiguresInSpanish(t *testing.T) {
	v, err := say.New("es", "")
	if err != nil {
		t.Fatal(err)
	}
	files, err := filepath.Glob("../../calc/*/*.go")
	if err != nil {
		t.Fatal(err)
	}
	n, within := 0, regexp.MustCompile(`\bwithin\("([^"]+)"`)
	for _, path := range files {
		src := content(t, path)
		for _, m := range within.FindAllSubmatch(src, -1) {
			n++
			english := string(m[1]) + " 7.5 mm is out of range; 1 to 7 mm is accepted"
			if told := v.Word(english); strings.HasPrefix(told, string(m[1])+" 7.5") || !strings.HasSuffix(told, " 7.5 mm está fuera de rango; se acepta de 1 a 7 mm") {
				t.Errorf("%s: %s", path, told)
			}
		}
	}
	if n < 100 {
		t.Errorf("%d figures were found", n)
	}
}
