package choose_test

import (
	"bytes"
	"encoding/json"
	"flag"
	"fmt"
	"go/ast"
	"go/format"
	"go/parser"
	"go/token"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"sync"
	"testing"

	"bladecard/templates"
)

// moved has the table of constants made anew: the program is built so that one figure at a time can be moved,
// and plans the same jobs with each at either end of its range, which takes some minutes for all of them. With new
// only those are moved that have no row of their value and range yet.
var moved = flag.String("constants", "", "make testdata/constants.md anew: all, or new")

const constantsTable = "testdata/constants.md"

// marked is what a comment says of a figure without a source.
var marked = regexp.MustCompile(`(?i)common\s+practice|from\s+memory|judg[e]?ment`)

// packages are the packages of calc with figures that a Plan rests on.
var packages = []string{"blade", "film", "mesh", "halftone", "tension", "ink", "cure", "press", "fit", "choose"}

// elsewhere are marked declarations that hold no figure of their own, by why.
var elsewhere = map[string]string{
	"halftone.UsualAnglesDeg": "published",
	"tension.OffContactMM":    "published figures", "tension.TensionVerdict": "published limits; thin is ThinThreadUM",
	"tension.BladeLengthMM": "BladeBeyondMM", "tension.BladePathFits": "MarginLowMM", "tension.PathRatio": "published",
	"tension.offLeastMM": "published", "tension.offUsualMM": "published", "tension.offLargeMM": "published",
	"ink.SinksOf": "takesIn", "ink.ClothOf": "takesIn", "ink.OnKnitUM": "KnitLossLowUM",
	"ink.Lightness": "published; constants of the definition", "ink.ColorOf": "published; constants of the definition", "ink.Luminance": "published; constants of the definition", "ink.LightnessOf": "published; constants of the definition", "ink.LightnessFilmUM": "published; constants of the definition", "film.Clears": "ClearRatio", "halftone.SmallestDotUM": "a rule of geometry", "blade.ClassOf": "LightNPerCM",
	"cure.Moisture": "moistures", "cure.FibreLimit": "fibres", "cure.HeatKJPerM2": "the layers", "cure.FlashSeconds": "the layers", "cure.stefanBoltzmann": "constant of nature",
	"cure.zeroC": "definition", "film.Strokes": "NextStrokeShare", "film.EdgeFilmUM": "constant agrees with a published one", "mesh.BuildFor": "CoatUM",
	"press.Stations": "rules", "press.StrokeS": "OverrunMM", "press.TimeOf": "the times of choose", "fit.Foretell": "filmsShare", "press.OneTurn": "rules", "press.Needs": "rules", "press.Advice": "rules", "fit.AngleSpread": "derived", "fit.NextStrokeSpread": "derived",
	"fit.Shop": "leastTimes", "choose.edgeLimitDeg": "cutLimits", "choose.slips": "the errors beside it", "choose.discharges": "rules",
}

// source is the code of a package, without its tests.
func source(t *testing.T, pkg string) (map[string]*ast.File, *token.FileSet) {
	t.Helper()
	paths, err := filepath.Glob("../" + pkg + "/*.go")
	if err != nil {
		t.Fatal(err)
	}
	files, fset := map[string]*ast.File{}, token.NewFileSet()
	for _, path := range paths {
		if strings.HasSuffix(path, "_test.go") {
			continue
		}
		if files[path], err = parser.ParseFile(fset, path, nil, parser.ParseComments); err != nil {
			t.Fatal(err)
		}
	}
	return files, fset
}

// TestConstantsAreListed: each declaration of calc, and each figure of the ink classes, that says of itself that it is
// common practice, from memory or a judgement stands in the table with its value of today.
func TestConstantsAreListed(t *testing.T) {
	listed := map[string]constant{}
	for _, c := range constants {
		if listed[c.name].name != "" || !(c.low < c.high) {
			t.Errorf("%s: stands twice, or its range is empty", c.name)
		}
		listed[c.name] = c
	}
	found := 0
	for _, pkg := range packages {
		files, _ := source(t, pkg)
		for _, f := range files {
			for _, name := range markedIn(f) {
				found++
				if full := pkg + "." + name; listed[full].name == "" && elsewhere[full] == "" {
					t.Errorf("%s says that it has no source and is not in the list of constants", full)
				}
			}
		}
	}
	if found < 120 {
		t.Errorf("only %d declarations without a source were found", found)
	}
	table, err := os.ReadFile(constantsTable)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range append(slices.Clone(constants), inkConstants(t)...) {
		if row := headOf(t, c); !bytes.Contains(table, []byte(row)) {
			t.Errorf("%s has no row that begins %q; make it with go test ./calc/choose -run Constants -constants new", constantsTable, row)
		}
	}
}

// markedIn are the names of a file's declarations whose comments have one of the marks.
func markedIn(f *ast.File) []string {
	var out []string
	for _, d := range f.Decls {
		switch d := d.(type) {
		case *ast.FuncDecl:
			if d.Recv == nil && marked.MatchString(d.Doc.Text()) {
				out = append(out, d.Name.Name)
			}
		case *ast.GenDecl:
			for _, s := range d.Specs {
				v, is := s.(*ast.ValueSpec)
				if is && marked.MatchString(d.Doc.Text()+v.Doc.Text()+v.Comment.Text()) {
					for _, n := range v.Names {
						out = append(out, n.Name)
					}
				}
			}
		}
	}
	return out
}

// valueOf is the value of a constant as the code states it.
func valueOf(t *testing.T, c constant) string {
	t.Helper()
	pkg, name, _ := strings.Cut(c.name, ".")
	if c.value != "" || strings.Contains(c.name, ":") {
		return c.value
	}
	files, fset := source(t, pkg)
	for _, f := range files {
		for _, d := range f.Decls {
			g, is := d.(*ast.GenDecl)
			if !is {
				continue
			}
			for _, s := range g.Specs {
				if v, is := s.(*ast.ValueSpec); is {
					for i, n := range v.Names {
						if n.Name == name && i < len(v.Values) {
							var text bytes.Buffer
							if err := format.Node(&text, fset, v.Values[i]); err != nil {
								t.Fatal(err)
							}
							return text.String()
						}
					}
				}
			}
		}
	}
	t.Errorf("%s is not in the code", c.name)
	return ""
}

var (
	inkName = regexp.MustCompile(`^name = "(.*)"`)
	inkLine = regexp.MustCompile(`^([a-z-]+) = "([0-9]+(?:\.[0-9]+)?)(\.\.[0-9.]+)? ?([^"]*)" +# ([MC]) ?(.*)`)
	fromTo  = regexp.MustCompile(`([0-9.]+) to ([0-9.]+)`)
)

// inkConstants are the figures of the built-in ink classes that are common practice or from memory. Their ranges
// stand beside them, or are customary for the key.
func inkConstants(t *testing.T) []constant {
	t.Helper()
	class := ""
	var out []constant
	for _, line := range strings.Split(string(templates.Inks()), "\n") {
		if m := inkName.FindStringSubmatch(line); m != nil {
			class = m[1]
		}
		m := inkLine.FindStringSubmatch(line)
		if m == nil {
			continue
		}
		v, err := strconv.ParseFloat(m[2], 64)
		if err != nil {
			t.Fatal(line)
		}
		scale := 1.0
		if m[4] == "%" {
			scale = 0.01
		}
		c := constant{name: "ink:" + class + ":" + m[1], kind: m[5], value: m[2] + m[3] + " " + m[4]}
		span := map[string][2]float64{"density": {v - 0.1, v + 0.1}, "solids": {max(5, v-10), min(100, v+10)}, "scattering": {v / 2, 2 * v}, "whiteness": {v - 5, min(99, v+5)}}
		shift := map[string][2]float64{"cure": {-8, 8}, "gel": {-8, 8}, "dwell": {-15, 30}, "tack": {-3, 6}}
		if s, is := shift[m[1]]; is {
			c.low, c.high, c.governs = s[0], s[1], "both ends, moved by"
		} else if s, is := span[m[1]]; is {
			if r := fromTo.FindStringSubmatch(m[6]); r != nil {
				s[0], _ = strconv.ParseFloat(r[1], 64)
				s[1], _ = strconv.ParseFloat(strings.TrimSuffix(r[2], "."), 64)
			}
			c.low, c.high = s[0]*scale, s[1]*scale
		} else if m[1] == "film" || m[1] == "eom" {
			continue // ink:*:use
		} else {
			t.Errorf("%s: no range is known for %s", class, m[1])
		}
		c.governs = strings.TrimSpace(c.governs + " " + map[string]string{"density": "grams", "solids": "cured film", "scattering": "film that hides", "whiteness": "film that hides",
			"cure": "cure window", "gel": "flash", "dwell": "belt", "tack": "flash of a reacting ink"}[m[1]])
		out = append(out, c)
	}
	if len(out) < 20 {
		t.Errorf("only %d figures of ink classes without a source were found", len(out))
	}
	return out
}

// figures are what testdata/plans prints of a screen.
type figures struct {
	Film, Band, Flash, Ink, Belt float64
	Setup, All                   string
}

// moves are what a constant moves from the low end of its range to the high one.
type movesOf struct {
	constant
	film, filmMost, flash, ink, belt, band float64 // per cent: the mean of all screens that have one; of the film, the largest too
	setups, touched                        int     // screens with another setup, with any other figure
}

// TestConstantsMove makes the table anew where that is asked for.
func TestConstantsMove(t *testing.T) {
	if *moved != "all" && *moved != "new" {
		t.Skip("asked for with -constants all or -constants new")
	}
	kept := map[string]movesOf{}
	if *moved == "new" {
		kept = rows(t)
	}
	dir := t.TempDir()
	program := knobs(t, dir)
	base := filepath.Join(dir, "base.json")
	run := func(id string, v float64) ([]byte, error) {
		cmd := exec.Command(program, base)
		if id == "" {
			cmd = exec.Command(program)
		}
		cmd.Env = append(os.Environ(), "KNOB="+id, "KNOB_VALUE="+strconv.FormatFloat(v, 'g', -1, 64))
		var why bytes.Buffer
		cmd.Stderr = &why
		out, err := cmd.Output()
		if err != nil {
			err = fmt.Errorf("%s = %g: %v: %s", id, v, err, why.Bytes())
		}
		return out, err
	}
	text, err := run("", 0)
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(base, text, 0o666); err != nil {
		t.Fatal(err)
	}
	var at []figures
	if err := json.Unmarshal(text, &at); err != nil {
		t.Fatal(err)
	}
	all := append(slices.Clone(constants), inkConstants(t)...)
	table := make([]movesOf, len(all))
	var wg sync.WaitGroup
	work := make(chan int)
	for range 2 {
		wg.Add(1)
		go func() {
			defer wg.Done()
			for i := range work {
				if row, is := kept[headOf(t, all[i])]; is {
					row.constant = all[i]
					table[i] = row
					continue
				}
				var ends [2][]figures
				for k, v := range []float64{all[i].low, all[i].high} {
					text, err := run(all[i].name, v)
					if err == nil {
						err = json.Unmarshal(text, &ends[k])
					}
					if err != nil {
						t.Error(err)
						ends[k] = at
					}
				}
				table[i] = between(all[i], at, ends[0], ends[1])
			}
		}()
	}
	for i := range all {
		work <- i
	}
	close(work)
	wg.Wait()
	if t.Failed() {
		t.FailNow()
	}
	if err := os.WriteFile(constantsTable, []byte(written(t, table, len(at))), 0o666); err != nil {
		t.Fatal(err)
	}
}

// headOf is how a row begins: what was moved, and how far.
func headOf(t *testing.T, c constant) string {
	value := valueOf(t, c)
	if strings.HasPrefix(c.name, "shop:") {
		value = "shop.toml"
	} else if strings.HasPrefix(c.name, "ink:*") {
		value = "each class's"
	}
	return fmt.Sprintf("| `%s` | %s | %s | %.4g to %.4g |", c.name, c.kind, value, c.low, c.high)
}

// rows are those of the table as it stands, by how they begin.
func rows(t *testing.T) map[string]movesOf {
	t.Helper()
	text, err := os.ReadFile(constantsTable)
	if err != nil {
		t.Fatal(err)
	}
	out := map[string]movesOf{}
	for _, line := range strings.Split(string(text), "\n") {
		cell := strings.Split(line, "|")
		if len(cell) != 15 || !strings.HasPrefix(line, "| `") {
			continue
		}
		n := func(i int) float64 {
			v, err := strconv.ParseFloat(strings.TrimSpace(cell[i]), 64)
			if err != nil {
				return 0
			}
			return v
		}
		out[strings.Join(cell[:5], "|")+"|"] = movesOf{film: n(6), filmMost: n(7), flash: n(8), ink: n(9), belt: n(10), band: n(11), setups: int(n(12)), touched: int(n(13))}
	}
	return out
}

// between compares the figures at both ends of a range.
func between(c constant, at, low, high []figures) movesOf {
	m := movesOf{constant: c}
	mean := func(of func(figures) float64) (mean, most float64) {
		n := 0.0
		for i := range low {
			a, b := of(low[i]), of(high[i])
			if a > 0 && b > 0 {
				d := 100 * math.Abs(b/a-1)
				mean, n, most = mean+d, n+1, max(most, d)
			}
		}
		return mean / max(1, n), most
	}
	m.film, m.filmMost = mean(func(f figures) float64 { return f.Film })
	m.flash, _ = mean(func(f figures) float64 { return f.Flash })
	m.ink, _ = mean(func(f figures) float64 { return f.Ink })
	m.belt, _ = mean(func(f figures) float64 { return f.Belt })
	m.band, _ = mean(func(f figures) float64 { return f.Band })
	for i := range at {
		if low[i].Setup != at[i].Setup || high[i].Setup != at[i].Setup {
			m.setups++
		}
		if low[i].All != at[i].All || high[i].All != at[i].All {
			m.touched++
		}
	}
	return m
}

// written is the table, the largest effect first.
func written(t *testing.T, table []movesOf, screens int) string {
	slices.SortStableFunc(table, func(a, b movesOf) int {
		by := func(m movesOf) []float64 {
			return []float64{math.Round(10 * m.film), float64(m.setups), math.Round(10 * m.flash), math.Round(10 * m.ink), math.Round(10 * m.belt), math.Round(10 * m.band), float64(m.touched)}
		}
		return -slices.Compare(by(a), by(b))
	})
	var b strings.Builder
	fmt.Fprintf(&b, `# Figures without a source, and what hangs on them

Every figure of the computation that is common practice (C), from memory or a judgement (M), with two that are published or
derived with a wide range (P, D); the largest effect first. So the top of the list says which measurements would help most. A
range is where the figure may truly lie, itself a judgement. Effects are from the low end to the high one, on %d screens of %d
made-up jobs with all built-in ink classes: cured film at the same setup (mean of the screens, and the most), flash, ink
of the run, garments an hour and width of the film's band (means); then how many of the screens are set up otherwise, and in
how many screens' plans anything changes. A figure that changes none is one of a case that these jobs have not, of the time
on the press, which is a location's, or of the other commands (log, fit, trial, correct, handout). Made by `+"`go test ./calc/choose -run Constants -constants all`"+`, which moves each figure in the code.

| figure | kind | value | range | governs | film %% | most %% | flash %% | ink %% | belt %% | band %% | other setups | plans |
| --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- |
`, screens, screens/3)
	n := func(v float64) string {
		if v < 0.05 {
			return ""
		}
		return strconv.FormatFloat(v, 'f', 1, 64)
	}
	count := func(v int) string {
		if v == 0 {
			return ""
		}
		return strconv.Itoa(v)
	}
	for _, m := range table {
		fmt.Fprintf(&b, "%s %s | %s | %s | %s | %s | %s | %s | %s | %s |\n", headOf(t, m.constant), m.governs,
			n(m.film), n(m.filmMost), n(m.flash), n(m.ink), n(m.belt), n(m.band), count(m.setups), count(m.touched))
	}
	return b.String()
}
