package report

import (
	"slices"
	"strings"
	"testing"
	"unicode/utf8"
)

func TestWrap(t *testing.T) {
	for _, c := range []struct {
		text               string
		indent, hang, wide int
		want               []string
	}{
		{"", 2, 2, 10, []string{"  "}},
		{"short", 2, 2, 10, []string{"  short"}},
		{"one two three", 2, 2, 9, []string{"  one two", "    three"}},
		{"one two\nthree", 0, 0, 9, []string{"one two", "three"}},
		{"12\u00a0µm of ink", 0, 2, 6, []string{"12\u00a0µm", "  of", "  ink"}}, // a number stays with its unit
		{"a verylongword b", 0, 2, 6, []string{"a", "  verylongword", "  b"}},
	} {
		if got := Wrap(c.text, c.indent, c.hang, c.wide); !slices.Equal(got, c.want) {
			t.Errorf("%q in %d: %q; %q is wanted", c.text, c.wide, got, c.want)
		}
	}
}

func TestTabled(t *testing.T) {
	columns := [][]string{{"#", "1", "2"}, {"color", "white", "röd"}, {"mesh", "156-64", "83-100"}, {"ink", "plastisol", ""}}
	if got, want := tabled(columns, 2, 2, 80), []string{"  #  color  mesh    ink", "  1  white  156-64  plastisol", "  2  röd    83-100"}; !slices.Equal(got, want) {
		t.Errorf("wide: %q", got)
	}
	if got, want := tabled(columns, 2, 2, 20), []string{
		"  #  color  mesh", "  1  white  156-64", "  2  röd    83-100", "",
		"  #  color  ink", "  1  white  plastisol", "  2  röd",
	}; !slices.Equal(got, want) {
		t.Errorf("narrow: %q", got)
	}
	for wide := range 40 { // every cell stands somewhere, and only a table of one column is wider
		lines := tabled(columns, 2, 2, wide)
		all := strings.Join(lines, "\n")
		for _, cell := range []string{"156-64", "83-100", "plastisol"} {
			if !strings.Contains(all, cell) {
				t.Errorf("%d: nothing of %s in\n%s", wide, cell, all)
			}
		}
		for _, l := range lines {
			if n := utf8.RuneCountInString(l); n > max(wide, len("  1  white  plastisol")) {
				t.Errorf("%d: %d letters in %q", wide, n, l)
			}
		}
	}
}
