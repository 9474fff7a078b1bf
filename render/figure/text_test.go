package figure

import (
	"strings"
	"testing"

	"pgregory.net/rapid"

	"bladecard/render/canvas"
)

func TestNewBlock(t *testing.T) {
	rec, f := &recorder{}, canvas.Font{SizePT: 72} // a letter is 12.7 mm wide
	for _, tt := range []struct {
		s       string
		letters float64
		want    string
		ok      bool
	}{
		{"", 5, "", true},
		{"one two", 7, "one two", true},
		{"one two", 6, "one|two", true},
		{"65/90/65 worn", 6, "65/90/|65|worn", true},
		{"abcdefgh", 3, "abc|def|gh", true},
		{"a  b", 3, "a b", true},
		{"µµµ", 2, "µµ|µ", true},
		{"ab", 0.5, "a|b", false},
	} {
		max := tt.letters*12.7 + 0.001
		b := newBlock(rec, tt.s, f, max)
		ok := b.w <= max
		if got := strings.Join(b.lines, "|"); got != tt.want || ok != tt.ok {
			t.Errorf("%q in %v letters: %s, %v; want %s, %v", tt.s, tt.letters, got, ok, tt.want, tt.ok)
		}
	}
}

func TestBlockLosesNothing(t *testing.T) {
	rec, f := &recorder{}, canvas.Font{SizePT: 9}
	rapid.Check(t, func(t *rapid.T) {
		s := rapid.StringMatching(`[a-zµ0-9/ –-]{0,30}`).Draw(t, "s")
		max := rapid.Float64Range(2, 40).Draw(t, "max")
		b := newBlock(rec, s, f, max)
		strip := func(s string) string { return strings.ReplaceAll(s, " ", "") }
		if strip(strings.Join(b.lines, "")) != strip(s) || b.w > max {
			t.Fatalf("%q in %v: %q, %v wide", s, max, b.lines, b.w)
		}
	})
}

func TestShortened(t *testing.T) {
	rec, f := &recorder{}, canvas.Font{SizePT: 72} // a letter is 12.7 mm wide
	for _, tt := range []struct{ s, want string }{
		{"one two", "one two"},
		{"one two three four", "one two three…"},
		{"abcdefghijklmnopqrstuvwxyz", "abcdefghijklm…"},
		{"65/90/65 worn edge, from the left rack", "65/90/65 wor…"},
		{"", ""},
	} {
		if got := shortened(rec, tt.s, f, 7*12.7+0.001, 2); got != tt.want {
			t.Errorf("%q: %q, want %q", tt.s, got, tt.want)
		}
	}
}
