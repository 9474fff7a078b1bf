package calc

import (
	"encoding/csv"
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"maps"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
)

var (
	entry  = regexp.MustCompile(`(?m)^ *([0-9]+)\. `)
	number = regexp.MustCompile(`[^\s\[\]]\s\[([1-9][0-9]?)\]`)
	site   = regexp.MustCompile(`[a-z0-9-]+(\.[a-z0-9-]+)+`)
	title  = regexp.MustCompile(`"([^"]+?)[?,]?"`)
	says   = regexp.MustCompile(`Sources?: [A-Z"]|\(published\)|published: `)
	exempt = regexp.MustCompile(`(?i)definition|by hand|see |in each Fibre|in the package|parts of ink classes|derived\)`)
)

// listed are the sources of the package comment, by number.
func listed(t *testing.T) map[int]string {
	t.Helper()
	f, err := parser.ParseFile(token.NewFileSet(), "doc.go", nil, parser.ParseComments)
	if err != nil {
		t.Fatal(err)
	}
	text := f.Doc.Text()
	out := map[int]string{}
	at := entry.FindAllStringSubmatchIndex(text, -1)
	for i, m := range at {
		n, _ := strconv.Atoi(text[m[2]:m[3]])
		end := len(text)
		if i+1 < len(at) {
			end = at[i+1][0]
		}
		if out[n] = strings.Join(strings.Fields(text[m[1]:end]), " "); n != i+1 {
			t.Errorf("source %d stands at place %d of the list", n, i+1)
		}
	}
	return out
}

// parsed are the files of calc by their path, those of tests or the others.
func parsed(t *testing.T, tests bool) map[string]*ast.File {
	t.Helper()
	paths, err := filepath.Glob("*/*.go")
	if err != nil {
		t.Fatal(err)
	}
	more, err := filepath.Glob("*/*/*.go")
	if err != nil {
		t.Fatal(err)
	}
	out := map[string]*ast.File{}
	for _, path := range append(paths, more...) {
		if strings.HasSuffix(path, "_test.go") != tests || strings.Contains(path, "testdata") {
			continue
		}
		if out[path], err = parser.ParseFile(token.NewFileSet(), path, nil, parser.ParseComments); err != nil {
			t.Fatal(err)
		}
	}
	return out
}

// TestSourcesAreListed: each number in a comment or a text is one of the list, each source of the list is referred to, and a
// comment that says a source or that something is published has a number.
func TestSourcesAreListed(t *testing.T) {
	list, used := listed(t), map[int]bool{}
	for _, tests := range []bool{false, true} {
		for path, f := range parsed(t, tests) {
			refer := func(text string) {
				for _, m := range number.FindAllStringSubmatch(text, -1) {
					n, _ := strconv.Atoi(m[1])
					if used[n] = true; list[n] == "" {
						t.Errorf("%s: source [%d] is not in the list of calc/doc.go", path, n)
					}
				}
			}
			for _, c := range f.Comments {
				text := c.Text()
				refer(text)
				if !tests && says.MatchString(text) && !number.MatchString(text) && !exempt.MatchString(text) {
					t.Errorf("%s: no number of a source stands in:\n%s", path, text)
				}
			}
			ast.Inspect(f, func(n ast.Node) bool {
				if l, is := n.(*ast.BasicLit); is && l.Kind == token.STRING && (tests || strings.Contains(path, "fibre")) {
					refer(l.Value)
				}
				return true
			})
		}
	}
	inks, err := os.ReadFile("../templates/inks.toml")
	if err != nil {
		t.Fatal(err)
	}
	for _, line := range strings.Split(string(inks), "\n") {
		_, comment, _ := strings.Cut(line, "#")
		for _, m := range number.FindAllStringSubmatch(comment, -1) {
			n, _ := strconv.Atoi(m[1])
			if used[n] = true; list[n] == "" {
				t.Errorf("inks.toml: source [%d] is not in the list of calc/doc.go", n)
			}
		}
		if strings.HasPrefix(comment, " P ") && !number.MatchString(comment) && !strings.Contains(comment, "same ") {
			t.Errorf("inks.toml: no number of a source stands in %q", line)
		}
	}
	for n, text := range list {
		if !used[n] {
			t.Errorf("source %d is referred to nowhere: %s", n, text)
		}
	}
}

// check is a row of a table of checks: a figure against what a source says.
type check struct {
	source  int
	want    string
	formula bool // the source has the formula, the input is our own
}

// TestSourcesCount counts the checks of calc against named outside sources, from the tables of the tests themselves. A figure
// counts once however often it is compared. Not counted: what is derived or from memory, figures that a constant was
// fitted to, verdicts and orders.
func TestSourcesCount(t *testing.T) {
	list := listed(t)
	printed, formulas, fitted := map[check]bool{}, map[check]bool{}, 0
	for _, f := range parsed(t, true) {
		for _, c := range checksIn(f) {
			switch {
			case c.want == "fitted":
				fitted++
			case strings.HasSuffix(list[c.source], "From memory."): // no outside check
			case c.formula:
				formulas[c] = true
			default:
				printed[c] = true
			}
		}
	}
	for _, c := range cloths(t, list) {
		printed[c] = true
	}
	sources := map[int]bool{}
	for c := range printed {
		sources[c.source] = true
	}
	figuresOf := len(sources)
	for c := range formulas {
		sources[c.source] = true
	}
	t.Logf("%d printed figures of %d sources; %d evaluations of published formulas; %d sources in all; %d comparisons with figures that a constant was fitted to are not counted",
		len(printed), figuresOf, len(formulas), len(sources), fitted)
	for _, n := range slices.Sorted(maps.Keys(sources)) {
		p, f := 0, 0
		for c := range printed {
			if c.source == n {
				p++
			}
		}
		for c := range formulas {
			if c.source == n {
				f++
			}
		}
		t.Logf("[%d] %d printed, %d evaluated: %s", n, p, f, list[n])
	}
	told, err := os.ReadFile("../DEVELOPERS.md")
	if err != nil {
		t.Fatal(err)
	}
	sum := fmt.Sprintf("%d printed figures of %d sources and %d evaluations of published formulas", len(printed), figuresOf, len(formulas))
	if !strings.Contains(strings.Join(strings.Fields(string(told)), " "), sum) {
		t.Errorf("DEVELOPERS.md does not say %q", sum)
	}
	if len(printed) < 35 || figuresOf < 14 || len(formulas) < 20 {
		t.Errorf("%d printed figures of %d sources and %d evaluations are fewer than there were", len(printed), figuresOf, len(formulas))
	}
}

// checksIn are the rows of a test file whose texts name a source by number, or say that they are published in a function
// whose comment names one.
func checksIn(f *ast.File) []check {
	texts := map[string]string{} // of constants by name
	ast.Inspect(f, func(n ast.Node) bool {
		if v, is := n.(*ast.ValueSpec); is {
			for i, name := range v.Names {
				if i < len(v.Values) {
					if l, is := v.Values[i].(*ast.BasicLit); is && l.Kind == token.STRING {
						texts[name.Name] = l.Value
					}
				}
			}
		}
		return true
	})
	var out []check
	for _, d := range f.Decls {
		fn, is := d.(*ast.FuncDecl)
		if !is || fn.Body == nil {
			continue
		}
		of := number.FindStringSubmatch(fn.Doc.Text())
		ast.Inspect(fn.Body, func(n ast.Node) bool {
			row, is := n.(*ast.CompositeLit)
			if !is || row.Type != nil {
				return true
			}
			if of != nil && strings.Contains(fn.Doc.Text(), "Published:") && len(row.Elts) > 1 && !slices.ContainsFunc(row.Elts, func(e ast.Expr) bool { return !isNumber(e) }) {
				for _, e := range row.Elts[1:] { // what the source prints for the first of the row
					n, _ := strconv.Atoi(of[1])
					out = append(out, check{source: n, want: e.(*ast.BasicLit).Value})
				}
			}
			if len(row.Elts) < 4 {
				return true
			}
			words, want := "", ""
			for _, e := range row.Elts {
				switch {
				case isText(e, texts):
					ast.Inspect(e, func(n ast.Node) bool {
						switch n := n.(type) {
						case *ast.BasicLit:
							words += " " + n.Value
						case *ast.Ident:
							words += " " + texts[n.Name]
						}
						return true
					})
				case want == "" && isNumber(e):
					want = e.(*ast.BasicLit).Value
				}
			}
			m := number.FindStringSubmatch(words)
			if m == nil && strings.Contains(words, "published") {
				m = of
			}
			if m == nil || strings.Contains(words, "derived") || strings.Contains(words, "arithmetic") || strings.Contains(words, "from memory") && !strings.Contains(words, "formula") {
				return true
			}
			c := check{want: want}
			c.source, _ = strconv.Atoi(m[1])
			c.formula = strings.Contains(words, "formula") || strings.Contains(words, "identity")
			if strings.Contains(words, "fit's own five") {
				c.want = "fitted"
			} else if want == "" || c.formula {
				c.want += words // an expression, or one input of a formula
			}
			out = append(out, c)
			return true
		})
	}
	return out
}

// isText tells whether an element of a row is a text, a constant text or several joined.
func isText(e ast.Expr, texts map[string]string) bool {
	switch e := e.(type) {
	case *ast.BasicLit:
		return e.Kind == token.STRING
	case *ast.Ident:
		return texts[e.Name] != ""
	case *ast.BinaryExpr:
		return isText(e.X, texts) || isText(e.Y, texts)
	}
	return false
}

func isNumber(e ast.Expr) bool {
	l, is := e.(*ast.BasicLit)
	return is && l.Kind != token.STRING
}

// cloths are the printed figures of mesh/testdata/mesh.csv that its test compares, without the thicknesses, which
// the fit of the thickness was made from.
func cloths(t *testing.T, list map[int]string) []check {
	t.Helper()
	f, err := os.Open("mesh/testdata/mesh.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var out []check
	for _, row := range rows[1:] {
		cell := func(name string) string { return row[slices.Index(rows[0], name)] }
		n := sourceOf(list, cell("source"))
		if n == 0 {
			t.Errorf("mesh.csv: %q is not in the list of sources", cell("source"))
		}
		for _, name := range []string{"pub_opening_um", "pub_open_area_pct", "pub_vth_cm3m2"} {
			if v := cell(name); v != "" && cell("pitch_um") != "" && (name != "pub_opening_um" || cell("thread_um") != "") {
				out = append(out, check{source: n, want: v})
			}
		}
	}
	return out
}

// sourceOf is the number of the source that a text names by its title or its site; 0: none.
func sourceOf(list map[int]string, text string) int {
	for _, rx := range []*regexp.Regexp{title, site} {
		for _, n := range slices.Sorted(maps.Keys(list)) {
			for _, m := range rx.FindAllStringSubmatch(list[n], -1) {
				if name := strings.Trim(m[0], `"?,.`); strings.Contains(text, name) {
					return n
				}
			}
		}
	}
	return 0
}
