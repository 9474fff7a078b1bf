package say

import (
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"bladecard/calc/file"
	"bladecard/calc/plan"
	"bladecard/templates"
)

func voice(t *testing.T, units string) *Voice {
	t.Helper()
	return voiceIn(t, "en", units)
}

func voiceIn(t *testing.T, language, units string) *Voice {
	t.Helper()
	v, err := New(language, units)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

func TestFigures(t *testing.T) {
	m, i := voice(t, "metric"), voice(t, "inch")
	for _, c := range []struct{ got, want string }{
		{m.FilmUM(9.94), "9.9\u00a0µm"}, {m.FilmUM(28.4), "28\u00a0µm"}, {m.FilmUM(167.6), "170\u00a0µm"},
		{m.FilmRange(33.2, 51.4), "33–51\u00a0µm"}, {m.Signed(-4.6), "−4.6\u00a0µm"}, {m.SignedPercent(12.4), "+12\u00a0%"},
		{m.Angle(37.5), "37.5°"}, {m.AngleRange(10, 25), "10–25°"}, {m.AngleRange(15, 15), "15°"},
		{m.Length(360), "360\u00a0mm"}, {i.Length(304.8), "12\u00a0in"}, {i.Size(304.8, 355.6), "12 × 14\u00a0in"},
		{m.Load(5), "5\u00a0N/cm"}, {i.Load(5), "2.9\u00a0lbf/in"},
		{m.TemperatureRange(149, 171), "149–171\u00a0°C"}, {i.TemperatureRange(149, 160), "300–320\u00a0°F"},
		{m.Gap(1.6, 3.2), "1.6–3.2\u00a0mm"}, {m.Gap(1.6, 1.6), "1.6\u00a0mm"}, {i.Gap(1.6, 3.175), "1/16–1/8\u00a0in"},
		{m.Mass(0.959), "0.96\u00a0g"}, {m.Mass(265.03), "265\u00a0g"}, {m.Mass(1234), "1.23\u00a0kg"}, {i.Mass(907.18474), "2.0\u00a0lb"}, {i.Mass(157), "5.5\u00a0oz"}, {i.Mass(342), "12\u00a0oz"}, {i.Mass(12.4), "12\u00a0g"},
		{m.Minutes(180), "3\u00a0h"}, {m.Minutes(71), "1\u00a0h\u00a011\u00a0min"}, {m.Location("location 2"), "location 2"}, {m.Location("location by the till"), "location by the till"},
		{m.Volume(946.352946), "0.95\u00a0L"}, {i.Volume(946.352946), "1.00\u00a0qt"},
		{i.BeltSpeed(1.8288, 1.8288), "6\u00a0ft/min"}, {m.SecondsRange(1.84, 7.2), "1.8–7.2\u00a0s"}, {m.SecondsRange(45, 90), "45–90\u00a0s"},
		{m.Date("2027-05-21"), "2027-05-21"}, {m.Many("show.pieces", 1), "1 piece"}, {m.Many("show.pieces", 3), "3 pieces"},
		{m.Number(-0.01, 1), "0"}, {m.Decimal("70/90/70"), "70/90/70"},
	} {
		if c.got != c.want {
			t.Errorf("%q; %q is wanted", c.got, c.want)
		}
	}
	if _, err := New("xx", "metric"); err == nil || !strings.Contains(err.Error(), "en") {
		t.Errorf("language xx: %v", err)
	}
}

// TestSpanishFigures: decimal comma, day before month; numbers that stand as text in a plan
// follow, names stay.
func TestSpanishFigures(t *testing.T) {
	m, i := voiceIn(t, "es", "metric"), voiceIn(t, "es", "inch")
	for _, c := range []struct{ got, want string }{
		{m.FilmUM(9.94), "9,9\u00a0µm"}, {m.FilmUM(167.6), "170\u00a0µm"}, {m.FilmRange(5.24, 8.2), "5,2–8,2\u00a0µm"},
		{m.Signed(-4.6), "−4,6\u00a0µm"}, {m.SignedPercent(2.35), "+2,4\u00a0%"}, {m.Angle(37.5), "37,5°"}, {m.AngleRange(7.5, 20), "7,5–20°"},
		{m.Gap(1.6, 3.2), "1,6–3,2\u00a0mm"}, {m.Small(0.05), "0,05\u00a0mm"}, {m.Volume(946.352946), "0,95\u00a0L"}, {m.Mass(1234), "1,23\u00a0kg"},
		{i.Gap(1.6, 3.175), "1/16–1/8\u00a0in"}, {i.Length(349.25), "13\u00a03/4\u00a0in"}, {i.Length(12), "0,47\u00a0in"}, {i.Size(304.8, 355.6), "12 × 14\u00a0in"},
		{i.Load(5), "2,9\u00a0lbf/in"}, {i.Speed(0.254), "10\u00a0in/s"}, {i.BeltSpeed(1.8288, 2), "6,0–6,6\u00a0ft/min"}, {i.TemperatureRange(149, 160), "300–320\u00a0°F"},
		{m.Count(156, 61), "156/pulg (61/cm)"}, {m.Date("2027-05-21"), "21/05/2027"},
		{m.Many("show.pieces", 1), "1 pieza"}, {m.Many("show.pieces", 3), "3 piezas"},
		{m.Decimal("12.5"), "12,5"}, {m.Decimal("65/90/65"), "65/90/65"}, {m.Decimal("156-64"), "156-64"},
		{m.Change(plan.Correction{Kind: "angle", To: "12.5"}), "ángulo 12,5°"}, {m.Change(plan.Correction{Kind: "strokes", To: "1"}), "1 pasada"},
		{m.Change(plan.Correction{Kind: "strokes", To: "2"}), "2 pasadas"}, {m.Change(plan.Correction{Kind: "strokes", To: "3", Hits: 2}), "3+3 pasadas"}, {m.Change(plan.Correction{Kind: "blade", To: "65/90/65"}), "racleta 65/90/65"},
		{m.T("warning.moire", m.Values(map[string]float64{"angle_deg": 22.5, "beat_mm": 1.69, "better_deg": 7.5}, nil)...),
			"riesgo de moiré: a 22,5° malla y puntos coinciden cada 1,69\u00a0mm; menos moiré a 7,5°"},
	} {
		if c.got != c.want {
			t.Errorf("%q; %q is wanted", c.got, c.want)
		}
	}
}

// TestNamesToFillIn: a text asks for the same figures and names in every language, no more and
// no fewer, or a figure would be lost or a brace would be printed.
func TestNamesToFillIn(t *testing.T) {
	english, err := templates.Language("en")
	if err != nil {
		t.Fatal(err)
	}
	filled := 0
	for _, lang := range templates.Languages() {
		w, err := templates.Language(lang)
		if err != nil {
			t.Fatal(err)
		}
		for k, text := range w {
			want, is := english[k]
			if !is {
				t.Errorf("%s has %s, which English has not", lang, k)
			}
			got := braces(text)
			if g, e := strings.Join(got, " "), strings.Join(braces(want), " "); g != e {
				t.Errorf("%s: %s fills in %q; English fills in %q", lang, k, g, e)
			}
			filled += len(got)
		}
	}
	if filled < 200 {
		t.Errorf("only %d names to fill in were found", filled)
	}
}

// braces lists the names in braces of a text, sorted, each once.
func braces(text string) []string {
	var out []string
	for _, m := range brace.FindAllString(text, -1) {
		if !slices.Contains(out, m) {
			out = append(out, m)
		}
	}
	slices.Sort(out)
	return out
}

var brace = regexp.MustCompile(`\{[a-z_]+\}`)

// TestEveryKeyHasItsText walks the program for the keys that it asks for, whole or by their
// beginning, and for the codes of warnings and cautions: each has its text in every language.
func TestEveryKeyHasItsText(t *testing.T) {
	keys, codes := asked(t)
	for _, in := range file.BuiltInShop().Inks {
		for _, c := range in.Cautions {
			keys = append(keys, "caution."+c)
		}
	}
	for _, c := range codes {
		keys = append(keys, "warning."+c)
	}
	for _, lang := range templates.Languages() {
		w, err := templates.Language(lang)
		if err != nil {
			t.Fatal(err)
		}
		for _, k := range keys {
			if strings.HasSuffix(k, ".") || strings.HasSuffix(k, "-") {
				some := false
				for have := range w {
					some = some || strings.HasPrefix(have, k)
				}
				if !some {
					t.Errorf("%s has no text that starts with %s", lang, k)
				}
			} else if w[k] == "" {
				t.Errorf("%s lacks %s", lang, k)
			}
		}
		english, _ := templates.Language("en")
		for k := range english {
			if w[k] == "" {
				t.Errorf("%s lacks %s", lang, k)
			}
		}
	}
	if len(keys) < 100 || len(codes) < 20 {
		t.Errorf("%d keys and %d warnings were found; the walk does not see the program", len(keys), len(codes))
	}
}

// asked lists the texts given to T, Many and the like, and the codes of warnings.
func asked(t *testing.T) (keys, codes []string) {
	t.Helper()
	err := filepath.WalkDir("../..", func(path string, d os.DirEntry, err error) error {
		if err != nil || d.IsDir() || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
			return err
		}
		f, err := parser.ParseFile(token.NewFileSet(), path, nil, 0)
		if err != nil {
			return err
		}
		ast.Inspect(f, func(n ast.Node) bool {
			switch n := n.(type) {
			case *ast.CallExpr:
				if len(n.Args) == 0 {
					return true
				}
				name := ""
				switch fn := n.Fun.(type) {
				case *ast.SelectorExpr:
					name = fn.Sel.Name
				case *ast.Ident:
					name = fn.Name
				}
				text, whole := leading(n.Args[0])
				switch {
				case text == "":
				case name == "T" || name == "Many":
					if !whole && !strings.HasSuffix(text, "-") {
						text = text[:strings.LastIndexByte(text, '.')+1]
					}
					keys = append(keys, text)
					if name == "Many" {
						keys = append(keys, text+"-one")
					}
				case name == "warn" && whole:
					codes = append(codes, text)
				}
			case *ast.KeyValueExpr:
				if k, ok := n.Key.(*ast.Ident); ok && k.Name == "Code" {
					if text, whole := leading(n.Value); whole && text != "" && strings.Contains(path, "plan") {
						codes = append(codes, text)
					}
				}
			}
			return true
		})
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return keys, codes
}

// leading is the text that an expression starts with, and whether that is all of it.
func leading(e ast.Expr) (string, bool) {
	switch e := e.(type) {
	case *ast.BasicLit:
		s, err := strconv.Unquote(e.Value)
		if err != nil || e.Kind != token.STRING {
			return "", false
		}
		return s, true
	case *ast.BinaryExpr:
		s, _ := leading(e.X)
		return s, false
	}
	return "", false
}
