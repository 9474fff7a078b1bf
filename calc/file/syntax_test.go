package file

import (
	"errors"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/pelletier/go-toml/v2/unstable"
)

// TestSyntaxIsToldPlainly: slips of people who type TOML, each with its place, what is wrong, and what is accepted.
func TestSyntaxIsToldPlainly(t *testing.T) {
	for _, c := range []struct{ src, want, accepted string }{
		{"width = 12 in", `1:11: "in" stands where the line should end`, acceptedLine},
		{"[garment] name", `1:10: "name" stands where the line should end`, acceptedLine},
		{"coverage = 0,5", `1:13: a comma stands behind the value`, acceptedPoint},
		{"[[location]\n", `1:11: [[ is not closed by ]]`, acceptedHeader},
		{"[full front]", `1:7: "front" stands in the name of the table`, acceptedHeader},
		{"[garment\nname = \"x\"", `1:9: the bracket of the table's name is not closed`, acceptedHeader},
		{"title: \"x\"", `1:6: ":" stands where = is wanted`, acceptedKey},
		{"título = \"x\"", `1:2: "ítulo" stands where = is wanted`, acceptedKey},
		{"title", `1:5: the key has no = and no value`, acceptedKey},
		{"title =\nquantity = 3", `1:8: the value is missing`, acceptedValue},
		{"title = navy tee", `1:9: "navy" stands without quotes`, acceptedValue},
		{"title = “x”", `1:9: "“" is no straight quote`, acceptedSigns},
		{"swatch = #ff0000", `1:10: the value is missing, since # begins a comment`, `a value is accepted, with # inside its quotes`},
		{"lengths = [", `1:11: the list is never closed`, acceptedList},
		{"lengths = [\"12 in\"\nname = \"x\"", `2:1: "name" stands in the list where a comma or ] is wanted`, acceptedList},
		{"halftone = {", `1:12: the brace is never closed`, acceptedInline},
		{"mesh = 156-64", `1:8: "156-64" is not a day`, acceptedDay},
		{"coverage = 1e999", `1:12: "1e999" is too large`, acceptedWhole},
		{`logo = "C:\logo.png"`, `1:9: a backslash before "l" means nothing in a text`, acceptedEscape},
		{"a = 1\n[a.b]", `2:2: "a" is a value already and cannot be a table too`, acceptedOnce},
		{"[location]\n[[location]]", `2:3: "location" is there already, and not under [[ ]]`, acceptedTables},
		{"title = \"a\"\rquantity = 3", `1:11: a line ends in CR alone`, acceptedLineEnd},
		{"\r0", `1:1: a line ends in CR alone`, acceptedLineEnd},
		{"x = [" + strings.Repeat("1, ", 3000) + "tru]", `1:9006: a text stands without quotes`, acceptedValue},
		{"x = [" + strings.Repeat("1, ", 3000) + "1 1]", `1:9008: a comma or ] is missing in the list`, acceptedList},
		{"x = \"" + strings.Repeat("a", 5000) + `\q"`, `1:5006: a backslash before "q" means nothing in a text`, acceptedEscape},
	} {
		if _, errs := DecodeJob("j.toml", []byte(c.src)); errs.Error() != "j.toml:"+c.want+"; "+c.accepted {
			t.Errorf("%.40q\ngot\n%s\nwant\nj.toml:%s; %s", c.src, errs.Error(), c.want, c.accepted)
		}
	}
}

// TestParsersSayNothingElse: every message in the source of the two parsers fits a pattern, but for those of their
// own bugs, of files that charset.Fault refuses, and of what this package never asks. Where it fails after an update
// of a library, a message is new.
func TestParsersSayNothingElse(t *testing.T) {
	verbs := strings.NewReplacer("%q", `"x"`, "%s", "x", "%c", "x", "%v", "1", "%d", "1", "%02x", "0d", "%#U", "U+0078 'x'", "%w", "x")
	never := regexp.MustCompile(`^(BUG|Bug|unexpected EOF$|Unexpected|Expected|Context for|Escape sequence at|Could not parse|invalid UTF-8|files cannot contain NULL|invalid duration|control characters|toml: |at line|\(%s)`)
	n := 0
	for module, made := range map[string]*regexp.Regexp{
		"github.com/BurntSushi/toml":      regexp.MustCompile("(?:errorf|panicItemf|panicf|Errorf|Sprintf)\\((?:[a-z]+, )?(\"(?:[^\"\\\\]|\\\\.)*\"|`[^`]*`)|return ('none')"),
		"github.com/pelletier/go-toml/v2": regexp.MustCompile("NewParserError\\([^\"`]+, (\"(?:[^\"\\\\]|\\\\.)*\"|`[^`]*`)"),
	} {
		dir, err := exec.Command("go", "list", "-m", "-f", "{{.Dir}}", module).Output()
		if err != nil {
			t.Skip("no go command tells where the sources of libraries are: ", err)
		}
		for _, name := range []string{"lex.go", "parse.go", "error.go", "unstable/parser.go"} {
			src, err := os.ReadFile(filepath.Join(strings.TrimSpace(string(dir)), name))
			if err == nil {
				for _, found := range made.FindAllStringSubmatch(string(src), -1) {
					text, err := strconv.Unquote(found[1])
					if err != nil || never.MatchString(text) || !strings.Contains(text, " ") || strings.Contains(text, "|") || strings.Contains(text, "\n") {
						continue
					}
					n++
					if wrong, _ := plainly(verbs.Replace(text), nil); strings.Contains(wrong, "reader says") {
						t.Errorf("%s says %q", name, text)
					}
				}
			}
		}
	}
	if n < 80 {
		t.Errorf("%d messages were found", n)
	}
}

// What no pattern fits is told as it is, behind a sentence that says so.
func TestUnknownMessageOfAParser(t *testing.T) {
	if wrong, accepted := plainly("a new fault\nof 2 lines", nil); wrong != "this is not TOML, its reader says in English: a new fault of 2 lines" || accepted != acceptedTOML {
		t.Error(wrong, accepted)
	}
}

// Whatever stands in a line, its error is told plainly.
func FuzzSyntax(f *testing.F) {
	for _, src := range []string{"a = 1", "[a]\nb = \"\"", "[[a]]\nb = [1, {c = 2}]", "a = 2026-12-04"} {
		f.Add(src)
	}
	f.Fuzz(func(t *testing.T, src string) {
		var p unstable.Parser
		p.Reset([]byte(src))
		for p.NextExpression() {
		}
		var syntax *unstable.ParserError
		if errors.As(p.Error(), &syntax) {
			if wrong, _ := plainly(syntax.Message, nil); strings.Contains(wrong, "reader says") && !strings.Contains(wrong, "UTF-8") && !strings.Contains(wrong, "control") {
				t.Errorf("%q: %s", src, wrong)
			}
		}
		if _, errs := DecodeJob("j.toml", []byte(src)); strings.Contains(errs.Error(), "reader says") {
			t.Errorf("%q: %s", src, errs.Error())
		}
	})
}
