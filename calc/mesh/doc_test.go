package mesh

import (
	"go/ast"
	"go/doc"
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// formulaPackages are the packages whose exported functions must tell their range and source.
var formulaPackages = []string{"mesh", "blade", "film", "halftone", "tension", "ink", "cure", "press"}

var (
	saysRange  = regexp.MustCompile(`Range|Definition|no range`)
	saysSource = regexp.MustCompile(`Kind|Source|kind|[Dd]efinition|published|derived|common practice|from memory`)
)

// TestFunctionsTellRangeAndSource walks the doc comments of the formulas: each exported function
// says its range and the kind of its source, and has an Example.
func TestFunctionsTellRangeAndSource(t *testing.T) {
	seen := 0
	for _, name := range formulaPackages {
		dir := filepath.Join("..", name)
		files, err := filepath.Glob(filepath.Join(dir, "*.go"))
		if err != nil {
			t.Fatal(err)
		}
		if _, err := os.Stat(dir); os.IsNotExist(err) {
			continue // a package to come
		}
		fset := token.NewFileSet()
		var syntax []*ast.File
		for _, f := range files {
			parsed, err := parser.ParseFile(fset, f, nil, parser.ParseComments)
			if err != nil {
				t.Fatal(err)
			}
			syntax = append(syntax, parsed)
		}
		p, err := doc.NewFromFiles(fset, syntax, "bladecard/calc/"+name)
		if err != nil {
			t.Fatal(err)
		}
		funcs := p.Funcs
		for _, typ := range p.Types {
			funcs = append(append(funcs, typ.Funcs...), typ.Methods...)
		}
		for _, f := range funcs {
			if f.Recv != "" && (f.Name == "Error" || f.Name == "String") {
				continue
			}
			seen++
			what := name + "." + strings.TrimPrefix(f.Recv+"."+f.Name, ".")
			if !saysRange.MatchString(f.Doc) {
				t.Errorf("%s does not say its range", what)
			}
			if !saysSource.MatchString(f.Doc) {
				t.Errorf("%s does not say its source or its kind", what)
			}
			if len(f.Examples) == 0 {
				t.Errorf("%s has no Example", what)
			}
		}
	}
	if seen < 40 {
		t.Errorf("%d functions were looked at; there are more than 40", seen)
	}
}
