package cells

import (
	"strings"
	"testing"
	"unicode"

	"pgregory.net/rapid"
)

// TestGuard: what a spreadsheet would run does not begin with its sign, and what it would not run stays as it is.
func TestGuard(t *testing.T) {
	for text, want := range map[string]Cell{
		"=HYPERLINK(\"x\")": "'=HYPERLINK(\"x\")", "+1": "'+1", "-1": "'-1", "@SUM(A1)": "'@SUM(A1)", "\t=1": "'\t=1", "\r=1": "'\r=1",
		" =1": "' =1", "\u00a0=1": "'\u00a0=1", "'=1": "''=1", "\ttab": "'\ttab",
		"": "", "a=b": "a=b", "'tis": "'tis", "70/90/70": "70/90/70", "156-64": "156-64", "½ =": "½ =",
	} {
		if got := Text(text); got != want {
			t.Errorf("Text(%q) = %q; %q is wanted", text, got, want)
		}
	}
}

// TestGuardComesOff: whatever the text, the cell is never run, and gives the text back.
func TestGuardComesOff(t *testing.T) {
	signs := rapid.SampledFrom([]string{"'", "=", "+", "-", "@", "\t", "\r", " ", "\u00a0", "a", "ü", "0"})
	rapid.Check(t, func(t *rapid.T) {
		text := strings.Join(rapid.SliceOfN(signs, 0, 6).Draw(t, "text"), "")
		cell := string(Text(text))
		if back := TextOf(cell); back != text {
			t.Fatalf("%q comes back from %q as %q", text, cell, back)
		}
		if first := strings.TrimLeftFunc(cell, unicode.IsSpace); first != "" && strings.ContainsRune("=+-@", rune(first[0])) {
			t.Fatalf("the cell %q of %q is run", cell, text)
		}
	})
}
