package choose_test

import (
	"encoding/json"
	"fmt"
	"go/ast"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// knobFile is laid beside the code of each package in the program that the table of constants is made with.
const knobFile = `package %s

import (
	"os"
	"strconv"
)

var knobName, knobValue = os.Getenv("KNOB"), os.Getenv("KNOB_VALUE")

func knob(name string, v float64) float64 {
	if name != knobName {
		return v
	}
	moved, err := strconv.ParseFloat(knobValue, 64)
	if err != nil {
		panic(err)
	}
	return moved
}

var _ = knob
`

// whole are the constants that count something.
var whole = []string{"choose.workhorseStrokes", "choose.strokesMost", "choose.hitsMost", "choose.hitsMostThick", "choose.strokesAgain", "choose.bandOrder", "choose.mostPatchAtOne"}

// knobs builds testdata/plans with each listed constant as a variable that the environment can move. The code is not
// touched: the compiler reads altered copies in its place.
func knobs(t *testing.T, dir string) (program string) {
	t.Helper()
	places := map[string]string{}
	for _, pkg := range packages {
		for path, text := range turned(t, pkg) {
			whole, err := filepath.Abs(path)
			if err != nil {
				t.Fatal(err)
			}
			copied := filepath.Join(dir, pkg+"_"+filepath.Base(path))
			if err := os.WriteFile(copied, []byte(text), 0o666); err != nil {
				t.Fatal(err)
			}
			places[whole] = copied
		}
	}
	overlay := filepath.Join(dir, "overlay.json")
	text, err := json.Marshal(map[string]any{"Replace": places})
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(overlay, text, 0o666); err != nil {
		t.Fatal(err)
	}
	program = filepath.Join(dir, "plans")
	if out, err := exec.Command("go", "build", "-overlay", overlay, "-o", program, "./testdata/plans").CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	return program
}

// turned are the files of a package whose listed constants have become variables, and those that rest on them.
func turned(t *testing.T, pkg string) map[string]string {
	t.Helper()
	files, fset := source(t, pkg)
	soft := map[string]bool{} // names of this package, and "pkg.Name" of others, that are no constants any more
	for _, c := range constants {
		if soft[c.name] = c.from == ""; soft[c.name] && strings.HasPrefix(c.name, pkg+".") {
			soft[strings.TrimPrefix(c.name, pkg+".")] = true
		}
	}
	type spec struct {
		*ast.ValueSpec
		path string
	}
	var specs []spec
	for path, f := range files {
		ast.Inspect(f, func(n ast.Node) bool {
			if g, is := n.(*ast.GenDecl); is && g.Tok.String() == "const" {
				for _, s := range g.Specs {
					specs = append(specs, spec{s.(*ast.ValueSpec), path})
				}
			}
			return true
		})
	}
	uses := func(e ast.Expr) bool {
		found := false
		ast.Inspect(e, func(n ast.Node) bool {
			switch n := n.(type) {
			case *ast.SelectorExpr:
				if x, is := n.X.(*ast.Ident); is && soft[x.Name+"."+n.Sel.Name] {
					found = true
				}
				return false
			case *ast.Ident:
				found = found || soft[n.Name]
			}
			return !found
		})
		return found
	}
	for again := true; again; {
		again = false
		for _, s := range specs {
			for i, n := range s.Names {
				if i < len(s.Values) && !soft[n.Name] && uses(s.Values[i]) {
					soft[n.Name], again = true, true
				}
			}
		}
	}
	out := map[string]string{filepath.Join("..", pkg, "zz_knob.go"): fmt.Sprintf(knobFile, pkg)}
	for path, f := range files {
		src, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		at := func(n ast.Node) (int, int) { return fset.Position(n.Pos()).Offset, fset.Position(n.End()).Offset }
		type edit struct {
			from, to int
			text     string
		}
		var edits []edit
		behind := ""
		ast.Inspect(f, func(n ast.Node) bool {
			g, is := n.(*ast.GenDecl)
			if !is || g.Tok.String() != "const" {
				return true
			}
			local := !slices.Contains(f.Decls, ast.Decl(g))
			for _, s := range g.Specs {
				v := s.(*ast.ValueSpec)
				if !slices.ContainsFunc(v.Names, func(n *ast.Ident) bool { return soft[n.Name] }) {
					continue
				}
				vars := ""
				for i, n := range v.Names {
					from, to := at(v.Values[i])
					text := string(src[from:to])
					full := pkg + "." + n.Name
					switch {
					case slices.Contains(whole, full):
						text = fmt.Sprintf("int(knob(%q, %s))", full, text)
					case slices.ContainsFunc(constants, func(c constant) bool { return c.name == full }):
						text = fmt.Sprintf("knob(%q, %s)", full, text)
					}
					vars += fmt.Sprintf("var %s = %s\n", n.Name, text)
				}
				if local || !g.Lparen.IsValid() {
					from, to := at(g)
					edits = append(edits, edit{from, to, vars})
					continue
				}
				from, to := at(v)
				edits = append(edits, edit{from, to, ""})
				behind += vars
			}
			return true
		})
		slices.SortFunc(edits, func(a, b edit) int { return b.from - a.from })
		text := string(src)
		for _, e := range edits {
			text = text[:e.from] + e.text + text[e.to:]
		}
		text += "\n" + behind
		for _, c := range constants {
			if c.from != "" && strings.HasPrefix(c.name, pkg+".") && strings.Contains(text, c.from) {
				text = strings.Replace(text, c.from, strings.ReplaceAll(c.to, "KNOB", fmt.Sprintf("knob(%q, %s)", c.name, c.value)), 1)
			}
		}
		if text != string(src)+"\n" {
			out[path] = text
		}
	}
	for _, c := range constants {
		if c.from != "" && strings.HasPrefix(c.name, pkg+".") && !slices.ContainsFunc(values(out), func(text string) bool { return strings.Contains(text, `knob("`+c.name+`"`) }) {
			t.Errorf("%s: %q is not in the code of its package any more", c.name, c.from)
		}
	}
	return out
}

func values(m map[string]string) []string {
	var out []string
	for _, v := range m {
		out = append(out, v)
	}
	return out
}
