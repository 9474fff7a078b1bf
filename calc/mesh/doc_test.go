package mesh

import (
	"go/ast"
	"go/doc"
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// formulaPackages are the packages of calc whose exported functions must tell their range and
// source; otherPackages read, choose and convert, and hold no formula of their own.
var (
	formulaPackages = []string{"mesh", "blade", "film", "halftone", "tension", "ink", "cure", "press", "placement", "fit", "trials"}
	otherPackages   = []string{"cells", "seen", "day", "orders", "rows", "file", "job", "plan", "choose", "unit", "internal", "lesson", "presslog", "plantest"}
)

var (
	saysRange  = regexp.MustCompile(`\bRange\b`)
	defines    = regexp.MustCompile(`\bDefinition\b`)
	saysSource = regexp.MustCompile(`\b(Kind|Source|Definition)\b`)
	saysKind   = regexp.MustCompile(`(?i)\b(published|derived|definition|common practice|from memory|textbook|calibrated)\b|Kind: as [A-Z]`)
	saysError  = regexp.MustCompile(`\berror\b|\bErr[A-Z]`)
)

// documented reads the doc comments and Examples of a package beside this one.
func documented(t *testing.T, name string) *doc.Package {
	t.Helper()
	files, err := filepath.Glob(filepath.Join("..", name, "*.go"))
	if err != nil || len(files) == 0 {
		t.Fatalf("no Go files in calc/%s: %v", name, err)
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
	return p
}

// mayFail tells whether the last result of a function is an error.
func mayFail(f *doc.Func) bool {
	r := f.Decl.Type.Results
	if r == nil || len(r.List) == 0 {
		return false
	}
	id, ok := r.List[len(r.List)-1].Type.(*ast.Ident)
	return ok && id.Name == "error"
}

// lacks lists what a formula's comment leaves out. A conversion that can't fail may be a
// definition instead of having a range.
func lacks(comment string, fails bool, examples int) []string {
	comment = strings.Join(strings.Fields(comment), " ") // a word group may be broken over lines
	var out []string
	if !saysRange.MatchString(comment) && (fails || !defines.MatchString(comment)) {
		out = append(out, "its Range")
	}
	if !saysSource.MatchString(comment) || !saysKind.MatchString(comment) {
		out = append(out, "its Source or Kind (published, derived, common practice, from memory)")
	}
	if fails && !saysError.MatchString(comment) {
		out = append(out, "when it is an error")
	}
	if examples == 0 {
		out = append(out, "an Example")
	}
	return out
}

// TestFunctionsTellRangeAndSource walks the doc comments of the formulas: each exported function
// says its range, its errors, its source and kind, and has an Example.
func TestFunctionsTellRangeAndSource(t *testing.T) {
	seen := 0
	for _, name := range formulaPackages {
		p := documented(t, name)
		if p.Doc == "" {
			t.Errorf("package %s has no doc", name)
		}
		funcs := p.Funcs
		for _, typ := range p.Types {
			funcs = append(append(funcs, typ.Funcs...), typ.Methods...)
		}
		for _, f := range funcs {
			if f.Recv != "" && (f.Name == "Error" || f.Name == "String") {
				continue // words, no formula
			}
			seen++
			if l := lacks(f.Doc, mayFail(f), len(f.Examples)); l != nil {
				t.Errorf("%s.%s lacks %s", name, strings.TrimPrefix(f.Recv+"."+f.Name, "."), strings.Join(l, ", "))
			}
		}
	}
	if seen < 80 {
		t.Errorf("%d functions were looked at; there are more than 80", seen)
	}
}

// TestEveryPackageIsListed fails for a package of calc that is in neither list.
func TestEveryPackageIsListed(t *testing.T) {
	dirs, err := os.ReadDir("..")
	if err != nil {
		t.Fatal(err)
	}
	for _, d := range dirs {
		if d.IsDir() && !slices.Contains(formulaPackages, d.Name()) && !slices.Contains(otherPackages, d.Name()) {
			t.Errorf("calc/%s is neither a formula package nor another one: add it to a list", d.Name())
		}
	}
}

// TestLacks checks the check: what is left out of a comment is named.
func TestLacks(t *testing.T) {
	const whole = "X is a thing in um.\n\nRange: 1 to 2; an error outside. Kind: derived."
	for _, c := range []struct {
		comment  string
		fails    bool
		examples int
		want     int
	}{
		{whole, true, 1, 0},
		{whole, true, 0, 1},
		{strings.Replace(whole, "Range", "From", 1), true, 1, 1},
		{strings.Replace(whole, "Kind: derived", "", 1), true, 1, 1},
		{strings.Replace(whole, "derived", "guessed", 1), true, 1, 1},
		{strings.Replace(whole, "an error outside", "", 1), true, 1, 1},
		{strings.Replace(whole, "derived", "common\npractice", 1), true, 1, 0},
		{"X turns in into mm. Definition.", false, 1, 0},
		{"X turns in into mm. Definition.", true, 1, 2},
		{"", true, 0, 4},
	} {
		if got := lacks(c.comment, c.fails, c.examples); len(got) != c.want {
			t.Errorf("%q: lacks %q, want %d of them", c.comment, got, c.want)
		}
	}
}
